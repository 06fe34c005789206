using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Cupping;

public class DiscussedScoreTests
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);
    private readonly Person _noor = new("Noor Haddad", Role.LeadCupper);

    [Fact]
    public void A_withdrawn_score_stays_with_who_and_why_and_is_withdrawn_once()
    {
        var result = Closed();
        var discussed = result.Discuss(result.Samples[0].SampleId, 84m, "one cup was cold", _noor.Id, Noon);

        Assert.Throws<RuleBrokenException>(() => result.WithdrawDiscussed(discussed.Id, " ", _noor.Id, Noon));
        result.WithdrawDiscussed(discussed.Id, "it was the other sample", _noor.Id, Noon.AddHours(1));
        var again = Assert.Throws<RuleBrokenException>(() => result.WithdrawDiscussed(discussed.Id, "again", _noor.Id, Noon));
        var other = Assert.Throws<RuleBrokenException>(() => result.WithdrawDiscussed(Id<DiscussedScore>.New(), "no such", _noor.Id, Noon));

        Assert.Equal(("it was the other sample", _noor.Id, Noon.AddHours(1)), (discussed.WithdrawnBecause, discussed.WithdrawnBy, discussed.WithdrawnAt));
        Assert.Same(discussed, Assert.Single(result.Discussed));
        Assert.Contains("already withdrawn", again.Message, StringComparison.Ordinal);
        Assert.Contains("no such discussed score", other.Message, StringComparison.Ordinal);
    }

    private PanelResult Closed()
    {
        var lot = new Lot("VF-1", "Vale Fundo", new Supplier("Porto Alto", SupplierKind.Exporter).Id);
        var session = new CuppingSession("Wednesday table", new DateOnly(2026, 11, 25), CuppingForm.HundredPoint(), 5, _noor.Id);
        var poured = session.Pour(new Sample(lot.Id, SampleKind.Offer, "ACDEF", new DateOnly(2026, 11, 20), Weight.FromGrams(350)), new Random(1));
        session.Submit(poured.Code, _noor, new([.. Enumerable.Repeat(Mark.Of(8m), 7)], [5, 5, 5], [0, 0]), Noon);
        return session.Close(_noor.Id, Noon, new ExpectedErrors(1.0, 0.5));
    }
}
