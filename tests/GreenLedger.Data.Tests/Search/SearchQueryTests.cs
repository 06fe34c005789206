using GreenLedger.Data.Cupping;
using GreenLedger.Data.Search;
using GreenLedger.Data.Tests.Cupping;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Data.Tests.Search;

public sealed class SearchQueryTests(Ledgers ledgers)
{
    private readonly OpenTable _table = new();
    private readonly Producer _producer = new("Sítio Olho d'Água", ProducerKind.Farm, null, "Mantiqueira");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task Any_part_of_a_name_finds_without_case_and_accents(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        var group = Assert.Single(await FindAsync(ledger, "OLHO d'agua"));

        Assert.Equal((FoundKind.Producer, "Sítio Olho d'Água"), (group.Kind, Assert.Single(group.Rows).Name));
    }

    [Theory, EveryEngine]
    public async Task One_word_finds_across_kinds_in_groups(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        var groups = await FindAsync(ledger, "vale");

        Assert.Equal([(FoundKind.Lot, 2), (FoundKind.Offer, 1)], groups.Select(group => (group.Kind, group.Total)));
        Assert.Equal(["Vale Claro", "Vale Fundo"], groups[0].Rows.Select(row => row.Name));
        Assert.Equal(("Vale Fundo", "VF-1"), (groups[1].Rows[0].Name, groups[1].Rows[0].Code));
    }

    [Theory]
    [EveryEngine]
    public async Task A_mark_is_found_by_a_part_of_it_and_in_any_way_of_writing_it(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        foreach (var typed in new[] { "0037", "3/37/1204", "003-0037-1204" })
        {
            var marks = Assert.Single(await FindAsync(ledger, typed), group => group.Kind == FoundKind.Mark);
            Assert.Equal(("003-0037-1204", "Vale Claro"), (marks.Rows[0].Name, marks.Rows[0].Detail));
        }
    }

    [Theory, EveryEngine]
    public async Task Words_stand_in_any_order(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        Assert.Equal("Vale Claro", Assert.Single((await FindAsync(ledger, "claro va"))[0].Rows).Name);
        Assert.Empty(await FindAsync(ledger, "vale nowhere"));
    }

    [Theory, EveryEngine]
    public async Task Signs_that_mean_something_to_a_database_are_letters_like_others(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        Assert.Empty(await FindAsync(ledger, "%%"));
        Assert.DoesNotContain(await FindAsync(ledger, "003_0037"), group => group.Kind == FoundKind.Mark);
    }

    [Theory, EveryEngine]
    public async Task A_reader_without_offers_finds_producers_and_samples_only(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        Assert.Empty(await FindAsync(ledger, "vale", mayRead: room => room is "Origins" or "Samples"));
        Assert.Equal(FoundKind.Sample, Assert.Single(await FindAsync(ledger, "hjk", mayRead: room => room is "Origins" or "Samples")).Kind);
        Assert.Equal(FoundKind.Producer, Assert.Single(await FindAsync(ledger, "mantiq", mayRead: room => room is "Origins" or "Samples")).Kind);
    }

    [Theory, EveryEngine]
    public async Task What_is_under_the_codes_of_an_open_session_is_not_found_by_its_cuppers(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        await using var db = ledger.Open();
        var seal = await new SealQuery(db).ForAsync(_table.Cupper.Id, _table.Cupper.Roles, Cancel);

        var groups = await FindAsync(ledger, "vale", seal);

        Assert.Equal("Vale Claro", Assert.Single(Assert.Single(groups).Rows).Name);
        Assert.Empty(await FindAsync(ledger, "acdef", seal));
    }

    [Theory, EveryEngine]
    public async Task Pages_of_a_kind_follow_each_other(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        await using var db = ledger.Open();

        var second = await new SearchQuery(db).ListAsync(FoundKind.Lot, "vale", 1, 1, _ => true, Seal.None, Cancel);

        Assert.Equal((2, "Vale Fundo"), (second.Total, Assert.Single(second.Rows).Name));
    }

    [Theory]
    [InlineData("")]
    [InlineData("a")]
    [InlineData(" -- ")]
    public void Less_than_two_letters_is_too_short(string text) => Assert.True(SearchQuery.IsTooShort(text));

    private async Task<Ledger> StoredAsync(Engine engine)
    {
        var ledger = await ledgers.NewAsync(engine);
        _table.Free.Mark("3/37/1204");
        await _table.StoreAsync(ledger);
        await using var db = ledger.Open();
        db.Add(_producer);
        await db.SaveChangesAsync(Cancel);
        return ledger;
    }

    private static async Task<IReadOnlyList<FoundGroup>> FindAsync(
        Ledger ledger, string text, Seal? seal = null, Func<string, bool>? mayRead = null)
    {
        await using var db = ledger.Open();
        return await new SearchQuery(db).FindAsync(text, 5, mayRead ?? (_ => true), seal ?? Seal.None, Cancel);
    }
}
