using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Samples;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Which two samples of a lot an arrival is judged by.</summary>
internal static class ComparisonApi
{
    public static void MapComparison(this RouteGroupBuilder arrivals)
    {
        arrivals.MapGet("/{id}/comparison", FindAsync).WithName("ReadArrivalComparison").WithSummary("The two samples held against each other, what they come to, and the samples to choose from");
        arrivals.MapPost("/{id}/comparison", CompareAsync).WithName("CompareArrival").WithSummary("Says which sample was approved and which was drawn from the arrival")
            .WithDescription("One that is left out is no longer chosen. Sent with the `version` that was read, 409 when somebody was faster.");
    }

    private static async Task<Results<Ok<ComparisonReply>, NotFound>> FindAsync(Id<Arrival> id, ArrivalCaseQuery cases, CancellationToken cancellationToken) =>
        await cases.FindAsync(id, cancellationToken) is { } found ? TypedResults.Ok(ComparisonReply.Of(found)) : TypedResults.NotFound();

    private static async Task<Results<Ok<ComparisonReply>, NotFound>> CompareAsync(
        Id<Arrival> id, ComparisonRequest request, LedgerContext db, ArrivalCaseQuery cases, CancellationToken cancellationToken)
    {
        if (await db.Arrivals.SingleOrDefaultAsync(arrival => arrival.Id == id, cancellationToken) is not { } arrival)
        {
            return TypedResults.NotFound();
        }

        if (request.Version is { } version)
        {
            db.Entry(arrival).Property(one => one.Version).OriginalValue = version;
        }

        arrival.Compare(
            await SampleAsync(db, request.ApprovedSampleId, nameof(request.ApprovedSampleId), cancellationToken),
            await SampleAsync(db, request.ArrivalSampleId, nameof(request.ArrivalSampleId), cancellationToken));
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(ComparisonReply.Of((await cases.FindAsync(id, cancellationToken))!));
    }

    private static async Task<Sample?> SampleAsync(LedgerContext db, Guid? id, string field, CancellationToken cancellationToken)
    {
        if (id is not { } asked)
        {
            return null;
        }

        var sample = await db.Samples.SingleOrDefaultAsync(one => one.Id == new Id<Sample>(asked), cancellationToken);
        Rule.Require(sample is not null, "There is no such sample.", field);
        return sample;
    }
}

/// <summary>The two samples of an arrival's lot; one left out is not chosen.</summary>
/// <param name="ApprovedSampleId">What was approved.</param>
/// <param name="ArrivalSampleId">What was drawn from the arrival.</param>
/// <param name="Version">As it was read; left out, the newest is changed.</param>
internal sealed record ComparisonRequest(Guid? ApprovedSampleId = null, Guid? ArrivalSampleId = null, int? Version = null);

/// <summary>A received sample of the lot, to be chosen.</summary>
internal sealed record LotSampleReply(Guid Id, string LabelCode, SampleKind Kind, DateOnly ReceivedOn);

/// <summary>Two samples held against each other, and what they come to.</summary>
/// <param name="Cup">Null where they were not cupped; <paramref name="Missing"/> then says what is not there.</param>
/// <param name="Samples">Received samples of the lot, the newest first.</param>
internal sealed record ComparisonReply(
    int Version,
    Guid? ApprovedSampleId,
    Guid? ArrivalSampleId,
    ArrivalOutcome Quality,
    string QualitySentence,
    CupReply? Cup,
    string? Missing,
    IReadOnlyList<LimitVerdict> Limits,
    IReadOnlyList<LotSampleReply> Samples)
{
    public static ComparisonReply Of(ArrivalCase found)
    {
        var quality = found.Quality();
        return new ComparisonReply(
            found.Arrival.Version,
            found.Arrival.ApprovedSampleId?.Value,
            found.Arrival.ArrivalSampleId?.Value,
            quality.Outcome,
            quality.Sentence,
            quality.Cup is { } cup ? CupReply.Of(cup) : null,
            found.Evidence?.Missing,
            quality.Limits,
            [.. found.Samples.Select(sample => new LotSampleReply(sample.Id.Value, sample.LabelCode, sample.Kind, sample.ReceivedOn!.Value))]);
    }
}
