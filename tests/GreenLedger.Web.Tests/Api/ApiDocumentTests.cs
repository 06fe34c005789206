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
