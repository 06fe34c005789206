using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using GreenLedger.SeedDemo.Offers;

namespace GreenLedger.SeedDemo.Samples;

/// <summary>A sample with the coffee behind it.</summary>
internal sealed record Bag(Sample Sample, Shelved Coffee)
{
    public DateOnly ReceivedOn => Sample.ReceivedOn;
}

/// <summary>Asks for samples of most offers, and again for some that stay on offer for long.</summary>
internal sealed class SampleRoom(Draw draw)
{
    private static readonly decimal[] Grams = [350m, 350m, 350m, 400m, 500m, 1000m];
    private readonly HashSet<string> _codes = [];

    /// <summary>In the order of arrival.</summary>
    public IReadOnlyList<Bag> Receive(IEnumerable<Shelved> coffees, DateOnly today)
    {
        var bags = new List<Bag>();
        foreach (var coffee in coffees)
        {
            var last = (coffee.Until ?? today).AddDays(-1);
            var on = coffee.Since.AddDays(draw.Between(5, 19));
            if (on <= last && draw.Chance(0.9))
            {
                bags.Add(Receive(coffee, SampleKind.Offer, on, null));
                on = on.AddDays(draw.Between(150, 240));
                if (on <= last && draw.Chance(0.3))
                {
                    bags.Add(Receive(coffee, SampleKind.Offer, on, "Asked for again to see how the coffee ages."));
                }
            }
        }

        return [.. bags.OrderBy(bag => bag.ReceivedOn)];
    }

    private Bag Receive(Shelved coffee, SampleKind kind, DateOnly on, string? note)
    {
        var code = LabelCode.Draw(draw.Random);
        while (!_codes.Add(code))
        {
            code = LabelCode.Draw(draw.Random);
        }

        note ??= draw.Chance(0.06) ? "Bag torn on the way, nothing lost." : null;
        return new Bag(new Sample(coffee.Lot.Id, kind, code, on, Weight.FromGrams(draw.Of(Grams)), note), coffee);
    }
}
