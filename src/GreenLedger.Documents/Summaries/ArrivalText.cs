using System.Globalization;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Documents.Summaries;

/// <summary>Puts what a supplier hears of an arrival into words of their language; numbers and days follow it. The preview shows the parts and the PDF prints them.</summary>
public sealed class ArrivalText
{
    private readonly ArrivalReport _report;
    private readonly ArrivalWords _words;

    private ArrivalText(ArrivalReport report) => (_report, _words) = (report, ArrivalWords.In(report.Language));

    public static string Title(ArrivalReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return ArrivalWords.In(report.Language).Title;
    }

    /// <summary>How numbers of the report are written.</summary>
    public static CultureInfo ReaderOf(ArrivalReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return ArrivalWords.In(report.Language).Common.Reader;
    }

    public static IReadOnlyList<FeedbackBlock> Of(ArrivalReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var text = new ArrivalText(report);
        return
        [
            .. text.Opening(), .. text.Goods(), .. text.Weights(), .. text.Verdict(), .. text.Panels(), .. text.Limits(),
            new(FeedbackPart.Text, text._words.Farewell), new(FeedbackPart.Text, $"{report.By}, {report.House}"),
        ];
    }

    private IEnumerable<FeedbackBlock> Opening()
    {
        yield return new(FeedbackPart.Text, $"{_words.Fill(_words.Common.For, _report.Supplier)} · {Day(_report.On)}");
        yield return new(FeedbackPart.Small, _words.Opening);
        if (_report.Message is { } message)
        {
            yield return new(FeedbackPart.Text, message);
        }
    }

    private IEnumerable<FeedbackBlock> Goods()
    {
        var goods = _report.Goods;
        yield return new(FeedbackPart.Heading, string.Join(" · ", new[] { goods.LotName, goods.LotRef == goods.LotName ? null : goods.LotRef, goods.CropYear }.OfType<string>()));
        yield return new(FeedbackPart.Small, string.Join(" · ", new[]
        {
            _words.Fill(_words.Carried, goods.ContractRef, goods.ShipmentRef),
            goods.BillOfLading is { } bill ? _words.Fill(_words.BillOfLading, bill) : null,
            goods.Vessel is { } vessel ? _words.Fill(_words.Vessel, vessel) : null,
            goods.ShippedOn is { } shipped ? _words.Fill(_words.OnBoard, Day(shipped)) : null,
            goods.DischargedOn is { } discharged ? _words.Fill(_words.Discharged, Day(discharged)) : null,
        }.OfType<string>()));
        var seen = Seen(goods.Condition).ToList();
        yield return new(FeedbackPart.Text, $"{_words.Fill(_words.Received, Day(goods.ReceivedOn), Count(goods.Bags), Count(goods.ShippedBags))} {(seen.Count == 0 ? _words.Sound : _words.Fill(_words.Seen, string.Join("; ", seen)))}");
    }

    private IEnumerable<string> Seen(ReceiptCondition condition)
    {
        foreach (var (bags, words) in new[]
        {
            (condition.WetBags, _words.Wet), (condition.TornBags, _words.Torn), (condition.StainedBags, _words.Stained), (condition.InfestedBags, _words.Infested),
        })
        {
            if (bags > 0)
            {
                yield return _words.Fill(words, Count(bags));
            }
        }

        if (condition is { IsInfested: true, InfestedBags: 0 })
        {
            yield return _words.Insects;
        }

        if (condition.Odour is { } odour)
        {
            yield return _words.Fill(_words.Odour, odour);
        }

        if (condition.SealIntact == false)
        {
            yield return _words.SealBroken;
        }
    }

