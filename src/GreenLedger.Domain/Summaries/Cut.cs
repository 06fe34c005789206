namespace GreenLedger.Domain.Summaries;

/// <summary>By what purchases are parted: each lot stands in one group, so that the groups add up to the whole.</summary>
public enum Cut
{
    Origin = 0,
    Supplier = 1,
    Process = 2,

    /// <summary>By all of its certificates together: "fairtrade + organic" is a group of its own.</summary>
    Certificate = 3,

    /// <summary>By the buying programme that the house counts a lot to.</summary>
    Programme = 4,
}

public static class Cuts
{
    /// <summary>The group of a lot about which nothing is said.</summary>
    public const string NotStated = "not stated";

    public static string Word(this Cut cut) => cut switch
    {
        Cut.Origin => "origin",
        Cut.Supplier => "supplier",
        Cut.Process => "process",
        Cut.Certificate => "certificate",
        Cut.Programme => "programme",
        _ => throw new ArgumentOutOfRangeException(nameof(cut)),
    };

    public static string GroupOf(this Cut cut, LotFacts lot)
    {
        ArgumentNullException.ThrowIfNull(lot);
        return cut switch
        {
            Cut.Origin => lot.Origin ?? NotStated,
            Cut.Supplier => lot.Supplier,
            Cut.Process => lot.Process ?? NotStated,
            Cut.Certificate => lot.Certificates.Count == 0 ? "none" : string.Join(" + ", lot.Certificates),
            Cut.Programme => lot.Programme ?? "none",
            _ => throw new ArgumentOutOfRangeException(nameof(cut)),
        };
    }
}
