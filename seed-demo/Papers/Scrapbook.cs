using System.Globalization;
using System.Text;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.SeedDemo.Offers;
using GreenLedger.SeedDemo.People;
using GreenLedger.SeedDemo.Samples;

namespace GreenLedger.SeedDemo.Papers;

/// <summary>What the house wrote down beside its records, and the papers that sellers sent along. All of it invented.</summary>
internal sealed class Scrapbook(Cast cast, DateTimeOffset now, Draw draw)
{
    private static readonly string[] OnLots =
    [
        "Met the people behind this lot at the fair in spring; the drying beds are new.",
        "Same hillside as the lot we had last year, picked two weeks later.",
        "Bags are lined. Ask for the lining with every shipment.",
        "The seller says that rain came early and the last pickings were left out.",
    ];

    private static readonly string[] OnOffers =
    [
        "They would split the lot from 20 bags.",
        "Asked for payment 30 days after arrival; answer outstanding.",
        "The price holds if we take it together with the sister lot.",
        "Ships at the end of next month at the earliest.",
    ];

    private static readonly string[] OnSamples =
    [
        "Roasted a touch darker than the others: taste again before deciding.",
        "Some silver skin left, otherwise clean to look at.",
        "Kept 100 g for comparison with the pre-shipment sample.",
        "Smells of the paper it came in; aired for a day.",
    ];

    private static readonly string[] OnContracts =
    [
        "Talked to the seller: the bags are marked and wait at the port.",
        "Our forwarder has the shipping instructions.",
        "Ask for the originals a week before the vessel is due.",
    ];

    private readonly List<object> _papers = [];

    /// <summary>Notes, attachments and the files behind them.</summary>
    public IReadOnlyList<object> Write(IReadOnlyCollection<Shelved> coffees, IReadOnlyList<Bag> bags, IReadOnlyList<Contract> contracts)
    {
        foreach (var coffee in draw.Some(coffees, 30))
        {
            Note(PapersOf.Lot, coffee.Lot.Id.Value, draw.Of(OnLots), cast.Buyer.Id, coffee.Since.AddDays(3));
        }

        foreach (var coffee in draw.Some(coffees.Where(coffee => coffee.Until is null), 24))
        {
            Note(PapersOf.Offer, coffee.Offer.Id.Value, draw.Of(OnOffers), cast.Buyer.Id, coffee.Since.AddDays(6));
        }

        foreach (var bag in draw.Some(bags, 30))
        {
            Note(PapersOf.Sample, bag.Sample.Id.Value, draw.Of(OnSamples), draw.Of(cast.Cuppers).Id, bag.ReceivedOn.AddDays(1));
        }

        foreach (var coffee in draw.Some(coffees.Where(coffee => coffee.Coffee.Certificates.Count > 0), 10))
        {
            Attach(PapersOf.Lot, coffee.Lot.Id.Value, $"certificate-{coffee.Coffee.Ref}.pdf", "application/pdf", PaperPdf.Of(Certificate(coffee)), coffee.Since.AddDays(4));
        }

        foreach (var coffee in draw.Some(coffees.Where(coffee => coffee.Until is null), 8))
        {
            Attach(PapersOf.Offer, coffee.Offer.Id.Value, $"letter-{coffee.Coffee.Ref}.txt", "text/plain", Encoding.UTF8.GetBytes(Letter(coffee)), coffee.Since.AddDays(2));
        }

        foreach (var bag in draw.Some(bags, 8))
        {
            Attach(PapersOf.Sample, bag.Sample.Id.Value, $"drying-{bag.Coffee.Coffee.Ref}.csv", "text/csv", Encoding.UTF8.GetBytes(DryingLog()), bag.ReceivedOn.AddDays(1));
        }

        foreach (var contract in draw.Some(contracts.Where(contract => contract.IsSigned), 6))
        {
            var signedOn = contract.Versions[0].SignedOn!.Value;
            Note(PapersOf.Contract, contract.Id.Value, draw.Of(OnContracts), cast.Buyer.Id, signedOn.AddDays(12));
            Attach(PapersOf.Contract, contract.Id.Value, $"signed-{contract.Ref}.pdf", "application/pdf", PaperPdf.Of(SignedCopy(contract)), signedOn.AddDays(1));
        }

        return _papers;
    }

    private void Note(PapersOf about, Guid id, string text, Id<Person> by, DateOnly on) => _papers.Add(new Note(about, id, text, by, At(on)));

    private void Attach(PapersOf about, Guid id, string name, string type, byte[] bytes, DateOnly on)
    {
        var file = new StoredFile(name, type, bytes, cast.Buyer.Id, At(on));
        _papers.Add(file);
        _papers.Add(new Attachment(about, id, file, cast.Buyer.Id, At(on)));
    }

    /// <summary>Never later than now.</summary>
    private DateTimeOffset At(DateOnly day)
    {
        var at = new DateTimeOffset(day.ToDateTime(new TimeOnly(draw.Between(9, 16), draw.Between(0, 59))), TimeSpan.Zero);
        return at < now ? at : now.AddHours(-1);
    }

    private static IReadOnlyList<string> Certificate(Shelved coffee) =>
    [
        "Specimen of a transaction certificate", "Made up for a demonstration: it certifies nothing.", "",
        $"Lot {coffee.Coffee.Ref}", $"Scheme: {string.Join(", ", coffee.Coffee.Certificates)}", $"Crop {coffee.Coffee.CropYear}",
        $"{coffee.Coffee.Bags} bags of {coffee.Coffee.BagKg.ToString(CultureInfo.InvariantCulture)} kg",
    ];

    private static IReadOnlyList<string> SignedCopy(Contract contract) =>
    [
        "Specimen of a signed contract", "Made up for a demonstration: nobody agreed on it.", "",
        $"Contract {contract.Ref}", $"Seller: {contract.Terms.Seller}", $"Buyer: {contract.Terms.Buyer}",
    ];

    private static string Letter(Shelved coffee) => $"""
        Dear Marthe,

        {coffee.Coffee.Name} ({coffee.Coffee.Ref}) is still free: {coffee.Coffee.Bags} bags.
        A sample can leave the same week. We hold the lot for ten days from today.

        With kind regards
        {coffee.Coffee.Seller.Name}
        """;

    /// <summary>Moisture of the parchment on the drying bed, morning by morning.</summary>
    private string DryingLog()
    {
        var log = new StringBuilder("Day,Moisture %,Highest temperature C\n");
        var moisture = draw.Between(38.0, 46.0);
        for (var day = 1; moisture > 11.5; day++)
        {
            log.Append(CultureInfo.InvariantCulture, $"{day},{moisture:0.0},{draw.Between(23.0, 31.0):0.0}\n");
            moisture -= moisture * draw.Between(0.06, 0.12);
        }

        return log.ToString();
    }
}
