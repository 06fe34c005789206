namespace GreenLedger.Domain.Offers;

/// <summary>Who sends offers.</summary>
public enum SupplierKind
{
    Exporter = 0,
    Importer = 1,

    /// <summary>A producer that sells direct.</summary>
    Producer = 2,
}

public static class SupplierKinds
{
    public static string Word(this SupplierKind kind) => kind switch
    {
        SupplierKind.Exporter => "exporter",
        SupplierKind.Importer => "importer",
        SupplierKind.Producer => "producer selling direct",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
