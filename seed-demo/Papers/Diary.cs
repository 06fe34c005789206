using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Stock;
using GreenLedger.SeedDemo.People;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace GreenLedger.SeedDemo.Papers;

/// <summary>
/// Dates the history: its lines are written by the ledger when the scenario is saved, and carry here the day and the
/// person of what they tell.
/// </summary>
internal sealed class Diary : IDisposable
{
    private static readonly TimeSpan Morning = TimeSpan.FromHours(9);
    private readonly Dictionary<string, Moment> _moments = [];
    private readonly ChangeTracker _tracker;
    private readonly Cast _cast;
    private readonly DateTimeOffset _opening;

    /// <param name="opening">When the house began with the ledger.</param>
    public Diary(ChangeTracker tracker, Cast cast, DateTimeOffset opening)
    {
        (_tracker, _cast, _opening) = (tracker, cast, opening);
        _tracker.Tracked += Date;
    }

    public void Dispose() => _tracker.Tracked -= Date;

    private void Date(object? sender, EntityTrackedEventArgs tracked)
    {
        if (tracked.Entry.Entity is Change line)
        {
            var moment = _moments.GetValueOrDefault(line.RecordId) ?? new Moment(_cast.Buyer.Id, _opening);
            tracked.Entry.Property(nameof(Change.By)).CurrentValue = moment.By;
            tracked.Entry.Property(nameof(Change.At)).CurrentValue = moment.At;
        }
        else if (MomentOf(tracked.Entry.Entity) is var (id, moment))
        {
            _moments[id.ToString("D")] = moment;
        }
    }

    private (Guid Id, Moment Moment)? MomentOf(object record) => record switch
    {
        OfferList list => (list.Id.Value, new Moment(list.By, list.At)),
        ExchangeRate rate => (rate.Id.Value, new Moment(rate.By, rate.At)),
        FuturesQuote quote => (quote.Id.Value, new Moment(quote.By, quote.At)),
        Sample sample => (sample.Id.Value, new Moment(_cast.Lead.Id, Day(sample.ReceivedOn ?? sample.SentOn ?? sample.AskedOn!.Value))),
        GreenGrade grade => (grade.Id.Value, new Moment(grade.By, Day(grade.GradedOn))),
        SampleRoast roast => (roast.Id.Value, new Moment(roast.By, roast.RoastedAt)),
        RoastProtocol protocol => (protocol.Id.Value, new Moment(_cast.Lead.Id, protocol.From)),
        CuppingSession session => (session.Id.Value, new Moment(session.LaidOutBy, session.ClosedAt ?? Day(session.HeldOn))),
        BuyingRules rules => (rules.Id.Value, new Moment(_cast.Buyer.Id, rules.Revisions[^1].At)),
        Decision decision => (decision.Id.Value, new Moment(decision.By, decision.WithdrawnAt ?? decision.At)),
        Contract contract => (contract.Id.Value, new Moment(contract.Newest.WrittenBy, contract.Moves.Count == 0 ? contract.Newest.WrittenAt : contract.Moves[^1].At)),
        Shipment shipment => (shipment.Id.Value, new Moment(_cast.Buyer.Id, Day(shipment.ShippedOn!.Value))),
        Arrival arrival => (arrival.Id.Value, new Moment(arrival.By, arrival.At)),
        CostPosting posting => (posting.Id.Value, new Moment(posting.By, posting.At)),
        Reservation reserve => (reserve.Id.Value, new Moment(reserve.By, reserve.At)),
        Claim claim => (claim.Id.Value, new Moment(claim.By, claim.At)),
        Note note => (note.Id.Value, new Moment(note.By, note.At)),
        Attachment attachment => (attachment.Id.Value, new Moment(attachment.By, attachment.At)),
        _ => null,
    };

    private static DateTimeOffset Day(DateOnly day) => new(day.ToDateTime(TimeOnly.FromTimeSpan(Morning)), TimeSpan.Zero);

    private sealed record Moment(Id<Person>? By, DateTimeOffset At);
}
