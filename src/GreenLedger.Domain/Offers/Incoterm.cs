namespace GreenLedger.Domain.Offers;

/// <summary>
/// The delivery rule of a price: the eleven rules of ICC Incoterms 2020 that coffee uses, and a sale out of a
/// warehouse in the country of destination (spot), which is no Incoterm.
/// </summary>
public enum Incoterm
{
    Exw = 0,
    Fca = 1,
    Fob = 2,
    Cfr = 3,
    Cif = 4,
    Cpt = 5,
    Cip = 6,
    Dap = 7,
    Dpu = 8,
    Ddp = 9,
    ExWarehouse = 10,
    Fas = 11,
}

public static class Incoterms
{
    /// <summary>As the trade writes it: <c>FOB</c>, <c>ex warehouse</c>.</summary>
    public static string Word(this Incoterm term) =>
        term == Incoterm.ExWarehouse ? "ex warehouse" : term.ToString().ToUpperInvariant();
}
