using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Cupping;

namespace GreenLedger.Documents.Cupping;

/// <summary>The plan of a table for the wall: flights with their codes, who is served in which order, how the cups are made, and the steps.</summary>
public static class PlanPaper
{
    public const string MediaType = "application/pdf";

    private const string Then = " · ";

    public static void Write(TableOnPaper table, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(table);
        var paper = new Paper($"Table plan · {table.Title}", table.House, $"{table.House} · table plan · {table.Title} · {Printed.Day(table.HeldOn)}");
        paper.Text(table.Title, TextStyle.Title);
        paper.Text($"Table plan · {Printed.Day(table.HeldOn)} · {table.Form} · {Printed.Count(table.CupsPerSample, "cup", "cups")} a sample", TextStyle.Small);
        if (table.Plan is { } plan)
        {
            paper.Text($"Each cup: {Printed.Amount(plan.Dose.Grams)} g of whole beans in {plan.CupMilliliters} mL ({Printed.Amount(plan.GramsPerLiter, 1)} g a litre){(plan.Water is null ? "" : $"; water: {plan.Water}")}.", TextStyle.Body);
        }

        paper.Text("Water at 93 °C scalds and shared spoons spread infection: pour away from people, and give every cupper a spoon and a cup of their own; local rules decide.", TextStyle.Body);
        Flights(paper, table);
        Orders(paper, table);
        paper.Text("Steps", TextStyle.Heading);
        paper.Table(
            [new("After the pour", 1.2), new("Step", 1.6), new("What is done", 5)],
            [.. table.Steps.Select(step => (IReadOnlyList<PaperCell>)[Clock(step), step.Name, new PaperCell(step.Does, step.Caution)])]);
        paper.Save(stream);
    }

    /// <summary>Minutes and seconds after the pour, or that it comes before.</summary>
    internal static string Clock(TastingStep step) =>
        step.AfterSeconds is { } seconds ? $"{seconds / 60}:{seconds % 60:00} min" : "before";

    private static void Flights(Paper paper, TableOnPaper table)
    {
        paper.Text(table.IsByPlace ? "Codes under the bowls" : "Flights", TextStyle.Heading);
        if (table.IsByPlace)
        {
            paper.Text("The bowls are shuffled: nobody knows which code stands at which place until they are turned over.", TextStyle.Body);
        }

        paper.Table(
            [new("Flight", 0.8, IsNumber: true), new("Codes", 6), new("Cups to pour", 1.2, IsNumber: true)],
            [.. table.Flights.Select(flight => (IReadOnlyList<PaperCell>)[
                Printed.Count(flight.Number), string.Join(Then, flight.Codes), Printed.Count(flight.Codes.Count * table.CupsPerSample)])]);
        if (table.Pourers.Count > 0)
        {
            paper.Text($"Poured by {string.Join(", ", table.Pourers)}.", TextStyle.Body);
        }
    }

    private static void Orders(Paper paper, TableOnPaper table)
    {
        paper.Text("Serving orders", TextStyle.Heading);
        paper.Table(
            [new("Cupper", 2), new("Flight", 0.8, IsNumber: true), new(table.IsByPlace ? "Places in order" : "Codes in order", 6)],
            [.. table.Cuppers.SelectMany(cupper => cupper.Served, (cupper, flight) => (IReadOnlyList<PaperCell>)[
                cupper.Name ?? "whoever cups", Printed.Count(flight.Number), string.Join(Then, flight.Codes)])]);
    }
}
