using GreenLedger.Data;
using GreenLedger.Data.Roasting;
using GreenLedger.Data.Samples;
using GreenLedger.Documents.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Samples;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>The steps of a sample's way for scripts: the same acts as on the pages.</summary>
internal static class SampleStepsApi
{
    public static void MapSampleSteps(this IEndpointRouteBuilder samples)
    {
        samples.MapPost("/requests", AskAsync).WithName("AskForSamples").WithSummary("Ask for samples of lots")
            .WithDescription("Lots are named by reference or name; without a supplier it is whoever offers the lot. The answer gives the label codes for the bags.");
        samples.MapGet("/{label}/way", WayAsync).WithName("ReadSampleWay").WithSummary("The steps of a sample: what happened, was skipped or comes next")
            .WithDescription("Not found also while an open session keeps the sample from the caller.");
        samples.MapGet("/{label}/letter", LetterAsync).WithName("ReadRequestLetter").WithSummary("The letter that asks the supplier for a sample, as text")
            .WithDescription("It names all samples asked of the same supplier on that day and not here yet. Not found for a sample that came unasked, and while an open session keeps it from the caller.");
        samples.MapPost("/{label}/send", SendAsync).WithName("SendSample").WithSummary("Write down that a sample is on the way");
        samples.MapPost("/{label}/receive", ReceiveAsync).WithName("ReceiveAskedSample").WithSummary("Receive a sample that was asked for");
        samples.MapPost("/{label}/back", BackAsync).WithName("TakeSampleStepBack").WithSummary("Take the last step back, with a reason")
            .WithDescription("Refused once the sample was graded, roasted or laid out.");
        samples.MapPost("/{label}/left", LeftAsync).WithName("WeighWhatIsLeft").WithSummary("Write down how much green coffee of a sample is left, with a reason")
            .WithDescription("0 where nothing was kept. Roasts after that are taken off it.");
        samples.MapGet("/label-sheets", () => TypedResults.Ok(LabelSheet.Usual)).WithName("ListLabelSheets").WithSummary("Sizes of label sheets, in millimetres");
    }

