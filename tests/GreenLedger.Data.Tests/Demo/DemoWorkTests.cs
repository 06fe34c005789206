using System.Security.Cryptography;
using GreenLedger.Data.Contracts;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Papers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Demo;

/// <summary>What the demo's people did. The ranges are those that the demo is meant to show (our own choice, no source).</summary>
[Collection(FilledDemo.Name)]
public sealed class DemoWorkTests(FilledDemo demo)
{
    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task Every_list_can_be_read_again_from_the_file_that_was_kept(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var lists = await db.OfferLists.AsNoTracking().ToListAsync(Token);
        var files = await db.StoredFiles.AsNoTracking().Include(file => file.Content).ToDictionaryAsync(file => file.Id, Token);
        var reference = new ListReference(
            await db.Countries.AsNoTracking().ToListAsync(Token), await db.ProcessMethods.AsNoTracking().ToListAsync(Token), new ListChecks(), new DateOnly(2026, 11, 25));

        var read = lists.ConvertAll(list => (list, Reading: ListReading.Of(
            OfferWorkbook.Read(files[list.StoredFileId].Content!.Bytes), OfferMapping.FromJson(list.Mapping), reference)));

        Assert.InRange(lists.Count, 150, 300);
        Assert.All(read, one => Assert.Equal(one.list.Accepted + one.list.Revised + one.list.Unchanged, one.Reading.Rows.Count));
        Assert.All(read, one => Assert.Equal(one.list.SetAsideCount, one.Reading.SetAside.Count));
        Assert.All(lists, list => Assert.Equal(list.FileHash, Convert.ToHexStringLower(SHA256.HashData(files[list.StoredFileId].Content!.Bytes))));
    }

    [Theory, EveryEngine]
    public async Task Every_price_came_with_a_list_or_by_the_buyers_hand(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        var prices = await db.OfferPrices.AsNoTracking().ToListAsync(Token);
        var lists = await db.OfferLists.AsNoTracking().ToDictionaryAsync(list => list.Id, Token);

        Assert.All(prices.Where(price => price.ListId is not null), price => Assert.Equal(lists[price.ListId!.Value].ReceivedOn, price.On));
        Assert.Contains(prices, price => price.ListId is null && price.State == OfferState.Withdrawn);
        Assert.DoesNotContain(prices, price => price.ListId is null && price.State == OfferState.OnOffer && lists.Values.All(list => list.ReceivedOn != price.On));
    }

    [Theory, EveryEngine]
    public async Task Some_rows_were_set_aside_and_most_of_them_mended(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        var rows = await db.SetAsideRows.AsNoTracking().ToListAsync(Token);

        Assert.InRange(rows.Count, 20, 90);
        Assert.Contains(rows, row => !row.IsMended);
        Assert.Contains(rows, row => row is { IsMended: true, OfferId: not null });
        Assert.InRange(rows.Select(row => row.Reason[..12]).Distinct().Count(), 4, 30);
    }

    [Theory, EveryEngine]
    public async Task The_buyer_decided_with_the_rules_and_sometimes_against_them(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        var decisions = await db.Decisions.AsNoTracking().ToListAsync(Token);
        var offers = await db.Offers.AsNoTracking().ToDictionaryAsync(offer => offer.Id, Token);

        Assert.InRange(decisions.Count, 100, 400);
        Assert.All(Enum.GetValues<Outcome>(), outcome => Assert.Contains(decisions, decision => decision.Outcome == outcome));
        Assert.Contains(decisions, decision => decision.Outcome != decision.Advised && decision.Reason is { Length: > 20 });
        Assert.Equal(2, decisions.Count(decision => decision is { IsWithdrawn: true, WithdrawnBecause.Length: > 20 }));
        Assert.All(decisions, decision => Assert.True(DateOnly.FromDateTime(decision.At.UtcDateTime) >= offers[decision.OfferId].FirstOfferedOn));
        Assert.All(decisions, decision => Assert.Equal(offers[decision.OfferId].Ref, FrozenJson.Read<FiguresSnapshot>(decision.Figures).Ref));
        Assert.Equal(2, decisions.Select(decision => FrozenJson.Read<RulesSnapshot>(decision.Rules)).Where(rules => rules.Name == "Espresso base").Select(rules => rules.Revision).Distinct().Count());
    }

    [Theory, EveryEngine]
    public async Task Nothing_is_bought_that_only_its_seller_has_scored(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        var bought = await db.Decisions.AsNoTracking().Where(decision => decision.Outcome == Outcome.Buy).ToListAsync(Token);

        Assert.NotEmpty(bought);
        Assert.All(bought, decision => Assert.False(FrozenJson.Read<FiguresSnapshot>(decision.Figures).IsStatedScore));
    }

