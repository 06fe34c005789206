using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace GreenLedger.Domain.Tests;

/// <summary>Guards the order of the rooms: the coffee's way, each line of it knowing only the lines before.</summary>
public sealed partial class HouseTests
{
    private static readonly string[] Folders = ["src", "tests", "seed-demo", "benchmarks"];

    /// <summary>Rooms in the order of the coffee's way (docs/decisions/0001). Rooms on one line do not know each other.</summary>
    private static readonly string[][] Lines =
    [
        ["Measures", "People"],
        ["Papers"],
        ["Origins"],
        ["Offers"],
        ["Samples", "Certificates"],
        ["Grading", "Roasting", "Cupping"],
        ["Pricing"],
        ["Choosing"],
        ["Contracts"],
        ["Shipments"],
        ["Arrivals"],
        ["Costs"],
        ["Stock"],
        ["Due", "Trace", "Summaries", "Archive"],
    ];

    /// <summary>
    /// Measures is the ground that every room stands on; its neighbour People (the house's currency, the
    /// reproducibility of its panel) stands on it too.
    /// </summary>
    private static readonly (string Room, string Knows)[] Ground = [("People", "Measures")];

    [Fact]
    public void A_room_knows_only_rooms_before_it()
    {
        var types = TypesByRoom();

        var trespasses = types.Keys.SelectMany(room => Trespasses(room, types)).ToList();

        Assert.Empty(trespasses);
        Assert.Contains("Measures", types.Keys);
    }

    [Fact]
    public void Every_room_has_its_place_on_the_way()
    {
        var rooms = TypesByRoom().Keys;

        var known = Lines.SelectMany(line => line).ToHashSet();

        Assert.All(rooms, room => Assert.Contains(room, known));
    }

    /// <summary>As <c>dotnet format</c> wants them, which the build does not check: the framework's first, each by its letters.</summary>
    [Fact]
    public void Usings_stand_in_order()
    {
        var folders = Folders.Select(folder => Path.Combine(Root(), folder)).Where(Directory.Exists);

        var unordered = folders.SelectMany(folder => Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)).Where(IsSource).Where(file =>
        {
            var usings = File.ReadLines(file).Select(line => PlainUsing().Match(line)).Where(match => match.Success).Select(match => match.Groups[1].Value).ToList();
            return !usings.SequenceEqual(usings.OrderBy(name => name != "System" && !name.StartsWith("System.", StringComparison.Ordinal)).ThenBy(name => name, StringComparer.OrdinalIgnoreCase));
        });

        Assert.Empty(unordered.Select(Path.GetFileName));
    }

    [Fact]
    public void Domain_has_no_files_no_clock_and_no_database()
    {
        var sources = Directory.EnumerateFiles(Domain, "*.cs", SearchOption.AllDirectories).Where(IsSource);

        var impure = sources.Where(file => Impure().IsMatch(File.ReadAllText(file))).Select(Path.GetFileName);

        Assert.Empty(impure);
    }

    [Fact]
    public void A_rooms_name_is_never_a_types_name()
    {
        var types = TypesByRoom();

        var clashes = types.Values.SelectMany(names => names).Intersect(types.Keys);

        Assert.Empty(clashes);
    }

    private static string Domain => Path.Combine(Root(), "src", "GreenLedger.Domain");

    private static string Root([CallerFilePath] string here = "")
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "GreenLedger.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));
    }

    private static bool IsSource(string file) =>
        !file.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj");

    private static Dictionary<string, HashSet<string>> TypesByRoom() =>
        Directory.EnumerateDirectories(Domain)
            .Where(folder => Path.GetFileName(folder) is not ("bin" or "obj"))
            .ToDictionary(folder => Path.GetFileName(folder), folder => Sources(folder)
                .SelectMany(file => Declaration().Matches(File.ReadAllText(file)))
                .Select(match => match.Groups["name"].Value).ToHashSet());

    private static IEnumerable<string> Sources(string folder) =>
        Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories);

    private static IEnumerable<string> Trespasses(string room, Dictionary<string, HashSet<string>> types) =>
        from file in Sources(Path.Combine(Domain, room))
        let text = File.ReadAllText(file)
        from known in types.Keys
        where known != room && !MayKnow(room, known) && Mentions(text, known, types[known])
        select $"{room}/{Path.GetFileName(file)} knows {known}";

    private static bool MayKnow(string room, string known) =>
        LineOf(known) < LineOf(room) || Ground.Contains((room, known));

    private static int LineOf(string room) => Array.FindIndex(Lines, line => line.Contains(room));

    /// <summary>By a using, by the full name, or by the room's name before one of its types.</summary>
    private static bool Mentions(string text, string room, HashSet<string> types) =>
        Regex.IsMatch(text, $@"GreenLedger\.Domain\.{room}\b")
        || Regex.Matches(text, $@"(?<![\w.]){room}\.(?<name>\w+)").Any(match => types.Contains(match.Groups["name"].Value));

    [GeneratedRegex(@"^using ([\w.]+);$")]
    private static partial Regex PlainUsing();

    [GeneratedRegex(@"^(?:public|internal) (?:[a-z]+ )*(?:class|struct|enum|interface|record) (?<name>\w+)", RegexOptions.Multiline)]
    private static partial Regex Declaration();

    [GeneratedRegex(@"EntityFrameworkCore|System\.IO\b|\bFile\.|DateTime(Offset)?\.(Utc)?Now|\bDateTime\.Today|TimeProvider|HttpContext")]
    private static partial Regex Impure();
}
