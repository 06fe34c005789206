using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// A panel's result for one sample of a lot, as a ranking reads it. The <c>default</c> is no result and is never ranked.
/// </summary>
/// <param name="Part">The connected part of the session's table: two parts share no error.</param>
/// <param name="StandardError">In points, for whom the panel's result speaks.</param>
/// <param name="AnyCupperError">In points, if other cuppers cupped it: what lots of different sessions are compared by.</param>
/// <param name="DegreesOfFreedom">Of the session's fit; null where the house's settings stand in for the error.</param>
/// <param name="Low">Lower end of the panel's own 95 % interval.</param>
/// <param name="HoldsFor">Whom that interval and its error speak for.</param>
public readonly record struct CupScore(
    Id<SampleResult> ResultId,
    Id<CuppingSession> SessionId,
    int Part,
    Id<CuppingForm> FormId,
    DateOnly HeldOn,
    Score Score,
    double StandardError,
    double AnyCupperError,
    int? DegreesOfFreedom,
    Score Low,
    Score High,
    HoldsFor HoldsFor);
