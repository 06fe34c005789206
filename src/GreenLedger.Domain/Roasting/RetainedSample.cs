using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Roasting;

/// <summary>How much green coffee of a sample is still kept.</summary>
public static class RetainedSample
{
    /// <summary>
    /// What came less what was roasted; where somebody weighed what is left, that less what was roasted since. Grading puts its beans
    /// back. Never below zero, and null while the sample is not here.
    /// </summary>
    /// <param name="sample">The sample.</param>
    /// <param name="roasts">Of this and other samples; a withdrawn roast took nothing.</param>
    public static Weight? Left(Sample sample, IEnumerable<SampleRoast> roasts)
    {
        ArgumentNullException.ThrowIfNull(sample);
        if ((sample.Left ?? sample.Weight) is not { } before)
        {
            return null;
        }

        var roasted = roasts.Where(roast => roast.SampleId == sample.Id && !roast.IsWithdrawn && (sample.LeftAt is not { } weighed || roast.RoastedAt > weighed))
            .Aggregate(Weight.Zero, (sum, roast) => sum + roast.MassIn);
        return roasted >= before ? Weight.Zero : before - roasted;
    }
}
