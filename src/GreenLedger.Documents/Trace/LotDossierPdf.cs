using System.Globalization;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Documents.Trace;

/// <summary>A lot's complete way on A4 pages: offered, sampled, graded, cupped, bought, shipped, received, stocked, and what it cost.</summary>
public static class LotDossierPdf
{
    public const string MediaType = "application/pdf";

    public static void Write(LotDossier dossier, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(dossier);
        var lot = dossier.Lot;
        var paper = new Paper($"Lot {lot.Ref}", dossier.House, $"{dossier.House} · lot {lot.Ref}");
        paper.Text($"{lot.Ref}, {lot.Name}", TextStyle.Title);
        paper.Text($"All that {dossier.House} holds of this lot, taken out by {dossier.MadeBy}, {Printed.Moment(dossier.MadeAt, dossier.Zone)}.", TextStyle.Small);
        paper.Gap(6);
        foreach (var (word, text) in dossier.Place)
        {
            paper.Text($"{word}: {text}", TextStyle.Body);
        }

        Way(paper, dossier);
        Offers(paper, dossier);
        Samples(paper, dossier);
        Results(paper, dossier);
        Bought(paper, dossier);
        Stock(paper, dossier);
        Cost(paper, dossier);
        Grown(paper, dossier);
        Papers(paper, dossier);
        paper.Save(stream);
    }

    private static void Way(Paper paper, LotDossier dossier) => Section(paper, "The way in short", "Nothing has happened to it yet.",
        [new("Stop", 2), new("Day", 2), new("Figure", 4)],
        [.. dossier.Way.Where(stop => stop.IsReached).Select(stop => Row(Capital(stop.Word), Printed.Day(stop.On!.Value), stop.Figure ?? "–"))]);

    private static void Offers(Paper paper, LotDossier dossier) => Section(paper, "Offers", "It is on no offer.",
        [new("Offered by", 4), new("From", 2), new("State", 1.6), new("Price", 3, IsNumber: true), new("Quantity, kg", 2, IsNumber: true), new("Stated score, points", 2, IsNumber: true)],
        [
            .. dossier.Prices.Select(price => Row(
                price.Offer, Printed.Day(price.On), price.State.Word(), PriceOf(price), Kilograms(price.Quantity), price.Stated is { } stated ? Printed.Points(stated) : "–")),
        ]);

    private static void Samples(Paper paper, LotDossier dossier) => Section(paper, "Samples and grades", "No sample was asked for.",
        [
            new("Sample", 2), new("Kind", 2), new("Received", 2), new("Graded", 2), new("Class", 2.6), new("Moisture", 1.5, IsNumber: true), new("Water activity", 1.5, IsNumber: true),
            new("Category 1", 1.5, IsNumber: true), new("Category 2", 1.5, IsNumber: true),
        ],
        [
            .. dossier.Samples.Select(one => Row(
                one.Sample.LabelCode, one.Kind, Day(one.Sample.ReceivedOn), Day(one.Grade?.GradedOn), one.Grade?.QualityClass ?? "–", one.Grade?.Moisture?.ToString() ?? "–", one.Grade?.WaterActivity?.ToString() ?? "–",
                one.Grade?.Category1?.ToString() ?? "–", one.Grade?.Category2?.ToString() ?? "–")),
        ]);

    private static void Results(Paper paper, LotDossier dossier) => Section(paper, "What the cup said", "No session with it is closed.",
        [new("Session", 4), new("Held", 2), new("Sample", 1.6), new("Form", 2.4), new("Holds for", 1.8), new("Score, points", 1.6, IsNumber: true), new("95 % interval", 2.4, IsNumber: true), new("Cuppers", 1.4, IsNumber: true)],
        [
            .. dossier.Results.OrderBy(one => one.Result.HeldOn).Select(one => Row(
                one.Session, Printed.Day(one.Result.HeldOn), one.Label, one.Form, one.Result.HoldsFor.Word(), Printed.Points(one.Result.Fitted), $"{Printed.Points(one.Result.Low)} to {Printed.Points(one.Result.High)}",
                Printed.Count(one.Result.Cuppers))),
        ]);

    private static void Bought(Paper paper, LotDossier dossier) => Section(paper, "From decision to stock", "Nothing was decided about it.",
        [new("Day", 1.6), new("What happened", 7), new("How it turned out", 2.4)],
        [.. dossier.WholeWay.Entries().Select(entry => Row(Printed.Day(entry.On), entry.What, entry.Mark ?? "–"))]);

