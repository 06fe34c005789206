using GreenLedger.Data;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Grades of green coffee. Those of samples that an open session seals for the caller are not among them.</summary>
internal static class GradingApi
{
    private const int MostRows = 10_000;

    public static void MapGradingApi(this IEndpointRouteBuilder api)
    {
        var grading = api.MapGroup("/grading").WithTags("Grading");
        grading.MapStandards();
        grading.MapGet("/grades", GradesAsync).WithName("ListGrades").WithSummary("Grades, the newest first")
            .WithDescription("`q` is a part of a label, lot or origin.");
        grading.MapGet("/grades/{id}", GradeAsync).WithName("ReadGrade").WithSummary("One grade with what was counted and the limits it is held against");
        grading.MapPost("/grades", WriteAsync).WithName("WriteGrade").WithSummary("Write down what was found on a sample")
            .WithDescription("Beans go by the codes of the defect table, screens by their number with 0 for the pan. What was not measured is left out: a missing value is never zero.");
        grading.MapPut("/grades/{id}", CorrectAsync).WithName("CorrectGrade").WithSummary("Corrects a grade; 409 with both versions when somebody changed it meanwhile")
            .WithDescription("As for writing a grade, with the `version` that was read. All of it is written anew, so send what stays as well: what is left out was not measured. Date and weight that are left out stay.");
        grading.MapPost("/grades/{id}/withdraw", WithdrawAsync).WithName("WithdrawGrade").WithSummary("Take a grade out of everything that is counted, with a reason")
            .WithDescription("It stays to be read, with who, when and why. Not found also while an open session keeps its sample from the caller.");
        grading.MapPost("/calculate/grade", CalculateAsync).WithName("CalculateGrade").WithSummary("The class and each limit of a grade; stores nothing")
            .WithDescription("As for writing a grade, without a label: `varieties` tell the species (arabica unless they say robusta), `scheme` is the key of a defect scheme.");
    }

    [StoresNothing]
    private static async Task<Ok<WholeGradeReply>> CalculateAsync(GradeRequest request, LedgerContext db, HouseZone house, CancellationToken cancellationToken)
    {
        var standards = await db.GradingStandardsAsync(cancellationToken);
        var draft = request.Draft();
        var on = request.GradedOn ?? house.Today;
        return TypedResults.Ok(WholeGradeReply.Of(draft.Onto(new GreenGrade(default, default, on, null, draft.Sample, request.Note), request.Varieties, standards), "", standards));
    }

    private static async Task<Ok<List<GradeReply>>> GradesAsync(
        GradeQuery query, Reader reader, CancellationToken cancellationToken, string? q = null, int skip = 0, int take = 100) =>
        TypedResults.Ok((await query.ListAsync(q, null, await reader.SealAsync(), Math.Max(0, skip), Math.Clamp(take, 1, MostRows), cancellationToken)).Select(GradeReply.Of).ToList());

    private static async Task<Results<Ok<WholeGradeReply>, NotFound>> GradeAsync(Id<GreenGrade> id, LedgerContext db, Reader reader, CancellationToken cancellationToken) =>
        await FindAsync(db, id, cancellationToken) is { } reply && !(await reader.SealAsync()).Covers(reply.SampleId)
            ? TypedResults.Ok(reply)
            : TypedResults.NotFound();

    private static async Task<Created<WholeGradeReply>> WriteAsync(
        GradeRequest request, LedgerContext db, HttpContext http, HouseZone house, CancellationToken cancellationToken)
    {
        var label = (request.LabelCode ?? "").Trim().ToUpperInvariant();
        var sample = await db.Samples.SingleOrDefaultAsync(sample => sample.LabelCode == label, cancellationToken);
        Rule.Require(sample is not null, label.Length == 0 ? "Give the label code of the sample that was graded." : $"No sample here has the label code {label}.", nameof(request.LabelCode));
        Rule.Require(sample.IsReceived, $"Sample {label} has not come yet: receive it first.", nameof(request.LabelCode));
        var draft = request.Draft();
        var on = request.GradedOn ?? house.Today;
        var grade = draft.Onto(
            new GreenGrade(sample.Id, sample.LotId, on, http.User.Person(), draft.Sample, request.Note),
            await db.VarietiesOfAsync(sample.Id, cancellationToken),
            await db.GradingStandardsAsync(cancellationToken));
        db.Add(grade);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created($"/api/grading/grades/{grade.Id}", (await FindAsync(db, grade.Id, cancellationToken))!);
    }

    private static async Task<Results<Ok<WholeGradeReply>, Conflict<GradeConflictReply>, NotFound>> CorrectAsync(
        Id<GreenGrade> id, GradeRequest request, LedgerContext db, Reader reader, CancellationToken cancellationToken)
    {
        if (await db.GreenGrades.Whole().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } grade
            || (await reader.SealAsync()).Covers(grade.SampleId.Value))
        {
            return TypedResults.NotFound();
        }

        var label = await LabelAsync(db, grade, cancellationToken);
        var yours = request.Onto(grade, label, await db.VarietiesOfAsync(grade.SampleId, cancellationToken), await db.GradingStandardsAsync(cancellationToken));
        db.Entry(grade).Property(one => one.Version).OriginalValue = yours.Version;
        db.Entry(grade).Property(one => one.Version).IsModified = true;
        try
        {
            await db.SaveChangesAsync(cancellationToken);
        }
        catch (DbUpdateConcurrencyException)
        {
            // Somebody was faster: who sent this needs both versions to compare them.
            db.ChangeTracker.Clear();
            return await FindAsync(db, id, cancellationToken) is { } stored
                ? TypedResults.Conflict(new GradeConflictReply("Somebody changed this grade. Compare both and send yours again on the stored version where it should stand.", yours, stored))
                : TypedResults.NotFound();
        }

        return TypedResults.Ok((await FindAsync(db, id, cancellationToken))!);
    }

    private static async Task<Results<Ok<WholeGradeReply>, NotFound>> WithdrawAsync(
        Id<GreenGrade> id, WithdrawRequest request, LedgerContext db, Reader reader, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        var grade = await db.GreenGrades.WithWithdrawn().SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
        if (grade is null || (await reader.SealAsync()).Covers(grade.SampleId.Value))
        {
            return TypedResults.NotFound();
        }

        grade.Withdraw(request.Reason, http.User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok((await FindAsync(db, id, cancellationToken))!);
    }

    private static async Task<WholeGradeReply?> FindAsync(LedgerContext db, Id<GreenGrade> id, CancellationToken cancellationToken)
    {
        if (await db.GreenGrades.AsNoTracking().WithWithdrawn().Whole().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } grade)
        {
            return null;
        }

        var label = await LabelAsync(db, grade, cancellationToken);
        var standards = await db.GradingStandardsAsync(cancellationToken);
        if (grade.Limits.Count == 0)
        {
            grade.Judge(await db.VarietiesOfAsync(grade.SampleId, cancellationToken), standards);
        }

        return WholeGradeReply.Of(grade, label, standards);
    }

    private static Task<string> LabelAsync(LedgerContext db, GreenGrade grade, CancellationToken cancellationToken) =>
        db.Samples.Where(sample => sample.Id == grade.SampleId).Select(sample => sample.LabelCode).SingleAsync(cancellationToken);
}
