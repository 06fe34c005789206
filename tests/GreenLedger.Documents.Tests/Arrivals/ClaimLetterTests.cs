using GreenLedger.Documents.Arrivals;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Examples;
using UglyToad.PdfPig;

namespace GreenLedger.Documents.Tests.Arrivals;

public sealed class ClaimLetterTests
{
    [Fact]
    public void It_prints_grounds_findings_amount_and_evidence_and_says_that_it_is_no_legal_advice()
    {
        var text = Printed(new ShortArrival().Open(new ClaimOrder(
            ShortArrival.Claimed, [ClaimGround.Weight, ClaimGround.Cup, ClaimGround.Condition], PricePerWeight.FromCentsPerPound(5m), Words: "The lot stays untouched until the end of May.")));

        Assert.Contains("To: Cerro Alto Exports", text, StringComparison.Ordinal);
        Assert.Contains("on these grounds: quality in the cup, weight, condition.", text, StringComparison.Ordinal);
        // Handbook, trade 8, example G: 639.09; worked by hand in ClaimTests: 2,071.24, together 2,710.33.
        Assert.Contains("185 kg less 94.875 kg is 90.125 kg, at 321.65 ¢/lb worth 639.09 USD.", text, StringComparison.Ordinal);
        Assert.Contains("Together 2,710.33 USD.", text, StringComparison.Ordinal);
        Assert.Contains("it cupped 1.75 points below the approved sample", text, StringComparison.Ordinal);
        Assert.Contains("Received 2 wet.", text, StringComparison.Ordinal);
        // Handbook, trade, check value 36.
        Assert.Contains("Claim on quality: 28 calendar days from discharge, the last on 31 Mar 2026; done on 25 Mar 2026", text, StringComparison.Ordinal);
        Assert.Contains("wet-bags.png", text, StringComparison.Ordinal);
        Assert.Contains("ESCC, 2018, amended January 2021. Arbitration: London.", text, StringComparison.Ordinal);
        Assert.Contains("It is not legal advice", text, StringComparison.Ordinal);
        Assert.Contains("UTC+3.", text[text.IndexOf("Printed by Imke Adler", StringComparison.Ordinal)..], StringComparison.Ordinal); // Nairobi (IANA time zone database)
        Assert.Contains("The lot stays untouched until the end of May.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_late_claim_says_so_and_why_and_an_amount_may_follow()
    {
        var text = Printed(new ShortArrival().Open(new ClaimOrder(new DateOnly(2026, 4, 2), [ClaimGround.Cup], LateReason: "The sample was held at the port.")));

        Assert.Contains("done on 2 Apr 2026, late", text, StringComparison.Ordinal);
        Assert.Contains("The sample was held at the port.", text, StringComparison.Ordinal);
        Assert.Contains("The amount follows.", text, StringComparison.Ordinal);
    }

    private static string Printed(Claim claim)
    {
        using var file = new MemoryStream();
        ClaimLetter.Write(claim, "Imke Adler", ShortArrival.Now, file, ClockZone.Of("Africa/Nairobi"));
        using var pdf = PdfDocument.Open(file.ToArray());
        return pdf.Words();
    }
}
