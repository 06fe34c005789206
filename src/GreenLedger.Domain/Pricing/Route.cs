using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Pricing;

/// <summary>What the cost of a container or of a shipment is shared over.</summary>
public enum SharedOver
{
    /// <summary>The route's stated fill: the coffee shares the container with other coffee and pays by weight.</summary>
    Fill = 0,

    /// <summary>The offer's quantity: it pays for every container it begins, and for the shipment, alone.</summary>
    Quantity = 1,
}

/// <summary>
/// A way from a port of loading to the buyer's warehouse with what each stage of it costs. The country of origin is
/// empty on a route that serves any origin.
/// </summary>
public sealed class Route
{
    private readonly List<RouteLeg> _legs = [];

    private Route()
    {
        Name = PortOfLoading = PortOfDestination = Warehouse = "";
    }

    /// <summary>A route with no stage answered yet.</summary>
    /// <exception cref="RuleBrokenException">A name or place is missing.</exception>
    public Route(string name, string portOfLoading, string portOfDestination, string warehouse, string? originCountry = null)
    {
        Id = Id<Route>.New();
        Name = PortOfLoading = PortOfDestination = Warehouse = "";
        Rename(name, portOfLoading, portOfDestination, warehouse, originCountry);
    }

    public Id<Route> Id { get; private set; }

    public int Version { get; private set; }

    public string Name { get; private set; }

    /// <summary>Name or UN/LOCODE, as the offers write it.</summary>
    public string PortOfLoading { get; private set; }

    /// <summary>Name or UN/LOCODE, as the offers write it.</summary>
    public string PortOfDestination { get; private set; }

    public string Warehouse { get; private set; }

    /// <summary>ISO 3166-1 alpha-2; null for any origin.</summary>
    public string? OriginCountry { get; private set; }

    /// <summary>False once it is put away: it stays in the ledger and no offer takes it.</summary>
    public bool IsInUse { get; private set; } = true;

    public SharedOver SharedOver { get; private set; } = SharedOver.Fill;

    /// <summary>What one container of this route holds. Common practice, no source: 19,200 kg (320 bags of 60 kg).</summary>
    public Weight Fill { get; private set; } = Weight.FromKilograms(19_200);

    /// <summary>Containers to a shipment, over which the costs of a shipment are shared.</summary>
    public int ContainersPerShipment { get; private set; } = 1;

    /// <summary>Lost between shipping and landing, in per cent of the shipped weight.</summary>
    public Percent WeightLoss { get; private set; }

    /// <summary>The insured share of CIF: 110 % under CIF and CIP (ICC Incoterms 2020), other contracts differ.</summary>
    public Percent Insured { get; private set; } = Percent.Of(110m);

    /// <summary>In the order of the way.</summary>
    public IReadOnlyList<RouteLeg> Legs => _legs;

    /// <summary>The stages with no leg at all, in the order of the way.</summary>
    public IReadOnlyList<CostStage> Unanswered => [.. CostStages.All.Except(_legs.Select(leg => leg.Stage))];

    /// <exception cref="RuleBrokenException">A name or place is missing, or the country is no two-letter code.</exception>
    public void Rename(string name, string portOfLoading, string portOfDestination, string warehouse, string? originCountry)
    {
        var country = Rule.OptionalText(originCountry, "The country of origin", 2, nameof(OriginCountry))?.ToUpperInvariant();
        Rule.Require(
            country is null || (country.Length == 2 && country.All(char.IsAsciiLetterUpper)),
            "The country of origin is a two-letter code, such as BR; leave it empty for any origin.",
            nameof(OriginCountry));
        Name = Rule.Text(name, "The name of the route", 80, nameof(Name));
        PortOfLoading = Rule.Text(portOfLoading, "The port of loading", 80, nameof(PortOfLoading));
        PortOfDestination = Rule.Text(portOfDestination, "The port of destination", 80, nameof(PortOfDestination));
        Warehouse = Rule.Text(warehouse, "The warehouse", 80, nameof(Warehouse));
        OriginCountry = country;
    }

    /// <summary>How container and shipment costs are shared, over what, and what gets lost on the way.</summary>
    /// <exception cref="RuleBrokenException">A figure is out of range.</exception>
    public void Share(SharedOver over, Weight fill, int containersPerShipment, Percent weightLoss, Percent insured)
    {
        Rule.Require(fill > Weight.Zero && fill <= Weight.FromKilograms(100_000), "The fill of a container lies above zero and at most 100,000 kg.", nameof(Fill));
        Rule.Require(containersPerShipment is >= 1 and <= 1000, "A shipment has 1 to 1000 containers.", nameof(ContainersPerShipment));
        Rule.Require(weightLoss.Points is >= 0m and <= 20m, "Weight loss lies between 0 and 20 %.", nameof(WeightLoss));
        Rule.Require(insured.Points is >= 100m and <= 200m, "The insured share lies between 100 and 200 % of CIF.", nameof(Insured));
        SharedOver = over;
        Fill = fill;
        ContainersPerShipment = containersPerShipment;
        WeightLoss = weightLoss;
        Insured = insured;
    }

    /// <summary>Replaces all legs. A stage may stay unanswered; <see cref="RequireComplete"/> refuses that.</summary>
    /// <exception cref="RuleBrokenException">A stage is answered with "included" or "none" and with an amount as well.</exception>
    public void Answer(IEnumerable<RouteLeg> legs)
    {
        var inOrder = legs.OrderBy(leg => leg.Stage).ThenBy(leg => leg.Basis == LegBasis.PercentOfCif).ToList();
        foreach (var stage in inOrder.GroupBy(leg => leg.Stage))
        {
            Rule.Require(
                stage.Count() == 1 || stage.All(leg => leg.Answer == LegAnswer.Amount),
                $"{stage.Key.Word()} has two answers: give amounts, or one 'included' or 'none'.",
                nameof(Legs));
        }

        var premium = inOrder.Where(leg => leg is { Stage: CostStage.Insurance, Basis: LegBasis.PercentOfCif }).Sum(leg => leg.Rate.Fraction);
        Rule.Require(premium * Insured.Fraction < 0.5m, "Insurance takes half of CIF or more: please check the rate.", nameof(Legs));
        _legs.Clear();
        _legs.AddRange(inOrder);
        for (var i = 0; i < _legs.Count; i++)
        {
            _legs[i].Place(i);
        }
    }

    /// <exception cref="RuleBrokenException">A stage has no answer; the message names each.</exception>
    public void RequireComplete() => Rule.Require(
        Unanswered.Count == 0,
        $"Answer every stage with an amount, 'included' or 'none'. Still open: {string.Join(", ", Unanswered.Select(stage => stage.Word()))}.",
        nameof(Legs));

    public void PutAway() => IsInUse = false;

    public void TakeUp() => IsInUse = true;
}
