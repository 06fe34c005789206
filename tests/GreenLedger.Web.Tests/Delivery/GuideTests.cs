using System.Buffers.Binary;
using System.Text.RegularExpressions;
using GreenLedger.Web.Tests.InBrowser;

namespace GreenLedger.Web.Tests.Delivery;

/// <summary>The guide's pictures are there, small, and those that the tests of the main job and of the table take.</summary>
public sealed partial class GuideTests
{
    private static readonly string Project = Shell.Project();
    private static readonly string Folder = Path.Combine(Project, "docs", "pictures");

    private static readonly string[] Takers =
    [
        "InBrowser/FirstHour.cs", "Cupping/TableOfFiveTests.cs", "InBrowser/StockWayTests.cs", "InBrowser/PlannedPurchaseTests.cs", "InBrowser/PlotDrawingTests.cs",
    ];

    [Fact]
    public void Every_picture_that_is_shown_is_there_and_every_one_there_is_shown()
    {
        var shown = Shown("docs/guide.md").Concat(Shown("README.md")).Order(StringComparer.Ordinal).Distinct();

        var there = Directory.GetFiles(Folder).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal);

        Assert.Equal(there, shown);
    }

    [Fact]
    public void The_guide_shows_what_the_tests_see()
    {
        var steps = Takers.Select(file => File.ReadAllText(Path.Combine(Project, "tests", "GreenLedger.Web.Tests", file)));

        var taken = steps.SelectMany(step => TakenPicture().Matches(step)).Select(match => match.Groups[1].Value + ".png");

        Assert.Equal(Shown("docs/guide.md").Order(StringComparer.Ordinal), taken.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_picture_is_as_wide_as_its_window_and_at_most_200_kB()
    {
        var pictures = Directory.GetFiles(Folder);

        Assert.All(pictures, picture => Assert.InRange(new FileInfo(picture).Length, 1, 200_000));
        Assert.All(pictures, picture => Assert.Equal(Path.GetFileName(picture).StartsWith("phone-", StringComparison.Ordinal) ? Chromium.Phone : Chromium.Wide, BinaryPrimitives.ReadInt32BigEndian(File.ReadAllBytes(picture).AsSpan(16))));
    }

    private static IEnumerable<string> Shown(string document) =>
        ShownPicture().Matches(File.ReadAllText(Path.Combine(Project, document))).Select(match => match.Groups[1].Value);

    [GeneratedRegex(@"!\[[^\]]+\]\((?:docs/)?pictures/([^)]+)\)")]
    private static partial Regex ShownPicture();

    [GeneratedRegex("TakeAsync\\((?:[\\w\\[\\]]+, )?\"([^\"]+)\"")]
    private static partial Regex TakenPicture();
}
