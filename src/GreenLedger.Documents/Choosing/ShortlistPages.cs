using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;

namespace GreenLedger.Documents.Choosing;

/// <summary>What stands on the pages of a shortlist, with so many rows of the ranking.</summary>
internal sealed class ShortlistPages
{
    private const double ChartHeight = 250;
    private const int Explained = 3;
    private const int NamedPerGate = 6;

    private readonly ShortlistReport _report;
    private readonly Shortlist _shortlist;
    private readonly ShortlistWords _words;
    private readonly Paper _paper;
    private readonly int _rows;

    public ShortlistPages(ShortlistReport report, int rows)
    {
        (_report, _shortlist, _rows) = (report, report.Shortlist, rows);
        _words = new ShortlistWords(_shortlist);
        _paper = new Paper($"Shortlist by {report.Rules}, {Printed.Day(report.On)}", report.MadeBy, $"{report.House} · shortlist by {report.Rules} · {Printed.Day(report.On)}");
    }

    public Paper Compose()
    {
        Opening();
        if (_shortlist.Ranked.Count > 0)
        {
            Chart();
            Ranking();
            Reasons();
        }

        NotRanked();
        Grounds();
        return _paper;
    }

    private void Opening()
    {
        _paper.Text(_report.House, TextStyle.Body with { Font = Faces.Bold(9.5), Colour = Ink.Green });
        _paper.Text("Shortlist", TextStyle.Title);
        var trial = _report.IsTrial ? ", with weights that were tried on the page" : "";
        _paper.Text($"Offers of {Printed.Day(_report.On)}, ranked by “{_report.Rules}” (revision {_report.Revision}{trial}). Taken out by {_report.MadeBy}, {Printed.Moment(_report.MadeAt, _report.Zone)}.{Narrowed()}", TextStyle.Small);
        _paper.Text(Summary(), TextStyle.Body with { Before = 6 });
        _paper.Text($"{Weights()} {Gates()}", TextStyle.Body);
    }

    private string Narrowed() => _report.Search is { Length: > 0 } search ? $" Only offers that match “{search}”." : "";

    private string Summary()
    {
        var (ranked, failed, apart) = (_shortlist.Ranked.Count, _shortlist.Failed.Count, _shortlist.OtherForm.Count);
        var counts = $"{Printed.Count(ranked, "lot passes", "lots pass")} every gate, {(failed == 0 ? "none fails" : Printed.Count(failed, "fails one", "fail one"))}"
            + (apart > 0 ? $", {Printed.Count(apart, "stands", "stand")} apart on another form." : ".");
        return ranked == 0 ? counts : $"{counts} First is {Named(_shortlist.Ranked[0])}: {Printed.Points(_shortlist.Ranked[0].Score!.Value.Score)} points at {Cost(_shortlist.Ranked[0])} {_shortlist.Currency}/kg landed.";
    }

    private string Weights()
    {
        var weights = _shortlist.Terms.Weights;
        var parts = new[] { ("score", weights.Score), ("landed cost", weights.Cost), ("cost per point", weights.CostPerPoint), ("process", weights.Process) };
        return "Weights: " + string.Join(", ", parts.Where(part => part.Item2 > 0m).Select(part => $"{part.Item1} {Printed.Amount(part.Item2 / weights.Sum * 100m, 0)} %")) + ".";
    }

    private string Gates()
    {
        var lines = new RuleWords(_shortlist.Terms, _report.Form).Gates;
        return lines.Count == 0
            ? "The rules ask for no gate."
            : "Gates: " + string.Join("; ", lines.Select(line => $"{char.ToLowerInvariant(line.What[0])}{line.What[1..]} {line.Says}")) + ".";
    }

    private void Chart()
    {
        var chart = ScatterChart.Of(_shortlist);
        _paper.Text(chart.Title, TextStyle.Heading);
        _paper.Gap(4);
        _paper.Figure(ChartHeight, ShortlistChart.Words(chart, _shortlist), (graphics, box) => ShortlistChart.Draw(chart, graphics, box));
        _paper.Text(
            "Up is better, left is cheaper. On the front no other lot scores at least as much for at most as much money; its marks have a dark edge."
            + (chart.LeftOut > 0 ? $" {Printed.Count(chart.LeftOut, "lot", "lots")} further down the ranking not drawn." : ""),
            TextStyle.Small);
    }

    private void Ranking()
    {
        _paper.Text("Ranking", TextStyle.Heading);
        _paper.Gap(2);
        _paper.Table(Columns(), [.. _shortlist.Ranked.Take(_rows).Select(Row)]);
        if (_shortlist.Ranked.Count > _rows)
        {
            _paper.Text($"And {Printed.Count(_shortlist.Ranked.Count - _rows)} more, see the workbook.", TextStyle.Small);
        }

        foreach (var pairs in Separation.Of(_shortlist.Front).GroupBy(pair => pair.Says))
        {
            _paper.Text($"On the front, {pairs.Key}: {string.Join("; ", pairs.Select(pair => $"{pair.Cheaper.Candidate.Ref} and {pair.Dearer.Candidate.Ref}"))} (their 95 % intervals overlap).", TextStyle.Small);
        }
    }

