using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Arrivals;

/// <summary>
/// Blind pairs as six cuppers scored them in handbook quality.md section 4.8. A pair is put into the ledger as a closed
/// session: twelve sheets typed by hand in a browser would take minutes and are tested where sheets are.
/// </summary>
internal static class BlindPairs
{
    private static readonly decimal[] Approved = [85.25m, 84.75m, 85.50m, 84.50m, 85.00m, 85.25m];
    private static readonly decimal[] Arrival = [84.75m, 84.25m, 85.00m, 84.25m, 84.50m, 85.25m];

    /// <param name="house">One with six people.</param>
    /// <param name="approved">The approved sample's label.</param>
    /// <param name="drawn">The label of the sample drawn from the arrival.</param>
    /// <param name="below">Points that every cupper gives the arrival less than in the handbook, in quarters.</param>
    public static Task CupAsync(HouseFixture house, string approved, string drawn, decimal below) => house.InLedgerAsync(async db =>
    {
        var now = DateTimeOffset.UtcNow;
        var people = await db.People.OrderBy(person => person.Id).Take(Approved.Length).ToListAsync();
        var form = await db.CuppingForms.SingleAsync(form => form.Id == CuppingForm.HundredPointId);
        var session = new CuppingSession($"{drawn} beside {approved}", DateOnly.FromDateTime(now.UtcDateTime), form, 5, people[0].Id);
        foreach (var (code, label, scores) in new[] { ("401", approved, Approved), ("402", drawn, [.. Arrival.Select(score => score - below)]) })
        {
            session.Pour(await db.Samples.SingleAsync(sample => sample.LabelCode == label), code);
            foreach (var (cupper, score) in people.Zip(scores))
            {
                session.Submit(code, cupper, Sheet(score), now);
            }
        }

        session.Close(people[0].Id, now, new ExpectedErrors(1.0, 0.5));
        db.Add(session);
        await db.SaveChangesAsync();
    });

    /// <summary>Thirty points of good cups, the rest over seven marks in steps of a quarter.</summary>
    private static SheetMarks Sheet(decimal score)
    {
        var quarters = (int)((score - 30m) * 4m);
        return new SheetMarks([.. Enumerable.Range(0, 7).Select(at => Mark.Of(((quarters / 7) + (at < quarters % 7 ? 1 : 0)) / 4m))], [5, 5, 5], [0, 0]);
    }
}
