using GreenLedger.Domain.Certificates;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Tests.Certificates;

/// <summary>Handbook, trade 6.4: the on-board day for organic, the contract's for fairtrade; an end after shipment strips nothing; a suspension is decided by hand.</summary>
public sealed class CertificateTests
{
    private static readonly DateOnly Signed = new(2026, 1, 10);
    private static readonly DateOnly OnBoard = new(2026, 6, 20);
    private static readonly DateOnly Today = new(2026, 11, 26);
    private static readonly Id<Person> Buyer = Id<Person>.New();
    private static readonly CertificateHabits Habits = new();

    [Fact]
    public void Organic_is_held_against_the_day_on_board()
    {
        var early = Held("organic", new DateOnly(2026, 1, 1), new DateOnly(2026, 6, 19));
        var until = Held("organic", new DateOnly(2026, 1, 1), OnBoard);

        Assert.False(Claim("organic", early).Holds);
        Assert.Equal("organic is claimed, and no certificate of the producer or the seller was valid on board, 20 Jun 2026; certificate O-7 of Finca 1 ran from 1 Jan 2026 to 19 Jun 2026.", Claim("organic", early).Said);
        Assert.True(Claim("organic", until).Holds);
        Assert.Equal("organic: certificate O-7 of Finca 1 was valid on board, 20 Jun 2026.", Claim("organic", until).Said);
    }

    [Fact]
    public void Fairtrade_is_held_against_the_day_that_the_contract_was_signed()
    {
        var ended = Held("fairtrade", new DateOnly(2025, 1, 1), new DateOnly(2026, 2, 1));

        Assert.True(Claim("fairtrade", ended).Holds);
        Assert.Equal(Signed, Claim("fairtrade", ended).On);
        Assert.False(ClaimedScheme.Of(["fairtrade"], [ended], OnBoard, Signed, Habits, Today)[0].Holds);
    }

    [Fact]
    public void A_suspended_certificate_is_decided_by_hand_and_another_that_counts_goes_before_it()
    {
        var suspended = Held("organic", new DateOnly(2026, 1, 1), new DateOnly(2026, 12, 31));
        suspended.Certificate.Stand(CertificateState.Suspended, "The inspection was put off", Buyer, DateTimeOffset.UnixEpoch);
        var counts = Held("organic", new DateOnly(2026, 1, 1), new DateOnly(2026, 6, 30));

        Assert.Contains("suspended: decide by hand", Claim("organic", suspended).Said, StringComparison.Ordinal);
        Assert.False(Claim("organic", suspended).Holds);
        Assert.True(Claim("organic", suspended, counts).Holds);
    }

    [Fact]
    public void What_has_not_sailed_is_held_against_today()
    {
        var runs = Held("organic", new DateOnly(2026, 1, 1), Today);

        var claim = ClaimedScheme.Of(["organic"], [runs], Signed, null, Habits, Today)[0];

        Assert.True(claim.Holds);
        Assert.Null(claim.On);
        Assert.Contains("it has not sailed yet", claim.Said, StringComparison.Ordinal);
        Assert.False(ClaimedScheme.Of(["organic"], [runs], Signed, null, Habits, Today.AddDays(1))[0].Holds);
    }

    [Theory]
    [InlineData(CertificateHolder.Producer, false, true, "supplier")]
    [InlineData(CertificateHolder.Supplier, true, true, "producer")]
    [InlineData(CertificateHolder.House, true, false, "producer")]
    public void The_holder_and_nobody_else_is_named(CertificateHolder holder, bool namesProducer, bool namesSupplier, string said)
    {
        var terms = new CertificateTerms("organic", holder, namesSupplier ? Id<Supplier>.New() : null, namesProducer ? Id<Producer>.New() : null, "O-7", null, null, Signed, OnBoard);

        Assert.Contains(said, Assert.Throws<RuleBrokenException>(() => new Certificate(terms)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        var terms = new CertificateTerms(" Organic ", CertificateHolder.House, null, null, "O-7", null, null, Signed, OnBoard);
        var certificate = new Certificate(terms);

        Assert.Equal("organic", certificate.Scheme);
        Assert.Throws<RuleBrokenException>(() => certificate.State(terms with { Until = Signed.AddDays(-1) }));
        Assert.Throws<RuleBrokenException>(() => certificate.State(terms with { Number = " " }));
        Assert.Throws<RuleBrokenException>(() => certificate.Stand(CertificateState.Valid, "Again", Buyer, DateTimeOffset.UnixEpoch));
        Assert.Throws<RuleBrokenException>(() => certificate.Stand(CertificateState.Withdrawn, null, Buyer, DateTimeOffset.UnixEpoch));
        Assert.Throws<RuleBrokenException>(() => new CertificateHabits().Keep(30, 60, null));
    }

    private static ClaimedScheme Claim(string scheme, params HeldCertificate[] known) => ClaimedScheme.Of([scheme], known, Signed, OnBoard, Habits, Today)[0];

    private static HeldCertificate Held(string scheme, DateOnly from, DateOnly until) =>
        new(new Certificate(new CertificateTerms(scheme, CertificateHolder.Producer, null, Id<Producer>.New(), "O-7", null, null, from, until)), "Finca 1");
}