    private static void Stock(Paper paper, LotDossier dossier)
    {
        var (bags, left, rows) = (0, Weight.Zero, new List<IReadOnlyList<PaperCell>>());
        foreach (var one in dossier.Movements)
        {
            (bags, left) = (bags + one.Bags, left + one.Weighed);
            rows.Add(Row(Printed.Day(one.On), one.What, one.Warehouse, one.Note is null ? one.Who : $"{one.Who}: {one.Note}", one.Bags.ToString("#,0;−#,0", CultureInfo.InvariantCulture), Kilograms(one.Weighed), Kilograms(left)));
        }

        Section(paper, "Stock", "None of it came into stock.",
            [new("Day", 1.8), new("Movement", 2.8), new("Warehouse", 2.2), new("By whom, why", 4), new("Bags", 1, IsNumber: true), new("kg", 1.6, IsNumber: true), new("Left, kg", 1.6, IsNumber: true)], rows);
        if (rows.Count > 0)
        {
            paper.Text($"Left: {Printed.Count(bags, "bag", "bags")}, {Kilograms(left)} kg as weighed.", TextStyle.Body);
        }
    }

    private static void Cost(Paper paper, LotDossier dossier)
    {
        var (cost, money) = (dossier.Cost, dossier.Cost.Total.Currency.Code);
        Section(paper, "What it cost", "Nothing is billed and nothing was reckoned.",
            [new("Stage", 4), new($"Reckoned, {money}/kg", 2, IsNumber: true), new($"Billed, {money}/kg", 2, IsNumber: true), new($"Billed, {money}", 2, IsNumber: true)],
            [.. cost.Stages.Select(stage => Row(stage.Stage is { } known ? Capital(known.Word()) : "Coffee", PerKilogram(stage.Estimated), PerKilogram(stage.Actual), Printed.Amount(stage.Billed.Amount, stage.Billed.Currency.Decimals)))]);
        if (cost.PerKilogram is { } landed)
        {
            paper.Text($"Landed cost billed so far: {PerKilogram(landed)} {money}/kg over {Kilograms(cost.Landed)} kg landed{(cost.HasCoffee ? "" : "; the coffee itself is not billed yet")}.", TextStyle.Body);
        }

        if (cost.Late.MinorUnits != 0)
        {
            paper.Text($"Of the bills {Printed.Amount(cost.Late.Amount, cost.Late.Currency.Decimals)} {money} fell on coffee that was gone by the day of the bill.", TextStyle.Body);
        }
    }

    private static void Grown(Paper paper, LotDossier dossier)
    {
        var held = dossier.Diligence;
        paper.Text("Where it grew", TextStyle.Heading);
        paper.Text(dossier.Plots.Count == 0 ? "No plot is held for it." : $"Plots: {string.Join(", ", dossier.Plots)}.", TextStyle.Body);
        if (held.StatementReference is { } statement)
        {
            paper.Text($"Statement {statement}{(held.VerificationNumber is { } number ? $", verification number {number}" : "")}.", TextStyle.Body);
        }

        foreach (var point in dossier.Open.Missing.Select(what => $"Missing: {what}").Concat(dossier.Open.ToLookAt.Select(what => $"To look at: {what}")))
        {
            paper.Text(point, TextStyle.Body);
        }

        paper.Text("This is what the house holds, not a statement of due diligence and not legal advice: the competent authority decides.", TextStyle.Small);
    }

    private static void Papers(Paper paper, LotDossier dossier) => Section(paper, "Files", "No file is attached to the lot.",
        [new("File", 4), new("Attached", 2), new("SHA-256 of the file", 6)],
        [.. dossier.Papers.Where(one => !one.IsRemoved).Select(one => Row(one.FileName, Printed.Day(dossier.Zone.Day(one.At)), one.Sha256))]);

    private static void Section(Paper paper, string title, string none, IReadOnlyList<PaperColumn> columns, List<IReadOnlyList<PaperCell>> rows)
    {
        paper.Text(title, TextStyle.Heading);
        if (rows.Count == 0)
        {
            paper.Text(none, TextStyle.Body);
        }
        else
        {
            paper.Table(columns, rows);
        }
    }

    private static IReadOnlyList<PaperCell> Row(params string[] cells) => [.. cells.Select(cell => new PaperCell(cell))];

    private static string PriceOf(DossierPrice price) => price switch
    {
        { Price: { } outright } => outright.AsQuoted(),
        { Differential: { } differential } => $"{differential.Month} {differential.Quoted.ToString("+0.##;−0.##;±0", CultureInfo.InvariantCulture)}",
        _ => "not stated",
    };

    private static string Kilograms(Weight weight) => weight.Kilograms.ToString("#,0.###;−#,0.###", CultureInfo.InvariantCulture);

    private static string PerKilogram(decimal? cost) => cost is { } known ? Printed.Amount(known, 4) : "–";

    private static string Day(DateOnly? day) => day is { } known ? Printed.Day(known) : "–";

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
