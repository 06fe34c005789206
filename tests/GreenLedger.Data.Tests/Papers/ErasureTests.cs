using System.Data.Common;
using System.Globalization;
using System.Text;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Papers;
using GreenLedger.Data.People;
using GreenLedger.Data.Search;
using GreenLedger.Data.Tests.Demo;
using GreenLedger.Domain;
using GreenLedger.Domain.Due;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Papers;

/// <summary>
/// Names that nobody else has are written into every text that has room for them, then erased: no cell of any table, asked by the
/// database's own list of tables and columns, may spell them afterwards.
/// </summary>
[Collection(FilledDemo.Name)]
public sealed class ErasureTests(FilledDemo demo, Ledgers ledgers)
{
    private const string Name = "Zélmira Quintañar";
    private const string Address = "zelmira.quintanar@personal.example";

    private static readonly string[] Spelled = [Name, "zelmira quintanar", "Z\\u00E9lmira Quinta\\u00F1ar", "Quintañar", Address];

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task Of_a_person_no_text_of_any_table_says_the_name_and_what_they_did_stays(Engine engine)
    {
        await using var ledger = await CopyAsync(engine);
        var (person, administrator) = await PlantPersonAsync(ledger);
        var planted = await PlantEverywhereAsync(ledger);
        var before = await RowsAsync(ledger);
        Assert.True((await SpelledAsync(ledger)).Count > planted && planted > 60, $"planted in {planted} columns");

        await EraseAsync(ledger, db => db.FindAsync(person, Token), administrator, ErasedKind.Person);

        Assert.Empty(await SpelledAsync(ledger));
        var after = await RowsAsync(ledger);
        string[] gone = ["Accounts", "ApiTokens", "CalendarFeeds", "DueMails"];
        Assert.All(before.Keys.Except(gone).Except(["Erasures"]), table => Assert.Equal(before[table], after[table]));
        Assert.All(gone, table => Assert.Equal(before[table] - 1, after[table]));
        await using var db = ledger.Open();
        Assert.Equal("Person 1", (await db.People.SingleAsync(one => one.Id == person, Token)).Name);
        Assert.Equal(person, (await db.Notes.SingleAsync(note => note.Text.StartsWith("Told by Person 1"), Token)).By);
        Assert.Contains(await db.Changes.Where(line => line.RecordName == "Person 1").ToListAsync(Token), line => line.After!.Contains("Person 1", StringComparison.Ordinal));
        Assert.Empty((await new SearchQuery(db).FindAsync("zelmira", 5, _ => true, Seal.None, Token)).SelectMany(group => group.Rows));
    }

    [Theory, EveryEngine]
    public async Task Of_a_contact_the_mail_is_emptied_and_nothing_more_is_sent(Engine engine)
    {
        await using var ledger = await CopyAsync(engine);
        var (contact, administrator) = await PlantContactAsync(ledger);

        await EraseAsync(ledger, db => db.FindAsync(contact, Token), administrator, ErasedKind.Contact);

        Assert.Empty(await SpelledAsync(ledger));
        await using var db = ledger.Open();
        var erased = await db.SupplierContacts.SingleAsync(one => one.Id == contact, Token);
        Assert.Equal(("Contact 1", "contact-1@erased.invalid", false, Receives.Nothing), (erased.Name, erased.Email, erased.IsActive, erased.Receives));
        var messages = await db.Messages.Where(message => message.Address == "contact-1@erased.invalid").ToListAsync(Token);
        Assert.Equal(2, messages.Count);
        Assert.All(messages, message => Assert.DoesNotContain("Zelmira", Encoding.UTF8.GetString(message.Bytes), StringComparison.OrdinalIgnoreCase));
        Assert.All(messages, message => Assert.Equal(MessageState.Dropped, message.State));
    }

    [Theory, EveryEngine]
    public async Task The_stock_ledger_stands_as_before_and_other_records_open(Engine engine)
    {
        await using var ledger = await CopyAsync(engine);
        var (person, administrator) = await PlantPersonAsync(ledger);
        await PlantEverywhereAsync(ledger);

        await EraseAsync(ledger, db => db.FindAsync(person, Token), administrator, ErasedKind.Person);

        await using var db = ledger.Open();
        var refused = await Assert.ThrowsAnyAsync<DbException>(() => db.Database.ExecuteSqlRawAsync("""UPDATE "Movements" SET "Reason" = 'changed'""", Token));
        Assert.Contains("A movement of stock is never", refused.Message, StringComparison.Ordinal);
        var line = await db.Changes.AsNoTracking().Where(one => one.RecordKind == "Contract").OrderBy(one => one.At).FirstAsync(Token);
        Assert.NotEmpty((await db.Changes.AsNoTracking().Where(one => one.RecordId == line.RecordId).ToListAsync(Token)).Select(one => System.Text.Json.JsonDocument.Parse(one.After ?? "{}")));
    }

