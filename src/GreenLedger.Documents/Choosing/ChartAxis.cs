using System.Globalization;

namespace GreenLedger.Documents.Choosing;

/// <summary>A straight axis with round figures at its ticks: steps of 1, 2 or 5 times a power of ten.</summary>
internal sealed class ChartAxis
{
    private const double Headroom = 0.06;

    public ChartAxis(double least, double most, int wantedTicks)
    {
        var span = Math.Max(most - least, Math.Max(Math.Abs(most) * 0.01, 0.1));
        (From, To) = (least - span * Headroom, Math.Max(most, least + span) + span * Headroom);
        Step = RoundStep((To - From) / wantedTicks);
        Decimals = Math.Max(0, -(int)Math.Floor(Math.Log10(Step) + 1e-9));
    }

    public double From { get; }

    public double To { get; }

    public double Step { get; }

    private int Decimals { get; }

    public IEnumerable<double> Ticks
    {
        get
        {
            for (var i = Math.Ceiling(From / Step); i * Step <= To; i++)
            {
                yield return i * Step;
            }
        }
    }

    /// <summary>Where a value lies, from 0 at the beginning of the axis to 1 at its end.</summary>
    public double Place(double value) => (value - From) / (To - From);

    public string Figure(double tick) => tick.ToString("N" + Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static double RoundStep(double rough)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var part = rough / power;
        return power * (part <= 1 ? 1 : part <= 2 ? 2 : part <= 5 ? 5 : 10);
    }
}
