using System.Globalization;

namespace GreenLedger.Domain.Cupping;

/// <summary>Says in a sentence each what a cupper's record shows, or that there is too little yet to judge.</summary>
public static class CupperRecordWords
{
    /// <summary>Under so many the use of the scale is not judged. Our own choice, no source.</summary>
    public const int LeastSamples = 10;

    private const double Significant = 0.05;

    private static CultureInfo Plain => CultureInfo.InvariantCulture;

    public static string OfBias(CupperRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return record.Bias switch
        {
            null => "Nobody else cupped the same samples yet: a bias against the panel cannot be seen.",
            { Low: null } few => string.Create(Plain, $"Too little to judge: {few.Points:+0.00;−0.00;0.00} points against the others over {Count(few.Sessions, "session")}; {MeanBias.LeastSessions} are needed."),
            { Low: > 0 } high => Between("Scores above the others", high),
            { High: < 0 } low => Between("Scores below the others", low),
            var even => Between("No bias against the others shows", even),
        };
    }

    public static string OfChart(CupperRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (record.BiasChart is not { } chart)
        {
            return $"Too little to judge: control limits are drawn from {ControlChart.LeastValues} sessions on; so far {record.Bias?.Sessions ?? 0}.";
        }

        var limits = string.Create(Plain, $"Limits {chart.Lower:+0.00;−0.00;0.00} to {chart.Upper:+0.00;−0.00;0.00} points from the first {chart.BasePeriod} sessions{(chart.IsFrozen ? "" : ", which move until the base period is full")}.");
        var outside = chart.Outside.Count switch { 0 => "Every session lies within them.", 1 => "One session lies outside.", var many => $"{many} sessions lie outside." };
        return $"{limits} {outside}";
    }

    public static string OfRepeatability(CupperRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return record.Repeatability switch
        {
            null => "Met no coffee twice in one session yet: repeatability cannot be seen. Hidden duplicates show it.",
            { DegreesOfFreedom: < CupperWeights.LeastRepeats } few => string.Create(Plain, $"Too little to judge: {few.Deviation:0.00} points from {Count(few.DegreesOfFreedom, "repeat")}; {CupperWeights.LeastRepeats} are needed."),
            { Deviation: 0 } exact => $"Gave the same score in all {exact.DegreesOfFreedom} repeats.",
            var found => string.Create(Plain, $"Repeats within {found.Deviation:0.00} points, one standard deviation ({found.Low:0.00} to {found.High:0.00} with 95 %, {found.DegreesOfFreedom} repeats)."),
        };
    }

    public static string OfDiscrimination(CupperRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return record.Discrimination switch
        {
            null => "Met no coffee twice in one session yet: whether samples are told apart cannot be tested.",
            { WithinFreedom: < CupperWeights.LeastRepeats } few => $"Too little to judge: {Count(few.WithinFreedom, "repeat")}; {CupperWeights.LeastRepeats} are needed.",
            { WithinVariance: 0, BetweenSquares: 0 } => "Gave every sample of a session the same score.",
            { WithinVariance: 0 } => "Tells samples apart: repeats never differed, samples did.",
            { P: < Significant } tells => string.Create(Plain, $"Tells samples apart (F = {tells.F:0.0}, {tells.BetweenFreedom} and {tells.WithinFreedom} degrees of freedom, p {Chance(tells.P)})."),
            var not => string.Create(Plain, $"Does not tell samples apart by more than the own spread (F = {not.F:0.0}, {not.BetweenFreedom} and {not.WithinFreedom} degrees of freedom, p {Chance(not.P)})."),
        };
    }

    public static string OfScale(CupperRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return record.Scale switch
        {
            null => "No two samples were cupped by everyone yet: the use of the scale cannot be seen.",
            { Samples: < LeastSamples } few => $"Too little to judge: {few.Samples} differences between samples; {LeastSamples} are needed.",
            { Others: 0 } => "The others saw no differences between the samples: the use of the scale cannot be seen.",
            { } use => string.Create(Plain, $"{Use(use.DeviationRatio)}: own scores spread {use.DeviationRatio:0.00} times as far as the others', and a point of theirs is {use.Slope:0.00} points of this cupper's (slope), correlation {use.Correlation:0.00}."),
        };
    }

    /// <summary>Within a quarter either way the use counts as like the others'. Our own choice, no source.</summary>
    private static string Use(double ratio) => ratio switch { < 0.8 => "Compresses the scale", > 1.25 => "Stretches the scale", _ => "Uses the scale like the others" };

    private static string Between(string what, MeanBias bias) =>
        string.Create(Plain, $"{what}: {bias.Points:+0.00;−0.00;0.00} points on average ({bias.Low:+0.00;−0.00;0.00} to {bias.High:+0.00;−0.00;0.00} with 95 %, {bias.Sessions} sessions).");

    private static string Chance(double p) => p < 0.001 ? "below 0.001" : p.ToString("0.000", Plain);

    private static string Count(int number, string what) => number == 1 ? $"1 {what}" : $"{number} {what}s";
}
