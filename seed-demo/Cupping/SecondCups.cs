using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.LayingOut;
using GreenLedger.Domain.Measures;
using GreenLedger.SeedDemo.Samples;

namespace GreenLedger.SeedDemo.Cupping;

/// <summary>
/// What the house has done since it lays its tables out blind: one coffee under a second code, a reference that everybody has
/// cupped often, and a serving order for each cupper.
/// </summary>
internal sealed class SecondCups(Bag reference, Draw draw)
{
    private readonly Pen _pen = new(draw);

    /// <summary>Pours a hidden duplicate of one of the samples and the reference, and seats the cuppers.</summary>
    public void LayOut(CuppingSession session, IReadOnlyList<Bag> table, IReadOnlyList<Palate> cuppers)
    {
        var codes = BlindCodes.Draw(2, session.Samples.Select(sample => sample.Code), draw.Random);
        session.Pour(draw.Of(table).Sample, codes[0], isDuplicate: true);
        session.Pour(reference.Sample, codes[1], isReference: true);
        session.Prepare(new TablePlan(200, Weight.FromGrams(11m), "filtered, 93 °C when poured"), null, null);
        var orders = ServingOrders.For(session.Samples.Count, cuppers.Count, draw.Random).Orders;
        foreach (var (palate, order) in cuppers.Zip(orders))
        {
            session.Seat(palate.Member.Person, [.. order.Select(place => place + 1)]);
        }
    }

    /// <summary>The sheets for the duplicate and the reference.</summary>
    public void Taste(CuppingSession session, IReadOnlyList<Bag> table, IReadOnlyList<Palate> cuppers, DateTimeOffset at)
    {
        foreach (var sample in session.Samples.Where(sample => sample.IsDuplicate || sample.IsReference))
        {
            var coffee = table.Append(reference).First(bag => bag.Sample.Id == sample.SampleId).Coffee.Coffee;
            foreach (var palate in cuppers)
            {
                var points = palate.Taste(coffee, 0, draw);
                var marks = session.FormId == CuppingForm.AffectiveId
                    ? _pen.Affective(session.Form.Rules, points, isTainted: false)
                    : _pen.HundredPoint(session.Form.Rules, points, session.CupsPerSample, isTainted: false);
                session.Submit(sample.Code, palate.Member.Person, marks, at.AddMinutes(draw.Between(60, 75))).Remark(_pen.Words(coffee), null, null);
            }
        }
    }
}
