using GreenLedger.Data;
using GreenLedger.Data.Roasting;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Roasting;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Sample roasts. Those of samples that an open session seals for the caller are not among them.</summary>
internal static class RoastingApi
{
    private const int MostRows = 10_000;

    public static void MapRoastingApi(this IEndpointRouteBuilder api)
    {
        var roasting = api.MapGroup("/roasting").WithTags("Roasting");
        roasting.MapGet("/protocol", ProtocolAsync).WithName("ReadRoastProtocol").WithSummary("The windows that new roasts are held against");
        roasting.MapGet("/roasts", RoastsAsync).WithName("ListRoasts").WithSummary("Sample roasts, the newest first")
            .WithDescription("`q` is a part of a label, lot or origin.");
        roasting.MapPost("/roasts", WriteAsync).WithName("WriteRoast").WithSummary("Write down a sample roast")
            .WithDescription("Times are seconds from charging the batch; colours need the name of their scale. What was not measured is left out. Missing a window of the protocol is told, not refused.");
        roasting.MapPost("/roasts/{id}/withdraw", WithdrawAsync).WithName("WithdrawRoast").WithSummary("Take a sample roast out of everything that is counted, with a reason")
            .WithDescription("It stays to be read, with who, when and why. Not found also while an open session keeps its sample from the caller.");
        roasting.MapPut("/roasts/{id}", CorrectAsync).WithName("CorrectRoast").WithSummary("Correct a sample roast")
            .WithDescription("The whole roast is sent, with the version that was read; the sample, the end of the roast and the protocol stay. 409 when somebody was faster. Not found also while an open session keeps its sample from the caller.");
    }

    private static async Task<Ok<ProtocolReply>> ProtocolAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok(ProtocolReply.Of((await db.RoastProtocols.AsNoTracking().NewestAsync(cancellationToken))?.Windows ?? RoastWindows.Usual));

    private static async Task<Ok<List<RoastReply>>> RoastsAsync(
        RoastQuery query, Reader reader, CancellationToken cancellationToken, string? q = null, int skip = 0, int take = 100) =>
        TypedResults.Ok((await query.ListAsync(q, null, await reader.SealAsync(), Math.Max(0, skip), Math.Clamp(take, 1, MostRows), cancellationToken)).Select(RoastReply.Of).ToList());

    private static async Task<Created<RoastReply>> WriteAsync(
        RoastRequest request, LedgerContext db, RoastQuery query, Reader reader, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        var label = (request.LabelCode ?? "").Trim().ToUpperInvariant();
        Rule.Require(label.Length > 0, "Give the label code of the sample that was roasted.", nameof(request.LabelCode));
        var sample = await db.Samples.SingleOrDefaultAsync(one => one.LabelCode == label, cancellationToken);
        Rule.Require(sample is not null, $"No sample here has the label code {label}.", nameof(request.LabelCode));
        var protocol = await db.NewestOrUsualAsync(clock.GetUtcNow(), cancellationToken);
        var roast = request.Onto(new SampleRoast(sample, request.RoastedAt ?? clock.GetUtcNow(), http.User.Person(), protocol));
        db.Add(roast);
        await db.SaveChangesAsync(cancellationToken);
        var hidden = (await reader.SealAsync()).Covers(sample.Id.Value);
        var lot = hidden ? null : await db.Lots.AsNoTracking().SingleAsync(one => one.Id == sample.LotId, cancellationToken);
        return TypedResults.Created("/api/roasting/roasts", RoastReply.Of(new RoastRow(roast, sample.Id, label, lot?.Ref ?? "", lot?.Name ?? "", http.User.PersonName(), protocol.Windows)));
    }

    private static async Task<Results<Ok<RoastReply>, NotFound>> CorrectAsync(
        Id<SampleRoast> id, CorrectRoastRequest request, LedgerContext db, RoastQuery query, Reader reader, CancellationToken cancellationToken)
    {
        var roast = await db.SampleRoasts.SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
        if (roast is null || (await reader.SealAsync()).Covers(roast.SampleId.Value))
        {
            return TypedResults.NotFound();
        }

        db.Entry(roast).Property(one => one.Version).OriginalValue = request.Version;
        request.Onto(roast);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(RoastReply.Of((await query.FindAsync(id, cancellationToken))!));
    }

