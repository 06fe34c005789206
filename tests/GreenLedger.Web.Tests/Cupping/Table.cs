using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>Two lots whose names nobody can overlook, their samples, and an open session for them.</summary>
internal sealed record Table(Id<CuppingSession> SessionId, string[] Codes, string[] Labels, string[] SampleIds, string[] Coffees)
{
    private static readonly string[] Attributes = ["fragrance-aroma", "flavor", "aftertaste", "acidity", "body", "balance", "overall"];

    private static int _count;

    /// <summary>Everything that says what is in the cups: names and references, and the labels and identities of the samples.</summary>
    public IReadOnlyList<string> Secrets => [.. Coffees, .. Labels, .. SampleIds];

    public static async Task<Table> LayOutAsync(HouseFixture house, int cups = 5)
    {
        await house.OpenHouseAsync();
        var number = Interlocked.Increment(ref _count);
        return await house.FromLedgerAsync(async db =>
        {
            var supplier = new Supplier($"Exportadora Oculta {number}", SupplierKind.Exporter);
            var lots = new[] { new Lot($"SECRETREF-A{number}", $"Verborgener Hof {number}", supplier.Id), new Lot($"SECRETREF-B{number}", $"Finca Escondida {number}", supplier.Id) };
            var samples = lots.Select((lot, index) => new Sample(lot.Id, SampleKind.Offer, $"QX{number}{(char)('A' + index)}", new DateOnly(2026, 11, 20), Weight.FromGrams(300m))).ToArray();
            db.AddRange([supplier, .. lots, .. samples]);
            var form = await db.CuppingForms.SingleAsync(form => form.Id == CuppingForm.HundredPointId);
            var leader = await db.People.SingleAsync(person => person.Name == "A LeadCupper");
            var session = new CuppingSession($"Table {number}", new DateOnly(2026, 11, 24), form, cups, leader.Id);
            foreach (var sample in samples)
            {
                session.Pour(sample, new Random(number));
            }

            db.Add(session);
            await db.SaveChangesAsync();
            return new Table(
                session.Id,
                [.. session.Samples.Select(sample => sample.Code)],
                [.. samples.Select(sample => sample.LabelCode)],
                [.. samples.Select(sample => sample.Id.ToString())],
                [supplier.Name, .. lots.SelectMany(lot => new[] { lot.Ref, lot.Name, lot.Id.ToString() })]);
        });
    }

    /// <summary>The fields of a 100-point sheet with one mark throughout.</summary>
    public static Dictionary<string, string> Marks(string mark) =>
        Attributes.ToDictionary(key => $"Input.Marks[{key}]", _ => mark);
}
