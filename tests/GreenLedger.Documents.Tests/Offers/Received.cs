using GreenLedger.Documents.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;

namespace GreenLedger.Documents.Tests.Offers;

/// <summary>Loads a file as the ledger does: look, propose, read, compare.</summary>
internal static class Received
{
    public static DateOnly Today { get; } = new(2026, 11, 25);

    private static readonly DateTimeOffset Now = new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero);

    public static ListReference Reference() =>
        new(StandardCountries.All(), StandardProcessMethods.All(), new ListChecks(), Today);

    public static OfferMapping Propose(byte[] file, string name) =>
        MappingProposal.Of(ListLook.Of(OfferWorkbook.Read(file), name), Reference());

    public static ListReading Read(byte[] file, string name) => ListReading.Of(OfferWorkbook.Read(file), Propose(file, name), Reference());

    /// <summary>The file loaded from a supplier of which the ledger has these offers.</summary>
    public static ListOutcome Load(byte[] file, string name, Supplier supplier, IReadOnlyList<KnownOffer> known)
    {
        var mapping = Propose(file, name);
        var reading = ListReading.Of(OfferWorkbook.Read(file), mapping, Reference());
        var stored = new StoredFile(name, "application/octet-stream", file, null, Now);
        return OfferList.From(reading, new ListCase(supplier, stored, mapping, Today, known, [], Id<Person>.New(), Now));
    }

    public static byte[] Utf8(string text) => System.Text.Encoding.UTF8.GetBytes(text);
}
