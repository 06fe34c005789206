using GreenLedger.Domain;

namespace GreenLedger.Web.Papers;

/// <summary>Which record a page's history is about: the model of the partial <c>_History</c>.</summary>
public sealed record RecordOf(string Kind, string Id)
{
    /// <summary><c>RecordOf.The(lot.Id)</c> names the record by its identity.</summary>
    public static RecordOf The<T>(Id<T> id) => new(typeof(T).Name, id.ToString());
}
