using System.Globalization;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Contracts;

/// <summary>What the cup said of one sample in its newest closed session.</summary>
/// <param name="Form">The name of the form; points of two forms do not compare.</param>
public sealed record SampleCup(SampleResult Result, string Form, SampleProfile Profile);

/// <summary>What is known of one sample.</summary>
/// <param name="Left">Green coffee still kept.</param>
/// <param name="Cup">Null where it was not cupped in a session that is closed.</param>
/// <param name="Grade">The newest; null where it was not graded.</param>
public sealed record SampleFindings(Sample Sample, Weight Left, SampleCup? Cup, GreenGrade? Grade)
{
    public bool HasAny => Cup is not null || Grade is not null;
}

/// <summary>A pre-shipment sample that waits for a verdict, beside what its lot was bought on.</summary>
/// <param name="Lot">The lot's name.</param>
/// <param name="Sample">As it came.</param>
/// <param name="Offered">Offer samples of the lot that came, the newest first.</param>
/// <param name="IsSealed">An open session keeps it from the reader: nothing found of it is told.</param>
public sealed record ApprovalCase(string Lot, SampleFindings Sample, IReadOnlyList<SampleFindings> Offered, bool IsSealed)
{
    /// <summary>The one to look at beside it: one that was cupped, else one that was graded, else the newest; null where none came.</summary>
    public SampleFindings? Offer => Offered.FirstOrDefault(one => one.Cup is not null) ?? Offered.FirstOrDefault(one => one.Grade is not null) ?? (Offered.Count > 0 ? Offered[0] : null);

    /// <summary>The offer sample of which something is left to be cupped beside it; null where nothing of any, or of this one, is.</summary>
    public SampleFindings? Kept =>
        Sample.Left == Weight.Zero ? null
        : Offer is { } offer && offer.Left > Weight.Zero ? offer
        : Offered.FirstOrDefault(one => one.Left > Weight.Zero);

    /// <summary>What can be seen side by side, what is left, and what keeps two figures from being compared.</summary>
    public IReadOnlyList<string> Sentences() =>
        IsSealed ? ["What was found of it is shown when the open cupping session is closed."]
        : Offer is null ? [$"No offer sample of {Lot} was kept here: there is nothing to hold this one against but the contract’s description."]
        : [Found(Offer), .. Meeting(Offer), Remains()];

    private static string Found(SampleFindings offer) => offer switch
    {
        { Cup: null, Grade: null } => $"Offer sample {offer.Sample.LabelCode} was neither cupped in a session that is closed nor graded.",
        { Cup: null } => $"Offer sample {offer.Sample.LabelCode} was graded, and not cupped in a session that is closed.",
        { Grade: null } => $"Offer sample {offer.Sample.LabelCode} was cupped, and not graded.",
        _ => $"Offer sample {offer.Sample.LabelCode} was cupped and graded.",
    };

    private IEnumerable<string> Meeting(SampleFindings offer)
    {
        if (offer.Cup is { Result: var first } && Sample.Cup is { Result: var second })
        {
            yield return first.SessionId == second.SessionId ? "Both were cupped in one session: what lies between their scores is the coffee and the panel’s error."
                : first.FormId == second.FormId ? "They were cupped in two sessions: what lies between their scores may be the session, not the coffee."
                : "They were scored on different forms, whose points do not compare.";
        }
    }

    private string Remains() => this switch
    {
        { Kept: { } kept } => $"{Grams(kept.Left)} of {kept.Sample.LabelCode} and {Grams(Sample.Left)} of {Sample.Sample.LabelCode} are left.",
        _ when Sample.Left == Weight.Zero => $"Nothing is left of {Sample.Sample.LabelCode} to cup the two together.",
        _ => "No offer sample was kept: nothing is left to cup the two together.",
    };

    private static string Grams(Weight weight) => weight.Grams.ToString("#,0.#", CultureInfo.InvariantCulture) + " g";
}
