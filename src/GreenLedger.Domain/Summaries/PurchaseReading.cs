using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Summaries;

/// <summary>Reads a signed contract with its shipments and arrivals into the flat lots that a summary adds up.</summary>
/// <param name="Progress">What of it shipped and arrived.</param>
/// <param name="Claims">Those made of it; null for none.</param>
/// <param name="Scores">Panel scores of samples, for approved and arrival samples.</param>
public sealed record PurchaseReading(
    PurchaseProgress Progress, IReadOnlyDictionary<Id<Samples.Sample>, Score> Scores, Valuation Valuation, IReadOnlyList<Claim>? Claims = null)
{
    private Contract Contract => Progress.Contract;

    /// <summary>One for each lot of the terms that hold.</summary>
    /// <param name="lots">What is known of each lot.</param>
    public IEnumerable<PurchasedLot> Lots(IReadOnlyDictionary<Id<Lot>, LotFacts> lots)
    {
        ArgumentNullException.ThrowIfNull(lots);
        var unpriced = UnpricedParts();
        return Contract.Lots.Select((lot, at) => LotOf(lot, lots[lot.LotId], unpriced[at]));
    }

    private PurchasedLot LotOf(ContractLot lot, LotFacts facts, Weight unpriced)
    {
        var toCome = Progress.ToComeOf(lot);
        return new PurchasedLot
        {
            ContractId = Contract.Id,
            ContractRef = Contract.Ref,
            Lot = facts,
            IsEarlier = Contract.IsEarlier,
            Goods = Contract.Goods,
            ShipUntil = Contract.ShipUntil,
            Net = lot.Net,
            Unpriced = unpriced,
            OpenMonth = Contract.OpenMonth,
            Value = Valuation.Of(Contract, lot.Net),
            ToCome = toCome,
            ValueToCome = toCome == Weight.Zero ? Money.Zero(Valuation.Currency) : Valuation.Of(Contract, toCome),
            Entries =
            [
                Entry(PurchaseStep.Contracted, Valuation.SignedOn(Contract), lot.Net),
                .. Progress.ShippedOf(lot).Select(one => Entry(PurchaseStep.Shipped, one.On, one.Net)),
                .. Progress.ArrivedOf(lot).Select(one => Entry(PurchaseStep.Arrived, one.On, one.Landed)),
            ],
            Judgements = [.. Contract.Approvals.Where(one => one.LotId == lot.LotId).Select(one => new Judged(one.On, one.Round, one.Verdict, one.Remarks))],
            Comparisons = [.. Progress.ArrivalsOf(lot).Select(Comparison)],
            Claims = [.. (Claims ?? []).Where(claim => claim.LotId == lot.LotId).Select(ClaimOf)],
        };
    }

    private PurchaseEntry Entry(PurchaseStep step, DateOnly on, Weight net) => new(step, on, net, Valuation.Of(Contract, net));

    /// <summary>The open share of the contract's weight, split over its lots so that the parts add up.</summary>
    private IReadOnlyList<Weight> UnpricedParts()
    {
        if (Contract is not { OpenMonth: not null, Position: { IsFixed: false } position })
        {
            return [.. Contract.Lots.Select(_ => Weight.Zero)];
        }

        var open = Weight.FromKilograms(Contract.NetWeight.Kilograms * position.Open.Kilograms / position.ToFix.Kilograms);
        return [.. LargestRemainder.Split(open.Micrograms, [.. Contract.Lots.Select(lot => lot.Net.Kilograms)]).Select(part => new Weight(part))];
    }

    private Compared Comparison(Arrival arrival) => new(
        arrival.Id, arrival.ReceivedOn, arrival.Shipped, arrival.Landed, ScoreOf(arrival.ApprovedSampleId), ScoreOf(arrival.ArrivalSampleId));

    private Claimed ClaimOf(Claim claim) => new(
        claim.Id, claim.Ref, claim.On, Valuation.At(claim.Amount, claim.On), claim.Outcome is null, claim.Outcome?.Word() ?? "open", Valuation.At(claim.Settled, claim.SettledOn ?? claim.On));

    private Score? ScoreOf(Id<Samples.Sample>? sample) => sample is { } id && Scores.TryGetValue(id, out var score) ? score : null;
}
