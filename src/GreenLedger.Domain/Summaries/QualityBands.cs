using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Summaries;

/// <summary>A band of quality: from this many points up to the next band.</summary>
public sealed record QualityBand(string Name, Score From);

/// <summary>
/// The bands by which the house reads scores of one form, the best first. The usual ones are those printed with the
/// hundred-point form (handbook, quality.md section 1); a house states its own.
/// </summary>
public sealed class QualityBands
{
    public const int MostBands = 8;

    private List<QualityBand> _bands =
    [
        new("outstanding", Score.Of(90m)), new("excellent", Score.Of(85m)), new("very good", Score.Of(80m)), new("below specialty", Score.Of(0m)),
    ];

    public QualityBands()
    {
        Id = Id<QualityBands>.New();
        FormId = CuppingForm.HundredPointId;
    }

    public Id<QualityBands> Id { get; private set; }

    public int Version { get; private set; }

    /// <summary>Scores of other forms are not compared with these.</summary>
    public Id<CuppingForm> FormId { get; private set; }

    /// <summary>The best first; the last begins at 0 or below.</summary>
    public IReadOnlyList<QualityBand> Bands
    {
        get => _bands;
        private set => _bands = [.. value];
    }

    /// <exception cref="RuleBrokenException">There are none or too many, two begin at one score or have one name, or none begins at 0.</exception>
    public void State(Id<CuppingForm> formId, IReadOnlyList<QualityBand> bands)
    {
        ArgumentNullException.ThrowIfNull(bands);
        Rule.Require(bands.Count is >= 1 and <= MostBands, $"State between one and {MostBands} bands.", nameof(Bands));
        var read = bands.Select(band => band with { Name = Rule.Text(band.Name, "The name of the band", 40, nameof(Bands)) }).OrderByDescending(band => band.From).ToList();
        Rule.Require(read.All(band => band.From.Points is >= 0m and <= 100m), "A band begins between 0 and 100 points.", nameof(Bands));
        Rule.Require(read.DistinctBy(band => band.From).Count() == read.Count, "Two bands begin at the same score: leave one out.", nameof(Bands));
        Rule.Require(read.DistinctBy(band => band.Name, StringComparer.OrdinalIgnoreCase).Count() == read.Count, "Two bands have the same name: please name them apart.", nameof(Bands));
        Rule.Require(read[^1].From.Points == 0m, "The lowest band begins at 0 points, so that every score has a band.", nameof(Bands));
        (FormId, _bands) = (formId, read);
    }

    /// <summary>The name of the band of a score, by its unrounded value: 79.9167 is not 80.</summary>
    public string BandOf(Score score) => _bands.First(band => score >= band.From || band == _bands[^1]).Name;
}