    private static async Task<Created<List<AskedReply>>> AskAsync(AskRequest request, LedgerContext db, HttpContext http, HouseZone house, CancellationToken cancellationToken)
    {
        Rule.Require(request.Lots is { Count: > 0 } && request.Lots.All(lot => lot is not null), "Name the lots, by reference or name, that a sample is asked of.", nameof(request.Lots));
        var asking = new SampleAsking(request.Supplier, request.Kind, Weight.FromGrams(request.WeightGrams), request.AskedOn ?? house.Today, request.Note);
        var samples = await asking.AskAsync(db, [.. request.Lots!.Select(lot => lot.Trim()).Where(lot => lot.Length > 0)], http.User.Person(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created("/api/samples", samples.Select(sample => new AskedReply(sample.Id.Value, sample.LabelCode, sample.LotId.Value)).ToList());
    }

    private static async Task<Results<Ok<WayReply>, NotFound>> WayAsync(string label, LedgerContext db, SampleWayQuery ways, Reader reader, HouseZone house, CancellationToken cancellationToken)
    {
        if (await FindAsync(db, label, cancellationToken) is not { } sample || (await reader.SealAsync()).Covers(sample.Id.Value))
        {
            return TypedResults.NotFound();
        }

        return TypedResults.Ok(await ReplyAsync(db, sample, ways, house, cancellationToken));
    }

    [InArea("Offers")]
    private static async Task<Results<Ok<RequestLetterReply>, NotFound>> LetterAsync(string label, LedgerContext db, Reader reader, HttpContext http, CancellationToken cancellationToken) =>
        await FindAsync(db, label, cancellationToken) is { } sample
        && await RequestLetters.FindAsync(db, sample, await reader.SealAsync(), http.User.PersonName(), cancellationToken) is { } letter
            ? TypedResults.Ok(RequestLetterReply.Of(letter))
            : TypedResults.NotFound();

    private static Task<Results<Ok<WayReply>, NotFound>> SendAsync(
        string label, SendRequest request, LedgerContext db, SampleWayQuery ways, Reader reader, HttpContext http, HouseZone house, CancellationToken cancellationToken) =>
        ActAsync(
            label, db, ways, reader, house,
            sample =>
            {
                sample.Send(request.SentOn ?? house.Today, request.Courier, request.TrackingNumber, http.User.Person());
                return Task.CompletedTask;
            },
            cancellationToken);

    private static Task<Results<Ok<WayReply>, NotFound>> ReceiveAsync(
        string label, ReceiveRequest request, LedgerContext db, SampleWayQuery ways, Reader reader, HttpContext http, HouseZone house, CancellationToken cancellationToken) =>
        ActAsync(
            label, db, ways, reader, house,
            sample =>
            {
                sample.Receive(request.ReceivedOn ?? house.Today, Weight.FromGrams(request.WeightGrams), request.BagCondition, http.User.Person(), house.Zone);
                return Task.CompletedTask;
            },
            cancellationToken);

    private static Task<Results<Ok<WayReply>, NotFound>> BackAsync(
        string label, BackRequest request, LedgerContext db, SampleWayQuery ways, Reader reader, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken) =>
        ActAsync(
            label, db, ways, reader, house,
            async sample => sample.TakeBack(request.Reason, await db.IsUsedAsync(sample, cancellationToken), http.User.Person(), clock.GetUtcNow()),
            cancellationToken);

    private static Task<Results<Ok<WayReply>, NotFound>> LeftAsync(
        string label, LeftRequest request, LedgerContext db, SampleWayQuery ways, Reader reader, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken) =>
        ActAsync(
            label, db, ways, reader, house,
            sample =>
            {
                sample.WeighLeft(Weight.FromGrams(request.LeftGrams), request.Reason, http.User.Person(), clock.GetUtcNow());
                return Task.CompletedTask;
            },
            cancellationToken);

    private static async Task<Results<Ok<WayReply>, NotFound>> ActAsync(
        string label, LedgerContext db, SampleWayQuery ways, Reader reader, HouseZone house, Func<Sample, Task> act, CancellationToken cancellationToken)
    {
        if (await FindAsync(db, label, cancellationToken) is not { } sample || (await reader.SealAsync()).Covers(sample.Id.Value))
        {
            return TypedResults.NotFound();
        }

        await act(sample);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(await ReplyAsync(db, sample, ways, house, cancellationToken));
    }

    private static Task<Sample?> FindAsync(LedgerContext db, string label, CancellationToken cancellationToken)
    {
        var code = label.Trim().ToUpperInvariant();
        return db.Samples.Include(sample => sample.SetBacks).SingleOrDefaultAsync(sample => sample.LabelCode == code, cancellationToken);
    }

    private static async Task<WayReply> ReplyAsync(LedgerContext db, Sample sample, SampleWayQuery ways, HouseZone house, CancellationToken cancellationToken)
    {
        var people = sample.SetBacks.Select(back => back.By).ToList();
        var names = await db.People.Where(person => people.Contains(person.Id)).ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
        var way = await ways.FindAsync(sample, house.Today, cancellationToken);
        return new WayReply(
            sample.LabelCode,
            sample.IsReceived ? (await db.LeftOfAsync([sample], cancellationToken))[sample.Id].Grams : null,
            sample.LeftBecause,
            [.. way.Stops.Select(StopReply.Of)],
            way.Decided is { } decided ? new DecidedReply(decided.Kind, decided.Record) : null,
            way.Unjudged is { } unjudged ? new UnjudgedReply(unjudged.ContractId.Value, unjudged.What, unjudged.On) : null,
            [.. sample.SetBacks.Select(back => new SetBackReply(back.Step, back.On, back.Said, back.Reason, names.GetValueOrDefault(back.By), back.At))]);
    }
}

/// <summary>Samples to ask for, one of each lot.</summary>
internal sealed record AskRequest(
    IReadOnlyList<string>? Lots, string? Supplier = null, SampleKind Kind = SampleKind.Offer, decimal WeightGrams = 500m, DateOnly? AskedOn = null, string? Note = null);

/// <summary>A sample that was asked for, with the code for its bag.</summary>
internal sealed record AskedReply(Guid Id, string LabelCode, Guid LotId);

/// <summary>The letter to the supplier, who is null where it goes to whoever offers the lot.</summary>
/// <param name="Language">That of the letter, as written down for the supplier; null is English.</param>
internal sealed record RequestLetterReply(string? Supplier, string? Email, string? Language, DateOnly AskedOn, IReadOnlyList<string> LabelCodes, string Text)
{
    public static RequestLetterReply Of(AskedLetter letter) => new(
        letter.Request.Supplier, letter.Email, letter.Request.Language, letter.Request.On,
        [.. letter.Request.Samples.Select(sample => sample.LabelCode)], RequestLetter.Text(letter.Request));
}

/// <summary>That a sample is on the way; today where no day is given.</summary>
internal sealed record SendRequest(DateOnly? SentOn = null, string? Courier = null, string? TrackingNumber = null);

/// <summary>That a sample is here; today where no day is given.</summary>
internal sealed record ReceiveRequest(decimal WeightGrams, DateOnly? ReceivedOn = null, string? BagCondition = null);

/// <summary>Why the last step does not hold.</summary>
internal sealed record BackRequest(string Reason);

/// <summary>What is left of a sample, 0 where nothing was kept.</summary>
internal sealed record LeftRequest(decimal LeftGrams, string? Reason = null);

/// <summary>A sample's way, the record that decided it or why nobody will, and the steps that were taken back.</summary>
/// <param name="LeftGrams">Green coffee still kept; null while it is not here.</param>
/// <param name="LeftBecause">Why somebody weighed it; null where it is only reckoned.</param>
internal sealed record WayReply(
    string LabelCode, decimal? LeftGrams, string? LeftBecause, IReadOnlyList<StopReply> Way, DecidedReply? Decided, UnjudgedReply? Unjudged, IReadOnlyList<SetBackReply> TakenBack);

/// <summary>A pre-shipment sample that nobody judged in time: what happened to the goods, on which contract and day.</summary>
internal sealed record UnjudgedReply(Guid Contract, string What, DateOnly On);

/// <summary>What decided a sample: the identity of a decision, of the contract that has the approval, or of the arrival.</summary>
internal sealed record DecidedReply(DecidedBy By, Guid Record);

/// <summary>One step: days waiting only where the sample stands.</summary>
internal sealed record StopReply(SampleStep Step, StepState State, DateOnly? On, string? By, string? Figure, int? WaitingDays, bool IsLate)
{
    public static StopReply Of(SampleStop stop) => new(stop.Step, stop.State, stop.Taken?.On, stop.Taken?.By, stop.Taken?.Figure, stop.WaitingDays, stop.IsLate);
}

/// <summary>A step that was taken back.</summary>
internal sealed record SetBackReply(SampleStep Step, DateOnly On, string Said, string Reason, string? By, DateTimeOffset At);
