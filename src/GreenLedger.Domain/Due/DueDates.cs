using System.Globalization;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Due;

/// <summary>What contracts, shipments and arrivals make due. Days without a date in the contract follow the house's habits.</summary>
public static class DueDates
{
    private const string Buyer = "buyer";
    private const string Seller = "seller";

    /// <summary>The approval of a sample that a contract waits for, by its day or else by the end of the shipment period.</summary>
    public static IEnumerable<DueLine> Approval(Contract contract)
    {
        ArgumentNullException.ThrowIfNull(contract);
        return contract is { AwaitsApproval: true, IsSigned: true }
            ? [new DueLine(DueKind.Approval, contract.Id.Value, $"approve or refuse the pre-shipment sample of {contract.Ref}, {contract.Terms.Seller}", Buyer, contract.Terms.Approval.By ?? contract.ShipUntil)]
            : [];
    }

    /// <summary>What is open of a price, by the last sensible day.</summary>
    public static DueLine Fixing(FixingTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        return new DueLine(
            DueKind.Fixing, task.ContractId.Value, string.Create(CultureInfo.InvariantCulture, $"fix or roll {task.Open.Kilograms:#,0.#} kg of {task.Ref} against {task.Month}; first notice {task.FirstNotice:d MMM yyyy}"),
            task.Call == Caller.Seller ? Seller : Buyer, task.Last);
    }

    /// <summary>What a signed contract still has to ship, by the end of its period.</summary>
    public static IEnumerable<DueLine> Shipment(Contract contract, ContractProgress progress)
    {
        ArgumentNullException.ThrowIfNull(contract);
        ArgumentNullException.ThrowIfNull(progress);
        return contract.Goods is GoodsState.AwaitingApproval or GoodsState.ReadyToShip or GoodsState.PartShipped && !progress.IsShippedInFull
            ? [new DueLine(DueKind.Shipment, contract.Id.Value, string.Create(CultureInfo.InvariantCulture, $"ship {progress.BagsLeft:#,0} bags, {progress.Left.Kilograms:#,0.#} kg, of {contract.Ref}"), Seller, contract.ShipUntil)]
            : [];
    }

    /// <summary>Documents that are missing, counted from the day on board or else the planned departure.</summary>
    public static IEnumerable<DueLine> Documents(Shipment shipment, DueHabits habits)
    {
        ArgumentNullException.ThrowIfNull(shipment);
        ArgumentNullException.ThrowIfNull(habits);
        return shipment.MissingDocuments > 0 && (shipment.ShippedOn ?? shipment.PlannedDeparture) is { } from
            ? [new DueLine(DueKind.Documents, shipment.Id.Value, $"{shipment.Ref} lacks {string.Join(", ", shipment.Documents.Where(document => document.IsMissing).Select(document => document.Name.ToLowerInvariant()))}", Buyer, from.AddDays(habits.DocumentDays))]
            : [];
    }

    /// <summary>Lots on board that were not received, counted from discharge or else the planned arrival.</summary>
    public static IEnumerable<DueLine> Receipts(Shipment shipment, IReadOnlySet<Id<ShipmentLot>> received, Func<ShipmentLot, string> name, DueHabits habits)
    {
        ArgumentNullException.ThrowIfNull(shipment);
        ArgumentNullException.ThrowIfNull(habits);
        var on = shipment.DischargedOn?.AddDays(habits.ReceiptDays) ?? shipment.PlannedArrival?.AddDays(habits.ReceiptDays);
        return shipment.ShippedOn is null || on is null
            ? []
            : shipment.Lots.Where(lot => !received.Contains(lot.Id))
                .Select(lot => new DueLine(DueKind.Receipt, lot.Id.Value, string.Create(CultureInfo.InvariantCulture, $"receive {lot.Bags:#,0} bags of {name(lot)}, shipment {shipment.Ref}"), Buyer, on.Value));
    }

    /// <summary>
    /// Deadlines of weighing and claims of a lot that is discharged and not received yet: nobody may miss them because nobody
    /// wrote a receipt. They stand at the receipt, and go some days after they passed, as the house says.
    /// </summary>
    /// <param name="lot">The part of the shipment.</param>
    /// <param name="name">How the lot is called.</param>
    /// <param name="shipment">How it came.</param>
    /// <param name="form">The days that held when the contract was signed.</param>
    /// <param name="today">The day that the list is read.</param>
    /// <param name="habits">How long what passed is shown; null for the usual days.</param>
    public static IEnumerable<DueLine> BeforeReceipt(ShipmentLot lot, string name, Shipment shipment, FormTerms form, DateOnly today, DueHabits? habits = null)
    {
        ArgumentNullException.ThrowIfNull(lot);
        ArgumentNullException.ThrowIfNull(shipment);
        ArgumentNullException.ThrowIfNull(form);
        return ClaimTimes.Deadlines(form, shipment)
            .Where(deadline => deadline.LastDay >= Since(today, habits))
            .Select(deadline => new DueLine(DueKind.Receipt, lot.Id.Value, $"deadline {Words(deadline.Rule.What).What}, not received yet: {name}, shipment {shipment.Ref}", Buyer, deadline.LastDay!.Value) { Part = Words(deadline.Rule.What).Part });
    }

