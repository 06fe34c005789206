using GreenLedger.Domain;

namespace GreenLedger.Web.Papers;

/// <summary>Which record a page's history is about: the model of the partial <c>_History</c>.</summary>
public sealed record RecordOf(string Kind, string Id)
{
    /// <summary><c>RecordOf.The(lot.Id)</c> names the record by its identity.</summary>
    public static RecordOf The<T>(Id<T> id) => new(typeof(T).Name, id.ToString());

    /// <summary>Every record of a kind, where the house has one, or a page shows all of them.</summary>
    public static RecordOf Every<T>() => new(typeof(T).Name, "");
}