    [Theory, EveryEngine]
    public async Task The_history_is_as_old_as_what_it_tells_and_has_one_line_for_a_list(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        var lines = await db.Changes.AsNoTracking().Where(line => line.By != null).Select(line => new { line.RecordKind, line.At }).ToListAsync(Token);

        Assert.Equal(await db.OfferLists.CountAsync(Token), lines.Count(line => line.RecordKind == nameof(OfferList)));
        Assert.DoesNotContain(lines, line => line.RecordKind is nameof(Offer) or nameof(Lot) or nameof(SetAsideRow));
        Assert.True(lines.Max(line => line.At) <= FilledDemo.Now);
        Assert.InRange(lines.Where(line => line.RecordKind == nameof(OfferList)).Select(line => (line.At.Year, line.At.Month)).Distinct().Count(), 22, 26);
    }

    [Theory, EveryEngine]
    public async Task Contracts_stand_at_every_stage_some_outright_and_some_to_be_fixed(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        var contracts = await db.Contracts.AsNoTracking().Whole().ToListAsync(Token);

        Assert.InRange(contracts.Count, 20, 60);
        Assert.All(Enum.GetValues<GoodsState>().Except([GoodsState.ReadyToShip, GoodsState.PartShipped]), state => Assert.Contains(contracts, contract => contract.Goods == state));
        Assert.Contains(contracts, contract => contract.Price == PriceState.Outright);
        Assert.Contains(contracts, contract => contract.Price == PriceState.Fixed && contract.Fixings.Count > 1);
        Assert.Contains(contracts, contract => contract.OpenMonth is not null && contract.IsSigned);
        Assert.Contains(contracts, contract => contract.Versions.Count == 2 && contract.Newest.IsSigned);
        Assert.Contains(contracts, contract => contract.Moves.Any(move => move.IsBreach));
        Assert.Contains(contracts, contract => contract.DaysLate > 0);
        var decided = await db.Decisions.AsNoTracking().ToDictionaryAsync(decision => decision.Id, Token);
        Assert.All(contracts.SelectMany(contract => contract.Lots), line => Assert.Equal(decided[line.DecisionId!.Value].Quantity, line.Net));
        Assert.Equal(contracts.Count, contracts.Select(contract => contract.Ref).Distinct().Count());
        Assert.True(contracts.SelectMany(contract => contract.Moves).Max(move => move.At) <= FilledDemo.Now);
    }

    [Theory, EveryEngine]
    public async Task Every_lot_in_stock_or_to_come_serves_a_purpose(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var serving = (await db.Purposes.AsNoTracking().Include(purpose => purpose.Lots).ToListAsync(Token)).SelectMany(purpose => purpose.Lots).Select(lot => lot.LotId).ToHashSet();

        var held = await db.Holdings.AsNoTracking().Where(holding => holding.Weighed.Micrograms > 0).Select(holding => holding.LotId).ToListAsync(Token);
        var coming = await db.Contracts.AsNoTracking().Where(contract => contract.Goods != GoodsState.Drafted && contract.Goods != GoodsState.Cancelled && contract.Goods != GoodsState.Closed).SelectMany(contract => contract.Lots).Select(lot => lot.LotId).ToListAsync(Token);

        Assert.All(held.Concat(coming), lot => Assert.Contains(lot, serving));
    }

    [Theory, EveryEngine]
    public async Task Every_supplier_has_somebody_to_write_to_about_everything(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        var suppliers = await db.Suppliers.AsNoTracking().Select(supplier => supplier.Id).ToListAsync(Token);
        var contacts = (await db.SupplierContacts.AsNoTracking().ToListAsync(Token)).ToLookup(contact => contact.SupplierId);

        Assert.All(suppliers, supplier => Assert.All(ReceivesWords.Kinds, kind => Assert.Contains(contacts[supplier], contact => contact.Receives.HasFlag(kind))));
        Assert.Equal(SupplierContact.Languages.Order(StringComparer.Ordinal), contacts.SelectMany(group => group).Select(contact => contact.Language).Distinct().Order(StringComparer.Ordinal));
    }

    [Theory, EveryEngine]
    public async Task Lots_offers_samples_and_contracts_have_notes_and_attachments(Engine engine)
    {
        PapersOf[] kinds = [PapersOf.Lot, PapersOf.Offer, PapersOf.Sample, PapersOf.Contract];
        await using var db = await demo.OpenAsync(engine);

        var notes = await db.Notes.AsNoTracking().ToListAsync(Token);
        var attachments = await db.Attachments.AsNoTracking().ToListAsync(Token);
        var files = await db.StoredFiles.AsNoTracking().Include(file => file.Content).ToDictionaryAsync(file => file.Id, Token);

        Assert.All(kinds, about => Assert.Contains(notes, note => note.About == about));
        Assert.All(kinds, about => Assert.Contains(attachments, attachment => attachment.About == about));
        Assert.All(attachments, attachment => Assert.Equal(
            attachment.ContentType, FileType.Of(attachment.FileName, files[attachment.StoredFileId].Content!.Bytes).ContentType));
    }
}
