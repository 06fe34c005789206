namespace GreenLedger.Domain.Papers;

/// <summary>What attachments and notes can be put on.</summary>
public enum PapersOf
{
    Lot = 0,
    Offer = 1,
    Sample = 2,
    Arrival = 3,
    Contract = 4,
    Shipment = 5,
    Certificate = 6,
}

public static class PapersOfWords
{
    /// <summary>As a person reads it: <c>lot</c>.</summary>
    public static string Word(this PapersOf about) => about switch
    {
        PapersOf.Lot => "lot",
        PapersOf.Offer => "offer",
        PapersOf.Sample => "sample",
        PapersOf.Arrival => "arrival",
        PapersOf.Contract => "contract",
        PapersOf.Shipment => "shipment",
        PapersOf.Certificate => "certificate",
        _ => throw new ArgumentOutOfRangeException(nameof(about)),
    };
}
