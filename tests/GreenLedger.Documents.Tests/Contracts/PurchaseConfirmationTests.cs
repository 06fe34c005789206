using GreenLedger.Documents.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using UglyToad.PdfPig;

namespace GreenLedger.Documents.Tests.Contracts;

public sealed class PurchaseConfirmationTests
{
    private static readonly DateTimeOffset Now = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);
    private static readonly Id<Person> Buyer = Id<Person>.New();

    [Fact]
    public void It_names_the_form_says_that_it_is_no_legal_advice_and_prints_the_terms()
    {
        var contract = Draft();
        contract.Sign(new DateOnly(2026, 11, 25), null, Buyer, Now);
        contract.Fix(new FixingOrder(new DateOnly(2026, 11, 25), 2, null, 285.40m, null), Buyer, Now);

        var text = Printed(contract);

        Assert.Contains("ESCC, 2018, amended January 2021", text, StringComparison.Ordinal);
        Assert.Contains("It is not legal advice", text, StringComparison.Ordinal);
        Assert.Contains("signed on 25 Nov 2026", text, StringComparison.Ordinal);
        Assert.Contains("KCK27 +35.00 US cents/lb", text, StringComparison.Ordinal);
        Assert.Contains("86,250 kg net", text, StringComparison.Ordinal); // worked by hand: 1,250 x 69
        Assert.Contains("3 lots of KC open", text, StringComparison.Ordinal);
        Assert.Contains("Printed by Imke Adler, 25 Nov 2026, 15:00 UTC+3.", text, StringComparison.Ordinal); // Nairobi is three hours ahead of UTC (IANA time zone database)
    }

    [Fact]
    public void A_draft_says_that_nobody_has_signed_it() =>
        Assert.Contains("a draft that nobody has signed", Printed(Draft()), StringComparison.Ordinal);

    private static string Printed(Contract contract)
    {
        using var file = new MemoryStream();
        PurchaseConfirmation.Write(contract, "Imke Adler", Now, file, ClockZone.Of("Africa/Nairobi"));
        using var pdf = PdfDocument.Open(file.ToArray());
        return pdf.Words();
    }

    private static Contract Draft() => Contract.Draft(
        "P26-001",
        Id<Supplier>.New(),
        new ContractTerms(
            "Sorrel Roasters",
            "Cerro Alto Exports",
            [new ContractedLot(Id<Lot>.New(), "CA-17", "Cerro Alto washed", "2026/27", 1250, Weight.FromKilograms(69m))],
            new QualityTerms("Washed arabica, screen 16 and above", Score.Of(84m)),
            new PriceTerms(null, FuturesMonth.Of(FuturesMarket.Arabica, 2027, 5), 35.00m, 5, Caller.Buyer, null, null),
            new DeliveryTerms(Incoterm.Fob, "Cartagena", new DateOnly(2027, 2, 1), new DateOnly(2027, 3, 31)),
            new WeightTerms(WeightBasis.Shipped, Percent.Of(0.5m), Percent.Of(3m)),
            new ApprovalTerms(ApprovalRule.None, null, null),
            "Net cash against documents on first presentation",
            [],
            new FormTerms("ESCC, 2018, amended January 2021", "London", 21, 28, 45),
            null),
        new Dictionary<Id<Lot>, Id<Decision>>(),
        Buyer,
        Now);
}
