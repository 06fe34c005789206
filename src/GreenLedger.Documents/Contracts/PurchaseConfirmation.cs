using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Documents.Contracts;

/// <summary>The terms of a contract on paper, for both sides to sign: the version that holds, or the draft.</summary>
public static class PurchaseConfirmation
{
    public const string MediaType = "application/pdf";

    private const string NoAdvice =
        "This confirmation records what the parties agreed. It is not legal advice, and it is no text of the standard form: where it "
        + "says nothing, the standard form named above applies in the edition named, if the parties have agreed on it.";

    /// <param name="contract">The version in force, or the draft.</param>
    /// <param name="madeBy">Who asked for the paper.</param>
    /// <param name="at">When.</param>
    /// <param name="stream">Where to.</param>
    /// <param name="zone">The house's; UTC where none is given.</param>
    public static void Write(Contract contract, string madeBy, DateTimeOffset at, Stream stream, ClockZone? zone = null)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var version = contract.InForce ?? contract.Newest;
        var terms = version.Terms;
        var paper = new Paper($"Purchase confirmation {contract.Ref}", terms.Buyer, $"{terms.Buyer} · {contract.Ref}, version {version.Number}");
        paper.Text($"Purchase confirmation {contract.Ref}", TextStyle.Title);
        paper.Text(Status(version), TextStyle.Small);
        paper.Gap(8);
        paper.Text($"Seller: {terms.Seller}", TextStyle.Body);
        paper.Text($"Buyer: {terms.Buyer}", TextStyle.Body);
        paper.Text("Coffee", TextStyle.Heading);
        Lots(paper, terms);
        Lines(paper, Quality(terms));
        paper.Text("Price and delivery", TextStyle.Heading);
        Lines(paper, Price(terms));
        paper.Text("Weights, approval and disputes", TextStyle.Heading);
        Lines(paper, Conditions(terms));
        Fixings(paper, contract);
        paper.Gap(8);
        paper.Text(NoAdvice, TextStyle.Small);
        paper.Gap(28);
        paper.Text("For the seller: ______________________________      For the buyer: ______________________________", TextStyle.Body);
        paper.Text($"Printed by {madeBy}, {Printed.Moment(at, zone)}.", TextStyle.Small);
        paper.Save(stream);
    }

    private static string Status(ContractVersion version) => version.SignedOn is { } on
        ? $"Version {version.Number}, signed on {Printed.Day(on)}."
        : $"Version {version.Number}, a draft that nobody has signed.";

    private static void Lots(Paper paper, ContractTerms terms)
    {
        paper.Table(
            [new("Lot", 5), new("Crop", 1.4), new("Bags", 1.2, IsNumber: true), new("kg a bag", 1.4, IsNumber: true), new("kg net", 1.8, IsNumber: true)],
            [.. terms.Lots.Select(lot => (IReadOnlyList<PaperCell>)[new PaperCell(lot.Name, lot.Ref == lot.Name ? null : lot.Ref), lot.CropYear ?? "", Printed.Count(lot.Bags), Kilograms(lot.BagWeight), Kilograms(lot.Net())])]);
        paper.Text($"Total {Kilograms(terms.Net())} kg net, {Share(terms.Weights.Tolerance)} more or less.", TextStyle.Body);
    }

    private static IEnumerable<(string, string)> Quality(ContractTerms terms)
    {
        yield return ("Quality", terms.Quality.Description);
        if (terms.Quality.LeastScore is { } least)
        {
            yield return ("Least score", Printed.Points(least) + " points");
        }

        if (terms.Quality.Limits is { } limits)
        {
            yield return ("Agreed limits", string.Join("; ", limits.Words()));
        }

        if (terms.Certificates.Count > 0)
        {
            yield return ("Certificates", string.Join(", ", terms.Certificates));
        }
    }

    private static IEnumerable<(string, string)> Price(ContractTerms terms)
    {
        yield return ("Price", PriceWords(terms.Price));
        if (terms.Price.ProvisionalShare is { } share)
        {
            yield return ("Provisional invoice", $"{Share(share)} of market plus differential if shipped before all is fixed");
        }

        yield return ("Delivery", $"{terms.Delivery.Incoterm.Word()} {terms.Delivery.Place}{(terms.Delivery.Incoterm == Incoterm.ExWarehouse ? "" : " (Incoterms 2020)")}");
        yield return ("Shipment", $"{Printed.Day(terms.Delivery.ShipFrom)} to {Printed.Day(terms.Delivery.ShipUntil)}");
        yield return ("Payment", terms.Payment);
    }

    private static IEnumerable<(string, string)> Conditions(ContractTerms terms)
    {
        yield return ("Weights", $"{(terms.Weights.Basis == WeightBasis.Shipped ? "shipped" : "landed")} weights, franchise {Share(terms.Weights.Franchise)}");
        yield return ("Approval", ApprovalWords(terms.Approval));
        yield return ("Standard form", terms.Form.Name);
        yield return ("Arbitration", terms.Form.Arbitration);
        foreach (var (days, what, from) in new[] { (terms.Form.WeighWithinDays, "Weighing", terms.Form.WeighFrom.Word()), (terms.Form.QualityClaimDays, "Quality claim", terms.Form.QualityStart()), (terms.Form.OtherClaimDays, "Other claims", "discharge") })
        {
            if (days is { } count)
            {
                yield return (what, $"within {Printed.Count(count, "calendar day", "calendar days")} of {from}");
            }
        }

        if (terms.Note is { } note)
        {
            yield return ("Also agreed", note);
        }
    }

    private static void Fixings(Paper paper, Contract contract)
    {
        var fixings = contract.Fixings.Where(fixing => fixing.Counts).ToList();
        if (contract.Position is not { } position || fixings.Count == 0)
        {
            return;
        }

        paper.Text("Fixed so far", TextStyle.Heading);
        paper.Table(
            [new("Day", 2), new("Month", 1.4), new("Fixed", 2.4, IsNumber: true), new($"Level, {position.Market.QuoteUnit()}", 2, IsNumber: true), new("Differential", 1.8, IsNumber: true)],
            [.. fixings.Select(fixing => (IReadOnlyList<PaperCell>)[Printed.Day(fixing.On), fixing.Month.ToString(), FixingPosition.Said(position.Market, fixing.Weight), Printed.Amount(fixing.Level), Signed(fixing.Differential)])]);
        paper.Text(
            position.Final is { } final
                ? $"All is fixed: {Printed.Amount(final, 4)} {position.Market.QuoteUnit()} by weight."
                : $"{FixingPosition.Said(position.Market, position.Open)} open against {position.Month} {Signed(position.Differential)}.",
            TextStyle.Body);
    }

    private static string PriceWords(PriceTerms price) => price switch
    {
        { Outright: { } outright } => $"{Printed.Amount(outright.Amount, 4)} {outright.Currency} for one {outright.Unit.Sign()}, outright",
        { Month: { } month, Differential: { } differential } =>
            $"{month} {Signed(differential)} {month.Market.QuoteUnit()}, to be fixed at the {(price.Call == Caller.Seller ? "seller" : "buyer")}'s call, "
            + (price.MarketLots is { } lots ? Printed.Count(lots, "lot", "lots") + $" of {month.Market.Root()}" : "by weight")
            + (price.FixBy is { } by ? $", by {Printed.Day(by)}" : ""),
        { IsNotKnown: true } => "not known",
        _ => throw new ArgumentException("A contract has a price.", nameof(price)),
    };

    private static string ApprovalWords(ApprovalTerms approval) => (approval.Rule switch
    {
        ApprovalRule.Replace => $"subject to approval of the pre-shipment sample; after a refusal the seller may send a replacement sample, {approval.MostSamples} samples of a lot in all",
        ApprovalRule.Cancel => "subject to approval of the pre-shipment sample; no approval, no sale",
        _ => "none asked for",
    }) + (approval.By is { } by ? $"; to be given or refused by {Printed.Day(by)}" : "");

    private static void Lines(Paper paper, IEnumerable<(string Word, string Text)> lines)
    {
        foreach (var (word, text) in lines)
        {
            paper.Text($"{word}: {text}", TextStyle.Body);
        }
    }

    private static string Kilograms(Weight weight) => weight.Kilograms.ToString("#,0.###", System.Globalization.CultureInfo.InvariantCulture);

    private static string Share(Percent percent) => percent.Points.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) + " %";

    private static string Signed(decimal quoted) => quoted.ToString("+#,0.00##;−#,0.00##;±0.00", System.Globalization.CultureInfo.InvariantCulture);
}
