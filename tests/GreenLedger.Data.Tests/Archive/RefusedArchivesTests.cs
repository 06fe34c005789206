using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using GreenLedger.Data.Archive;
using GreenLedger.Documents.Archive;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Archive;

/// <summary>Archives that somebody changed or that broke off: each is refused with a sentence that says where, and the house stays as it was.</summary>
public sealed class RefusedArchivesTests(Ledgers ledgers)
{
    private const string Suppliers = "tables/Suppliers.csv";

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    /// <summary>What is done to the members, and what has to stand in the sentence. Hashes are put right afterwards, where it is not about them.</summary>
    public static TheoryData<string, bool, string> Faults => new()
    {
        { "drop tables/Suppliers.csv", true, "Suppliers" },
        { "drop tables/Suppliers.csv", false, Suppliers },
        { "change tables/Suppliers.csv", false, Suppliers },
        { "add ../outside.txt", true, "../outside.txt" },
        { "add files/x/../../outside.txt", true, "outside.txt" },
        { "add tables/Strangers.csv", true, "Strangers" },
        { "add tables/Unlisted.csv", false, "Unlisted" },
        { "format 2", true, "format 2" },
        { "rows 7", true, "Suppliers" },
        { "cell Kind=many", true, "Kind is no whole number: “many”" },
        { "cell Name=", true, "a row points by SupplierId" },
        { "cell Id=here", true, "row 1" },
        { "head Name=Called", true, "Called" },
        { "quote", true, "cannot be read as CSV" },
        { "bomb", true, "swell" },
        { "pointer", true, "SupplierId" },
        { "file", true, "has no member" },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public async Task What_is_not_whole_is_refused_and_leaves_nothing_behind(string fault, bool resealed, string said)
    {
        await using var house = await HouseAsync(Engine.Sqlite);
        using var whole = await Archives.TakeAsync(house);
        var members = new Dictionary<string, byte[]>(Archives.Members(whole));
        Spoil(members, fault);
        using var archive = Archives.Zip((resealed ? Resealed(members) : members).Select(member => (member.Key, member.Value)));
        await using var empty = await ledgers.NewAsync(Engine.Sqlite);

        var refused = await Assert.ThrowsAsync<RuleBrokenException>(() => Archives.ReadBackAsync(empty, archive));

        Assert.Contains(said, refused.Message, StringComparison.Ordinal);
        await IsUntouchedAsync(empty);
    }

    [Theory, EveryEngine]
    public async Task A_row_that_points_to_nothing_and_one_that_stands_twice_are_refused_on_both_databases(Engine engine)
    {
        await using var house = await HouseAsync(engine);
        using var whole = await Archives.TakeAsync(house);
        foreach (var (fault, said) in new[] { ("pointer", "SupplierId"), ("twice", "Suppliers"), ("zero", "Suppliers") })
        {
            var members = new Dictionary<string, byte[]>(Archives.Members(whole));
            Spoil(members, fault);
            using var archive = Archives.Zip(Resealed(members).Select(member => (member.Key, member.Value)));
            await using var empty = await ledgers.NewAsync(engine);

            if (fault == "zero" && engine is Engine.Sqlite)
            {
                continue; // The character with the number 0 is text there.
            }

            var refused = await Assert.ThrowsAsync<RuleBrokenException>(() => Archives.ReadBackAsync(empty, archive));

            Assert.Contains(said, refused.Message, StringComparison.Ordinal);
            await IsUntouchedAsync(empty);
        }
    }

    [Theory, EveryEngine]
    public async Task A_house_in_use_reads_nothing_back(Engine engine)
    {
        await using var house = await HouseAsync(engine);
        using var archive = await Archives.TakeAsync(house);

        var refused = await Assert.ThrowsAsync<RuleBrokenException>(() => Archives.ReadBackAsync(house, archive));

        Assert.Contains("in use already", refused.Message, StringComparison.Ordinal);
        await using var db = house.Open();
        Assert.Equal(1, await db.Suppliers.CountAsync(Token));
    }

    [Fact]
    public async Task What_is_no_ZIP_file_or_breaks_off_is_said()
    {
        await using var house = await HouseAsync(Engine.Sqlite);
        using var whole = await Archives.TakeAsync(house);

        using var text = new MemoryStream(Encoding.UTF8.GetBytes("not an archive"));
        using var half = new MemoryStream(whole.ToArray()[..(int)(whole.Length / 2)]);
        using var other = Archives.Zip([("letter.txt", [1, 2, 3])]);

        Assert.Contains("cannot be read as a ZIP file", (await Assert.ThrowsAsync<RuleBrokenException>(() => ArchiveFile.OpenAsync(text, Token))).Message, StringComparison.Ordinal);
        Assert.Contains("cannot be read as a ZIP file", (await Assert.ThrowsAsync<RuleBrokenException>(() => ArchiveFile.OpenAsync(half, Token))).Message, StringComparison.Ordinal);
        Assert.Contains("no archive of a house", (await Assert.ThrowsAsync<RuleBrokenException>(() => ArchiveFile.OpenAsync(other, Token))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Files_leave_under_their_own_names_and_no_name_leads_out_of_its_folder()
    {
        await using var house = await HouseAsync(Engine.Sqlite);
        using var archive = await Archives.TakeAsync(house);

        var files = Archives.Members(archive).Where(member => member.Key.StartsWith("files/", StringComparison.Ordinal)).ToList();

        Assert.Contains(files, file => file.Key.EndsWith("/lista nº 3 “café”.csv", StringComparison.Ordinal) && file.Value.SequenceEqual<byte>([7, 8, 9]));
        Assert.Equal("files/StoredBytes/1/_etc_passwd", StoredNames.Member("StoredBytes", "1", "../etc/passwd"));
        Assert.Equal("files/StoredBytes/1/file", StoredNames.Member("StoredBytes", "1", ".."));
    }

    /// <summary>A small house with a supplier, their contact and a file.</summary>
    private async Task<Ledger> HouseAsync(Engine engine)
    {
        var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();
        await LedgerDatabase.PrepareAsync(db, Token);
        var supplier = new Supplier("Finca \"La Loma\",\r\nS.A.", SupplierKind.Exporter, "CO", "es");
        db.AddRange(new House("Harbour Roastery", Currency.Eur), new Person("Ada", Role.Administrator), supplier);
        db.Add(new SupplierContact(supplier.Id, "José Ñandú", "jose@la-loma.example", "es", Receives.Feedback));
        db.Add(new StoredFile("lista nº 3 “café”.csv", "text/csv", [7, 8, 9], null, Archives.At));
        await db.SaveChangesAsync(Token);
        return ledger;
    }

    private static async Task IsUntouchedAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        Assert.True(await HouseIntake.IsEmptyAsync(db, Token));
        Assert.True(await db.Countries.AnyAsync(Token), "what a first start filled is still there");
    }

    private static void Spoil(Dictionary<string, byte[]> members, string fault)
    {
        var (act, rest) = (fault.Split(' ')[0], fault[(fault.IndexOf(' ', StringComparison.Ordinal) + 1)..]);
        var lines = Encoding.UTF8.GetString(members.GetValueOrDefault(Suppliers, []));
        switch (act)
        {
            case "drop": members.Remove(rest); break;
            case "change": members[rest][^3] ^= 1; break;
            case "add": members[rest] = Encoding.UTF8.GetBytes("Id\r\n"); break;
            case "format": members["manifest.json"] = Edited(members, manifest => manifest["format"] = int.Parse(rest, null)); break;
            case "rows": members["manifest.json"] = Edited(members, manifest => manifest["tables"]!["Suppliers"] = int.Parse(rest, null)); break;
            case "cell": Set(members, rest.Split('=')); break;
            case "head": members[Suppliers] = Encoding.UTF8.GetBytes(lines.Replace(rest.Split('=')[0], rest.Split('=')[1], StringComparison.Ordinal)); break;
            case "quote": members[Suppliers] = Encoding.UTF8.GetBytes(lines.Replace("\r\n", "\r\nx\"y", StringComparison.Ordinal)); break;
            case "bomb": members[Suppliers] = new byte[60_000_000]; break;
            case "twice": members[Suppliers] = Encoding.UTF8.GetBytes(lines + lines[(lines.IndexOf("\r\n", StringComparison.Ordinal) + 2)..]); Rows(members, 2); break;
            case "zero": members[Suppliers] = Encoding.UTF8.GetBytes(lines.Replace("Loma", "Lo\0ma", StringComparison.Ordinal)); break;
            case "pointer":
                members["tables/SupplierContacts.csv"] = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(members["tables/SupplierContacts.csv"])
                .Replace(lines.Split("\r\n")[1][..36], Guid.NewGuid().ToString(), StringComparison.Ordinal)); break;
            case "file": members["tables/StoredBytes.csv"] = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(members["tables/StoredBytes.csv"]).Replace("files/", "tables/", StringComparison.Ordinal)); break;
            default: throw new ArgumentOutOfRangeException(nameof(fault));
        }
    }

    private static void Rows(Dictionary<string, byte[]> members, int rows) =>
        members["manifest.json"] = Edited(members, manifest => manifest["tables"]!["Suppliers"] = rows);

    /// <summary>Puts a text into the first cell of a column.</summary>
    private static void Set(Dictionary<string, byte[]> members, string[] cell)
    {
        using var csv = CsvHelper.CsvReader.Create(members[Suppliers], CsvHelper.CsvReaderOptions.Default with { HasHeader = false });
        using var changed = new MemoryStream();
        using (var writer = CsvHelper.CsvWriter.Create(changed, CsvHelper.CsvWriterOptions.Default, leaveOpen: true))
        {
            csv.Read();
            string[] heads = [.. Enumerable.Range(0, csv.FieldCount).Select(csv.GetString)];
            writer.WriteRecord(heads);
            csv.Read();
            writer.WriteRecord([.. heads.Select((head, at) => head == cell[0] ? cell[1] : csv.GetString(at))]);
        }

        members[Suppliers] = changed.ToArray();
        if (cell[0] == "Name")
        {
            // A text may be empty for all that a table knows: the row is dropped instead, so that its contact points to nothing.
            members[Suppliers] = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(members[Suppliers]).Split("\r\n")[0] + "\r\n");
            Rows(members, 0);
        }
    }