    /// <summary>The deadline for claiming what was not on board when the shipment period ended; gone once it is claimed or shipped, or some days after it passed.</summary>
    /// <param name="contract">Whole.</param>
    /// <param name="progress">What of it is on board.</param>
    /// <param name="claims">Those made under it, and others.</param>
    /// <param name="today">The day that the list is read.</param>
    /// <param name="habits">How long what passed is shown; null for the usual days.</param>
    public static IEnumerable<DueLine> NotShipped(Contract contract, ContractProgress progress, IEnumerable<Claim> claims, DateOnly today, DueHabits? habits = null)
    {
        ArgumentNullException.ThrowIfNull(contract);
        ArgumentNullException.ThrowIfNull(progress);
        var claimed = claims.Where(claim => claim.ContractId == contract.Id && claim.Outcome != ClaimOutcome.Withdrawn && claim.Case.Grounds().Contains(ClaimGround.NotShipped)).Select(claim => claim.LotId).ToHashSet();
        var left = progress.Lots.Where(lot => !claimed.Contains(lot.Lot.LotId)).Select(lot => MissingGoods.NotShippedOf(contract, progress, lot)).Where(goods => goods.Finding(today).IsShown).ToList();
        return left.Count > 0 && left[0].Deadline() is { LastDay: { } last } && last >= Since(today, habits)
            ? [new DueLine(DueKind.Missing, contract.Id.Value, string.Create(CultureInfo.InvariantCulture, $"deadline to claim {left.Aggregate(Weight.Zero, (sum, goods) => sum + goods.Weight).Kilograms:#,0.#} kg of {contract.Ref} that were not shipped"), Buyer, last)]
            : [];
    }

    /// <summary>What a lot's due diligence lacks, before it comes, or since it came; nothing on days before the regulation applies to the house.</summary>
    /// <param name="lot">The lot.</param>
    /// <param name="missing">What is missing, in sentences.</param>
    /// <param name="on">The day it is expected, else the day it was received; null where neither is known.</param>
    /// <param name="habits">From when the regulation applies.</param>
    public static IEnumerable<DueLine> Diligence(Lot lot, IReadOnlyList<string> missing, DateOnly? on, DiligenceHabits habits)
    {
        ArgumentNullException.ThrowIfNull(lot);
        ArgumentNullException.ThrowIfNull(missing);
        ArgumentNullException.ThrowIfNull(habits);
        return missing.Count > 0 && on is { } day && day >= habits.AppliesFrom
            ? [new DueLine(DueKind.Diligence, lot.Id.Value, string.Create(CultureInfo.InvariantCulture, $"complete the due diligence of {lot.Ref} {lot.Name}: {missing.Count} {(missing.Count == 1 ? "point" : "points")} missing"), Buyer, day)]
            : [];
    }

    private static DateOnly Since(DateOnly today, DueHabits? habits) => today.AddDays(-(habits ?? new DueHabits()).PastDays);

    private static (string What, string Part) Words(string rule) => rule switch
    {
        ClaimTimes.Weighing => ("to weigh", "weighing"),
        ClaimTimes.Quality => ("to claim on quality", "quality"),
        _ => ("to claim on anything else", "other"),
    };

    /// <summary>An arrival whose sample was not cupped yet, counted from receipt.</summary>
    public static DueLine Cupping(Arrival arrival, string lot, DueHabits habits)
    {
        ArgumentNullException.ThrowIfNull(arrival);
        ArgumentNullException.ThrowIfNull(habits);
        return new DueLine(DueKind.Cupping, arrival.Id.Value, arrival.ArrivalSampleId is null ? $"draw and cup a sample of {lot}, which arrived" : $"cup the arrival of {lot} beside the approved sample", Buyer, arrival.ReceivedOn.AddDays(habits.CuppingDays));
    }

    /// <summary>Deadlines of claims by the form that the contract refers to, from discharge or clearance; gone once claimed, or some days after they passed.</summary>
    /// <param name="arrival">What was received; it was weighed, so that only claims are left.</param>
    /// <param name="shipment">How it came.</param>
    /// <param name="form">The days that held when the contract was signed.</param>
    /// <param name="claims">Those made on this arrival.</param>
    /// <param name="lot">How the lot is called.</param>
    /// <param name="today">The day that the list is read.</param>
    /// <param name="habits">How long what passed is shown; null for the usual days.</param>
    public static IEnumerable<DueLine> Claims(Arrival arrival, Shipment shipment, FormTerms form, IReadOnlyCollection<Claim> claims, string lot, DateOnly today, DueHabits? habits = null)
    {
        ArgumentNullException.ThrowIfNull(arrival);
        ArgumentNullException.ThrowIfNull(shipment);
        ArgumentNullException.ThrowIfNull(form);
        var claimed = claims.Where(claim => claim.Outcome != ClaimOutcome.Withdrawn).SelectMany(claim => claim.Case.Grounds()).ToList();
        var deadlines = ClaimTimes.Deadlines(form, shipment);
        return new (string Rule, bool IsDone)[]
        {
            (ClaimTimes.Quality, claimed.Exists(ground => ground.IsQuality())),
            (ClaimTimes.Other, claimed.Exists(ground => !ground.IsQuality())),
        }
            .Where(claim => !claim.IsDone)
            .Select(claim => (Words: Words(claim.Rule), deadlines.FirstOrDefault(deadline => deadline.Rule.What == claim.Rule)?.LastDay))
            .Where(one => one.LastDay >= Since(today, habits))
            .Select(one => new DueLine(DueKind.Claim, arrival.Id.Value, $"deadline {one.Words.What}: {lot}, shipment {shipment.Ref}", Buyer, one.LastDay!.Value) { Part = one.Words.Part });
    }
}
