using GreenLedger.Data.Cupping;
using GreenLedger.Data.Roasting;
using GreenLedger.Data.Samples;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Samples;

public sealed class SampleQueryTests(Ledgers ledgers)
{
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly Person Lead = new("Joost Ravelaar", Role.LeadCupper);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task Samples_are_found_by_the_step_at_which_they_stand(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await FillAsync(ledger);
        await using var db = ledger.Open();
        var query = new SampleQuery(db);

        Assert.Equal(["ASKED"], await LabelsAsync(query, SampleStep.Asked));
        Assert.Equal(["SENT"], await LabelsAsync(query, SampleStep.OnTheWay));
        Assert.Equal(["GONE", "HERE"], await LabelsAsync(query, SampleStep.Received));
        Assert.Equal(["GRADED"], await LabelsAsync(query, SampleStep.Graded));
        Assert.Equal(["ROASTED"], await LabelsAsync(query, SampleStep.Roasted));
        Assert.Empty(await LabelsAsync(query, SampleStep.Cupped));
        Assert.Empty(await LabelsAsync(query, SampleStep.Decided));
        Assert.Equal(4, await query.CountAsync(new SampleFilter(), Seal.None, Stop));
    }

    /// <summary>GONE is of a lot that was sold, so that nobody would roast for it; nothing was cupped that could be decided on.</summary>
    [Theory, EveryEngine]
    public async Task Samples_are_found_by_what_they_wait_for(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await FillAsync(ledger);
        await using var db = ledger.Open();

        foreach (var (step, labels) in new (SampleStep, string[])[]
        {
            (SampleStep.Graded, ["GONE", "HERE", "ROASTED"]), (SampleStep.Roasted, ["GRADED", "HERE"]), (SampleStep.Cupped, ["GONE", "GRADED", "HERE", "ROASTED"]), (SampleStep.Decided, []),
        })
        {
            Assert.Equal(labels, (await new SampleQuery(db).ListAsync(new SampleFilter(Waiting: step, Sort: "label", WithExpected: true), Seal.None, 0, 100, Stop)).Select(row => row.LabelCode));
        }
    }

    /// <summary>By the house's days as a new house has them: 7, 10, 2, 5 and 1; the bag HERE has stood for 3 days.</summary>
    [Theory, EveryEngine]
    public async Task What_stands_longer_than_the_house_allows_is_counted_by_step(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await FillAsync(ledger);
        await using var db = ledger.Open();
        var rule = new LateRule(new SampleHabits(), Today, ClockZone.Utc);

        var late = await new SampleQuery(db).LateAsync(rule, Seal.None, Stop);
        var rows = await new SampleQuery(db).ListAsync(new SampleFilter(LateBy: rule, WithExpected: true, Sort: "label"), Seal.None, 0, 100, Stop);

        Assert.Equal([(SampleStep.Asked, 1), (SampleStep.Received, 1), (SampleStep.Roasted, 1)], late.OrderBy(step => step.Key).Select(step => (step.Key, step.Value)));
        Assert.Equal(["ASKED", "HERE", "ROASTED"], rows.Select(row => row.LabelCode));
    }

    [Theory, EveryEngine]
    public async Task A_samples_way_names_who_did_what_and_says_what_was_skipped(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await FillAsync(ledger);
        await using var db = ledger.Open();
        var sample = await db.Samples.SingleAsync(one => one.LabelCode == "ROASTED", Stop);

        var way = (await new SampleWayQuery(db).FindAsync(sample, Today, Stop)).Stops;

        Assert.Equal(
            [StepState.Done, StepState.Done, StepState.Done, StepState.Skipped, StepState.Done, StepState.Next, StepState.Ahead],
            way.Select(stop => stop.State));
        Assert.Equal((Lead.Name, "15.0 % lost"), (way[4].Taken!.By, way[4].Taken!.Figure));
        Assert.Equal((2, true), (way[4].WaitingDays!.Value, way[4].IsLate));
    }

