using System.Globalization;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Samples;
using GreenLedger.SeedDemo.Cupping;
using GreenLedger.SeedDemo.Grading;
using GreenLedger.SeedDemo.Offers;
using GreenLedger.SeedDemo.Papers;
using GreenLedger.SeedDemo.People;
using GreenLedger.SeedDemo.Samples;

namespace GreenLedger.SeedDemo.Arrivals;

/// <summary>
/// Cups what landed beside what was kept of the pre-shipment sample, both blind in one session, and claims what is short: one
/// claim is open, an earlier one is settled.
/// </summary>
internal sealed class ArrivalTable(Cast cast, IReadOnlyList<CuppingForm> forms, IReadOnlyCollection<Shelved> coffees, DateTimeOffset now, Draw draw)
{
    private const int Most = 10;

    private readonly Dictionary<Domain.Id<Domain.Offers.Lot>, Shelved> _coffees = coffees.ToDictionary(coffee => coffee.Lot.Id);
    private readonly IReadOnlyList<Palate> _palates = [.. Palate.Of(cast).Take(4)];
    private readonly Pen _pen = new(draw);
    private readonly List<object> _records = [];
    private readonly List<Claim> _claims = [];

    /// <summary>Samples, grades, sessions, papers and claims, each after what it points to.</summary>
    public IReadOnlyList<object> Cup(IReadOnlyList<Landing> landings)
    {
        foreach (var landing in landings.Where(landing => landing.IsShort).Union(landings.TakeLast(Most)).OrderBy(landing => landing.Arrival.ReceivedOn))
        {
            Cup(landing);
        }

        return [.. _records, .. _claims];
    }

    private void Cup(Landing landing)
    {
        var (arrival, coffee) = (landing.Arrival, _coffees[landing.Arrival.LotId]);
        var approved = Draw(SampleKind.PreShipment, landing.Shipment.ShippedOn!.Value.AddDays(-18), coffee);
        var drawn = Draw(SampleKind.Arrival, arrival.ReceivedOn, coffee);
        arrival.Compare(approved.Sample, drawn.Sample);
        var session = Taste(approved, drawn, arrival.ReceivedOn.AddDays(3), landing.IsShort ? -3.2 : 0.35);
        var grade = Grade(drawn, arrival.ReceivedOn);
        _records.AddRange([approved.Sample, drawn.Sample, grade, session]);
        var file = new StoredFile($"weighing-note-{landing.Shipment.Ref}.pdf", "application/pdf", PaperPdf.Of(["Specimen of a weighing note", "Made up for a demonstration.", landing.Shipment.Ref, $"{arrival.Landed} net"]), cast.Lead.Id, At(arrival.ReceivedOn, 12));
        var note = new Attachment(PapersOf.Arrival, arrival.Id.Value, file, cast.Lead.Id, At(arrival.ReceivedOn, 12));
        _records.AddRange([file, note]);
        if (landing.IsShort)
        {
            Claim(landing, coffee, [approved.Sample, drawn.Sample], session, grade, note);
        }
    }

