using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>What the house cups by: forms, words, habits and the protocol, as their pages have them.</summary>
internal static class CuppingHouseApi
{
    public static void MapHouse(this IEndpointRouteBuilder cupping)
    {
        cupping.MapPost("/forms/{id}/revisions", ReviseFormAsync).WithName("ReviseForm").WithSummary("Makes a new revision of a form, with a reason.")
            .WithDescription("The whole rules are sent, with the attributes of the form. Sessions that were cupped on the old revision keep it; 422 when there is a newer one.");
        cupping.MapGet("/descriptive-forms", DescriptiveFormsAsync).WithName("ListDescriptiveForms").WithSummary("The forms beside the score, with their intensities and words.");
        cupping.MapPost("/descriptive-forms/{id}/revisions", ReviseDescriptiveAsync).WithName("ReviseDescriptiveForm").WithSummary("Makes a new revision of a descriptive form, with a reason.");
        cupping.MapGet("/descriptors", DescriptorsAsync).WithName("ListDescriptors").WithSummary("The house's words for what is tasted, family by family.");
        cupping.MapPost("/descriptors", AddWordAsync).WithName("AddDescriptor").WithSummary("Adds a word to the house's list.");
        cupping.MapPut("/descriptors/{id}", ChangeWordAsync).WithName("ChangeDescriptor").WithSummary("Puts a word right, sorts it into another family, or stops offering it; 409 when somebody was faster.")
            .WithDescription("All of it is sent, with the `version` that was read. Sheets keep the word as it was written on them.");
        cupping.MapPost("/descriptors/families/rename", RenameFamilyAsync).WithName("RenameDescriptorFamily").WithSummary("Renames a family of words; under the name of another one, the two become one.");
        cupping.MapPut("/habits", ChangeHabitsAsync).WithName("ChangeCuppingHabits").WithSummary("Changes what the house does at every table; 409 when somebody was faster.")
            .WithDescription("All of it is sent, with the `version` that was read.");
        cupping.MapGet("/protocol", ProtocolAsync).WithName("ReadTastingProtocol").WithSummary("The steps of a tasting with their times after the pour.");
        cupping.MapPost("/protocol/revisions", RetimeAsync).WithName("RetimeTastingProtocol").WithSummary("Gives the steps of a tasting other times, with a reason; the next session goes by them.");
    }

    [InArea("Cupping, leading")]
    private static async Task<Results<Created<FormReply>, NotFound>> ReviseFormAsync(
        Id<CuppingForm> id, ReviseFormRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.CuppingForms.SingleOrDefaultAsync(form => form.Id == id, cancellationToken) is not { } found)
        {
            return TypedResults.NotFound();
        }

        await db.RequireNewestAsync(found, cancellationToken);
        Rule.Require(request.Rules is not null, "Send the rules of the form, as reading it gives them.", nameof(request.Rules));
        var revised = found.Revise(request.Rules, request.Reason ?? "");
        db.Add(revised);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created("/api/cupping/forms", FormReply.Of(revised));
    }

    private static async Task<Ok<List<DescriptiveFormReply>>> DescriptiveFormsAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        var forms = await db.DescriptiveForms.AsNoTracking().OrderBy(form => form.Name).ThenByDescending(form => form.Revision).ToListAsync(cancellationToken);
        return TypedResults.Ok(forms.ConvertAll(DescriptiveFormReply.Of));
    }

    [InArea("Cupping, leading")]
    private static async Task<Results<Created<DescriptiveFormReply>, NotFound>> ReviseDescriptiveAsync(
        Id<DescriptiveForm> id, ReviseDescriptiveRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.DescriptiveForms.SingleOrDefaultAsync(form => form.Id == id, cancellationToken) is not { } found)
        {
            return TypedResults.NotFound();
        }

        await db.RequireNewestAsync(found, cancellationToken);
        Rule.Require(request.Rules is not null, "Send the rules of the form, as reading it gives them.", nameof(request.Rules));
        var revised = found.Revise(request.Rules, request.Reason);
        db.Add(revised);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created("/api/cupping/descriptive-forms", DescriptiveFormReply.Of(revised));
    }

    private static async Task<Ok<List<DescriptorReply>>> DescriptorsAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok((await db.Descriptors.AsNoTracking().OrderBy(word => word.Family).ThenBy(word => word.Word).ToListAsync(cancellationToken)).ConvertAll(DescriptorReply.Of));

    [InArea("Cupping, leading")]
    private static async Task<Created<DescriptorReply>> AddWordAsync(DescriptorRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var word = new Descriptor(request.Word ?? "", request.Family ?? Descriptor.Unsorted);
        word.Retire(request.IsRetired);
        await db.RequireNewWordAsync(word, cancellationToken);
        db.Add(word);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created("/api/cupping/descriptors", DescriptorReply.Of(word));
    }

    [InArea("Cupping, leading")]
    private static async Task<Results<Ok<DescriptorReply>, NotFound>> ChangeWordAsync(
        Id<Descriptor> id, DescriptorRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.Descriptors.SingleOrDefaultAsync(word => word.Id == id, cancellationToken) is not { } found)
        {
            return TypedResults.NotFound();
        }

        db.Entry(found).Property(word => word.Version).OriginalValue = Read(request.Version);
        found.Sort(request.Word, request.Family);
        found.Retire(request.IsRetired);
        await db.RequireNewWordAsync(found, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(DescriptorReply.Of(found));
    }

    [InArea("Cupping, leading")]
    private static async Task<Ok<List<DescriptorReply>>> RenameFamilyAsync(RenameFamilyRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var words = await db.Descriptors.Where(word => word.Family == request.From).OrderBy(word => word.Word).ToListAsync(cancellationToken);
        Rule.Require(words.Count > 0, $"There is no family '{request.From}'.", nameof(request.From));
        words.ForEach(word => word.Sort(word.Word, request.To));
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(words.ConvertAll(DescriptorReply.Of));
    }

    [InArea("Cupping, leading")]
    private static async Task<Ok<HabitsReply>> ChangeHabitsAsync(HabitsRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var habits = await db.CuppingHabits.SingleAsync(cancellationToken);
        db.Entry(habits).Property(one => one.Version).OriginalValue = Read(request.Version);
        habits.Change(request.CupMilliliters, Weight.FromGrams(request.DoseGramsPerLiter), request.Water, request.MostInFlight, request.DescriptiveForm);
        habits.Expect(request.StatedRepeatability is { } points ? Score.Of(points) : null);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(HabitsReply.Of(habits));
    }

    private static async Task<Ok<TastingProtocolReply>> ProtocolAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok(TastingProtocolReply.Of(await db.NewestProtocolAsync(cancellationToken)));

    [InArea("Cupping, leading")]
    private static async Task<Created<TastingProtocolReply>> RetimeAsync(RetimeRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var revised = (await db.NewestProtocolAsync(cancellationToken)).Retime(request.AfterSeconds ?? new Dictionary<string, int>(), request.Reason);
        db.Add(revised);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created("/api/cupping/protocol", TastingProtocolReply.Of(revised));
    }

    private static int Read(int? version)
    {
        Rule.Require(version is not null, "Send the version that you read, so that nobody's change is lost.", "Version");
        return version.Value;
    }
}
