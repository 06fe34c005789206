using GreenLedger.Data;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>What the house grades by: defect schemes and physical limits, each with its revisions.</summary>
internal static class GradingStandardsApi
{
    public static void MapStandards(this IEndpointRouteBuilder grading)
    {
        grading.MapGet("/schemes", SchemesAsync).WithName("ListDefectSchemes").WithSummary("The defect schemes, every revision")
            .WithDescription("Kinds of defects by their codes, and how many beans of each make one full defect. A grade names the `key` of the scheme that it was counted by; the code alone is the table as published.");
        grading.MapPost("/schemes", AddSchemeAsync).WithName("AddDefectScheme").WithSummary("Adds a defect scheme of the house, with the reason")
            .WithDescription("`from` is the key of the scheme whose kinds keep their codes; one without a code is new. All kinds and classes are sent. It can be named by the next grade.");
        grading.MapPost("/schemes/{id}/revisions", ReviseSchemeAsync).WithName("ReviseDefectScheme").WithSummary("Makes a new revision of a defect scheme, with a reason")
            .WithDescription("All kinds and classes are sent. A kind keeps its code; one without a code is new. Grades that were counted by the old revision keep it; 422 when there is a newer one.");
        grading.MapGet("/limits", LimitsAsync).WithName("ListPhysicalLimits").WithSummary("The physical limits, every revision");
        grading.MapPost("/limits/{id}/revisions", ReviseLimitsAsync).WithName("RevisePhysicalLimits").WithSummary("Makes a new revision of physical limits, with a reason")
            .WithDescription("All figures are sent; what is left out is not limited. Grades keep what they were held against.");
    }

    private static async Task<Ok<List<SchemeReply>>> SchemesAsync(LedgerContext db, CancellationToken cancellationToken) => TypedResults.Ok(
        (await db.SchemeRevisions.AsNoTracking().OrderBy(one => one.Code).ThenByDescending(one => one.Revision).ToListAsync(cancellationToken)).ConvertAll(SchemeReply.Of));

    [InArea("Cupping, leading")]
    private static async Task<Created<SchemeReply>> AddSchemeAsync(AddSchemeRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var standards = await db.GradingStandardsAsync(cancellationToken);
        var from = standards.Find(request.From);
        Rule.Require(request.From is null || from is not null, $"There is no defect table '{request.From}' here.", nameof(request.From));
        var head = new SchemeHead(request.Name, request.Edition, request.Source, request.IsRobusta);
        var scheme = DefectScheme.Add(
            head, from, request.SampleGrams ?? from?.SampleGrams ?? GreenGrade.UsualSample.Grams, KindRequest.All(request.Kinds), request.Classes ?? [], standards.All);
        var added = SchemeRevision.Add(scheme, request.Reason);
        db.Add(added);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created("/api/grading/schemes", SchemeReply.Of(added));
    }

    [InArea("Cupping, leading")]
    private static async Task<Results<Created<SchemeReply>, NotFound>> ReviseSchemeAsync(
        Id<SchemeRevision> id, ReviseSchemeRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.SchemeRevisions.SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } found)
        {
            return TypedResults.NotFound();
        }

        await db.RequireNewestAsync(found, cancellationToken);
        var revised = found.Revise(request.SampleGrams ?? found.Scheme.SampleGrams, KindRequest.All(request.Kinds), request.Classes ?? [], request.Reason);
        db.Add(revised);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created("/api/grading/schemes", SchemeReply.Of(revised));
    }

    private static async Task<Ok<List<PhysicalLimitsReply>>> LimitsAsync(LedgerContext db, CancellationToken cancellationToken) => TypedResults.Ok(
        (await db.LimitsRevisions.AsNoTracking().OrderBy(one => one.Code).ThenByDescending(one => one.Revision).ToListAsync(cancellationToken)).ConvertAll(PhysicalLimitsReply.Of));

    [InArea("Cupping, leading")]
    private static async Task<Results<Created<PhysicalLimitsReply>, NotFound>> ReviseLimitsAsync(
        Id<LimitsRevision> id, ReviseLimitsRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.LimitsRevisions.SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } found)
        {
            return TypedResults.NotFound();
        }

        await db.RequireNewestAsync(found, cancellationToken);
        var revised = found.Revise(request.Figures(await db.GradingStandardsAsync(cancellationToken)), request.Reason);
        db.Add(revised);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created("/api/grading/limits", PhysicalLimitsReply.Of(revised));
    }
}

