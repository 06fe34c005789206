using System.Net.Http.Json;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>Puts the people of a test at a table, and sends what their phones would.</summary>
internal static class Seats
{
    private static readonly string[] Marked = ["fragrance-aroma", "flavor", "aftertaste", "acidity", "body", "balance", "overall"];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>The persons of these roles cup; the table's two samples in the order of the table, and the other way round for every second one.</summary>
    public static Task SeatAsync(this HouseFixture house, Table table, params Role[] cuppers) => house.InLedgerAsync(async db =>
    {
        var session = await db.CuppingSessions.Whole().SingleAsync(session => session.Id == table.SessionId, Stop);
        foreach (var (role, index) in cuppers.Select((role, index) => (role, index)))
        {
            session.Seat(await PersonAsync(db, role), index % 2 == 0 ? [1, 2] : [2, 1]);
        }

        await db.SaveChangesAsync(Stop);
    });

    public static Task<Person> PersonAsync(Data.LedgerContext db, Role role) => db.People.FirstAsync(person => person.Roles == role, Stop);

    public static Task<HttpResponseMessage> ChangeAsync(
        this HttpClient phone, Table table, int sample, int version, Dictionary<string, string> values, Guid? key = null) => phone.PostAsJsonAsync(
        $"/api/cupping/sessions/{table.SessionId}/sheets/{table.Codes[sample]}/changes", new { key = key ?? Guid.NewGuid(), version, values }, Stop);

    public static Task<HttpResponseMessage> ActAsync(this HttpClient phone, Id<CuppingSession> session, string act, object? body = null) =>
        phone.PostAsJsonAsync($"/api/cupping/sessions/{session}/{act}", body ?? new { }, Stop);

    /// <summary>Every mark of the 100-point form alike.</summary>
    public static Dictionary<string, string> All(string mark) => Marked.ToDictionary(key => "mark." + key, _ => mark);
}
