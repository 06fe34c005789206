using System.Globalization;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Documents.Arrivals;

/// <summary>A claim as a letter to the seller: grounds, findings, amount and evidence as they were frozen when it was opened.</summary>
public static class ClaimLetter
{
    public const string MediaType = "application/pdf";

    private const string NoAdvice =
        "This letter states what the buyer found and claims. It is not legal advice and no text of the standard form: the contract and the "
        + "standard form that it refers to come first, also on how and until when a claim is made, and on what is due meanwhile.";

    /// <param name="claim">As it was opened.</param>
    /// <param name="madeBy">Who asked for the paper.</param>
    /// <param name="at">When.</param>
    /// <param name="stream">Where to.</param>
    /// <param name="zone">The house's; UTC where none is given.</param>
    public static void Write(Claim claim, string madeBy, DateTimeOffset at, Stream stream, ClockZone? zone = null)
    {
        ArgumentNullException.ThrowIfNull(claim);
        var (found, parties) = (claim.Case, claim.Case.Parties);
        var paper = new Paper($"Claim {claim.Ref}", parties.Buyer, $"{parties.Buyer} · claim {claim.Ref} under contract {parties.ContractRef}");
        paper.Text($"Claim {claim.Ref}", TextStyle.Title);
        paper.Text($"{Printed.Day(claim.On)}, under contract {parties.ContractRef}, version {parties.ContractVersion}{(parties.SignedOn is { } signed ? $", signed on {Printed.Day(signed)}" : "")}.", TextStyle.Small);
        paper.Gap(8);
        paper.Text($"To: {parties.Seller}", TextStyle.Body);
        paper.Text($"From: {parties.Buyer}", TextStyle.Body);
        paper.Gap(6);
        paper.Text($"We claim on the goods below on these grounds: {string.Join(", ", found.Grounds().Select(ground => ground.Word()))}.", TextStyle.Body);
        Goods(paper, found);
        Findings(paper, found);
        Amount(paper, found);
        Times(paper, claim);
        Papers(paper, found);
        Close(paper, parties, found.Missing is null, madeBy, Printed.Moment(at, zone));
        paper.Save(stream);
    }

    private static void Goods(Paper paper, ClaimCase found)
    {
        var (goods, receipt) = (found.Goods, found.Receipt);
        paper.Text("Goods", TextStyle.Heading);
        Lines(paper,
            ("Lot", goods.LotRef == goods.LotName ? goods.LotName : $"{goods.LotRef}, {goods.LotName}"),
            ("Shipment", goods.ShipmentRef is not { } shipment ? "" : shipment + (goods.Vessel is { } vessel ? $", {vessel}" : "") + (goods.BillOfLading is { } bill ? $", bill of lading {bill}" : "")),
            ("From and to", goods.PortOfLoading is { } port ? $"{port} to {goods.PortOfDestination}" : ""),
            ("On board", goods.ShipmentRef is null ? $"nothing of it; the shipment period ended on {Printed.Day(goods.ShipUntil)}" : $"{Day(goods.ShippedOn)}; the shipment period ended on {Printed.Day(goods.ShipUntil)}"),
            ("Discharged", goods.ShipmentRef is null ? "" : Day(goods.DischargedOn)),
            ("Containers", string.Join("; ", goods.Containers)));
        if (found.Missing is { } missing)
        {
            Agreed(paper, missing);
        }

        if (receipt is not null)
        {
            Received(paper, receipt);
        }
    }

    private static void Agreed(Paper paper, ClaimMissing missing)
    {
        Lines(paper,
            ("Agreed", $"{Printed.Count(missing.AgreedBags, "bag", "bags")}, {Kilograms(missing.Agreed)}, {missing.Delivery}, shipment from {Printed.Day(missing.ShipFrom)} to {Printed.Day(missing.ShipUntil)}"),
            ("Did not come", $"{Printed.Count(missing.Bags, "bag", "bags")}, {Kilograms(missing.Missing)}"));
        foreach (var version in missing.Versions)
        {
            paper.Text(version, TextStyle.Body);
        }

        foreach (var note in missing.Notes)
        {
            paper.Text($"Noted {note}", TextStyle.Body);
        }
    }

    private static void Received(Paper paper, ClaimReceipt receipt) => Lines(paper,
            ("Received", $"{Printed.Day(receipt.On)}, {Printed.Count(receipt.Bags)} of {Printed.Count(receipt.ShippedBags)} bags"),
            ("Condition", receipt.Faults.Count == 0 ? "sound" : string.Join(", ", receipt.Faults)),
            ("Climate on receipt", string.Join(", ", new[]
            {
                receipt.TenthsOfCelsius is { } tenths ? (tenths / 10m).ToString("0.0", CultureInfo.InvariantCulture) + " °C" : null,
                receipt.Humidity is { } humidity ? humidity.Points.ToString("0.#", CultureInfo.InvariantCulture) + " % relative humidity" : null,
            }.OfType<string>())),
            ("Noted on receipt", receipt.Note ?? ""));

    private static void Findings(Paper paper, ClaimCase found)
    {
        paper.Text("What we found", TextStyle.Heading);
        foreach (var ground in found.Findings)
        {
            var sentences = ground.Ground switch
            {
                ClaimGround.Weight => found.Weight,
                ClaimGround.Cup when found.Cup is { } cup => cup.Sentences,
                _ => [ground.Sentence],
            };
            paper.Text(Capital(ground.Ground.Word()), TextStyle.SubHeading);
            paper.Text(string.Join(" ", sentences), TextStyle.Body);
            Table(paper, found, ground.Ground);
        }
    }

