using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// A sample on the table of one session, under a random code that is new in every session. While the session is open,
/// cuppers see code, place and flight and nothing else. A hidden duplicate is the same sample under a second code.
/// </summary>
public sealed class SessionSample
{
    private SessionSample()
    {
        Code = "";
    }

    internal SessionSample(Sample sample, int position, string code, int repeat, bool isReference, int flight)
    {
        SampleId = sample.Id;
        LotId = sample.LotId;
        Position = position;
        Code = code;
        Repeat = repeat;
        IsReference = isReference;
        Flight = flight;
    }

    public Id<Sample> SampleId { get; private set; }

    public Id<Lot> LotId { get; private set; }

    /// <summary>0 where the sample is poured first, from 1 on for its hidden duplicates; with the sample it tells the cups of a session apart.</summary>
    public int Repeat { get; private set; }

    /// <summary>The same sample stands on this table under another code too, so that repeatability can be measured.</summary>
    public bool IsDuplicate => Repeat > 0;

    /// <summary>A coffee that the house knows and puts on its tables, so that levels of sessions can be compared.</summary>
    public bool IsReference { get; private set; }

    /// <summary>The flight in which it is served, from 1.</summary>
    public int Flight { get; private set; } = 1;

    /// <summary>Place on the table, from 1; the covariance of the panel's result counts in this order.</summary>
    public int Position { get; private set; }

    public string Code { get; private set; }
}
