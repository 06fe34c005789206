using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// Offers ranked by one rule set: those that pass every gate by their weighted score, highest first, then those that
/// fail with the gates named, and apart from both those that were scored on another form.
/// </summary>
public sealed class Shortlist
{
    private const decimal CostScale = 1_000_000_000m;

    private readonly WeightedScore _weighted;

    private Shortlist(RuleTerms terms, WeightedScore weighted)
    {
        Terms = terms;
        _weighted = weighted;
    }

    public RuleTerms Terms { get; }

    public Currency Currency => Terms.Currency;

    public IReadOnlyList<ShortlistEntry> Ranked { get; private set; } = [];

    /// <summary>Fewest gates failed first, then by score.</summary>
    public IReadOnlyList<ShortlistEntry> Failed { get; private set; } = [];

    public IReadOnlyList<ShortlistEntry> OtherForm { get; private set; } = [];

    /// <summary>The efficient front, cheapest first.</summary>
    public IReadOnlyList<ShortlistEntry> Front { get; private set; } = [];

    /// <summary>The cheapest ranked lot, of equals the one that scores more: what steps up are counted from.</summary>
    public ShortlistEntry? Reference { get; private set; }

    /// <summary>How chances were drawn; null until they are.</summary>
    public ChanceDraw? Draw { get; private set; }

    /// <summary>What past offers say about prices; null until prices are compared.</summary>
    public PriceModel? Prices { get; private set; }

    public IEnumerable<ShortlistEntry> Entries => Ranked.Concat(Failed).Concat(OtherForm);

    /// <exception cref="RuleBrokenException">The rules contradict themselves or are in another currency.</exception>
    public static Shortlist Rank(IReadOnlyList<Candidate> candidates, RuleTerms terms, Currency currency)
    {
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentNullException.ThrowIfNull(terms);
        Rule.Require(terms.Currency == currency, $"These rules are written in {terms.Currency}, landed costs are in {currency}: please edit the rules.", nameof(Currency));
        terms.Check();
        var shortlist = new Shortlist(terms, new WeightedScore(terms));
        shortlist.Sort(candidates);
        return shortlist;
    }

    /// <summary>The first by rank: their errors must be known before the contenders can be told.</summary>
    public IEnumerable<ShortlistEntry> Leaders => Ranked.Take(Choosing.Contenders.Leaders);

    /// <summary>
    /// The ranked lots that have a chance of the first three worth drawing. The errors of the leaders say how their
    /// results go together; a result that is not among them counts as independent of all others.
    /// </summary>
    public Contenders Contenders(IReadOnlyDictionary<Id<SampleResult>, SharedErrors> errors, int seed = ChanceDraw.UsualSeed)
    {
        if (Ranked.Count <= Choosing.Contenders.Leaders)
        {
            return Choosing.Contenders.All(Ranked);
        }

        var threshold = ChanceDraw.LowestThird([.. Leaders], ChancesBy(errors, seed));
        return Choosing.Contenders.Above(threshold, Ranked, _weighted, ReferencePoint);
    }

    /// <summary>Draws the contenders' chances; the errors are those of all contenders.</summary>
    public void DrawChances(
        Contenders contenders, IReadOnlyDictionary<Id<SampleResult>, SharedErrors> errors, int seed = ChanceDraw.UsualSeed) =>
        Draw = ChanceDraw.Of(Ranked, contenders, ChancesBy(errors, seed));

    /// <summary>Says for every lot with a score and a cost how its cost lies to what past offers predict.</summary>
    public void ComparePrices(PriceModel model)
    {
        Prices = model;
        foreach (var entry in Entries)
        {
            if (entry is { Score: { } score, Candidate.CostPerKilogram: { } cost } && entry.Standing != Standing.OtherForm)
            {
                entry.PriceCheck = model.Check((double)score.Score.Points, entry.Candidate.Process, entry.Candidate.Origin, (double)cost);
            }
        }
    }

    public ShortlistEntry? Find(Id<Offers.Offer> offerId) => Entries.FirstOrDefault(entry => entry.Candidate.OfferId == offerId);

    private ChanceRules ChancesBy(IReadOnlyDictionary<Id<SampleResult>, SharedErrors> errors, int seed) =>
        new(Terms, _weighted, ReferencePoint, errors, seed);

    private (double Score, double Cost) ReferencePoint => Reference is { } entry ? PointOf(entry) : default;