    private static void Table(Paper paper, ClaimCase found, ClaimGround ground)
    {
        if (ground == ClaimGround.Cup && found.Cup is { } cup)
        {
            paper.Gap(4);
            paper.Table(
                [new("Blind cupping", 4), new("Approved, points", 2, IsNumber: true), new("Arrival, points", 2, IsNumber: true), new("Difference", 1.6, IsNumber: true), new("95 % bounds, one-sided", 2.4, IsNumber: true), new("Tolerance", 1.4, IsNumber: true)],
                [[
                    new PaperCell(string.Join("; ", cup.Sessions), $"samples {cup.ApprovedCode} and {cup.ArrivalCode}"),
                    new PaperCell(Points(cup.Approved), Printed.Count(cup.ApprovedCuppers, "cupper", "cuppers")),
                    new PaperCell(Points(cup.Arrival), Printed.Count(cup.ArrivalCuppers, "cupper", "cuppers")),
                    Points(cup.Difference),
                    cup is { Lower: { } lower, Upper: { } upper } ? $"{Points(lower)} and {Points(upper)}" : "not known",
                    Points(-(double)cup.Tolerance.Points),
                ]]);
        }
        else if (ground == ClaimGround.PhysicalLimits)
        {
            paper.Gap(4);
            paper.Table(
                [new("Measured", 3), new("Approved sample", 2, IsNumber: true), new("Arrival", 2, IsNumber: true), new("Limit", 2.4), new("Kept", 1.4)],
                [.. found.Limits.Select(limit => (IReadOnlyList<PaperCell>)[limit.Name, limit.Approved ?? "not measured", limit.Found ?? "not measured", new PaperCell(limit.Limit, limit.IsAgreed ? "agreed" : "not named in the contract"), limit.Passed switch { true => "yes", false => "no", null => "not known" }])]);
        }
    }

    private static void Amount(Paper paper, ClaimCase found)
    {
        paper.Text("What we claim", TextStyle.Heading);
        if (found.Amount() is not { } amount)
        {
            paper.Text("The amount follows.", TextStyle.Body);
        }
        else
        {
            paper.Table(
                [new("Claimed", 2.6), new("Arithmetic", 6), new($"Amount, {found.Currency}", 2, IsNumber: true)],
                [.. found.Lines.Select(line => (IReadOnlyList<PaperCell>)[line.What, line.Arithmetic, Figure(line.Amount)])]);
            paper.Text($"Together {Figure(amount)} {amount.Currency}.", TextStyle.Body);
        }

        if (found.Words is { } words)
        {
            paper.Text(words, TextStyle.Body);
        }
    }

    private static void Times(Paper paper, Claim claim)
    {
        if (claim.Case.Times.Count == 0 && claim.LateReason is null)
        {
            return;
        }

        paper.Text("Deadlines", TextStyle.Heading);
        Lines(paper, [.. claim.Case.Times.Select(time => (time.What, time.LastDay is { } last
            ? $"{Printed.Count(time.Days, "calendar day", "calendar days")} from {time.From ?? "discharge"}, the last on {Printed.Day(last)}; done on {Printed.Day(time.On)}{(time.IsLate() ? ", late" : "")}"
            : $"{Printed.Count(time.Days, "calendar day", "calendar days")} from {time.From ?? "discharge"}, whose day is not known to us; done on {Printed.Day(time.On)}"))]);
        if (claim.LateReason is { } reason)
        {
            paper.Text(reason, TextStyle.Body);
        }
    }

    private static void Papers(Paper paper, ClaimCase found)
    {
        if (found.Papers.Count == 0)
        {
            return;
        }

        paper.Text("Photographs and documents", TextStyle.Heading);
        paper.Table(
            [new("File", 4), new("On the", 1.2), new("SHA-256 of the file", 6)],
            [.. found.Papers.Select(one => (IReadOnlyList<PaperCell>)[one.FileName, one.On, one.Sha256])]);
    }

    private static void Close(Paper paper, ClaimParties parties, bool hasCome, string madeBy, string at)
    {
        paper.Gap(10);
        paper.Text(hasCome ? "Please let us have your answer, and tell us if you wish the goods to be surveyed or samples to be drawn together." : "Please let us have your answer, and tell us when and how you will deliver what is missing.", TextStyle.Body);
        paper.Text($"Standard form: {parties.Form}. Arbitration: {parties.Arbitration}.", TextStyle.Body);
        paper.Text(NoAdvice, TextStyle.Small);
        paper.Gap(28);
        paper.Text("For the buyer: ______________________________", TextStyle.Body);
        paper.Text($"Printed by {madeBy}, {at}.", TextStyle.Small);
    }

    private static void Lines(Paper paper, params (string Word, string Text)[] lines)
    {
        foreach (var (word, text) in lines.Where(line => line.Text.Length > 0))
        {
            paper.Text($"{word}: {text}", TextStyle.Body);
        }
    }

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];

    private static string Day(DateOnly? day) => day is { } known ? Printed.Day(known) : "not known";

    private static string Kilograms(Weight weight) => weight.Kilograms.ToString("#,0.###", CultureInfo.InvariantCulture) + " kg";

    private static string Points(double points) => points.ToString("0.00;−0.00;0.00", CultureInfo.InvariantCulture);

    private static string Figure(Money money) => Printed.Amount(money.Amount, money.Currency.Decimals);
}