    private static byte[] Edited(Dictionary<string, byte[]> members, Action<JsonNode> edit)
    {
        var manifest = JsonNode.Parse(members["manifest.json"])!;
        edit(manifest);
        return JsonSerializer.SerializeToUtf8Bytes(manifest);
    }

    /// <summary>As somebody would who wants the change to pass: sizes and hashes are those of the changed members.</summary>
    private static Dictionary<string, byte[]> Resealed(Dictionary<string, byte[]> members)
    {
        var listed = members.Where(member => member.Key is not ("members.csv" or "manifest.json")).ToList();
        var list = "Member,Bytes,Sha256,ReceivedSha256\r\n" + string.Concat(listed.Select(member => $"{member.Key},{member.Value.Length},{Hash(member.Value)},\r\n"));
        members["members.csv"] = Encoding.UTF8.GetBytes(list);
        members["manifest.json"] = Edited(members, manifest =>
        {
            manifest["membersSha256"] = Hash(members["members.csv"]);
            if (!members.ContainsKey(Suppliers))
            {
                manifest["tables"]!.AsObject().Remove("Suppliers");
            }

            if (members.ContainsKey("tables/Strangers.csv"))
            {
                manifest["tables"]!["Strangers"] = 0;
            }
        });
        return members;
    }

    private static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