/// <summary>A defect scheme in one revision; the reason is null as published.</summary>
internal sealed record SchemeReply(
    Guid Id, string Key, string Code, int Revision, string Name, string Edition, string Source, bool? IsRobusta, bool IsExportMethod,
    decimal SampleGrams, IReadOnlyList<DefectKind> Kinds, IReadOnlyList<QualityClass> Classes, string? Reason)
{
    public static SchemeReply Of(SchemeRevision one) => new(
        one.Id.Value, one.Scheme.Key, one.Code, one.Revision, one.Scheme.Name, one.Scheme.Edition, one.Scheme.Source, one.Scheme.IsRobusta, one.Scheme.IsExportMethod,
        one.Scheme.SampleGrams, one.Scheme.Kinds, one.Scheme.Classes, one.Reason);
}

internal sealed record KindRequest(string? Code, string? Name, int Category, decimal BeansPerFullDefect)
{
    /// <exception cref="RuleBrokenException">A line is empty.</exception>
    public static IReadOnlyList<DefectKind> All(IReadOnlyList<KindRequest?>? kinds)
    {
        Rule.Require(kinds is null || kinds.All(kind => kind is not null), "A line of the defects is empty: leave it out.", "Kinds");
        return [.. (kinds ?? []).Select(kind => new DefectKind(kind!.Code ?? "", kind.Name ?? "", kind.Category, kind.BeansPerFullDefect))];
    }
}

/// <summary>A table of the house: its name, whose it is, the species (both where it is left out), and all its lines.</summary>
internal sealed record AddSchemeRequest(
    string? Name, string? Edition, string? Source, bool? IsRobusta, string? From, decimal? SampleGrams, IReadOnlyList<KindRequest?>? Kinds, IReadOnlyList<QualityClass>? Classes, string? Reason);

internal sealed record ReviseSchemeRequest(decimal? SampleGrams, IReadOnlyList<KindRequest?>? Kinds, IReadOnlyList<QualityClass>? Classes, string? Reason);

/// <summary>Physical limits in one revision; what is null is not limited.</summary>
internal sealed record PhysicalLimitsReply(
    Guid Id, string Code, int Revision, string Name, bool IsRobusta, decimal LowestMoisturePercent, decimal HighestMoisturePercent, decimal? WaterActivityBelow,
    decimal? Category1, decimal? Category2, decimal? ExportDefects, string? CountedBy, int? QuakersIn100Grams, bool NoForeignOdour, decimal? LeastOnStatedScreenPercent, string? Reason)
{
    public static PhysicalLimitsReply Of(LimitsRevision one) => new(
        one.Id.Value, one.Code, one.Revision, one.Limits.Name, one.Limits.IsRobusta, one.Limits.LowestMoisture, one.Limits.HighestMoisture, one.Limits.WaterActivityBelow,
        one.Limits.Category1, one.Limits.Category2, one.Limits.ExportDefects, one.Limits.CountedBy, one.Limits.Quakers, one.Limits.NoForeignOdour, one.Limits.LeastOnStatedScreen, one.Reason);
}

internal sealed record ReviseLimitsRequest(
    decimal LowestMoisturePercent, decimal HighestMoisturePercent, decimal? WaterActivityBelow, decimal? Category1, decimal? Category2, decimal? ExportDefects,
    string? CountedBy, int? QuakersIn100Grams, bool NoForeignOdour, decimal? LeastOnStatedScreenPercent, string? Reason)
{
    public PhysicalLimits Figures(GradingStandards standards) => new(
        "", LowestMoisturePercent, HighestMoisturePercent, WaterActivityBelow, Category1, Category2, QuakersIn100Grams, ExportDefects, NoForeignOdour,
        LeastOnStatedScreenPercent, CountedBy: CountedBy, OwnTable: standards.OwnNameOf(CountedBy));
}
