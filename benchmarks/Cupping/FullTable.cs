using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Benchmarks.Cupping;

/// <summary>An open session with many cuppers, each with a token that a phone can show.</summary>
internal sealed record FullTable(Id<CuppingSession> Session, IReadOnlyList<string> Codes, IReadOnlyList<(Id<Person> Id, string Token)> Cuppers)
{
    private const int Samples = 10;

    public static async Task<FullTable> LayOutAsync(LedgerContext db, int cuppers)
    {
        await LedgerDatabase.PrepareAsync(db);
        var now = TimeProvider.System.GetUtcNow();
        var today = DateOnly.FromDateTime(now.UtcDateTime);
        var people = Enumerable.Range(1, cuppers).Select(number => (Person: new Person($"Cupper {number}", Role.Cupper), Token: $"gl_bench_{number}_{Guid.NewGuid():N}")).ToList();
        db.Add(new House("Bench house", Currency.Eur));
        db.AddRange(people.Select(one => one.Person));
        db.AddRange(people.Select(one => new ApiToken(one.Person.Id, "phone", ApiToken.HashOf(one.Token), now)));
        var form = await db.CuppingForms.SingleAsync(one => one.Id == CuppingForm.HundredPointId);
        var session = new CuppingSession("A full table", today, form, FormRules.UsualCups, people[0].Person.Id);
        for (var number = 1; number <= Samples; number++)
        {
            var lot = new Lot($"B-{number}", $"Lot {number}");
            var sample = new Sample(lot.Id, SampleKind.Offer, $"B{number}", today, Weight.FromGrams(350));
            db.AddRange(lot, sample);
            session.Pour(sample, $"{400 + (number * 7)}");
        }

        people.ForEach(one => session.Seat(one.Person, [.. Enumerable.Range(1, Samples)]));
        db.Add(session);
        await db.SaveChangesAsync();
        return new FullTable(session.Id, [.. session.Samples.Select(sample => sample.Code)], [.. people.Select(one => (one.Person.Id, one.Token))]);
    }
}
