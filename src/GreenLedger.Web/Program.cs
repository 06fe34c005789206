using System.Globalization;
using GreenLedger.Web.Api;
using GreenLedger.Web.Choosing;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.Due;
using GreenLedger.Web.Hosting;
using GreenLedger.Web.Mail;
using GreenLedger.Web.Offers;

// Numbers and dates are read and written the same on every machine; pages format them by their display templates.
CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;

var builder = WebApplication.CreateBuilder(Start.Options(args));
builder.WebHost.UseStaticWebAssets();
builder.ListenWhereTold().UseLedger().UseAccounts().UseSafety().UseRecords().UsePagesAndApi().UseApiDocument().UseOffers();
builder.UseCupping().UseChoosing().UseMail();

var app = builder.Build();
// The database gets ready while addresses are worked out: each takes about half of the time that a start needs.
var ready = Task.Run(app.PrepareDatabaseAsync);

app.UseForwardedHeaders();
if (!app.Environment.IsDevelopment())
{
    app.UseHsts();
}

app.UseSecurityHeaders();
app.UseTroubleAnswers();
app.UseReadableAddresses();
app.UseRouting();
app.UseAuthentication();
app.UseRateLimiter();
app.UseAuthorization();
app.UseApiAntiforgery();

app.MapHealth();
app.MapCalendar();
app.MapStaticAssets().AllowAnonymous();
app.MapRazorPages().WithStaticAssets();

// One line for each room: static extension methods Map…Api(this IEndpointRouteBuilder) in Api/<Room>Api.cs.
var api = app.MapGroup("/api").DisableAntiforgery().ReadChoices().AddEndpointFilter<RouteGroupBuilder, UnreadValues>();
api.MapCertificatesApi();
api.MapChoosingApi();
api.MapContractsApi();
api.MapOriginsApi();
api.MapOffersApi();
api.MapPapersApi();
api.MapPricingApi();
api.MapSamplesApi();
api.MapGradingApi();
api.MapRoastingApi();
api.MapSettingsApi();
api.MapSearchApi();
app.MapApiDocument();
api.MapCuppingApi();
api.MapShipmentsApi();
api.MapArrivalsApi();
api.MapDueApi();
api.MapMyselfApi();
api.MapSummariesApi();
api.MapMessagesApi();
api.MapCostsApi();
api.MapStockApi();
api.MapTraceApi();
api.MapArchiveApi();

_ = ((IEndpointRouteBuilder)app).DataSources.Sum(source => source.Endpoints.Count);
await ready;
if (Start.ArchiveToReadBack(args) is { } archive && !await app.ReadBackAsync(archive))
{
    return 1;
}

if (Start.WantsDemo(args))
{
    await app.OpenDemoAsync();
}

await app.RunAsync();
return 0;
