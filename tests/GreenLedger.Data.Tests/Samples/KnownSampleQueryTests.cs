using GreenLedger.Data.Samples;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Data.Tests.Samples;

public sealed class KnownSampleQueryTests(Ledgers ledgers)
{
    private static readonly DateOnly Day = new(2026, 3, 2);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task Names_are_found_by_label_reference_mark_and_name_and_several_lots_are_told(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var (one, two, three) = (new Lot("GV-12", "Sítio Olho d'Água"), new Lot("GV-13", "Loma Alta"), new Lot("GV-14", "Loma Alta"));
        one.Mark("003-0037-1204");
        var (older, newer) = (new Sample(one.Id, SampleKind.Offer, "OLDER", Day, Weight.FromGrams(350m)), new Sample(one.Id, SampleKind.PreShipment, "NEWER", Day.AddDays(9), Weight.FromGrams(350m)));
        await using (var db = ledger.Open())
        {
            db.AddRange(one, two, three, older, newer);
            await db.SaveChangesAsync(Cancel);
        }

        await using var reading = ledger.Open();
        var names = await new KnownSampleQuery(reading).FindAsync(["older", "gv 12", "3/37/1204", "GV-13", "loma alta", "nobody's"], Cancel);

        Assert.Equal(older.Id, names.Known["older"].Sample!.Id);
        Assert.Equal((newer.Id, newer.Id), (names.Known["gv 12"].Sample!.Id, names.Known["3/37/1204"].Sample!.Id));
        Assert.Equal((two.Id, null), (names.Known["GV-13"].LotId, names.Known["GV-13"].Sample));
        Assert.StartsWith("'loma alta' may be GV-13 (Loma Alta), GV-14 (Loma Alta):", Assert.Single(names.Unclear).Value, StringComparison.Ordinal);
        Assert.Equal(4, names.Known.Count);
    }
}