    private IEnumerable<FeedbackBlock> Weights()
    {
        var weight = _report.Weight;
        yield return new(FeedbackPart.SubHeading, _words.Weights);
        yield return new(FeedbackPart.Table, _words.Weights, new FeedbackTable([new(_words.What), new("kg", true), new("%", true)], [.. WeightRows(weight)]));
        if (weight.Loss == Weight.Zero)
        {
            yield return new(FeedbackPart.Text, _words.NothingLost);
        }
        else if (weight is { IsShort: true, Price: { } price, Worth: { } worth })
        {
            yield return new(FeedbackPart.Text, _words.Fill(_words.Worth, Kilograms(weight.Refunded) + " kg", Price(price), Amount(worth)));
        }
        else if (weight.IsShort)
        {
            yield return new(FeedbackPart.Text, _words.Fill(_words.PriceOpen, Kilograms(weight.Refunded) + " kg"));
        }
        else if (weight.Loss > Weight.Zero)
        {
            yield return new(FeedbackPart.Text, _words.WithinFranchise);
        }

        if (weight.Agreed is { } agreed)
        {
            yield return new(FeedbackPart.Text, _words.Fill(
                agreed.Allows(weight.Shipped) ? _words.WithinAgreed : _words.OutsideAgreed, Kilograms(agreed.InAll ?? weight.Shipped) + " kg", Kilograms(agreed.Least) + " kg", Kilograms(agreed.Most) + " kg"));
        }
    }

    private IEnumerable<string[]> WeightRows(WeightVerdict weight)
    {
        yield return [_words.Shipped, Kilograms(weight.Shipped), ""];
        yield return [_words.Landed, Kilograms(weight.Landed), ""];
        if (weight.Loss < Weight.Zero)
        {
            yield return [_words.More, Kilograms(Weight.Zero - weight.Loss), Number(Share(Weight.Zero - weight.Loss, weight), 2)];
        }
        else if (weight.Loss > Weight.Zero)
        {
            yield return [_words.Lost, Kilograms(weight.Loss), Number(Share(weight.Loss, weight), 2)];
            if (weight.Franchise.Points > 0m)
            {
                yield return [_words.Fill(_words.Franchise, Plain(weight.Franchise.Points, 2) + " %"), Kilograms(weight.FranchiseWeight), ""];
                yield return [_words.Refunded, Kilograms(weight.Refunded), ""];
            }
        }
    }

    /// <summary>Of the shipped weight, in per cent, unrounded: it is rounded once, where it is printed.</summary>
    private static decimal Share(Weight part, WeightVerdict weight) => part.Kilograms * 100m / weight.Shipped.Kilograms;

    private IEnumerable<FeedbackBlock> Verdict()
    {
        var (quality, limits) = (_report.Quality, _report.Limits);
        yield return new(FeedbackPart.SubHeading, _words.Verdict);
        if (quality.Cup is null && limits.All(limit => limit.Passed is null))
        {
            yield return new(FeedbackPart.Text, _words.NothingCupped);
            yield break;
        }

        yield return new(FeedbackPart.Text, _words.Outcomes[quality.Outcome]);
        var broken = limits.Where(limit => limit.Passed == false).Select(limit => $"{Name(limit)} {Figure(limit.Kind, limit.Found)} ({Range(limit)})").ToList();
        if (broken.Count > 0)
        {
            yield return new(FeedbackPart.Text, _words.Fill(_words.Broken, string.Join("; ", broken)));
        }

        if (quality.Cup is not { } cup)
        {
            yield return new(FeedbackPart.Text, _words.NotCupped);
            yield break;
        }

        yield return new(FeedbackPart.Text, cup is { Lower: not null } ? _words.Fill(_words.Rules[cup.Outcome], Number(cup.Tolerance.Points, 2)) : Unknown(cup.Difference));
        yield return new(FeedbackPart.Text, _words.Meetings[cup.Difference.Meeting]);
        if (cup.Outcome == ArrivalOutcome.Undecided)
        {
            yield return new(FeedbackPart.Text, cup switch
            {
                { CuppersNeeded: { } cuppers, SheetsNeeded: { } sheets } => _words.Fill(_words.Next, Count(cuppers), Count(sheets)),
                { Difference.PairDeviation: null } => _words.NextTogether,
                _ => _words.TooNear,
            });
        }
    }

    /// <summary>Where both sides had cuppers enough, it is the sessions or the past results that leave it open, which the meeting says.</summary>
    private string Unknown(CupDifference difference) =>
        difference is { Meeting: Meeting.PastResults } or { Meeting: Meeting.NotHeld, ApprovedCuppers: > 1, ArrivalCuppers: > 1 } ? _words.Outcomes[ArrivalOutcome.Undecided] : _words.TooFewCuppers;