    /// <summary>The latest stays open; the one before was settled a little below what was claimed.</summary>
    private void Claim(Landing landing, Shelved coffee, IReadOnlyList<Sample> samples, CuppingSession session, GreenGrade grade, Attachment note)
    {
        var (arrival, contract) = (landing.Arrival, landing.Contract);
        var price = contract.Terms.Price.Outright ?? (contract.Position is { Final: { } final, Market: var market } ? market.Price(final) : (PricePerWeight?)null);
        var evidence = CupEvidence.Of([session], samples[0].Id, samples[1].Id, null);
        var basis = new ClaimBasis(
            arrival, landing.Shipment, contract, coffee.Lot,
            WeightVerdict.Of(arrival.Shipped, arrival.Landed, contract.Terms.Weights.Franchise, price),
            ArrivalVerdict.Of(QualityVerdict.Of(evidence.Difference!, Score.Of(1m)), ArrivalLimits.Of(null, new ArrivalHabits()).Limits, null, grade),
            evidence, samples, [note]);
        var on = arrival.ReceivedOn.AddDays(4);
        var order = new ClaimOrder(
            on, [.. basis.Findings.Where(finding => finding.IsShown && finding.Ground != ClaimGround.Lateness).Select(finding => finding.Ground)],
            Share: Percent.Of(4m), ProvisionalPrice: price is null ? PricePerWeight.FromCentsPerPound(320m) : null,
            Words: "We keep the lot apart until the end of next month, should you wish to have it surveyed.");
        var claim = Domain.Arrivals.Claim.Open(string.Create(CultureInfo.InvariantCulture, $"C{on.Year % 100:00}-{_claims.Count(known => known.On.Year == on.Year) + 1:000}"), basis, order, _claims, cast.Buyer.Id, At(on, 10));
        claim.Note(ClaimSide.ToSeller, on, "Letter with photographs sent by mail.", cast.Buyer.Id, At(on, 11));
        if (on.AddDays(20) < DateOnly.FromDateTime(now.UtcDateTime))
        {
            claim.Note(ClaimSide.FromSeller, on.AddDays(9), "They cupped their own retained sample and offer to meet us on quality.", cast.Buyer.Id, At(on.AddDays(9), 15));
            var offered = Money.Of(Math.Round(claim.Amount!.Value.Amount * 0.8m, 0), claim.Case.Currency);
            claim.Settle(ClaimOutcome.Allowance, offered, on.AddDays(19), "Agreed in a call; credited with the next invoice.", cast.Buyer.Id, At(on.AddDays(19), 16));
        }

        _claims.Add(claim);
    }

    private Bag Draw(SampleKind kind, DateOnly on, Shelved coffee)
    {
        var kept = kind == SampleKind.PreShipment ? "Kept in the cool room, to be cupped beside the arrival." : null;
        return new Bag(new Sample(coffee.Lot.Id, kind, LabelCode.Draw(draw.Random), on, Weight.FromGrams(500m), kept).ReceivedAs("sound, sealed", cast.Lead.Id), coffee);
    }

    private CuppingSession Taste(Bag approved, Bag drawn, DateOnly day, double change)
    {
        var isRobusta = approved.Coffee.Coffee.Origin.IsRobusta;
        var form = forms.First(form => form.Id == (isRobusta ? CuppingForm.AffectiveId : CuppingForm.HundredPointId));
        var session = new CuppingSession($"Blind pair, {day.DayOfWeek} of week {ISOWeek.GetWeekOfYear(day.ToDateTime(TimeOnly.MinValue))}", day, form, FormRules.UsualCups, cast.Lead.Id);
        session.Pour(approved.Sample, draw.Random);
        session.Pour(drawn.Sample, draw.Random);
        foreach (var (place, lift) in new[] { (0, 0.0), (1, change) })
        {
            foreach (var palate in _palates)
            {
                var points = palate.Taste(approved.Coffee.Coffee, lift, draw);
                var marks = isRobusta ? _pen.Affective(form.Rules, points, isTainted: false) : _pen.HundredPoint(form.Rules, points, FormRules.UsualCups, isTainted: false);
                session.Submit(session.Samples[place].Code, palate.Member.Person, marks, At(day, 10).AddMinutes((place * 10) + draw.Between(0, 8))).Remark(_pen.Words(approved.Coffee.Coffee), null, null);
            }
        }

        session.Close(cast.Lead.Id, At(day, 12), ExpectedErrors.Of(cast.House));
        return session;
    }

    private GreenGrade Grade(Bag bag, DateOnly on) =>
        new GreenGrade(bag.Sample.Id, bag.Sample.LotId, on.AddDays(1), cast.Lead.Id, GreenGrade.UsualSample)
            .Measure(Percent.Of(Math.Round((decimal)draw.Normal(10.9, 0.3), 1)), GradingTable.Meter, WaterActivity.Of(Math.Round((decimal)draw.Normal(0.56, 0.015), 3)), null);

    private DateTimeOffset At(DateOnly day, int hour)
    {
        var at = new DateTimeOffset(day.ToDateTime(new TimeOnly(hour, 0)), TimeSpan.Zero);
        return at < now ? at : now.AddHours(-1);
    }
}
