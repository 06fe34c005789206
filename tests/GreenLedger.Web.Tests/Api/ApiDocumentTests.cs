using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using GreenLedger.Domain.People;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.OpenApi;

namespace GreenLedger.Web.Tests.Api;

public sealed partial class ApiDocumentTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_document_is_valid_OpenAPI_3_1()
    {
        var text = await house.CreateClient().GetStringAsync("/openapi/v1.json", Cancel);

        var read = OpenApiDocument.Parse(text, "json");

        Assert.Equal(OpenApiSpecVersion.OpenApi3_1, read.Diagnostic!.SpecificationVersion);
        Assert.Empty(read.Diagnostic.Errors);
        Assert.NotEmpty(read.Document!.Paths);
        Assert.Equal("bearer", read.Document.Components!.SecuritySchemes!["Bearer"].Scheme);
    }

    [Fact]
    public async Task Every_route_of_the_running_application_is_described_with_its_refusals()
    {
        using var document = JsonDocument.Parse(await house.CreateClient().GetStringAsync("/openapi/v1.json", Cancel));
        var paths = document.RootElement.GetProperty("paths");
        var routes = Routes().ToList();

        var missing = routes.Where(route => !IsDescribed(paths, route.Path, route.Method)).ToList();

        Assert.NotEmpty(routes);
        Assert.Empty(missing);
    }

    /// <summary>Each word that the document gives a choice in an address is read there: what is answered can be asked for.</summary>
    [Fact]
    public async Task Every_word_of_a_choice_is_read_in_the_address_as_it_is_written_in_answers()
    {
        using var document = JsonDocument.Parse(await house.CreateClient().GetStringAsync("/openapi/v1.json", Cancel));
        using var script = await house.ScriptAsync(Role.Buyer);
        var schemas = document.RootElement.GetProperty("components").GetProperty("schemas");
        var asked = document.RootElement.GetProperty("paths").EnumerateObject()
            .Where(path => path.Value.TryGetProperty("get", out var get) && get.TryGetProperty("parameters", out _))
            .SelectMany(path => path.Value.GetProperty("get").GetProperty("parameters").EnumerateArray().SelectMany(parameter => Words(parameter, schemas).Select(word => $"{path.Name}?{parameter.GetProperty("name")}={word}")))
            .ToList();

        Assert.Contains("/api/contracts?goods=awaitingApproval", asked);
        foreach (var address in asked)
        {
            var answer = await (await script.GetAsync(new Uri(address, UriKind.Relative), Cancel)).Content.ReadAsStringAsync(Cancel);
            Assert.False(answer.Contains("cannot be read here", StringComparison.Ordinal), $"{address}: {answer}");
        }
    }

    private static IEnumerable<string> Words(JsonElement parameter, JsonElement schemas) =>
        parameter.GetProperty("in").GetString() == "query" && parameter.GetProperty("schema").TryGetProperty("$ref", out var name)
            && schemas.GetProperty(name.GetString()!.Split('/')[^1]).TryGetProperty("enum", out var words)
            ? words.EnumerateArray().Where(word => word.ValueKind == JsonValueKind.String).Select(word => word.GetString()!)
            : [];

    [Fact]
    public async Task The_page_to_try_it_is_for_those_who_signed_in_and_reaches_no_other_host()
    {
        var visitor = await house.Visitor().Client.GetAsync("/TryApi/", Cancel);
        var answer = await (await house.BrowserAsync(Role.Viewer)).Client.GetAsync("/TryApi/", Cancel);

        Assert.Equal(HttpStatusCode.Redirect, visitor.StatusCode);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        var nonce = Nonce().Match(policy).Groups[1].Value;
        var page = await TestBrowser.PageAsync(answer);
        Assert.NotEmpty(nonce);
        Assert.Contains("connect-src 'self'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
        Assert.All(page.QuerySelectorAll("script"), script => Assert.DoesNotContain("//", script.GetAttribute("src") ?? "", StringComparison.Ordinal));
        Assert.All(page.QuerySelectorAll("script:not([src])"), script => Assert.Equal(nonce, script.GetAttribute("nonce")));
    }

    private IEnumerable<(string Path, string Method)> Routes() =>
        house.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.RoutePattern.RawText!.TrimStart('/').StartsWith("api/", StringComparison.Ordinal))
            .SelectMany(
                endpoint => endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? [],
                (endpoint, method) => (Constraint().Replace("/" + endpoint.RoutePattern.RawText!.Trim('/'), ""), method.ToLowerInvariant()));

    private static bool IsDescribed(JsonElement paths, string path, string method) =>
        paths.TryGetProperty(path, out var item)
        && item.TryGetProperty(method, out var operation)
        && operation.TryGetProperty("summary", out var summary) && summary.GetString() is { Length: > 0 }
        && operation.GetProperty("responses").GetProperty("422").GetProperty("content").TryGetProperty("application/problem+json", out _);

    [GeneratedRegex(@"(?<=\{\w+):[^}]+(?=\})")]
    private static partial Regex Constraint();

    [GeneratedRegex("'nonce-([^']+)'")]
    private static partial Regex Nonce();
}
