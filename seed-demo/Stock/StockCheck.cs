using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using GreenLedger.SeedDemo.Arrivals;
using GreenLedger.SeedDemo.Cupping;
using GreenLedger.SeedDemo.Grading;
using GreenLedger.SeedDemo.Offers;
using GreenLedger.SeedDemo.People;

namespace GreenLedger.SeedDemo.Stock;

/// <summary>Cups what has lain in the warehouse for a while: blind like everything, a few tenths of a point below its arrival.</summary>
internal sealed class StockCheck(Cast cast, IReadOnlyList<CuppingForm> forms, IReadOnlyCollection<Shelved> coffees, DateTimeOffset now, Draw draw)
{
    private const int Table = 6;

    /// <summary>Days before today on which the house cupped its stock.</summary>
    private static readonly int[] DaysAgo = [96, 27];

    /// <summary>What coffee loses in a month, in points; invented.</summary>
    private const double LossOfMonth = 0.22;

    private readonly Dictionary<Domain.Id<Domain.Offers.Lot>, Shelved> _coffees = coffees.ToDictionary(coffee => coffee.Lot.Id);
    private readonly IReadOnlyList<Palate> _palates = [.. Palate.Of(cast).Take(4)];
    private readonly Pen _pen = new(draw);

    /// <summary>Samples, grades and sessions, each after what it points to.</summary>
    public IReadOnlyList<object> Cup(IReadOnlyList<Landing> landings)
    {
        var records = new List<object>();
        foreach (var ago in DaysAgo)
        {
            var day = DateOnly.FromDateTime(now.UtcDateTime).AddDays(-ago);
            var lying = landings.Where(landing => !landing.IsShort && landing.Arrival.ApprovedSampleId is not null && landing.Arrival.ReceivedOn < day.AddDays(-20) && !_coffees[landing.Arrival.LotId].Coffee.Origin.IsRobusta)
                .TakeLast(Table).ToList();
            if (lying.Count > 1)
            {
                Cup(day, lying, records);
            }
        }

        return records;
    }

    private void Cup(DateOnly day, IReadOnlyList<Landing> lying, List<object> records)
    {
        var form = forms.First(form => form.Id == CuppingForm.HundredPointId);
        var session = new CuppingSession($"From stock, {day.DayOfWeek}", day, form, FormRules.UsualCups, cast.Lead.Id);
        foreach (var landing in lying)
        {
            var coffee = _coffees[landing.Arrival.LotId];
            var sample = new Sample(coffee.Lot.Id, SampleKind.Stock, LabelCode.Draw(draw.Random), day.AddDays(-1), Weight.FromGrams(300m)).ReceivedAs("drawn from six bags", cast.Lead.Id);
            session.Pour(sample, draw.Random);
            var months = (day.DayNumber - landing.Arrival.ReceivedOn.DayNumber) / 30.4;
            Taste(session, session.Samples[^1].Code, coffee.Coffee, -LossOfMonth * months);
            records.AddRange([sample, Grade(sample, day.AddDays(-1))]);
        }

        session.Close(cast.Lead.Id, At(day, 12), ExpectedErrors.Of(cast.House));
        records.Add(session);
    }

    private void Taste(CuppingSession session, string code, Coffee coffee, double lift)
    {
        foreach (var palate in _palates)
        {
            var marks = _pen.HundredPoint(session.Form.Rules, palate.Taste(coffee, lift, draw), FormRules.UsualCups, isTainted: false);
            session.Submit(code, palate.Member.Person, marks, At(session.HeldOn, 10).AddMinutes(draw.Between(0, 40))).Remark(_pen.Words(coffee), null, null);
        }
    }

    private GreenGrade Grade(Sample sample, DateOnly on) => new GreenGrade(sample.Id, sample.LotId, on, cast.Lead.Id, GreenGrade.UsualSample)
        .Measure(Percent.Of(Math.Round((decimal)draw.Normal(10.4, 0.4), 1)), GradingTable.Meter, null, null);

    private static DateTimeOffset At(DateOnly day, int hour) => new(day.ToDateTime(new TimeOnly(hour, 0)), TimeSpan.Zero);
}
