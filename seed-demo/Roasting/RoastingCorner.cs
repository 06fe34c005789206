using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Roasting;
using GreenLedger.SeedDemo.People;
using GreenLedger.SeedDemo.Samples;

namespace GreenLedger.SeedDemo.Roasting;

/// <summary>Roasts what is cupped on the afternoon before: mostly as the protocol asks, now and then too fast or too dark.</summary>
internal sealed class RoastingCorner(Cast cast, DateTimeOffset opening, DateTimeOffset now, Draw draw)
{
    public RoastProtocol Protocol { get; } = new(RoastWindows.Usual, opening);

    public IEnumerable<SampleRoast> Roast(IReadOnlyList<Bag> bags, IEnumerable<CuppingSession> sessions)
    {
        var byId = bags.ToDictionary(bag => bag.Sample.Id);
        foreach (var session in sessions.Where(session => !session.IsPast))
        {
            var cupping = new DateTimeOffset(session.HeldOn.ToDateTime(new TimeOnly(9, 30)), TimeSpan.Zero);
            cupping = cupping < now ? cupping : now;
            var ended = cupping.AddHours(-draw.Between(17, 19));
            foreach (var poured in session.Samples)
            {
                yield return Roast(byId[poured.SampleId], ended, cupping);
                ended = ended.AddMinutes(16);
            }
        }
    }

    private SampleRoast Roast(Bag bag, DateTimeOffset ended, DateTimeOffset cupping)
    {
        var here = bag.Sample.HereSince!.Value.AddHours(12);
        var seconds = (int)Math.Clamp(draw.Normal(585, 55), 400, 800);
        var loss = draw.Normal(14.4, 0.6);
        var whole = Math.Round((decimal)draw.Normal(58, 0.6), 1);
        return new SampleRoast(bag.Sample, ended < here ? here : ended, draw.Of(cast.Cuppers.Take(3).ToList()).Id, Protocol)
            .Weigh(Weight.FromGrams(100m), Weight.FromGrams(Math.Round((decimal)(100 - loss), 1)))
            .Time(seconds, (int)(seconds * draw.Between(0.74, 0.82)))
            .Read(Protocol.ColourScale, ColourReading.Of(whole), draw.Chance(0.8) ? ColourReading.Of(whole + 5m + Math.Round((decimal)draw.Normal(0, 0.3), 1)) : null)
            .CupAt(cupping < here.AddHours(8) ? here.AddHours(8) : cupping);
    }
}
