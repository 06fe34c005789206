namespace GreenLedger.Domain.Measures;

/// <summary>
/// The quantity that a price is quoted for. Two quintals are in use and never mixed: 46 kg (Central America) and
/// 100 lb. Sources: handbook, trade 1.1 and 1.3.
/// </summary>
public enum PriceUnit
{
    Kilogram = 0,
    Pound = 1,
    FiftyKilograms = 2,
    Quintal46 = 3,
    Quintal100Pounds = 4,
    SixtyKilograms = 5,
    Tonne = 6,
}

public static class PriceUnits
{
    /// <summary>The weight that one quoted price pays for.</summary>
    public static Weight Weight(this PriceUnit unit) => unit switch
    {
        PriceUnit.Kilogram => Measures.Weight.FromKilograms(1),
        PriceUnit.Pound => Measures.Weight.FromPounds(1),
        PriceUnit.FiftyKilograms => Measures.Weight.FromKilograms(50),
        PriceUnit.Quintal46 => Measures.Weight.FromKilograms(46),
        PriceUnit.Quintal100Pounds => Measures.Weight.FromPounds(100),
        PriceUnit.SixtyKilograms => Measures.Weight.FromKilograms(60),
        PriceUnit.Tonne => Measures.Weight.FromKilograms(1000),
        _ => throw new ArgumentOutOfRangeException(nameof(unit)),
    };

    /// <summary>As the trade writes it after a slash: <c>lb</c>, <c>50 kg</c>, <c>t</c>.</summary>
    public static string Sign(this PriceUnit unit) => unit switch
    {
        PriceUnit.Kilogram => "kg",
        PriceUnit.Pound => "lb",
        PriceUnit.FiftyKilograms => "50 kg",
        PriceUnit.Quintal46 => "46 kg",
        PriceUnit.Quintal100Pounds => "100 lb",
        PriceUnit.SixtyKilograms => "60 kg",
        PriceUnit.Tonne => "t",
        _ => throw new ArgumentOutOfRangeException(nameof(unit)),
    };
}
