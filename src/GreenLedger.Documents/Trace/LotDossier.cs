using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Trace;

namespace GreenLedger.Documents.Trace;

/// <summary>What a closed session found of a lot.</summary>
public sealed record DossierResult(string Session, string Form, string Label, SampleResult Result);

/// <summary>What an offer asked from a day on.</summary>
public sealed record DossierPrice(string Offer, DateOnly On, PricePerWeight? Price, Differential? Differential, Weight Quantity, Score? Stated, OfferState State);

/// <summary>A coming or going of a lot's stock.</summary>
public sealed record DossierMovement(DateOnly On, string What, string Warehouse, int Bags, Weight Weighed, string Who, string? Note);

/// <summary>Everything that the house holds of one lot, for a paper that goes with it.</summary>
/// <param name="Place">Country and region, producer and process, as far as they are known, each with its word.</param>
/// <param name="Prices">Of every offer, the oldest first.</param>
/// <param name="Samples">Each with its newest grade.</param>
/// <param name="Open">What is open in the due diligence.</param>
/// <param name="Plots">Names of the plots that it is said to have grown on.</param>
public sealed record LotDossier(
    string House,
    string MadeBy,
    DateTimeOffset MadeAt,
    ClockZone Zone,
    Lot Lot,
    IReadOnlyList<(string Word, string Text)> Place,
    IReadOnlyList<WayStop> Way,
    IReadOnlyList<DossierPrice> Prices,
    IReadOnlyList<(Sample Sample, string Kind, GreenGrade? Grade)> Samples,
    IReadOnlyList<DossierResult> Results,
    WholeWay WholeWay,
    IReadOnlyList<DossierMovement> Movements,
    LotCost Cost,
    DueDiligence Diligence,
    OpenPoints Open,
    IReadOnlyList<string> Plots,
    IReadOnlyList<Attachment> Papers)
{
    /// <summary>Without an ending: <c>lot CA-17 2026-11-26</c>.</summary>
    public string FileName => FormattableString.Invariant($"lot {Lot.Ref} {Zone.Day(MadeAt):yyyy-MM-dd}");
}
