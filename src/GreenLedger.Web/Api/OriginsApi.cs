using GreenLedger.Data;
using GreenLedger.Data.Origins;
using GreenLedger.Documents.Origins;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>A farm, co-operative or washing station, with the number of its lots.</summary>
internal sealed record ProducerReply(
    string Id, string Name, string Kind, string? CountryCode, string? Country, string? Region, string? Place, int? AltitudeFromM, int? AltitudeToM, int Lots)
{
    public static ProducerReply Of(ProducerRow row) => new(
        row.Id.ToString(), row.Name, row.Kind.Word(), row.CountryCode, row.Country, row.Region, row.Place, row.AltitudeFrom, row.AltitudeTo, row.Lots);
}

/// <summary>A country of origin; months are 1 to 12.</summary>
internal sealed record CountryReply(
    string Code, string Name, string? IcoCode, int? CropYearStartMonth, int? HarvestFromMonth, int? HarvestToMonth, decimal? UsualBagKg, string? Ports, IReadOnlyList<string> OtherNames, bool IsLowRisk, int Version)
{
    public static CountryReply Of(Country country) => new(
        country.Code, country.Name, country.IcoCode, country.CropYearStart, country.HarvestFrom, country.HarvestTo, country.UsualBag?.Kilograms, country.Ports, [.. country.OtherNames], country.IsLowRisk, country.Version);
}

/// <summary>A process method, with the other words by which lists say the same.</summary>
internal sealed record ProcessMethodReply(string Id, string Name, string Family, IReadOnlyList<string> Synonyms, int Version)
{
    public static ProcessMethodReply Of(ProcessMethod method) => new(method.Id.ToString(), method.Name, method.Family.Word(), [.. method.Synonyms], method.Version);
}

/// <summary>A plot as it was read: a point counts as the hectares stated, or 4; decimals as its numbers were written.</summary>
internal sealed record PlotReply(int Row, string? Producer, string? Country, string? Name, bool IsPoint, decimal Hectares, int? FewestDecimals, int? MostDecimals, IReadOnlyList<string> Doubts)
{
    public static PlotReply Of(PlotLine line, Plot plot, IEnumerable<PlotDoubt> doubts) => new(
        line.Row, line.Producer, line.Country, line.Name, plot.IsPoint, plot.Hectares, plot.FewestDecimals, plot.MostDecimals, [.. doubts.Select(doubt => doubt.Said)]);
}

/// <summary>A net weight of coffee in a form.</summary>
internal sealed record GreenRequest(CoffeeForm Form, decimal Kg);

/// <summary>The same coffee in one form.</summary>
internal sealed record CoffeeFormReply(string Form, decimal Kg);

/// <summary>The same coffee in kilograms of green coffee, and of each form.</summary>
internal sealed record GreenReply(decimal GreenKg, IReadOnlyList<CoffeeFormReply> Forms);

internal sealed record PlotProblemReply(int? Row, string? Property, string Reason)
{
    public static PlotProblemReply Of(Problem problem) => new(problem.Row, problem.Column, problem.Message);
}

/// <summary>What was read of plots; doubts refuse nothing.</summary>
internal sealed record PlotsReply(IReadOnlyList<PlotReply> Plots, IReadOnlyList<PlotProblemReply> Problems, IReadOnlyList<string> Doubts)
{
    public static PlotsReply Of(PlotFile file, CountryOutlines outlines)
    {
        // A plot that names no country is checked all the same: its country is that of whoever will be its producer.
        var (plots, problems) = file.Taken(Id<Producer>.New(), "XX");
        List<Plot> all = [.. plots.Select(one => one.Plot)];
        var doubts = PlotDoubts.Each(all, null, outlines).SelectMany(doubt => doubt.About.Select(plot => (plot.Id, Doubt: doubt))).ToLookup(one => one.Id, one => one.Doubt);
        return new PlotsReply(
            [.. plots.Select(one => PlotReply.Of(one.Line, one.Plot, doubts[one.Plot.Id]))], [.. problems.Select(PlotProblemReply.Of)],
            PlotDoubts.Of(all, null, outlines));
    }
}

/// <summary>Where lots come from, and the words for how they are made.</summary>
internal static class OriginsApi
{
    public static void MapOriginsApi(this IEndpointRouteBuilder api)
    {
        var origins = api.MapGroup("/origins").WithTags("Origins");
        origins.MapGet("/producers", ProducersAsync).WithName("ListProducers").WithSummary("Producers by name")
            .WithDescription(
                "`search` is any part of name, region or place, `origin` an ISO 3166-1 code; `sort` is name, origin or lots, a minus in front turns it round. " + OfferRowsApi.Pages);
        origins.MapGet("/countries", CountriesAsync).WithName("ListCountries").WithSummary("Countries of origin by name")
            .WithDescription("Crop years, harvests and bags are habits of the trade, as this house has them.");
        origins.MapGet("/process-methods", MethodsAsync).WithName("ListProcessMethods").WithSummary("Process methods by name, with the words that lists use for them");
        origins.MapPlotsApi();
        origins.MapOriginsWriting();
        origins.MapPost("/calculate/green", Green).WithName("CalculateGreen").WithSummary("What a weight of dried cherry, parchment, roasted or soluble coffee is in green coffee, and in each other form; stores nothing")
            .WithDescription("By the factors of the International Coffee Organization; fresh cherry has none.");
    }

    [StoresNothing]
    private static Ok<GreenReply> Green(GreenRequest request)
    {
        Rule.Require(Enum.IsDefined(request.Form), "Name a form: Green, DriedCherry, Parchment, DecaffeinatedGreen, Roasted or Soluble.", nameof(request.Form));
        Rule.Require(request.Kg is >= 0m and <= 1_000_000_000m, "The weight lies between 0 and a thousand million kg.", nameof(request.Kg));
        var green = request.Form.InGreen(Weight.FromKilograms(request.Kg));
        return TypedResults.Ok(new GreenReply(green.Kilograms, [.. CoffeeForms.All.Select(form => new CoffeeFormReply(form.ToString(), form.FromGreen(green).Kilograms))]));
    }

    private static async Task<Ok<PageReply<ProducerReply>>> ProducersAsync(
        ProducerQuery query, CancellationToken cancellationToken, string? search = null, string? origin = null, string? sort = null, int page = 1, int size = Paging.UsualSize)
    {
        var paging = OfferRowsApi.PageOf(page, size, await query.CountAsync(search, origin, cancellationToken));
        var rows = await query.ListAsync(search, origin, sort, paging.Skip, paging.Size, cancellationToken);
        return TypedResults.Ok(PageReply<ProducerReply>.Of(paging, rows.Select(ProducerReply.Of)));
    }

    private static async Task<Ok<List<CountryReply>>> CountriesAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok((await db.Countries.AsNoTracking().OrderBy(country => country.Name).ToListAsync(cancellationToken)).ConvertAll(CountryReply.Of));

    private static async Task<Ok<List<ProcessMethodReply>>> MethodsAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok((await db.ProcessMethods.AsNoTracking().OrderBy(method => method.Name).ToListAsync(cancellationToken)).ConvertAll(ProcessMethodReply.Of));
}
