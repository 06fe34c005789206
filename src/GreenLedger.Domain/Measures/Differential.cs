namespace GreenLedger.Domain.Measures;

/// <summary>
/// A premium or discount, as the market quotes it (US cents per pound or US dollars per tonne), to be added to the
/// futures price of a month: "KC March 2027 +28". Stored as ten-thousandths of the quoted unit.
/// The <c>default</c> is no differential.
/// </summary>
public readonly record struct Differential(FuturesMonth Month, long QuotedTenThousandths)
{
    /// <summary>In the unit that the month's market quotes: cents per pound for arabica, USD per tonne for robusta.</summary>
    public decimal Quoted => QuotedTenThousandths / 10_000m;

    /// <summary>The differential alone as a price; negative for a discount.</summary>
    public PricePerWeight Price => Month.Market.Price(Quoted);

    /// <exception cref="RuleBrokenException">The differential is larger than any the trade has seen.</exception>
    public static Differential Of(FuturesMonth month, decimal quoted)
    {
        Rule.Require(Math.Abs(quoted) <= 100_000m, "This differential is too large: please check the figure and its unit.", "Differential");
        return new Differential(month, decimal.ToInt64(Math.Round(quoted * 10_000m, 0, MidpointRounding.AwayFromZero)));
    }

    /// <summary>The whole price when the month trades at <paramref name="futures"/> (same quoted unit).</summary>
    public PricePerWeight At(decimal futures) => Month.Market.Price(futures + Quoted);
}
