using System.Security.Cryptography;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using Scalar.AspNetCore;

namespace GreenLedger.Web.Hosting;

/// <summary>
/// The API described in OpenAPI 3.1 at <c>/openapi/v1.json</c>, and the page <c>/TryApi</c> to read it and to try it.
/// Anybody may read the document: it says what can be asked, never what is stored.
/// </summary>
internal static class ApiDocument
{
    public const string Address = "/openapi/v1.json";
    public const string Page = "/TryApi";

    private const string Problem = "application/problem+json";

    private static readonly (int Status, string Meaning)[] Refusals =
    [
        (StatusCodes.Status400BadRequest, "A value cannot be read; the answer names the field."),
        (StatusCodes.Status401Unauthorized, "No token was shown, or it is unknown or revoked."),
        (StatusCodes.Status403Forbidden, "The roles of the token's owner do not allow this."),
        (StatusCodes.Status404NotFound, "There is no such record, or it is not for your role."),
        (StatusCodes.Status422UnprocessableEntity, "A rule refuses what was asked; the answer says what to do and names the field."),
    ];

    public static WebApplicationBuilder UseApiDocument(this WebApplicationBuilder builder)
    {
        builder.Services.AddOpenApi("v1", options =>
        {
            options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
            options.AddDocumentTransformer(DescribeAsync);
            options.AddOperationTransformer(RefuseAsync);
        });
        return builder;
    }

    public static void MapApiDocument(this WebApplication app)
    {
        app.MapOpenApi("/openapi/{documentName}.json").AllowAnonymous();
        app.MapScalarApiReference(Page, ShowPage).WithMetadata(new InAreaAttribute("Home"));
    }

    private static Task DescribeAsync(OpenApiDocument document, OpenApiDocumentTransformerContext context, CancellationToken cancellationToken)
    {
        document.Info = new OpenApiInfo
        {
            Title = "GreenLedger",
            Version = "1",
            Description = "The ledger of the green coffee buyer, for scripts. Make a token under your account and send it as a bearer token. "
                + "Rows are flat, with the unit in the name; money is an amount and a currency; errors are problem details (RFC 9457).",
        };
        document.Components ??= new OpenApiComponents();
        document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>
        {
            [BearerTokens.SchemeName] = new OpenApiSecurityScheme
            {
                Type = SecuritySchemeType.Http,
                Scheme = "bearer",
                Description = "A token that you made under your account.",
            },
        };
        document.Security = [new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference(BearerTokens.SchemeName, document)] = [] }];
        return Task.CompletedTask;
    }

    /// <summary>Every route can refuse in these ways, whether or not its handler says so.</summary>
    private static Task RefuseAsync(OpenApiOperation operation, OpenApiOperationTransformerContext context, CancellationToken cancellationToken)
    {
        operation.Responses ??= [];
        foreach (var (status, meaning) in Refusals)
        {
            operation.Responses[status.ToString(System.Globalization.CultureInfo.InvariantCulture)] = new OpenApiResponse
            {
                Description = meaning,
                Content = new Dictionary<string, OpenApiMediaType> { [Problem] = new() { Schema = ProblemSchema() } },
            };
        }

        return Task.CompletedTask;
    }

    private static OpenApiSchema ProblemSchema() => new()
    {
        Type = JsonSchemaType.Object,
        Properties = new Dictionary<string, IOpenApiSchema>
        {
            ["title"] = new OpenApiSchema { Type = JsonSchemaType.String },
            ["status"] = new OpenApiSchema { Type = JsonSchemaType.Integer },
            ["detail"] = new OpenApiSchema { Type = JsonSchemaType.String },
            ["errors"] = new OpenApiSchema
            {
                Type = JsonSchemaType.Object,
                Description = "The fields at fault and what is wrong with each.",
                AdditionalProperties = new OpenApiSchema { Type = JsonSchemaType.Array, Items = new OpenApiSchema { Type = JsonSchemaType.String } },
            },
        },
    };

    /// <summary>
    /// The page's own policy (docs/decisions/0008): its one inline script by a nonce, and the styles that it writes while
    /// it runs. It reaches this ledger and nothing else.
    /// </summary>
    private static void ShowPage(ScalarOptions page, HttpContext http)
    {
        var nonce = Convert.ToBase64String(RandomNumberGenerator.GetBytes(18));
        http.Response.Headers.ContentSecurityPolicy =
            $"default-src 'none'; script-src 'self' 'nonce-{nonce}'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; "
            + "font-src 'self' data:; connect-src 'self'; worker-src 'self' blob:; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";
        page.WithTitle("GreenLedger: the API").WithNonce(nonce).WithOpenApiRoutePattern(Address)
            .DisableDefaultFonts().DisableTelemetry().DisableAgent().DisableMcp().HideClientButton();
    }
}
