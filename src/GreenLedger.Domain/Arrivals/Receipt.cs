using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Arrivals;

/// <summary>What was found when a lot was received.</summary>
/// <param name="Landed">Net, as weighed here.</param>
/// <param name="Note">Why more came than was shipped, and whatever else there is to say.</param>
/// <param name="TenthsOfCelsius">Temperature in the container or of the goods, in tenths of a degree; null where nobody read it.</param>
/// <param name="Humidity">Relative humidity of the air there; null where nobody read it.</param>
public sealed record Receipt(DateOnly On, int Bags, Weight Landed, ReceiptCondition Condition, string? Note, int? TenthsOfCelsius = null, Percent? Humidity = null)
{
    /// <exception cref="RuleBrokenException">The figures cannot be.</exception>
    internal Receipt Checked(Weight shipped)
    {
        Rule.Day(On, nameof(Arrival.ReceivedOn));
        Rule.Require(Bags is >= 0 and <= 100_000, "The bags lie between 0 and 100,000.", nameof(Bags));
        Rule.Require(Landed >= Weight.Zero && Landed <= shipped * 2, "The landed net weight lies between 0 and twice what was shipped: please check it.", nameof(Landed));
        Rule.Require(TenthsOfCelsius is null or (>= -400 and <= 800), "The temperature lies between −40 and 80 °C.", "Temperature");
        Rule.Require(Humidity is null or { Points: >= 0m and <= 100m }, "The humidity lies between 0 and 100 %.", nameof(Humidity));
        return this with { Condition = Condition.Checked(Bags), Note = Rule.OptionalText(Note, "The note", 2000, nameof(Note)) };
    }
}

/// <summary>How the goods came, as whoever received them saw it. Bags are counted where somebody counted them.</summary>
/// <param name="IsInfested">Insects were seen, alive or dead.</param>
/// <param name="Odour">What it smells of besides coffee; null where of coffee alone.</param>
/// <param name="SealIntact">Null where nobody looked.</param>
/// <param name="InfestedBags">Bags in which insects were seen.</param>
/// <param name="OdourBags">Bags that smell of it.</param>
public sealed record ReceiptCondition(
    int WetBags, int TornBags, int StainedBags, bool IsInfested, string? Odour, bool? SealIntact, int InfestedBags = 0, int OdourBags = 0)
{
    /// <summary>In words, empty when sound.</summary>
    public IEnumerable<string> Faults()
    {
        foreach (var (bags, what) in new[] { (WetBags, "wet"), (TornBags, "torn"), (StainedBags, "stained"), (InfestedBags, "infested") })
        {
            if (bags > 0)
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"{bags} {what}");
            }
        }

        if (IsInfested && InfestedBags == 0)
        {
            yield return "insects seen";
        }

        if (Odour is not null)
        {
            yield return OdourBags > 0 ? string.Create(CultureInfo.InvariantCulture, $"{OdourBags} with odour: {Odour}") : $"odour: {Odour}";
        }

        if (SealIntact == false)
        {
            yield return "seal broken";
        }
    }

    /// <exception cref="RuleBrokenException">More bags have a fault than came, or bags smell of nothing.</exception>
    internal ReceiptCondition Checked(int received)
    {
        foreach (var (bags, what, field) in new[]
        {
            (WetBags, "wet", nameof(WetBags)), (TornBags, "torn", nameof(TornBags)), (StainedBags, "stained", nameof(StainedBags)),
            (InfestedBags, "infested", nameof(InfestedBags)), (OdourBags, "of an odour", nameof(OdourBags)),
        })
        {
            Rule.Require(bags >= 0 && bags <= received, $"Of the bags received, none to all are {what}.", field);
        }

        var odour = Rule.OptionalText(Odour, "The odour", 100, nameof(Odour));
        Rule.Require(odour is not null || OdourBags == 0, "What do these bags smell of?", nameof(Odour));
        return this with { Odour = odour, IsInfested = IsInfested || InfestedBags > 0 };
    }
}
