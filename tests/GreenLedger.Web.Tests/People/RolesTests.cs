using System.Net;
using System.Text.RegularExpressions;
using GreenLedger.Domain.People;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;

namespace GreenLedger.Web.Tests.People;

/// <summary>Holds every route of the running application against the table of docs/roles.md.</summary>
public sealed partial class RolesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static readonly string[] OpenToAll = ["Entrance/", "Error", "health", "openapi/", "TryApi/scalar.", "TryApi/favicon.svg", "calendar/"];

    /// <summary>The framework's own answer for a file that is not there, while built files are served from their folders.</summary>
    private const string MissingFile = "{**path:file}";

    public static TheoryData<Role> Roles => [Role.Viewer, Role.Cupper, Role.LeadCupper, Role.Buyer, Role.Administrator];

    [Theory]
    [MemberData(nameof(Roles))]
    public async Task A_role_may_do_on_every_route_what_the_table_says(Role role)
    {
        var table = Table();
        var browser = (await house.BrowserAsync(role)).Client;
        var script = await house.ScriptAsync(role);
        var wrong = new List<string>();

        foreach (var (endpoint, method) in Routes())
        {
            var area = AreaRequirement.AreaOf(endpoint)!;
            var allowed = table[(area, role)] >= AreaRequirement.Asked(endpoint, method);
            var address = AddressOf(endpoint);
            var client = address.StartsWith("/api", StringComparison.Ordinal) ? script : browser;
            using var request = new HttpRequestMessage(new HttpMethod(method), address);
            var answer = await client.SendAsync(request);
            var forbidden = answer.StatusCode is HttpStatusCode.Forbidden or HttpStatusCode.Unauthorized;
            if (forbidden == allowed || (int)answer.StatusCode >= 500)
            {
                wrong.Add($"{role} {method} {address} ({area}): {(int)answer.StatusCode}, the table says {(allowed ? "yes" : "no")}");
            }
        }

        Assert.Empty(wrong);
    }

    [Fact]
    public void Every_route_is_in_an_area_of_the_table_or_open_to_all_by_name()
    {
        var areas = Table().Keys.Select(key => key.Area).ToHashSet();

        var outside = Endpoints()
            .Where(endpoint => IsOpen(endpoint)
                ? !OpenToAll.Any(open => endpoint.RoutePattern.RawText!.TrimStart('/').StartsWith(open, StringComparison.Ordinal))
                : !areas.Contains(AreaRequirement.AreaOf(endpoint) ?? ""))
            .Select(endpoint => endpoint.RoutePattern.RawText);

        Assert.Empty(outside);
        Assert.Equal(AreaAccess.Areas.Order(), areas.Order());
    }

    [Fact]
    public async Task A_visitor_reaches_nothing_but_the_entrance()
    {
        await house.OpenHouseAsync();
        var visitor = house.Visitor().Client;
        var open = new List<string>();

        foreach (var (endpoint, method) in Routes())
        {
            using var request = new HttpRequestMessage(new HttpMethod(method), AddressOf(endpoint));
            var answer = await visitor.SendAsync(request);
            var turnedAway = answer.StatusCode == HttpStatusCode.Unauthorized
                || answer.Headers.Location?.OriginalString.Contains("/Entrance/SignIn", StringComparison.Ordinal) == true;
            if (!turnedAway)
            {
                open.Add($"{method} {AddressOf(endpoint)}: {(int)answer.StatusCode}");
            }
        }

        Assert.Empty(open);
    }

    private static Dictionary<(string Area, Role Role), Access> Table()
    {
        var rows = File.ReadLines(Path.Combine(Root(), "docs", "roles.md"))
            .Where(line => line.StartsWith('|'))
            .Select(line => line.Trim('|').Split('|', StringSplitOptions.TrimEntries))
            .ToList();
        var roles = rows[0].Skip(1).Select(word => RoleNames.All.Single(role => RoleNames.Word(role).Equals(word, StringComparison.OrdinalIgnoreCase))).ToList();
        return rows.Skip(2)
            .SelectMany(row => roles.Select((role, column) => ((row[0], role), Enum.Parse<Access>(row[column + 1], ignoreCase: true))))
            .ToDictionary(cell => cell.Item1, cell => cell.Item2);
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "GreenLedger.sln")))
        {
            folder = folder.Parent;
        }

        return folder.FullName;
    }

    private static bool IsOpen(Endpoint endpoint) => endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null;

    private IEnumerable<RouteEndpoint> Endpoints() => house.Services.GetRequiredService<EndpointDataSource>().Endpoints
        .OfType<RouteEndpoint>()
        .Where(endpoint => endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is null)
        .Where(endpoint => endpoint.RoutePattern.RawText != MissingFile);

    /// <summary>Pages are asked by GET and POST, the rest by what they take.</summary>
    private IEnumerable<(RouteEndpoint Endpoint, string Method)> Routes() => Endpoints()
        .Where(endpoint => !IsOpen(endpoint))
        .SelectMany(endpoint =>
            (endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods is { Count: > 0 } methods ? methods : ["GET", "POST"])
            .Select(method => (endpoint, method)));

    /// <summary>Parameters are filled with an identity that nothing has.</summary>
    private static string AddressOf(RouteEndpoint endpoint) =>
        "/" + Parameter().Replace(endpoint.RoutePattern.RawText!.TrimStart('/'), "01999999-0000-7000-8000-000000000001");

    [GeneratedRegex(@"\{[^}]+\}")]
    private static partial Regex Parameter();
}
