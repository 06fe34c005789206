using System.Data.Common;
using System.Text;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Search;
using GreenLedger.Data.Tests.Demo;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Archive;

/// <summary>The demo house leaves as an archive and is read back on either database.</summary>
[Collection(FilledDemo.Name)]
public sealed class HouseIntakeTests(FilledDemo demo, Ledgers ledgers)
{
    private static CancellationToken Token => TestContext.Current.CancellationToken;

    private static IEnumerable<Engine> Engines => Ledgers.PostgresServer is null ? [Engine.Sqlite] : [Engine.Sqlite, Engine.Postgres];

    [Theory, EveryEngine]
    public async Task A_house_that_is_read_back_gives_the_same_archive_again_byte_for_byte(Engine engine)
    {
        var (house, _) = await demo.OnAsync(engine);
        using var archive = await Archives.TakeAsync(house);
        var members = Archives.Members(archive);

        foreach (var target in Engines)
        {
            await using var other = await ledgers.NewAsync(target);
            archive.Position = 0;
            await Archives.ReadBackAsync(other, archive);
            using var again = await Archives.TakeAsync(other);
            var theirs = Archives.Members(again);

            Assert.Equal(members.Keys, theirs.Keys);
            Assert.All(members, member => Assert.True(member.Value.AsSpan().SequenceEqual(theirs[member.Key]), $"{member.Key} differs on {target}: {FirstDifference(member.Value, theirs[member.Key])}"));
        }
    }

    [Theory, EveryEngine]
    public async Task Of_a_house_that_is_read_back_search_finds_and_movements_stand(Engine engine)
    {
        var (house, _) = await demo.OnAsync(Engine.Sqlite);
        using var archive = await Archives.TakeAsync(house);
        await using var other = await ledgers.NewAsync(engine);
        await Archives.ReadBackAsync(other, archive);

        await using var db = other.Open();
        await using var before = house.Open();
        var supplier = (await before.Suppliers.AsNoTracking().OrderBy(one => one.Name).FirstAsync(Token)).Name;
        var found = await new SearchQuery(db).FindAsync(supplier, 5, _ => true, Seal.None, Token);
        Assert.Contains(found.SelectMany(group => group.Rows), row => row.Name == supplier);
        Assert.True(await db.Movements.AnyAsync(Token));
        foreach (var sql in new[] { """UPDATE "Movements" SET "Reason" = 'changed'""", """DELETE FROM "Movements" """ })
        {
            var refused = await Assert.ThrowsAnyAsync<DbException>(() => db.Database.ExecuteSqlRawAsync(sql, Token));
            Assert.Contains("A movement of stock is never", refused.Message, StringComparison.Ordinal);
        }

        Assert.Equal(await before.Users.CountAsync(Token), await db.Users.CountAsync(account => account.PasswordHash == null && account.SecurityStamp != null, Token));
        Assert.Empty(await db.ApiTokens.ToListAsync(Token));
        db.Add(new Person("Somebody new", Role.Viewer));
        await db.SaveChangesAsync(Token);
    }

    /// <summary>After an archive was read back the database holds its foreign keys as before, each row at a time.</summary>
    [Theory, EveryEngine]
    public async Task What_points_to_nothing_is_refused_after_reading_back_as_before(Engine engine)
    {
        var (house, _) = await demo.OnAsync(Engine.Sqlite);
        using var archive = await Archives.TakeAsync(house);
        await using var other = await ledgers.NewAsync(engine);
        await Archives.ReadBackAsync(other, archive);

        await using var db = other.Open();
        await using var transaction = await db.Database.BeginTransactionAsync(Token);
        var refused = await Assert.ThrowsAnyAsync<DbException>(() => db.Database.ExecuteSqlRawAsync("""UPDATE "Lots" SET "ProducerId" = '01999999-0000-7000-8000-000000000001'""", Token));

        Assert.Contains("foreign key", refused.Message, StringComparison.OrdinalIgnoreCase);
    }

    private static string FirstDifference(byte[] ours, byte[] theirs)
    {
        var at = ours.AsSpan().CommonPrefixLength(theirs);
        return $"“{Around(ours, at)}” against “{Around(theirs, at)}”";
    }

    private static string Around(byte[] bytes, int at) =>
        Encoding.UTF8.GetString(bytes, Math.Max(0, at - 60), Math.Min(120, bytes.Length - Math.Max(0, at - 60)));
}
