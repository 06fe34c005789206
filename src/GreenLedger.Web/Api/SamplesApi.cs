using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Samples;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Samples received. What an open cupping session seals for the caller is not among them.</summary>
internal static class SamplesApi
{
    private const int MostRows = 10_000;

    public static void MapSamplesApi(this IEndpointRouteBuilder api)
    {
        var samples = api.MapGroup("/samples").WithTags("Samples");
        samples.MapGet("/", SamplesAsync).WithName("ListSamples").WithSummary("Samples, the newest first")
            .WithDescription("`q` is a part of a label, lot or origin; `waiting` is `graded`, `roasted`, `cupped` or `decided`: what a sample that is here still waits for; `at` is the step where it stands. Samples on the table of an open session are left out for those who cup in it.");
        samples.MapGet("/{label}", SampleAsync).WithName("ReadSample").WithSummary("One sample, by its label code")
            .WithDescription("Not found also while an open session keeps the sample from the caller.");
        samples.MapPost("/", ReceiveAsync).WithName("ReceiveSample").WithSummary("Receive a sample of a lot")
            .WithDescription("One that came unasked. The lot is named by its reference or name. The answer gives the label code to write on the bag.");
        samples.MapPut("/{label}", CorrectAsync).WithName("CorrectSample").WithSummary("Corrects a sample; 409 with both versions when somebody changed it meanwhile")
            .WithDescription("All of it is sent, with the `version` that was read; a bag that is not here yet has neither a day of receipt nor a weight. Not found also while an open session keeps the sample from the caller.");
        samples.MapSampleSteps();
    }

    private static async Task<Ok<List<SampleReply>>> SamplesAsync(
        SampleQuery query, Reader reader, CancellationToken cancellationToken, string? q = null, SampleKind? kind = null, SampleStep? waiting = null, SampleStep? at = null, int skip = 0, int take = 100)
    {
        var rows = await query.ListAsync(new SampleFilter(q, kind, waiting, At: at, WithExpected: true), await reader.SealAsync(), Math.Max(0, skip), Math.Clamp(take, 1, MostRows), cancellationToken);
        return TypedResults.Ok(rows.Select(SampleReply.Of).ToList());
    }

    private static async Task<Results<Ok<SampleReply>, NotFound>> SampleAsync(string label, SampleQuery query, Reader reader, CancellationToken cancellationToken)
    {
        var rows = await query.ListAsync(new SampleFilter(label, WithExpected: true), await reader.SealAsync(), 0, MostRows, cancellationToken);
        return rows.FirstOrDefault(row => string.Equals(row.LabelCode, label.Trim(), StringComparison.OrdinalIgnoreCase)) is { } found
            ? TypedResults.Ok(SampleReply.Of(found))
            : TypedResults.NotFound();
    }

    private static async Task<Created<SampleReply>> ReceiveAsync(
        SampleRequest request, LedgerContext db, SampleQuery query, HttpContext http, HouseZone house, CancellationToken cancellationToken)
    {
        var named = Rule.Text(request.Lot, "The lot’s reference or name", 200, nameof(request.Lot));
        var lot = await SampleLots.FindAsync(db, named, nameof(request.Lot), cancellationToken);
        var labels = await db.NewLabelsAsync(cancellationToken);
        var sample = new Sample(
            lot, request.Kind, labels.Next(), request.ReceivedOn ?? house.Today, Weight.FromGrams(request.WeightGrams), request.Note, house.Zone)
            .ReceivedAs(request.BagCondition, http.User.Person());
        db.Add(sample);
        await db.SaveChangesAsync(cancellationToken);
        var row = (await query.ListAsync(new SampleFilter(sample.LabelCode), Seal.None, 0, MostRows, cancellationToken)).Single(one => one.Id == sample.Id);
        return TypedResults.Created($"/api/samples/{sample.LabelCode}", SampleReply.Of(row));
    }

