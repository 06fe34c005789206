using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Pricing;

/// <summary>
/// Reckons one landed cost. The figures are kept bare, and the lines with their words are made only when somebody
/// looks: a ranking asks for a hundred thousand totals and opens a handful.
/// </summary>
internal sealed class CostSheet(LandedCosts costs, Parcel parcel, Way way, PricePerWeight price, FuturesQuote? quote)
{
    private readonly Money[] _original = new Money[way.Legs.Length + 1];
    private readonly long[] _house = new long[way.Legs.Length + 1];
    private readonly decimal _kilograms = parcel.Quantity.Kilograms;
    private decimal _value;
    private decimal _costAndFreight;
    private decimal? _cif;

    public CostSplit Split => way.Split;

    public PricePerWeight Price => price;

    public FuturesQuote? Quote => quote;

    public long TotalMinorUnits { get; private set; }

    public Weight Landed => Split.LosesWeight
        ? Weight.FromKilograms(_kilograms * (1m - way.Route!.WeightLoss.Fraction))
        : parcel.Quantity;

    public decimal Cif => _cif ??= _costAndFreight / (1m - (way.Route!.Insured.Fraction * BuyersPremium()));

    public void Reckon(List<CostProblem> problems)
    {
        foreach (var stage in way.Unanswered)
        {
            if (Split.PayerOf(stage) == Payer.Buyer)
            {
                problems.Add(new(CostGap.Stage, $"{way.Route!.Name} does not answer {stage.Word()}, which the buyer pays under {parcel.DeliveryWord}: give an amount, 'included' or 'none'.", stage));
            }
        }

        var value = price * parcel.Quantity;
        _value = _costAndFreight = value.Amount;
        Enter(0, value, "the price", null, problems);
        for (var i = 0; i < way.Legs.Length; i++)
        {
            if (IsBuyers(way.Legs[i]))
            {
                Reckon(i, problems);
            }
        }
    }

    /// <summary>The coffee and every leg, each to the cent and to four decimals per landed kilogram.</summary>
    public IReadOnlyList<LandedCostLine> Lines(LandedCost cost)
    {
        var shares = cost.ShownPerKilogram is { } shown && TotalMinorUnits > 0
            ? LargestRemainder.Split(decimal.ToInt64(shown * 10_000m), [.. _house.Select(units => (decimal)units)])
            : null;
        return [.. _house.Select((units, i) => Line(i, units, shares is null ? 0m : shares[i] / 10_000m))];
    }

    public IReadOnlyList<string> Assumptions() => !way.IsAssumed ? []
        : [$"{parcel.DeliveryWord} {parcel.Place ?? "with no place named"} is reckoned as {parcel.DeliveryWord} {Split.Place.Word()} on the route {way.Route!.Name}."];

    private LandedCostLine Line(int i, long units, decimal perKilogram)
    {
        var amount = new Money(units, costs.House);
        var leg = i == 0 ? null : way.Legs[i - 1];
        var original = _original[i] == default ? Money.Zero(costs.House) : _original[i];
        var conversion = costs.Convert(original.Currency, costs.House) ?? new Conversion(costs.House, costs.House, null, null);
        return leg is null
            ? new LandedCostLine(null, "Coffee", Payer.Buyer, null, original, amount, perKilogram, conversion, CostWords.Coffee(price, parcel, quote))
            : new LandedCostLine(leg.Stage, leg.Name, Split.PayerOf(leg.Stage), leg, original, amount, perKilogram, conversion, Words(leg));
    }

    private string Words(RouteLeg leg) => Split.PayerOf(leg.Stage) switch
    {
        Payer.Seller => $"the seller pays under {parcel.DeliveryWord}",
        Payer.Nobody => $"not counted under {parcel.DeliveryWord}",
        _ => CostWords.Leg(leg, way.Route!, parcel, new(_value, price.Currency), new(Cif, price.Currency), costs.DaysOfYear(leg.Year, price.Currency)),
    };

    private bool IsBuyers(RouteLeg leg) => leg.Answer == LegAnswer.Amount && Split.PayerOf(leg.Stage) == Payer.Buyer;

    private void Reckon(int i, List<CostProblem> problems)
    {
        var leg = way.Legs[i];
        if (leg.Basis == LegBasis.PerBag && parcel.Bags is null or <= 0)
        {
            problems.Add(new(CostGap.Bags, $"{leg.Name} is paid by the bag and the number of bags is missing.", leg.Stage));
            return;
        }

        var amount = Money.Of(Exact(leg), leg.IsShare ? price.Currency : leg.Currency);
        Enter(i + 1, amount, leg.Name, leg.Stage, problems);
        if (leg.Stage <= CostStage.Insurance && leg.Basis != LegBasis.PercentOfCif)
        {
            _costAndFreight += costs.Convert(amount.Currency, price.Currency)?.Of(amount.Amount) ?? 0m;
        }
    }

    private void Enter(int i, Money amount, string name, CostStage? stage, List<CostProblem> problems)
    {
        _original[i] = amount;
        if (costs.Convert(amount.Currency, costs.House) is { } conversion)
        {
            _house[i] = conversion.Of(amount).MinorUnits;
            TotalMinorUnits += _house[i];
        }
        else if (!problems.Exists(problem => problem.Gap == CostGap.ExchangeRate))
        {
            problems.Add(costs.MissingRate(amount.Currency, costs.House, name, stage));
        }
    }

    /// <summary>In the leg's currency, a share in the price's, not rounded.</summary>
    private decimal Exact(RouteLeg leg) => leg.Basis switch
    {
        LegBasis.PerKilogram => leg.Amount * _kilograms,
        LegBasis.PerBag => leg.Amount * parcel.Bags!.Value,
        LegBasis.PerContainer => PerContainer(leg.Amount, way.Route!),
        LegBasis.PerShipment => PerShipment(leg.Amount, way.Route!),
        LegBasis.PercentOfValue => _value * leg.Rate.Fraction,
        LegBasis.PercentOfCif => Cif * leg.Rate.Fraction * (leg.Stage == CostStage.Insurance ? way.Route!.Insured.Fraction : 1m),
        LegBasis.Interest => _value * leg.Rate.Fraction * leg.Days / costs.DaysOfYear(leg.Year, price.Currency),
        LegBasis.PerTonneMonth => leg.Amount * _kilograms / 1000m * leg.Months,
        _ => throw new InvalidOperationException($"No reckoning for {leg.Basis}."),
    };

    /// <summary>Multiplied before it is divided, so that half a cent stays half a cent.</summary>
    private decimal PerContainer(decimal amount, Route route) => route.SharedOver == SharedOver.Fill
        ? amount * _kilograms / route.Fill.Kilograms
        : amount * Math.Ceiling(_kilograms / route.Fill.Kilograms);

    private decimal PerShipment(decimal amount, Route route) => route.SharedOver == SharedOver.Fill
        ? amount * _kilograms / (route.Fill.Kilograms * route.ContainersPerShipment)
        : amount;

    private decimal BuyersPremium()
    {
        var rate = 0m;
        foreach (var leg in way.Legs)
        {
            if (leg is { Stage: CostStage.Insurance, Basis: LegBasis.PercentOfCif } && IsBuyers(leg))
            {
                rate += leg.Rate.Fraction;
            }
        }

        return rate;
    }
}
