using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Pricing;

/// <summary>
/// What a parcel costs in the buyer's warehouse, in the house currency. Each line is rounded half away from zero to
/// the cent in its own currency and again in the house currency; the total is the sum of the lines. Where a figure is
/// missing there is no total, and <see cref="Problems"/> says which ones: a gap is never a zero.
/// </summary>
public sealed class LandedCost
{
    private readonly CostSheet? _sheet;
    private IReadOnlyList<LandedCostLine>? _lines;

    internal LandedCost(Parcel parcel, Route? route, Currency currency, DateOnly on, IReadOnlyList<CostProblem> problems, CostSheet? sheet)
    {
        Parcel = parcel;
        Route = route;
        Currency = currency;
        On = on;
        Problems = problems;
        _sheet = sheet;
        if (sheet is not null && problems.Count == 0)
        {
            Landed = sheet.Landed;
            Total = new Money(sheet.TotalMinorUnits, currency);
            PerKilogram = Total.Value.Amount / Landed.Kilograms;
        }
    }

    public Parcel Parcel { get; }

    /// <summary>The route it was reckoned on; null when none serves the parcel.</summary>
    public Route? Route { get; }

    /// <summary>The house currency.</summary>
    public Currency Currency { get; }

    /// <summary>The day for which rates and quotes were looked up.</summary>
    public DateOnly On { get; }

    public IReadOnlyList<CostProblem> Problems { get; }

    public bool IsKnown => Problems.Count == 0;

    /// <summary>The rule and the kind of place by which the buyer's legs were told; null without a route.</summary>
    public CostSplit? Split => _sheet?.Split;

    /// <summary>The price that was reckoned with: as quoted, or the differential on its month's quote. Null when unknown.</summary>
    public PricePerWeight? Price => _sheet?.Price;

    /// <summary>The quote that a differential was resolved by; null for an outright price.</summary>
    public FuturesQuote? Quote => _sheet?.Quote;

    public Weight Shipped => Parcel.Quantity;

    /// <summary>What arrives: shipped weight less the route's weight loss. Zero when the cost is unknown.</summary>
    public Weight Landed { get; }

    /// <summary>Everything, with later finance and storage: the commercial landed cost.</summary>
    public Money? Total { get; }

    /// <summary>Of landed weight, in the house currency, not rounded: gates test this.</summary>
    public decimal? PerKilogram { get; }

    /// <summary>As shown: four decimals, half away from zero. The lines' shares add up to it.</summary>
    public decimal? ShownPerKilogram =>
        PerKilogram is { } exact ? Math.Round(exact, 4, MidpointRounding.AwayFromZero) : null;

    /// <summary>The accounting cost: without finance and without storage after receipt (IAS 2.16, from memory).</summary>
    public Money? AccountingTotal => Total is null
        ? null
        : Lines.Where(line => line.Stage is not (CostStage.Finance or CostStage.Storage))
            .Aggregate(Money.Zero(Currency), (sum, line) => sum + line.Amount);

    /// <summary>What was taken for granted, in words, such as where an unknown place lies.</summary>
    public IReadOnlyList<string> Assumptions => _sheet?.Assumptions() ?? [];

    /// <summary>The coffee and every leg, in the order of the way; empty when there is no price or no route.</summary>
    public IReadOnlyList<LandedCostLine> Lines => _lines ??= _sheet?.Lines(this) ?? [];
}
