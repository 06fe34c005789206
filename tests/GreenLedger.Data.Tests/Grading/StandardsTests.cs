using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Grading;

public sealed class StandardsTests(Ledgers ledgers)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task A_new_ledger_has_what_is_published_and_preparing_it_again_adds_nothing(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();
        await LedgerDatabase.PrepareAsync(db, Cancel);
        await LedgerDatabase.PrepareAsync(db, Cancel);

        var standards = await db.GradingStandardsAsync(Cancel);

        Assert.Equal(DefectScheme.Published.Select(scheme => scheme.Key).Order(), standards.All.Select(scheme => scheme.Key).Order());
        Assert.Equal("Chalky white", standards.Find("fine-robusta")!.Kinds.Single(kind => kind.Code == "chalky-white").Name);
        Assert.Equal(PhysicalLimits.Published.Where(limits => limits.IsRobusta), standards.Limits("Robusta").OrderBy(limits => limits.Name == "Fine robusta" ? 0 : 1));
    }

    [Theory, EveryEngine]
    public async Task A_revision_comes_back_beside_what_it_changed_and_only_the_newest_is_changed(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using (var db = ledger.Open())
        {
            await LedgerDatabase.PrepareAsync(db, Cancel);
            var scheme = await db.SchemeRevisions.SingleAsync(one => one.Code == "fine-robusta", Cancel);
            var limits = await db.LimitsRevisions.SingleAsync(one => one.Code == "fine-robusta", Cancel);
            db.AddRange(
                scheme.Revise(300m, [.. scheme.Scheme.Kinds, new DefectKind("", "Spongy", 2, 5m)], scheme.Scheme.Classes, "the buyer's own count"),
                limits.Revise(limits.Limits with { HighestMoisture = 13m }, "the buyer's own limit"));
            await db.SaveChangesAsync(Cancel);
        }

        await using var reading = ledger.Open();
        var standards = await reading.GradingStandardsAsync(Cancel);
        var first = await reading.SchemeRevisions.SingleAsync(one => one.Code == "fine-robusta" && one.Revision == 1, Cancel);

        Assert.Equal((350m, 300m), (standards.Find("fine-robusta")!.SampleGrams, standards.Find("fine-robusta.2")!.SampleGrams));
        Assert.Contains(standards.Find("fine-robusta.2")!.Kinds, kind => kind is { Code: "spongy", BeansPerFullDefect: 5m });
        Assert.Equal(13m, standards.Limits("Conilon").Single(limits => limits.Code == "fine-robusta").HighestMoisture);
        var broken = await Assert.ThrowsAsync<RuleBrokenException>(() => reading.RequireNewestAsync(first, Cancel));
        Assert.Equal("There is a newer revision (2): change that one.", broken.Message);
    }
}
