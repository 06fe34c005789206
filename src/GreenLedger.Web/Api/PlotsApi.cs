using GreenLedger.Data;
using GreenLedger.Documents.Origins;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Origins;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>A plot that is held; decimals as the numbers of its positions were written, null where nobody counted them.</summary>
internal sealed record HeldPlotReply(Guid Id, Guid ProducerId, string Name, string CountryCode, bool IsPoint, decimal Hectares, int? FewestDecimals, int? MostDecimals, string Shape)
{
    public static HeldPlotReply Of(Plot plot) => new(plot.Id.Value, plot.ProducerId.Value, plot.Name, plot.CountryCode, plot.IsPoint, plot.Hectares, plot.FewestDecimals, plot.MostDecimals, plot.Shape);
}

/// <summary>A producer's plots, and what is doubtful about them together.</summary>
internal sealed record HeldPlotsReply(IReadOnlyList<HeldPlotReply> Plots, IReadOnlyList<string> Doubts);

/// <summary>A plot as it is typed: `corners` has a longitude and a latitude in each line, the last line equal to the first for a polygon.</summary>
internal sealed record PlotRequest(string? Name, string? CountryCode, string? Corners, decimal? Hectares = null);

internal sealed record AddedPlotReply(HeldPlotReply Plot, IReadOnlyList<string> Doubts);

/// <summary>A plot of a file; `isHeld` where it is the same place as one that is held or stands before it in the file.</summary>
internal sealed record LoadedPlotReply(int Row, string Name, string CountryCode, bool IsPoint, decimal Hectares, int? FewestDecimals, int? MostDecimals, bool IsHeld, bool Taken, IReadOnlyList<string> Doubts)
{
    public static LoadedPlotReply Of(LoadedPlot one, IReadOnlySet<int> rows) => new(
        one.Row, one.Plot.Name, one.Plot.CountryCode, one.Plot.IsPoint, one.Plot.Hectares, one.Plot.FewestDecimals, one.Plot.MostDecimals, one.IsHeld, rows.Contains(one.Row), one.Doubts);
}

/// <summary>What a file of plots would add, or has added where it is stored; `taken` says of each plot whether it is among them.</summary>
internal sealed record LoadedPlotsReply(bool Stored, IReadOnlyList<LoadedPlotReply> Plots, IReadOnlyList<PlotProblemReply> Refused, IReadOnlyList<PlotProblemReply> Notes)
{
    public static LoadedPlotsReply Of(PlotPreview preview, IReadOnlySet<int> rows, bool isStored) => new(
        isStored, [.. preview.Plots.Select(one => LoadedPlotReply.Of(one, rows))], [.. preview.Refused.Select(PlotProblemReply.Of)], [.. preview.Notes.Select(PlotProblemReply.Of)]);
}

/// <summary>Where producers grow: read, loaded, added and taken out.</summary>
internal static class PlotsApi
{
    public static void MapPlotsApi(this RouteGroupBuilder origins)
    {
        origins.MapGet("/producers/{id}/plots", ExportAsync).WithName("ListPlots").WithSummary("Where a producer grows, as GeoJSON")
            .WithDescription("With the property names that the EU's system reads under Regulation (EU) 2023/1115, and six decimals.");
        origins.MapGet("/producers/{id}/plots/held", ListAsync).WithName("ListHeldPlots").WithSummary("A producer's plots with their identities, areas and what is doubtful about them together");
        origins.MapPost("/producers/{id}/plots", AddAsync).WithName("AddPlot").WithSummary("Adds a plot that is typed, and tells what is doubtful about it")
            .WithDescription("`corners` holds a longitude and a latitude in each line; one line is a point, several are a ring whose last line equals the first. The decimals count as they are written.");
        origins.MapPostFile("/producers/{id}/plots/load", LoadAsync).WithName("LoadPlots").DisableAntiforgery().WithMetadata(new RequestSizeLimitAttribute(32 * 1024 * 1024))
            .WithSummary("Plots of a producer from a GeoJSON or CSV file; stored only with commit=true.")
            .WithDescription("`rows`, parted by commas, says which plots are taken; without it all are but those that are held already. Answers each plot with its area and doubts, and which are refused and why.");
        origins.MapDelete("/plots/{id}", RemoveAsync).WithName("RemovePlot").WithSummary("Takes a plot out on which no lot is said to have grown; the history keeps it");
        origins.MapPost("/calculate/plot", CalculateAsync).WithName("CalculatePlot").WithSummary("Checks plots sent as GeoJSON or CSV, with their areas on the ellipsoid; stores nothing")
            .WithDescription("`doubts` tells of plots of the file that are the same place, overlap, lie more than 5 km outside of the outline of the country they name, look swapped, or are written with fewer than six decimals; each plot has those that are about it.")
            .WithMetadata(new RequestSizeLimitAttribute(PlotFile.MostBytes)).Accepts<string>(PlotExport.MediaType, "application/json", "text/csv");
    }