    [Theory, EveryEngine]
    public async Task Who_shares_the_name_keeps_it_and_a_reason_that_names_is_refused(Engine engine)
    {
        await using var ledger = await CopyAsync(engine);
        var (person, administrator) = await PlantPersonAsync(ledger);
        await using (var db = ledger.Open())
        {
            db.Add(new Person("Quintañar, Bo", Role.Viewer));
            await db.SaveChangesAsync(Token);
        }

        var shared = await Assert.ThrowsAsync<RuleBrokenException>(() => EraseAsync(ledger, db => db.FindAsync(person, Token), administrator, ErasedKind.Person));
        var named = await Assert.ThrowsAsync<RuleBrokenException>(() => EraseAsync(ledger, db => db.FindAsync(person, Token), administrator, ErasedKind.Person, $"{Name} asked"));

        Assert.Contains("Quintañar, Bo would lose their name too", shared.Message, StringComparison.Ordinal);
        Assert.Contains("without the name", named.Message, StringComparison.Ordinal);
        await using var read = ledger.Open();
        Assert.Equal(Name, (await read.People.SingleAsync(one => one.Id == person, Token)).Name);
        Assert.True(await read.Users.AnyAsync(account => account.PersonId == person, Token));
    }

    private static async Task EraseAsync(Ledger ledger, Func<PersonErasure, Task<ErasedSubject?>> find, Id<Person> by, ErasedKind kind, string reason = "Asked for by letter")
    {
        await using var db = ledger.Open();
        await using var transaction = await db.Database.BeginTransactionAsync(Token);
        var erasing = new PersonErasure(db);
        var subject = (await find(erasing))!;
        var erasure = new Erasure(kind, await erasing.NextAsync(kind, Token), subject.Id, reason, by, DateTimeOffset.UnixEpoch);
        await erasing.EraseAsync(erasure, subject, new ErasedWords([subject.Name, "Quintañar"], subject.Addresses, erasure.Designation), Token);
        await transaction.CommitAsync(Token);
        Assert.True(erasure.Texts > 0);
    }

    private async Task<Ledger> CopyAsync(Engine engine)
    {
        var (house, _) = await demo.OnAsync(Engine.Sqlite);
        using var archive = await Archive.Archives.TakeAsync(house);
        var copy = await ledgers.NewAsync(engine);
        await Archive.Archives.ReadBackAsync(copy, archive);
        return copy;
    }

    /// <summary>Somebody who signs in, has a token, a calendar and the daily mail, and wrote a note.</summary>
    private static async Task<(Id<Person> Person, Id<Person> Administrator)> PlantPersonAsync(Ledger ledger)
    {
        var person = new Person(Name, Role.Buyer);
        await using var db = ledger.Open(new Who(() => person.Id));
        db.Add(person);
        db.Add(new Account { UserName = Address, NormalizedUserName = Address.ToUpperInvariant(), Email = Address, NormalizedEmail = Address.ToUpperInvariant(), PersonId = person.Id });
        db.Add(new ApiToken(person.Id, $"{Name}'s script", "hash", DateTimeOffset.UnixEpoch));
        db.Add(new CalendarFeed(person.Id, "hash", DateTimeOffset.UnixEpoch));
        db.Add(new DueMail(person.Id, DateTimeOffset.UnixEpoch));
        await db.SaveChangesAsync(Token);
        var lot = await db.Lots.FirstAsync(Token);
        db.Add(new Note(PapersOf.Lot, lot.Id.Value, $"Told by {Name} ({Address}), QUINTAÑAR for short", person.Id, DateTimeOffset.UnixEpoch));
        person.Rename(Name + " Ruiz");
        await db.SaveChangesAsync(Token);
        person.Rename(Name);
        await db.SaveChangesAsync(Token);
        var people = await db.People.AsNoTracking().ToListAsync(Token);
        return (person.Id, people.First(one => one.Roles.HasFlag(Role.Administrator)).Id);
    }

