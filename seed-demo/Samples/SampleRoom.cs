using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using GreenLedger.SeedDemo.Offers;
using GreenLedger.SeedDemo.People;

namespace GreenLedger.SeedDemo.Samples;

/// <summary>A sample with the coffee behind it.</summary>
internal sealed record Bag(Sample Sample, Shelved Coffee)
{
    public DateOnly ReceivedOn => Sample.ReceivedOn!.Value;

    public Weight Weight => Sample.Weight!.Value;
}

/// <summary>Asks for samples of most offers, and again for some that stay on offer for long.</summary>
internal sealed class SampleRoom(Cast cast, Draw draw, Draw post)
{
    private static readonly decimal[] Grams = [350m, 350m, 350m, 400m, 500m, 1000m];
    private static readonly string[] Couriers = ["Parcel post", "Air courier", "Carried by the seller's agent"];
    private static readonly string[] Conditions = ["sound, sealed", "sound, sealed", "sound, sealed", "sound, not sealed", "damp outside, dry within"];
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

    /// <summary>Asked for in the last days and not here yet; for one of them a receipt was taken back.</summary>
    public IReadOnlyList<Sample> Expect(IEnumerable<Shelved> coffees, IEnumerable<Bag> bags, DateTimeOffset now)
    {
        var today = DateOnly.FromDateTime(now.Date);
        var here = bags.Select(bag => bag.Sample.LotId).ToHashSet();
        var expected = new List<Sample>();
        foreach (var coffee in post.Some(coffees.Where(coffee => coffee.Until is null && !here.Contains(coffee.Lot.Id) && coffee.Since < today.AddDays(-3)).OrderBy(coffee => coffee.Lot.Ref), 9))
        {
            var on = today.AddDays(-Math.Min(post.Between(2, 15), today.DayNumber - coffee.Since.DayNumber));
            var sample = Ask(coffee, post.Chance(0.25) ? SampleKind.Type : SampleKind.Offer, NewCode(), Weight.FromGrams(500m), on, null);
            if (expected.Count % 2 == 0)
            {
                sample.Send(on.AddDays(1), post.Of(Couriers), TrackingNumber(), cast.Lead.Id);
            }

            expected.Add(sample);
        }

        if (expected is [var mistaken, ..])
        {
            mistaken.Receive(today.AddDays(-1), Weight.FromGrams(500m), Conditions[0], cast.Cuppers[1].Id);
            mistaken.TakeBack("The bag was another house's: it went back with the courier.", isUsed: false, cast.Lead.Id, now.AddHours(-3));
        }

        return expected;
    }

    private Bag Receive(Shelved coffee, SampleKind kind, DateOnly on, string? note)
    {
        var code = LabelCode.Draw(draw.Random);
        while (!_codes.Add(code))
        {
            code = LabelCode.Draw(draw.Random);
        }

        note ??= draw.Chance(0.06) ? "Bag torn on the way, nothing lost." : null;
        var weight = Weight.FromGrams(draw.Of(Grams));
        if (post.Chance(0.06))
        {
            return new Bag(new Sample(coffee.Lot.Id, kind, code, on, weight, note).ReceivedAs("sound, sealed", cast.Lead.Id), coffee);
        }

        var sample = Ask(coffee, kind, code, weight, on.AddDays(-Math.Min(post.Between(5, 16), on.DayNumber - coffee.Since.DayNumber)), note);
        if (post.Chance(0.92))
        {
            sample.Send(sample.AskedOn!.Value.AddDays(Math.Min(post.Between(1, 4), on.DayNumber - sample.AskedOn.Value.DayNumber)), post.Of(Couriers), TrackingNumber(), cast.Lead.Id);
        }

        sample.Receive(on, weight, note is null ? post.Of(Conditions) : "torn, nothing lost", cast.Lead.Id);
        return new Bag(sample, coffee);
    }

    private Sample Ask(Shelved coffee, SampleKind kind, string code, Weight weight, DateOnly on, string? note) =>
        Sample.Ask(coffee.Lot.Id, kind, code, coffee.Offer.SupplierId, weight, on, cast.Lead.Id, note);

    private string NewCode()
    {
        var code = LabelCode.Draw(post.Random);
        while (!_codes.Add(code))
        {
            code = LabelCode.Draw(post.Random);
        }

        return code;
    }

    private string TrackingNumber() => $"VK{post.Between(10_000_000, 99_999_999)}";
}
