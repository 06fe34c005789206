using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Costs;

/// <summary>By what an amount is shared between the lots that it was spent on (handbook, trade 3.3, example E).</summary>
public enum ShareBasis
{
    /// <summary>Freight, terminal, haulage, storage: by what the lots weigh.</summary>
    Weight = 0,

    /// <summary>Insurance, finance, duty: by what the lots are worth.</summary>
    Value = 1,
}

/// <summary>What an invoice or charge was posted on: a contract, a shipment or a lot alone.</summary>
public sealed record PostedOn(Id<Contract>? ContractId, Id<Shipment>? ShipmentId, Id<Lot>? LotId)
{
    public bool IsOne => new[] { ContractId is not null, ShipmentId is not null, LotId is not null }.Count(one => one) == 1;
}

/// <summary>What an invoice says.</summary>
/// <param name="Stage">Null for the coffee itself, and for a claim that was settled.</param>
/// <param name="Amount">Below zero for a credit, such as an allowance.</param>
/// <param name="ToHouse">The conversion into the house currency on the day of the invoice; stock cost never follows later rates.</param>
/// <param name="Covers">The days for which storage is billed; null where the bill does not say, and for everything else.</param>
public sealed record Invoice(CostStage? Stage, Money Amount, Conversion ToHouse, DateOnly On, string Document, string? From, ShareBasis Basis, CoveredDays? Covers = null);

/// <summary>
/// An invoice or charge as it was billed, on a contract, a shipment or a lot. It is shared over the lots each time it is
/// asked, so that a late bill finds its way to every lot; a wrong one is withdrawn with a reason, never changed.
/// </summary>
public sealed class CostPosting
{
    private CostPosting() => Document = "";

    /// <exception cref="RuleBrokenException">It is posted on nothing or on two things, has no amount, or no document.</exception>
    public CostPosting(PostedOn on, Invoice invoice, Currency house, Id<Person> by, DateTimeOffset at)
        : this()
    {
        ArgumentNullException.ThrowIfNull(on);
        ArgumentNullException.ThrowIfNull(invoice);
        Rule.Day(invoice.On, nameof(On));
        Rule.Require(invoice.On <= DateOnly.FromDateTime(at.UtcDateTime.AddHours(14)), "This day is still to come: write the day that stands on the invoice.", nameof(On));
        Rule.Require(on.IsOne, "Choose what it is posted on: a contract, a shipment or a lot.", nameof(LotId));
        Rule.Require(invoice.Amount.MinorUnits != 0, "The amount is above zero, or below it for a credit.", nameof(Amount));
        Rule.Require(invoice.ToHouse.From == invoice.Amount.Currency && invoice.ToHouse.To == house, "The rate does not fit the amount and the house currency.", nameof(Amount));
        Rule.Require(invoice.Covers is null || invoice.Stage == CostStage.Storage, "Only storage is billed for days: leave them empty.", nameof(CoversFrom));
        Id = Id<CostPosting>.New();
        (ContractId, ShipmentId, LotId) = (on.ContractId, on.ShipmentId, on.LotId);
        (Stage, Amount, On, Basis) = (invoice.Stage, invoice.Amount, invoice.On, invoice.Basis);
        (CoversFrom, CoversUntil) = (invoice.Covers?.From, invoice.Covers?.Until);
        House = invoice.ToHouse.Of(invoice.Amount);
        RateOn = invoice.ToHouse.On;
        Document = Rule.Text(invoice.Document, "The number of the invoice", 80, nameof(Document));
        From = Rule.OptionalText(invoice.From, "Who sent it", 120, nameof(From));
        (By, At) = (by, at);
    }

    public Id<CostPosting> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Contract>? ContractId { get; private set; }

    public Id<Shipment>? ShipmentId { get; private set; }

    public Id<Lot>? LotId { get; private set; }

    /// <summary>The claim whose settlement it is; null for every other posting.</summary>
    public Id<Claim>? ClaimId { get; internal init; }

    /// <summary>Null for the coffee itself.</summary>
    public CostStage? Stage { get; private set; }

    /// <summary>As billed.</summary>
    public Money Amount { get; private set; }

    /// <summary>In the house currency, at the rate of the day of the invoice, rounded half away from zero once.</summary>
    public Money House { get; private set; }

    /// <summary>The day of the rate; null where no rate was needed.</summary>
    public DateOnly? RateOn { get; private set; }

    /// <summary>The day of the invoice.</summary>
    public DateOnly On { get; private set; }

    /// <summary>The first day for which storage is billed; null where the bill does not say, and for everything else.</summary>
    public DateOnly? CoversFrom { get; private set; }

    /// <summary>The last day for which storage is billed; null where the bill does not say, and for everything else.</summary>
    public DateOnly? CoversUntil { get; private set; }

    public CoveredDays? Covers => CoversFrom is { } from && CoversUntil is { } until ? new CoveredDays(from, until) : null;

    public string Document { get; private set; }

    public string? From { get; private set; }

    public ShareBasis Basis { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    public string? WithdrawnBecause { get; private set; }

    public Id<Person>? WithdrawnBy { get; private set; }

    public DateTimeOffset? WithdrawnAt { get; private set; }

    public bool IsWithdrawn => WithdrawnAt is not null;

    /// <summary>Freight and the like by weight; insurance, finance and duty by value; the coffee by value (common practice, no source).</summary>
    public static ShareBasis UsualBasis(CostStage? stage) =>
        stage is null or CostStage.Insurance or CostStage.Finance or CostStage.Duty ? ShareBasis.Value : ShareBasis.Weight;

    /// <summary>
    /// Whether it may belong to the accounting cost: never finance (IAS 23, from memory: green coffee takes no long time to get
    /// ready); null for storage, where the day decides that each lot landed (IAS 2.16, from memory).
    /// </summary>
    public bool? MayBeAccounting => Stage switch { CostStage.Finance => false, CostStage.Storage => null, _ => true };

    /// <exception cref="RuleBrokenException">It was withdrawn already, or no reason is given.</exception>
    public void Withdraw(string reason, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(!IsWithdrawn, "This posting was withdrawn already.", nameof(WithdrawnBecause));
        WithdrawnBecause = Rule.Text(reason, "The reason for withdrawing", 500, nameof(WithdrawnBecause));
        (WithdrawnBy, WithdrawnAt) = (by, at);
    }
}