    private static async Task<(Id<SupplierContact> Contact, Id<Person> Administrator)> PlantContactAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        var supplier = await db.Suppliers.FirstAsync(Token);
        var contact = new SupplierContact(supplier.Id, Name, Address, "es", Receives.Feedback | Receives.Claims);
        db.Add(contact);
        foreach (var number in new[] { 1, 2 })
        {
            db.Add(new Message(MessagePurpose.Feedback, new MessageText(Address, $"For {Name}", $"{number}@house.example", Encoding.UTF8.GetBytes($"To: {Address}\r\n\r\nDear Zelmira")), contact.Id.Value, null, DateTimeOffset.UnixEpoch));
        }

        await db.SaveChangesAsync(Token);
        var people = await db.People.AsNoTracking().ToListAsync(Token);
        return (contact.Id, people.First(one => one.Roles.HasFlag(Role.Administrator)).Id);
    }

    /// <summary>
    /// Writes name and address behind a text of one row of every column that has room, but the names of others, who would lose theirs: gives
    /// how many columns had room.
    /// </summary>
    private static async Task<int> PlantEverywhereAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        var words = $" {Name} {Address}";
        var planted = 0;
        foreach (var table in TextTable.All(db).Where(table => table.Name is not ("Accounts" or "DataProtectionKeys" or "Houses" or "People" or "SupplierContacts")))
        {
            await using var guards = await TableGuards.LiftAsync(db, table.Name, Token);
            foreach (var column in table.Texts.Where(column => column.PropertyMappings[0].TypeMapping.ElementTypeMapping is null && (TextTable.Longest(column) ?? 9999) >= 120))
            {
                var text = TextTable.IsFolded(column) ? " " + SearchText.Of(words) : words;
                var sql = $"""
                    UPDATE "{table.Name}" SET "{column.Name}" = COALESCE(SUBSTR("{column.Name}", 1, 40), '') || @words
                    WHERE "{table.Key[0].Name}" = (SELECT "{table.Key[0].Name}" FROM "{table.Name}" WHERE COALESCE("{column.Name}", '') NOT LIKE '[%' AND COALESCE("{column.Name}", '') NOT LIKE '{"{%"}'
                        AND COALESCE("{column.Name}", '') NOT LIKE '%uinta%' AND COALESCE("{column.Name}", '') NOT LIKE '%{Address}%' LIMIT 1)
                    """;
                planted += await ExecuteAsync(db, sql, text) > 0 ? 1 : 0;
            }

            await guards.PutBackAsync(Token);
        }

        return planted;
    }

    private static async Task<int> ExecuteAsync(LedgerContext db, string sql, string words)
    {
        await db.Database.OpenConnectionAsync(Token);
        await using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        var parameter = command.CreateParameter();
        (parameter.ParameterName, parameter.Value) = ("@words", words);
        command.Parameters.Add(parameter);
        return await command.ExecuteNonQueryAsync(Token);
    }

    /// <summary>Every cell that spells a name or the address, by the database's own lists and not by the model.</summary>
    private static async Task<List<string>> SpelledAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        var found = new List<string>();
        await db.Database.OpenConnectionAsync(Token);
        foreach (var table in await TablesAsync(ledger, db))
        {
            await using var command = db.Database.GetDbConnection().CreateCommand();
            command.CommandText = $"SELECT * FROM \"{table}\"";
            await using var reader = await command.ExecuteReaderAsync(Token);
            while (await reader.ReadAsync(Token))
            {
                for (var at = 0; at < reader.FieldCount; at++)
                {
                    var text = reader.GetValue(at) switch
                    {
                        byte[] => "",
                        Array list => string.Join('\n', list.Cast<object>()),
                        var value => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
                    };
                    if (Spelled.Any(word => text.Contains(word, StringComparison.OrdinalIgnoreCase)))
                    {
                        found.Add($"{table}.{reader.GetName(at)}: {text[..Math.Min(80, text.Length)]}");
                    }
                }
            }
        }

        return found;
    }

    private static Task<List<string>> TablesAsync(Ledger ledger, LedgerContext db)
    {
        var sql = ledger.Engine is Engine.Sqlite
            ? "SELECT name AS \"Value\" FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"
            : "SELECT table_name AS \"Value\" FROM information_schema.tables WHERE table_schema = 'public'";
        return db.Database.SqlQueryRaw<string>(sql).ToListAsync(Token);
    }

    private static async Task<IReadOnlyDictionary<string, long>> RowsAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        return await Written.RowsAsync(db);
    }
}
