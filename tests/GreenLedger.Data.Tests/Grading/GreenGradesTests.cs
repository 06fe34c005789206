using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Grading;

public sealed class GreenGradesTests(Ledgers ledgers)
{
    [Theory, EveryEngine]
    public async Task A_grade_comes_back_with_its_counts_and_screens_and_missing_stays_missing(Engine engine)
    {
        var stop = TestContext.Current.CancellationToken;
        await using var ledger = await ledgers.NewAsync(engine);
        await using (var db = ledger.Open())
        {
            var lot = new Lot("A-1", "Loma Alta");
            var sample = new Sample(lot.Id, SampleKind.Offer, "QX7", new DateOnly(2026, 11, 20), Weight.FromGrams(350m));
            var grade = new GreenGrade(sample.Id, lot.Id, new DateOnly(2026, 11, 21), null, GreenGrade.UsualSample)
                .Measure(Percent.Of(10.8m), "hand-held meter", null, 702)
                .CountDefects(DefectScheme.WashedArabica, new Dictionary<string, int> { ["broken"] = 14, ["shell"] = 4 }, DefectFractions.Dropped)
                .Sieve(new Dictionary<int, Percent> { [17] = Percent.Of(60m), [16] = Percent.Of(36m), [0] = Percent.Of(4m) });
            db.AddRange(lot, sample, grade);
            await db.SaveChangesAsync(stop);
        }

        await using var again = ledger.Open();
        var back = await again.GreenGrades.Include(grade => grade.Defects).Include(grade => grade.Screens)
            .SingleAsync(grade => grade.Moisture!.Value.TenThousandths == 108_000 && grade.Category2!.Value.Hundredths <= 500, stop);

        Assert.Null(back.WaterActivity);
        Assert.Null(back.Quakers);
        // Worked by hand: 14 broken at 5 are 2 full defects, 4 shells at 5 none.
        Assert.Equal(FullDefects.Of(2m), back.Category2);
        Assert.Equal(FullDefects.Of(3.6m), back.Tally(GradingStandards.Published)!.Category2Kept);
        Assert.Equal(Percent.Of(96m), back.RetainedFrom(16));
    }
}
