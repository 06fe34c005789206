using GreenLedger.Data.Arrivals;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Examples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Arrivals;

public sealed class ClaimQueryTests(Ledgers ledgers)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task A_claim_comes_back_with_its_case_correspondence_and_outcome(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var (arrival, open, settled) = await FillAsync(ledger);
        await using var db = ledger.Open();
        var query = new ClaimQuery(db);

        var found = (await query.FindAsync(settled.Id, Stop))!;

        // Handbook, trade 8, example G: 639.09 USD.
        Assert.Equal((Money.Of(639.09m, Currency.Usd), Money.Of(600m, Currency.Usd)), (found.Amount, found.Settled));
        Assert.Equal("wet-bags.png", Assert.Single(found.Case.Papers).FileName);
        Assert.Equal("Letter sent.", Assert.Single(found.Notes).Text);
        Assert.Equal(ClaimOutcome.Allowance, Assert.Single(found.Settlements).Outcome);
        Assert.Equal("Imke Adler", (await query.NamesAsync(found, Stop))[arrival.Buyer.Id]);
        Assert.True((await query.FindAsync(open.Id, Stop))!.IsOpen);
    }

    [Theory, EveryEngine]
    public async Task Lists_filter_by_state_lateness_and_text_and_sort_by_the_last_day(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await FillAsync(ledger);
        await using var db = ledger.Open();
        var query = new ClaimQuery(db);

        Assert.Equal(["C26-001"], await RefsAsync(new ClaimFilter(IsOpen: true), null));
        Assert.Equal(["C26-002"], await RefsAsync(new ClaimFilter(IsOpen: false, Outcome: ClaimOutcome.Allowance), null));
        Assert.Equal(["C26-001"], await RefsAsync(new ClaimFilter(IsLate: true), null));
        Assert.Equal(["C26-002", "C26-001"], await RefsAsync(new ClaimFilter("cerro alto p26-001"), null));
        Assert.Empty(await RefsAsync(new ClaimFilter("elsewhere"), null));
        // Quality until 31 March comes before other claims until 17 April (handbook, trade, check value 36).
        Assert.Equal(["C26-001", "C26-002"], await RefsAsync(new ClaimFilter(), "last"));
        Assert.Equal(["C26-002", "C26-001"], await RefsAsync(new ClaimFilter(), "-last"));
        Assert.Equal(["C26-001", "C26-002"], await RefsAsync(new ClaimFilter(), "ref"));
        Assert.Equal(["C26-002", "C26-001"], await RefsAsync(new ClaimFilter(), "settled"));
        Assert.Equal("C26-003", await db.Claims.NextRefAsync(ShortArrival.Claimed, Stop));

        async Task<IEnumerable<string>> RefsAsync(ClaimFilter filter, string? sort)
        {
            var rows = await query.ListAsync(filter, sort, 0, 10, Stop);
            Assert.Equal(rows.Count, await query.CountAsync(filter, Stop));
            return rows.Select(claim => claim.Ref);
        }
    }

    [Theory, EveryEngine]
    public async Task Two_people_do_not_write_the_same_note(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var (arrival, open, _) = await FillAsync(ledger);
        await using var mine = ledger.Open();
        await using var theirs = ledger.Open();
        var here = await mine.Claims.Whole().SingleAsync(claim => claim.Id == open.Id, Stop);
        var there = await theirs.Claims.Whole().SingleAsync(claim => claim.Id == open.Id, Stop);

        there.Note(ClaimSide.InHouse, ShortArrival.Claimed, "Call them.", arrival.Buyer.Id, ShortArrival.Now);
        await theirs.SaveChangesAsync(Stop);
        here.Note(ClaimSide.InHouse, ShortArrival.Claimed, "Write to them.", arrival.Buyer.Id, ShortArrival.Now);

        await Assert.ThrowsAnyAsync<DbUpdateException>(() => mine.SaveChangesAsync(Stop));
    }

    [Theory, EveryEngine]
    public async Task A_claims_basis_gathers_photographs_that_were_not_removed(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var (arrival, _, _) = await FillAsync(ledger);
        await using (var db = ledger.Open())
        {
            Assert.Equal([arrival.Photograph.Id], (await new ArrivalCaseQuery(db).FindAsync(arrival.Arrival.Id, Stop))!.Basis().Papers.Select(paper => paper.Id));
            (await db.Attachments.SingleAsync(Stop)).Remove(arrival.Buyer.Id, ShortArrival.Now);
            await db.SaveChangesAsync(Stop);
        }

        await using var again = ledger.Open();

        Assert.Empty((await new ArrivalCaseQuery(again).FindAsync(arrival.Arrival.Id, Stop))!.Papers);
    }

    /// <summary>One late and open on the cup, one on weight that is settled.</summary>
    private static async Task<(ShortArrival Arrival, Claim Open, Claim Settled)> FillAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        var arrival = new ShortArrival();
        var late = arrival.Open(new ClaimOrder(new DateOnly(2026, 4, 2), [ClaimGround.Cup], LateReason: "The sample was held at the port."));
        var settled = arrival.Open(new ClaimOrder(ShortArrival.Claimed, [ClaimGround.Weight]), "C26-002", late);
        settled.Note(ClaimSide.ToSeller, ShortArrival.Claimed, "Letter sent.", arrival.Buyer.Id, ShortArrival.Now);
        settled.Settle(ClaimOutcome.Allowance, Money.Of(600m, Currency.Usd), new DateOnly(2026, 4, 20), null, arrival.Buyer.Id, ShortArrival.Now);
        db.AddRange([.. arrival.Records, late, settled]);
        await db.SaveChangesAsync(Stop);
        return (arrival, late, settled);
    }
}
