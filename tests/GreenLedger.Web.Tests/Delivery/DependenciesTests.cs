using System.Text.Json;
using System.Xml.Linq;

namespace GreenLedger.Web.Tests.Delivery;

public sealed class DependenciesTests
{
    private static readonly string Document = File.ReadAllText(Path.Combine(Shell.Project(), "docs", "dependencies.md"));

    [Fact]
    public void Every_package_is_named_with_its_licence_and_its_reason()
    {
        var packages = XDocument.Load(Path.Combine(Shell.Project(), "Directory.Packages.props"))
            .Descendants("PackageVersion").Select(package => package.Attribute("Include")!.Value).ToList();

        Assert.NotEmpty(packages);
        Assert.DoesNotContain(packages, package => !Document.Contains($"\n| {package} | ", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_browser_file_is_named_with_its_licence_and_its_reason()
    {
        using var list = JsonDocument.Parse(
            File.ReadAllText(Path.Combine(Shell.Project(), "src", "GreenLedger.Web", "package.json")));
        var packages = list.RootElement.GetProperty("dependencies").EnumerateObject().Select(package => package.Name).ToList();

        Assert.NotEmpty(packages);
        Assert.DoesNotContain(packages, package => !Document.Contains($"\n| {package} | ", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_known_advisory_that_is_let_pass_is_explained()
    {
        var advisories = XDocument.Load(Path.Combine(Shell.Project(), "Directory.Build.props"))
            .Descendants("NuGetAuditSuppress").Select(one => one.Attribute("Include")!.Value.Split('/')[^1]).ToList();

        Assert.Equal(["GHSA-rvv3-g6hj-g44x"], advisories);
        Assert.Contains(advisories[0], Document);
    }
}