    [Theory, EveryEngine]
    public async Task A_step_taken_back_comes_back_with_its_reason(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await FillAsync(ledger);
        await using (var db = ledger.Open())
        {
            var sample = await db.Samples.Include(one => one.SetBacks).SingleAsync(one => one.LabelCode == "SENT", Stop);
            sample.TakeBack("It was never sent.", await db.IsUsedAsync(sample, Stop), Lead.Id, DateTimeOffset.UnixEpoch);
            await db.SaveChangesAsync(Stop);
        }

        await using var again = ledger.Open();
        var back = await again.Samples.Include(one => one.SetBacks).SingleAsync(one => one.LabelCode == "SENT", Stop);

        Assert.Equal((SampleStep.Asked, "It was never sent."), (back.Step, Assert.Single(back.SetBacks).Reason));
    }

    [Theory, EveryEngine]
    public async Task A_roast_keeps_the_windows_of_its_time(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await FillAsync(ledger);
        await using (var db = ledger.Open())
        {
            db.Add(new RoastProtocol(RoastWindows.Usual with { Name = "A later edition", MostMinutes = 10m }, DateTimeOffset.UnixEpoch.AddDays(1)));
            await db.SaveChangesAsync(Stop);
        }

        await using var again = ledger.Open();
        var row = Assert.Single(await new RoastQuery(again).ListAsync("roasted", null, Seal.None, 0, 10, Stop));

        Assert.Equal(RoastWindows.Usual, row.Windows);
        Assert.Equal(["Roast time"], row.Missed.Select(finding => finding.What));
        Assert.Equal("A later edition", (await again.RoastProtocols.NewestAsync(Stop))!.Name);
    }

    private static async Task<IEnumerable<string>> LabelsAsync(SampleQuery query, SampleStep step) =>
        (await query.ListAsync(new SampleFilter(At: step, Sort: "label", WithExpected: true), Seal.None, 0, 100, Stop)).Select(row => row.LabelCode);

    private static async Task FillAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        var seller = new Supplier("Ribeirão Trading", SupplierKind.Importer);
        var (lot, sold) = (new Lot("A-1", "Loma Alta"), new Lot("A-2", "Loma Baja"));
        var packing = new Packing(20, Weight.FromKilograms(60m), null);
        db.AddRange(seller, Lead, lot, sold);
        db.AddRange(
            new Offer(seller.Id, lot, packing, Asking.Nothing, new Terms(Incoterm.Fob, "Santos", null), OfferState.OnOffer, Today.AddDays(-60)),
            new Offer(seller.Id, sold, packing, Asking.Nothing, new Terms(Incoterm.Fob, "Santos", null), OfferState.Sold, Today.AddDays(-60)));
        var sent = Ask("SENT", 9);
        sent.Send(Today.AddDays(-8), "Air courier", "VK1", Lead.Id);
        var graded = Here("GRADED", 20);
        var roasted = Ask("ROASTED", 30);
        roasted.Send(Today.AddDays(-25), null, null, Lead.Id);
        roasted.Receive(Today.AddDays(-20), Weight.FromGrams(350m), null, Lead.Id);
        var protocol = new RoastProtocol(RoastWindows.Usual, DateTimeOffset.UnixEpoch);
        db.AddRange(Ask("ASKED", 8), sent, Here("HERE", 3), graded, roasted, protocol);
        db.Add(new Sample(sold.Id, SampleKind.Offer, "GONE", Today.AddDays(-50), Weight.FromGrams(350m)));
        db.Add(new GreenGrade(graded.Id, lot.Id, Today.AddDays(-5), null, GreenGrade.UsualSample));
        db.Add(new SampleRoast(roasted, new DateTimeOffset(Today.AddDays(-2), new TimeOnly(15, 0), TimeSpan.Zero), Lead.Id, protocol)
            .Weigh(Weight.FromGrams(100m), Weight.FromGrams(85m)).Time(800, 500));
        await db.SaveChangesAsync(Stop);

        Sample Ask(string label, int daysAgo) => Sample.Ask(lot.Id, SampleKind.Offer, label, seller.Id, Weight.FromGrams(500m), Today.AddDays(-daysAgo), Lead.Id);

        Sample Here(string label, int daysAgo) => new(lot.Id, SampleKind.Offer, label, Today.AddDays(-daysAgo), Weight.FromGrams(350m));
    }
}