    private static async Task<Results<Ok<WithdrawnReply>, NotFound>> WithdrawAsync(
        Id<SampleRoast> id, WithdrawRequest request, LedgerContext db, Reader reader, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        var roast = await db.SampleRoasts.WithWithdrawn().SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
        if (roast is null || (await reader.SealAsync()).Covers(roast.SampleId.Value))
        {
            return TypedResults.NotFound();
        }

        roast.Withdraw(request.Reason, http.User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(WithdrawnReply.Of(roast.WithdrawnAt, roast.WithdrawnBecause)!);
    }
}

/// <summary>A sample roast; the end of the roast is now where it is not given.</summary>
internal sealed record RoastRequest(
    string? LabelCode,
    decimal MassInGrams,
    DateTimeOffset? RoastedAt = null,
    decimal? MassOutGrams = null,
    int? TotalSeconds = null,
    int? FirstCrackSeconds = null,
    string? ColourScale = null,
    decimal? WholeBean = null,
    decimal? Ground = null,
    DateTimeOffset? CuppingAt = null,
    string? Note = null)
{
    public SampleRoast Onto(SampleRoast roast) =>
        new CorrectRoastRequest(0, MassInGrams, MassOutGrams, TotalSeconds, FirstCrackSeconds, ColourScale, WholeBean, Ground, CuppingAt, Note).Onto(roast);
}

/// <summary>What was measured of a roast, whole; what is left out was not measured. The version is that of the reply that was read.</summary>
internal sealed record CorrectRoastRequest(
    int Version,
    decimal MassInGrams,
    decimal? MassOutGrams = null,
    int? TotalSeconds = null,
    int? FirstCrackSeconds = null,
    string? ColourScale = null,
    decimal? WholeBean = null,
    decimal? Ground = null,
    DateTimeOffset? CuppingAt = null,
    string? Note = null)
{
    public SampleRoast Onto(SampleRoast roast) => roast
        .Weigh(Weight.FromGrams(MassInGrams), MassOutGrams is { } left ? Weight.FromGrams(left) : null)
        .Time(TotalSeconds, FirstCrackSeconds)
        .Read(ColourScale, WholeBean is { } whole ? ColourReading.Of(whole) : null, Ground is { } ground ? ColourReading.Of(ground) : null)
        .CupAt(CuppingAt)
        .Remark(Note);
}

/// <summary>A window held against a roast; held is null where nothing was measured, or on another scale.</summary>
internal sealed record FindingReply(string What, string? Found, string Wanted, bool? Held);

/// <summary>A sample roast with its loss and the windows of its protocol.</summary>
internal sealed record RoastReply(
    Guid Id,
    int Version,
    string LabelCode,
    string LotRef,
    string LotName,
    DateTimeOffset RoastedAt,
    string? By,
    decimal MassInGrams,
    decimal? MassOutGrams,
    decimal? LossPercent,
    int? TotalSeconds,
    int? FirstCrackSeconds,
    string? ColourScale,
    decimal? WholeBean,
    decimal? Ground,
    DateTimeOffset? CuppingAt,
    decimal? RestHours,
    string? Protocol,
    IReadOnlyList<FindingReply> Findings)
{
    public static RoastReply Of(RoastRow row) => new(
        row.Roast.Id.Value,
        row.Roast.Version,
        row.LabelCode,
        row.LotRef,
        row.LotName,
        row.Roast.RoastedAt,
        row.By,
        row.Roast.MassIn.Grams,
        row.Roast.MassOut?.Grams,
        row.Roast.Loss?.Points,
        row.Roast.TotalSeconds,
        row.Roast.FirstCrackSeconds,
        row.Roast.ColourScale,
        row.Roast.WholeBean?.Value,
        row.Roast.Ground?.Value,
        row.Roast.CuppingAt,
        row.Roast.Rest is { } rest ? (decimal)rest.TotalMinutes / 60m : null,
        row.Windows?.Name,
        row.Windows is null ? [] : [.. RoastCheck.Of(row.Roast, row.Windows).Select(finding => new FindingReply(finding.What, finding.Found, finding.Wanted, finding.Held))]);
}

/// <summary>The windows of a protocol.</summary>
internal sealed record ProtocolReply(
    string Name, decimal LeastMinutes, decimal MostMinutes, decimal LeastRestHours, decimal MostRestHours, string? ColourScale, decimal? WholeBean, decimal? Ground, decimal ColourTolerance)
{
    public static ProtocolReply Of(RoastWindows windows) => new(
        windows.Name, windows.LeastMinutes, windows.MostMinutes, windows.LeastRestHours, windows.MostRestHours,
        windows.ColourScale, windows.WholeBean?.Value, windows.Ground?.Value, windows.ColourTolerance);
}