    private IEnumerable<FeedbackBlock> Panels()
    {
        if (_report is not { Quality.Cup: { } cup, Pair: { } pair })
        {
            yield break;
        }

        var found = cup.Difference;
        yield return new(FeedbackPart.SubHeading, _words.Panels);
        yield return new(FeedbackPart.Table, _words.Panels, new FeedbackTable(
            [new(_words.Sample), new(_words.CuppedOn), new(_words.Score, true), new(_words.Cuppers, true)],
            [
                [_words.Fill(_words.ApprovedSample, pair.ApprovedCode), Day(pair.ApprovedOn), Points(found.Approved), Count(found.ApprovedCuppers)],
                [_words.Fill(_words.ArrivalSample, pair.ArrivalCode), Day(pair.ArrivalOn), Points(found.Arrival), Count(found.ArrivalCuppers)],
            ]));
        yield return new(FeedbackPart.Table, _words.Figure, new FeedbackTable(
            [new(_words.Figure), new(_words.Common.Points, true)],
            [
                [_words.Difference, Points(found.Points)],
                [_words.Lower, cup.Lower is { } lower ? Points(lower) : _words.NotKnown],
                [_words.Upper, cup.Upper is { } upper ? Points(upper) : _words.NotKnown],
                [_words.Tolerance, Points(-(double)cup.Tolerance.Points)],
            ]));
    }

    private IEnumerable<FeedbackBlock> Limits()
    {
        if (_report.Limits.Count == 0)
        {
            yield break;
        }

        yield return new(FeedbackPart.SubHeading, _words.Limits);
        yield return new(FeedbackPart.Table, _words.Limits, new FeedbackTable(
            [new(_words.Measured), new(_words.Approved, true), new(_words.Arrival, true), new(_words.Limit), new(_words.Kept)],
            [.. _report.Limits.Select(limit => new[]
            {
                Name(limit),
                Figure(limit.Kind, limit.Approved) ?? "–",
                Figure(limit.Kind, limit.Found) ?? "–",
                Range(limit) + (limit.IsAgreed ? "" : $" ({_words.Own})"),
                limit.Passed switch { true => _words.Yes, false => _words.No, null => _words.NotKnown },
            })]));
    }

    private string Name(ReportedLimit limit) => _words.Fill(_words.Kinds[limit.Kind], limit.Screen ?? 0);

    private string Range(ReportedLimit limit) => limit switch
    {
        { Least: { } least, Most: { } most } => _words.Fill(_words.Between, Figure(limit.Kind, least)!, Figure(limit.Kind, most)!),
        { Least: { } least } => _words.Fill(_words.AtLeast, Figure(limit.Kind, least)!),
        { Most: { } most } => _words.Fill(limit.Kind == LimitKind.WaterActivity ? _words.Below : _words.AtMost, Figure(limit.Kind, most)!),
        _ => "–",
    };

    /// <summary>Shares with one decimal and water activity with two; counts as they are.</summary>
    private string? Figure(LimitKind kind, decimal? figure) => figure is not { } known ? null : kind switch
    {
        LimitKind.Moisture or LimitKind.Screen => Number(known, 1),
        LimitKind.WaterActivity => Number(known, 2),
        _ => Plain(known, 2),
    };

    private string Price(PricePerWeight price) => price.Unit == PriceUnit.Pound && price.Currency == Currency.Usd
        ? Number(price.Amount * 100m, 2) + " ¢/lb"
        : $"{Plain(price.Amount, 4)} {price.Currency}/{price.Unit.Sign()}";

    private string Amount(Money money) => $"{Number(money.Amount, money.Currency.Decimals)} {money.Currency}";

    private string Kilograms(Weight weight) => Plain(weight.Kilograms, 3);

    private string Points(double points) => points.ToString("0.00;−0.00;0.00", _words.Common.Reader);

    private string Day(DateOnly day) => _words.Common.Day(day);

    private string Count(int count) => Number(count, 0);

    private string Number(decimal figure, int decimals) => _words.Common.Number(figure, decimals);

    /// <summary>Without noughts at the end.</summary>
    private string Plain(decimal figure, int decimals) => figure.ToString("#,0." + new string('#', decimals), _words.Common.Reader);
}
