using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>A closed session: the house reference under 401 and 402, another coffee under 403, cupped by two.</summary>
internal sealed record ClosedTable(Id<CuppingSession> SessionId, Id<Sample> Reference, Id<Sample> Other, Id<Person> Cupper)
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 24, 12, 0, 0, TimeSpan.Zero);

    private static readonly string[] Codes = ["401", "402", "403"];

    private static int _count;

    /// <param name="peeks">The cupper opened the key before scoring.</param>
    /// <param name="reopens">The lead opened the cupper's sheet for 403 again, which stood at 7.50 throughout and then at 7.75.</param>
    public static async Task<ClosedTable> CloseAsync(HouseFixture house, bool peeks = false, bool reopens = false)
    {
        await house.OpenHouseAsync();
        var number = Interlocked.Increment(ref _count);
        return await house.FromLedgerAsync(async db =>
        {
            var supplier = new Supplier($"Closed Exports {number}", SupplierKind.Exporter);
            var lots = new[] { new Lot($"CL-A{number}", $"Alto {number}", supplier.Id), new Lot($"CL-B{number}", $"Baixo {number}", supplier.Id) };
            var samples = lots.Select((lot, index) => new Sample(lot.Id, SampleKind.Offer, $"CT{number}{(char)('A' + index)}", new DateOnly(2026, 11, 20), Weight.FromGrams(300m))).ToArray();
            var form = await db.CuppingForms.SingleAsync(form => form.Id == CuppingForm.HundredPointId);
            var cupper = await db.People.FirstAsync(person => person.Roles == Role.Cupper);
            var leader = await db.People.FirstAsync(person => person.Roles == Role.LeadCupper);
            var session = new CuppingSession($"Closed table {number}", new DateOnly(2026, 11, 24), form, 5, leader.Id);
            session.Pour(samples[0], "401", isReference: true);
            session.Pour(samples[0], "402", isDuplicate: true, isReference: true);
            session.Pour(samples[1], "403");
            if (peeks)
            {
                session.OpenKey(cupper.Id, Noon);
            }

            Submit(session, cupper, 8.00m, 8.25m, 7.50m);
            Submit(session, leader, 7.75m, 8.00m, 7.50m);
            if (reopens)
            {
                session.Reopen("403", cupper.Id, "Took the wrong cup", leader.Id, Noon);
                session.Correct("403", cupper, new SheetMarks([.. Enumerable.Repeat(Mark.Of(7.75m), 7)], [5, 5, 5], [0, 0]), Noon);
            }

            session.Close(leader.Id, Noon, new ExpectedErrors(1.0, 0.5));
            db.AddRange([supplier, .. lots, .. samples, session]);
            await db.SaveChangesAsync();
            return new ClosedTable(session.Id, samples[0].Id, samples[1].Id, cupper.Id);
        });
    }

    private static void Submit(CuppingSession session, Person cupper, params decimal[] marks)
    {
        foreach (var (code, mark) in Codes.Zip(marks))
        {
            session.Submit(code, cupper, new SheetMarks([.. Enumerable.Repeat(Mark.Of(mark), 7)], [5, 5, 5], [0, 0]), Noon).Remark(["jasmine"], null, null);
        }
    }
}