    private static async Task<Results<Ok<CorrectionReply>, Conflict<SampleConflictReply>, NotFound>> CorrectAsync(
        string label, CorrectSampleRequest request, LedgerContext db, Reader reader, HouseZone house, CancellationToken cancellationToken)
    {
        var code = label.Trim().ToUpperInvariant();
        if (await db.Samples.SingleOrDefaultAsync(one => one.LabelCode == code, cancellationToken) is not { } sample || (await reader.SealAsync()).Covers(sample.Id.Value))
        {
            return TypedResults.NotFound();
        }

        var version = request.Onto(sample, house.Zone);
        var yours = CorrectionReply.Of(sample) with { Version = version };
        db.Entry(sample).Property(one => one.Version).OriginalValue = version;
        db.Entry(sample).Property(one => one.Version).IsModified = true;
        try
        {
            await db.SaveChangesAsync(cancellationToken);
        }
        catch (DbUpdateConcurrencyException)
        {
            // Somebody was faster: who sent this needs both versions to compare them.
            db.ChangeTracker.Clear();
            return await db.Samples.AsNoTracking().SingleOrDefaultAsync(one => one.LabelCode == code, cancellationToken) is { } stored
                ? TypedResults.Conflict(new SampleConflictReply("Somebody changed this sample. Compare both and send yours again on the stored version where it should stand.", yours, CorrectionReply.Of(stored)))
                : TypedResults.NotFound();
        }

        return TypedResults.Ok(CorrectionReply.Of(sample));
    }
}

/// <summary>A sample to receive: of the lot with this reference or name; today where no day is given.</summary>
internal sealed record SampleRequest(string? Lot, decimal WeightGrams, SampleKind Kind = SampleKind.Offer, DateOnly? ReceivedOn = null, string? Note = null, string? BagCondition = null);

/// <summary>A sample put right, on the version that was read. Day and weight are of a bag that is here.</summary>
internal sealed record CorrectSampleRequest(SampleKind Kind, DateOnly? ReceivedOn = null, decimal? WeightGrams = null, string? Note = null, int? Version = null)
{
    /// <summary>Corrects the sample and gives the version that it was read in.</summary>
    public int Onto(Sample sample, ClockZone zone)
    {
        Rule.Require(Version is not null, "Send the version that you read, so that nobody's change is lost.", nameof(Version));
        if (sample.IsReceived)
        {
            Rule.Require(ReceivedOn is not null, "Give the day on which the sample arrived.", nameof(ReceivedOn));
            Rule.Require(WeightGrams is not null, "Weigh the sample: how many grams of green coffee?", nameof(WeightGrams));
            sample.Correct(Kind, ReceivedOn.Value, Weight.FromGrams(WeightGrams.Value), Note, zone);
        }
        else
        {
            sample.Correct(Kind, Note);
        }

        return Version.Value;
    }
}

/// <summary>What of a sample can be corrected, as it stands.</summary>
internal sealed record CorrectionReply(string LabelCode, SampleKind Kind, DateOnly? ReceivedOn, decimal? WeightGrams, string? Note, int Version)
{
    public static CorrectionReply Of(Sample sample) => new(sample.LabelCode, sample.Kind, sample.ReceivedOn, sample.Weight?.Grams, sample.Note, sample.Version);
}

/// <summary>What was sent and what is stored, where somebody was faster.</summary>
internal sealed record SampleConflictReply(string Detail, CorrectionReply Yours, CorrectionReply Stored);

/// <summary>A sample with how far it has come; the score is the fitted one of its latest closed session.</summary>
internal sealed record SampleReply(
    Guid Id,
    string LabelCode,
    SampleKind Kind,
    DateOnly? ReceivedOn,
    decimal? WeightGrams,
    Guid LotId,
    string LotRef,
    string LotName,
    DateOnly? GradedOn,
    DateOnly? CuppedOn,
    decimal? Score,
    SampleStep? StandsAt,
    string? Note,
    int Version)
{
    public static SampleReply Of(SampleRow row) => new(
        row.Id.Value, row.LabelCode, row.Kind, row.ReceivedOn, row.Weight?.Grams, row.LotId.Value, row.LotRef, row.LotName, row.GradedOn, row.CuppedOn, row.Fitted?.Points, row.Stands?.Step, row.Note, row.Version);
}
