using System.Text.RegularExpressions;

namespace GreenLedger.Web.Tests.Delivery;

public sealed partial class SettingsTests
{
    [Fact]
    public void The_README_names_the_settings_that_there_are_and_no_other()
    {
        var project = Shell.Project();
        var read = Directory.EnumerateFiles(Path.Combine(project, "src"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Split(Path.DirectorySeparatorChar).Contains("obj"))
            .SelectMany(file => InCode().Matches(File.ReadAllText(file)))
            .Select(setting => setting.Groups[1].Value);
        var told = File.ReadLines(Path.Combine(project, "README.md"))
            .Select(line => InTable().Match(line)).Where(row => row.Success)
            .Select(row => row.Groups[1].Value);

        Assert.Equal(read.Distinct().Order(StringComparer.Ordinal), told.Order(StringComparer.Ordinal));
    }

    [GeneratedRegex("\"GreenLedger:(\\w+)\"")]
    private static partial Regex InCode();

    [GeneratedRegex(@"^\| `GreenLedger__(\w+)` \|")]
    private static partial Regex InTable();
}