    private static async Task<Results<FileContentHttpResult, NotFound>> ExportAsync(Id<Producer> id, LedgerContext db, CancellationToken cancellationToken)
    {
        var name = await db.Producers.Where(one => one.Id == id).Select(one => one.Name).SingleOrDefaultAsync(cancellationToken);
        return name is null
            ? TypedResults.NotFound()
            : TypedResults.File(PlotExport.Write((await PlotsAsync(id, db, cancellationToken)).Select(plot => new ExportedPlot(name, plot)), int.MaxValue)[0], PlotExport.MediaType);
    }

    private static async Task<Results<Ok<HeldPlotsReply>, NotFound>> ListAsync(Id<Producer> id, LedgerContext db, WorldMap world, CancellationToken cancellationToken)
    {
        if (await db.Producers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } producer)
        {
            return TypedResults.NotFound();
        }

        var plots = await PlotsAsync(id, db, cancellationToken);
        return TypedResults.Ok(new HeldPlotsReply(plots.ConvertAll(HeldPlotReply.Of), PlotDoubts.Of(plots, producer.CountryCode, world.Outlines)));
    }

    private static async Task<Results<Created<AddedPlotReply>, NotFound>> AddAsync(Id<Producer> id, PlotRequest request, LedgerContext db, WorldMap world, CancellationToken cancellationToken)
    {
        if (await db.Producers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } producer)
        {
            return TypedResults.NotFound();
        }

        var plot = new Plot(id, request.Name ?? "", request.CountryCode ?? producer.CountryCode ?? "", PlotCorners.Shape(request.Corners), request.Hectares);
        var held = await PlotsAsync(id, db, cancellationToken);
        db.Add(plot);
        await db.SaveChangesAsync(cancellationToken);
        var doubts = PlotDoubts.Each([.. held, plot], producer.CountryCode, world.Outlines).Where(doubt => doubt.About.Contains(plot)).Select(doubt => doubt.Said);
        return TypedResults.Created($"/api/origins/producers/{id}/plots/held", new AddedPlotReply(HeldPlotReply.Of(plot), [.. doubts]));
    }

    private static async Task<Results<Ok<LoadedPlotsReply>, NotFound>> LoadAsync(
        Id<Producer> id, IFormFile file, PlotLoading loading, LedgerContext db, CancellationToken cancellationToken, [FromForm] bool commit = false, [FromForm] string? rows = null)
    {
        if (await db.Producers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } producer)
        {
            return TypedResults.NotFound();
        }

        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes, cancellationToken);
        var preview = await loading.ReadAsync(Path.GetFileName(file.FileName), bytes.ToArray(), producer, cancellationToken);
        var taken = string.IsNullOrWhiteSpace(rows) ? preview.Proposed : Rows(rows, preview);
        if (commit)
        {
            await loading.StoreAsync(preview, taken, cancellationToken);
        }

        return TypedResults.Ok(LoadedPlotsReply.Of(preview, taken, commit));
    }

    private static HashSet<int> Rows(string text, PlotPreview preview)
    {
        var rows = text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(one => int.TryParse(one, System.Globalization.CultureInfo.InvariantCulture, out var row) && preview.Plots.Any(plot => plot.Row == row)
                ? row
                : throw new RuleBrokenException($"Row {one} is no plot of this file that can be taken: name rows by their numbers, such as 1, 2, 5.", "rows"));
        return [.. rows];
    }

    private static async Task<Results<NoContent, NotFound>> RemoveAsync(Id<Plot> id, OriginActs acts, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await acts.RemoveAsync(id, null, cancellationToken) is null)
        {
            return TypedResults.NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.NoContent();
    }

    [StoresNothing]
    private static async Task<Ok<PlotsReply>> CalculateAsync(HttpRequest request, WorldMap world, CancellationToken cancellationToken)
    {
        Rule.Require(request.ContentLength is null or <= PlotFile.MostBytes, "The file is larger than 25 MB: split it.", "file");
        using var sent = new MemoryStream();
        await request.Body.CopyToAsync(sent, cancellationToken);
        return TypedResults.Ok(PlotsReply.Of(PlotFile.Read(sent.ToArray()), world.Outlines));
    }

    private static Task<List<Plot>> PlotsAsync(Id<Producer> producer, LedgerContext db, CancellationToken cancellationToken) =>
        db.Plots.AsNoTracking().Where(plot => plot.ProducerId == producer).OrderBy(plot => plot.Name).ThenBy(plot => plot.Id).ToListAsync(cancellationToken);
}