    private IReadOnlyList<PaperColumn> Columns() =>
    [
        new("Rank", 26, true), new("Lot", 150), new("Process", 66), new("Score, points", 66, true), new($"Landed cost, {_shortlist.Currency}/kg", 52, true),
        new($"Cost per point, {_shortlist.Currency}", 50, true), new("Chance of best", 42, true), new("of first three", 42, true), new($"Cost to predicted, {_shortlist.Currency}/kg", 50, true),
    ];

    private static PaperCell[] Row(ShortlistEntry entry)
    {
        var (lot, score) = (entry.Candidate, entry.Score!.Value);
        return
        [
            Printed.Count(entry.Rank),
            new PaperCell(Named(entry), string.Join(" · ", new[] { lot.Supplier, lot.Origin, Kilograms(entry) }.OfType<string>())),
            new PaperCell(lot.Process ?? "not stated", entry.IsOnFront ? "on the front" : null),
            new PaperCell(Printed.Points(score.Score), $"{Printed.Points(score.Low)} to {Printed.Points(score.High)}{(score.Origin == ScoreOrigin.Stated ? ", stated" : $", {score.HoldsFor.Word()}")}"),
            Cost(entry),
            entry.CostPerPoint is { } point ? Printed.Amount((decimal)point, 4) : "none",
            entry.Chance is { } chance ? Printed.Share(chance.Best) : "–",
            entry.Chance is { } three ? Printed.Share(three.FirstThree) : "–",
            entry.PriceCheck is { Difference: { } difference, PredictedPerKilogram: { } predicted } ? new PaperCell(Printed.Difference(difference), Printed.Amount((decimal)predicted)) : "–",
        ];
    }

    private void Reasons()
    {
        _paper.Text(_shortlist.Ranked.Count == 1 ? "Why it is first" : "Why the first stand where they stand", TextStyle.Heading);
        foreach (var entry in _shortlist.Ranked.Take(Explained))
        {
            _paper.Text($"{entry.Rank}. {Named(entry)}", TextStyle.SubHeading);
            _paper.Text(string.Join(" ", _words.Reasons(entry)), TextStyle.Body with { Before = 1 });
        }
    }

    private void NotRanked()
    {
        if (_shortlist.Failed.Count + _shortlist.OtherForm.Count == 0)
        {
            return;
        }

        _paper.Text("Not ranked", TextStyle.Heading);
        foreach (var gate in Enum.GetValues<Gate>().Where(gate => gate != Gate.None))
        {
            Group(ShortlistWords.Name(gate), [.. _shortlist.Failed.Where(entry => entry.FailedGates.HasFlag(gate))]);
        }

        Group("scored on another form", _shortlist.OtherForm);
    }

    private void Group(string why, IReadOnlyList<ShortlistEntry> entries)
    {
        if (entries.Count > 0)
        {
            var more = entries.Count > NamedPerGate ? $" and {Printed.Count(entries.Count - NamedPerGate)} more" : "";
            _paper.Text($"{char.ToUpperInvariant(why[0])}{why[1..]} ({Printed.Count(entries.Count)}): {string.Join(", ", entries.Take(NamedPerGate).Select(Named))}{more}.", TextStyle.Body with { Before = 1 });
        }
    }

    private void Grounds()
    {
        var rules = new RuleWords(_shortlist.Terms, _report.Form);
        var words = new List<string> { $"Scores are on the {_report.Form}, with the 95 % interval. Several sessions of a lot: {rules.Sessions}. Cost per point: {rules.CostPerPoint}." };
        if (_shortlist.Draw is { } draw)
        {
            words.Add($"Chances come from {Printed.Count(draw.Draws)} draws of the scores (seed {draw.Seed}), each right within {Printed.Share(2 * draw.DrawingError)}.");
        }

        if (_shortlist.Prices is { } prices)
        {
            words.Add(prices.RSquared is { } explained
                ? $"Predicted costs come from {Printed.Count(prices.Offers, "offer", "offers")} of our own of the past year (R² {Printed.Amount((decimal)explained)})."
                : $"No cost is predicted. {prices.WhyNot}");
        }

        _paper.Text(string.Join(" ", words), TextStyle.Small with { Before = 10 });
    }

    private static string Cost(ShortlistEntry entry) => Printed.Amount(entry.Candidate.CostPerKilogram!.Value);

    private static string Named(ShortlistEntry entry) => entry.Candidate.Name.Length == 0 || entry.Candidate.Name == entry.Candidate.Ref
        ? entry.Candidate.Ref
        : $"{entry.Candidate.Ref} {entry.Candidate.Name}";

    private static string? Kilograms(ShortlistEntry entry) =>
        entry.Candidate.Quantity.Kilograms > 0m ? Printed.Amount(entry.Candidate.Quantity.Kilograms, 0) + " kg" : null;
}
