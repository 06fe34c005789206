namespace GreenLedger.Domain.Offers.Reading;

/// <summary>What a column of an offer list holds.</summary>
public enum ColumnMeaning
{
    /// <summary>Nothing that the ledger takes; the file as received still has it.</summary>
    Ignored = 0,
    Ref,
    Name,
    Producer,
    Country,
    Region,
    Varieties,
    Process,
    CropYear,
    Grade,
    Screen,
    Altitude,
    StatedScore,
    Bags,
    BagWeight,

    /// <summary>How a bag is made and what it holds, as text: "saca 60 kg juta".</summary>
    Packaging,

    /// <summary>How much, where only the text or another column says of what: "320", "320 x 60 kg".</summary>
    Quantity,
    NetWeight,
    Price,
    Differential,
    FuturesMonth,
    Currency,
    PriceUnit,
    Incoterm,
    Place,
    ValidUntil,
    Availability,
    Certificates,
    IcoMark,
    Moisture,
    Notes,

    /// <summary>The fewest bags that the seller parts with.</summary>
    LeastBags,
}

public static class ColumnMeanings
{
    /// <summary>As the mapping page names it.</summary>
    public static string Word(this ColumnMeaning meaning) => meaning switch
    {
        ColumnMeaning.Ignored => "not taken",
        ColumnMeaning.Ref => "reference",
        ColumnMeaning.Name => "name of the lot",
        ColumnMeaning.Varieties => "varieties",
        ColumnMeaning.Process => "process method",
        ColumnMeaning.CropYear => "crop year",
        ColumnMeaning.StatedScore => "score stated",
        ColumnMeaning.BagWeight => "weight of a bag",
        ColumnMeaning.NetWeight => "net weight",
        ColumnMeaning.FuturesMonth => "futures month",
        ColumnMeaning.PriceUnit => "unit of the price",
        ColumnMeaning.Incoterm => "delivery rule",
        ColumnMeaning.Place => "named place",
        ColumnMeaning.ValidUntil => "valid until",
        ColumnMeaning.IcoMark => "ICO mark",
        ColumnMeaning.LeastBags => "least lot",
        _ => meaning.ToString().ToLowerInvariant(),
    };

    /// <summary>Whether several columns may share this meaning; their texts are then joined.</summary>
    public static bool IsJoined(this ColumnMeaning meaning) =>
        meaning is ColumnMeaning.Region or ColumnMeaning.Notes or ColumnMeaning.Certificates or ColumnMeaning.Ignored;
}
