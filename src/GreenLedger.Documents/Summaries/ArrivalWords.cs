using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Documents.Summaries;

/// <summary>The sentences of an arrival report in one language. Braces are filled with figures, which follow the language too.</summary>
internal sealed partial record ArrivalWords
{
    public required string Title { get; init; }

    public required string Opening { get; init; }

    /// <summary>{0} contract, {1} shipment.</summary>
    public required string Carried { get; init; }

    public required string BillOfLading { get; init; }

    public required string Vessel { get; init; }

    public required string OnBoard { get; init; }

    public required string Discharged { get; init; }

    /// <summary>{0} day, {1} bags received, {2} bags shipped.</summary>
    public required string Received { get; init; }

    public required string Sound { get; init; }

    /// <summary>{0} what was seen.</summary>
    public required string Seen { get; init; }

    /// <summary>{0} bags.</summary>
    public required string Wet { get; init; }

    public required string Torn { get; init; }

    public required string Stained { get; init; }

    public required string Infested { get; init; }

    public required string Insects { get; init; }

    /// <summary>{0} as it was written down.</summary>
    public required string Odour { get; init; }

    public required string SealBroken { get; init; }

    public required string Weights { get; init; }

    public required string What { get; init; }

    public required string Shipped { get; init; }

    public required string Landed { get; init; }

    public required string Lost { get; init; }

    public required string More { get; init; }

    /// <summary>{0} per cent.</summary>
    public required string Franchise { get; init; }

    public required string Refunded { get; init; }

    public required string NothingLost { get; init; }

    public required string WithinFranchise { get; init; }

    /// <summary>{0} weight, {1} price, {2} money.</summary>
    public required string Worth { get; init; }

    /// <summary>{0} weight.</summary>
    public required string PriceOpen { get; init; }

    /// <summary>{0} shipped, {1} least, {2} most.</summary>
    public required string WithinAgreed { get; init; }

    public required string OutsideAgreed { get; init; }

    public required string Verdict { get; init; }

    public required IReadOnlyDictionary<ArrivalOutcome, string> Outcomes { get; init; }

    /// <summary>{0} what was measured.</summary>
    public required string Broken { get; init; }

    public required string NothingCupped { get; init; }

    public required string NotCupped { get; init; }

    public required string Panels { get; init; }

    public required string Sample { get; init; }

    /// <summary>{0} code.</summary>
    public required string ApprovedSample { get; init; }

    public required string ArrivalSample { get; init; }

    public required string CuppedOn { get; init; }

    public required string Score { get; init; }

    public required string Cuppers { get; init; }

    public required string Figure { get; init; }

    public required string Difference { get; init; }

    public required string Lower { get; init; }

    public required string Upper { get; init; }

    public required string Tolerance { get; init; }

    /// <summary>{0} tolerance in points.</summary>
    public required IReadOnlyDictionary<ArrivalOutcome, string> Rules { get; init; }

    public required IReadOnlyDictionary<Meeting, string> Meetings { get; init; }

    public required string TooFewCuppers { get; init; }

    /// <summary>{0} cuppers, {1} sheets.</summary>
    public required string Next { get; init; }

    public required string NextTogether { get; init; }

    public required string TooNear { get; init; }

    public required string Limits { get; init; }

    public required IReadOnlyDictionary<LimitKind, string> Kinds { get; init; }

    public required string Measured { get; init; }

    public required string Approved { get; init; }

    public required string Arrival { get; init; }

    public required string Limit { get; init; }

    public required string Kept { get; init; }

    public required string Yes { get; init; }

    public required string No { get; init; }

    public required string NotKnown { get; init; }

    /// <summary>{0} least, {1} most.</summary>
    public required string Between { get; init; }

    public required string AtLeast { get; init; }

    public required string AtMost { get; init; }

    public required string Below { get; init; }

    public required string Own { get; init; }

    public required string Farewell { get; init; }

    /// <summary>Days, numbers and the foot of pages are those of every paper in the language.</summary>
    public required FeedbackWords Common { get; init; }

    public static ArrivalWords In(string? language) => language?.ToLowerInvariant() switch
    {
        "es" => Spanish,
        "pt" => Portuguese,
        "fr" => French,
        _ => English,
    };

    public string Fill(string sentence, params object[] figures) => string.Format(Common.Reader, sentence, figures);
}
