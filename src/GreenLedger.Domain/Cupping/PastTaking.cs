using GreenLedger.Domain.Cupping.Reading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Cupping;

/// <summary>What the taking needs besides the rows.</summary>
/// <param name="HeldOn">The day for rows without a date.</param>
public sealed record PastCase(
    string Title, DateOnly HeldOn, Id<StoredFile>? SourceId, Id<Person> By, DateTimeOffset At, ExpectedErrors Expected, Random Random);

/// <summary>
/// Past results taken in: a closed session for each day, samples for lots that had none, and lots for names that the
/// ledger does not know, so that no result is lost for want of an offer list.
/// </summary>
public sealed class PastTaking
{
    /// <summary>A sample's weight is unknown in past results; 100 g is what a cupping uses (handbook quality.md section 3).</summary>
    private static readonly Weight Assumed = Weight.FromGrams(100m);

    private readonly List<CuppingSession> _sessions = [];
    private readonly List<Lot> _newLots = [];
    private readonly List<Sample> _newSamples = [];
    private readonly Dictionary<string, Sample> _samples = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<Id<Lot>, Sample> _newOfLots = [];

    private PastTaking()
    {
    }

    public IReadOnlyList<CuppingSession> Sessions => _sessions;

    public IReadOnlyList<Lot> NewLots => _newLots;

    public IReadOnlyList<Sample> NewSamples => _newSamples;

    /// <param name="known">Names of the rows, without regard to case, that stand for lots or samples of the ledger.</param>
    public static PastTaking Of(ResultList list, IReadOnlyDictionary<string, KnownSample> known, LabelCodes labels, PastCase facts)
    {
        ArgumentNullException.ThrowIfNull(list);
        ArgumentNullException.ThrowIfNull(known);
        ArgumentNullException.ThrowIfNull(labels);
        ArgumentNullException.ThrowIfNull(facts);
        Rule.Require(list.Accepted.Count > 0, "No row of this file can be taken in.", "File");
        var taking = new PastTaking();
        foreach (var day in list.Accepted.GroupBy(row => row.HeldOn ?? facts.HeldOn).OrderBy(day => day.Key))
        {
            taking.Take(day.Key, day, list.Form, known, labels, facts);
        }

        return taking;
    }

    /// <summary>The sample that a row's name stands for after the taking.</summary>
    public Sample SampleOf(string name) => _samples[name];

    private void Take(
        DateOnly heldOn, IEnumerable<ResultRow> rows, CuppingForm form, IReadOnlyDictionary<string, KnownSample> known, LabelCodes labels, PastCase facts)
    {
        var session = CuppingSession.OfPast(facts.Title, heldOn, form, facts.SourceId);
        var poured = new HashSet<Id<Sample>>();
        foreach (var row in rows)
        {
            var sample = Find(row.Name, heldOn, known, labels);
            if (poured.Add(sample.Id))
            {
                session.Pour(sample, facts.Random);
            }

            session.TakeIn(sample, row.Result, facts.At);
        }

        session.Close(facts.By, facts.At, facts.Expected);
        _sessions.Add(session);
    }

    private Sample Find(string name, DateOnly heldOn, IReadOnlyDictionary<string, KnownSample> known, LabelCodes labels)
    {
        if (_samples.TryGetValue(name, out var taken))
        {
            return taken;
        }

        var match = known.GetValueOrDefault(name);
        var sample = match?.Sample ?? NewSample(match?.LotId ?? NewLot(name), heldOn, labels);
        _samples.Add(name, sample);
        return sample;
    }

    private Id<Lot> NewLot(string name)
    {
        var lot = new Lot(name, name);
        _newLots.Add(lot);
        return lot.Id;
    }

    private Sample NewSample(Id<Lot> lotId, DateOnly heldOn, LabelCodes labels)
    {
        // A file may write one lot in two ways: it is one coffee all the same.
        if (!_newOfLots.TryGetValue(lotId, out var sample))
        {
            sample = new Sample(lotId, SampleKind.Offer, labels.Next(), heldOn, Assumed, "Taken in with past results; the weight is not known.");
            _newOfLots.Add(lotId, sample);
            _newSamples.Add(sample);
        }

        return sample;
    }
}
