using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// A sample on the table of one session, under a random three-digit code that is new in every session. While the
/// session is open, cuppers see code and position and nothing else.
/// </summary>
public sealed class SessionSample
{
    private SessionSample()
    {
        Code = "";
    }

    internal SessionSample(Id<Sample> sampleId, Id<Lot> lotId, int position, string code)
    {
        SampleId = sampleId;
        LotId = lotId;
        Position = position;
        Code = code;
    }

    public Id<Sample> SampleId { get; private set; }

    public Id<Lot> LotId { get; private set; }

    /// <summary>Place on the table, from 1; the covariance of the panel's result counts in this order.</summary>
    public int Position { get; private set; }

    public string Code { get; private set; }
}