    private void Sort(IReadOnlyList<Candidate> candidates)
    {
        var gates = new GateCheck(Terms);
        var (ranked, failed, apart) = (new List<ShortlistEntry>(candidates.Count), new List<ShortlistEntry>(), new List<ShortlistEntry>());
        foreach (var candidate in candidates)
        {
            var score = LotScore.Of(candidate, Terms);
            var missed = gates.Failed(candidate, score);
            var standing = score is null && candidate.Results.Length > 0 ? Standing.OtherForm
                : missed == Gate.None ? Standing.Ranked
                : Standing.Failed;
            var entry = new ShortlistEntry(candidate, score, missed, standing);
            (standing switch { Standing.Ranked => ranked, Standing.Failed => failed, _ => apart }).Add(entry);
        }

        MarkFront(ranked);
        Weigh(ranked);
        Ranked = InOrder(ranked);
        failed.Sort(ByFewestGates);
        Failed = failed;
        apart.Sort((one, other) => string.CompareOrdinal(one.Candidate.Ref, other.Candidate.Ref));
        OtherForm = apart;
    }

    /// <summary>The cheapest of the front is the reference: nothing else is cheaper, and of equals it scores more.</summary>
    private void MarkFront(List<ShortlistEntry> ranked)
    {
        var scores = new long[ranked.Count];
        var costs = new long[ranked.Count];
        for (var i = 0; i < scores.Length; i++)
        {
            scores[i] = ranked[i].Score!.Value.Score.Millionths;
            costs[i] = decimal.ToInt64(ranked[i].Candidate.CostPerKilogram!.Value * CostScale);
        }

        var front = new List<ShortlistEntry>();
        foreach (var place in EfficientFront.Of(scores, costs))
        {
            ranked[place].IsOnFront = true;
            front.Add(ranked[place]);
        }

        Front = front;
        Reference = front.Count > 0 ? front[0] : null;
    }

    private void Weigh(List<ShortlistEntry> ranked)
    {
        var reference = ReferencePoint;
        foreach (var entry in ranked)
        {
            var (score, cost) = PointOf(entry);
            entry.Terms = _weighted.Of(score, cost, _weighted.Preference(entry.Candidate), reference);
            entry.CostPerPoint = _weighted.CostPerPoint(score, cost, reference);
        }
    }

    /// <summary>By weighted score; of equals the higher score first, then the lower cost, then by reference.</summary>
    private static ShortlistEntry[] InOrder(List<ShortlistEntry> ranked)
    {
        var entries = ranked.ToArray();
        var keys = new double[entries.Length];
        for (var i = 0; i < keys.Length; i++)
        {
            keys[i] = -entries[i].Terms.Total;
        }

        Array.Sort(keys, entries);
        for (var from = 0; from < entries.Length;)
        {
            var to = from + 1;
            for (; to < entries.Length && keys[to] == keys[from]; to++)
            {
            }

            if (to - from > 1)
            {
                Array.Sort(entries, from, to - from, ByScoreThenCost);
            }

            from = to;
        }

        for (var i = 0; i < entries.Length; i++)
        {
            entries[i].Rank = i + 1;
        }

        return entries;
    }

    private static readonly Comparer<ShortlistEntry> ByScoreThenCost = Comparer<ShortlistEntry>.Create((one, other) =>
    {
        var score = other.Score!.Value.Score.CompareTo(one.Score!.Value.Score);
        var cost = score != 0 ? score : decimal.Compare(one.Candidate.CostPerKilogram!.Value, other.Candidate.CostPerKilogram!.Value);
        return cost != 0 ? cost : ByName(one, other);
    });

    private static int ByFewestGates(ShortlistEntry one, ShortlistEntry other)
    {
        var gates = one.FailedCount.CompareTo(other.FailedCount);
        var score = gates != 0 ? gates : (other.Score?.Score.Millionths ?? 0).CompareTo(one.Score?.Score.Millionths ?? 0);
        return score != 0 ? score : ByName(one, other);
    }

    private static int ByName(ShortlistEntry one, ShortlistEntry other)
    {
        var name = string.CompareOrdinal(one.Candidate.Ref, other.Candidate.Ref);
        return name != 0 ? name : one.Candidate.OfferId.CompareTo(other.Candidate.OfferId);
    }

    private static (double Score, double Cost) PointOf(ShortlistEntry entry) =>
        ((double)entry.Score!.Value.Score.Points, (double)entry.Candidate.CostPerKilogram!.Value);
}
