using GreenLedger.Data;
using GreenLedger.Data.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Costs;

/// <summary>What page and API do alike with postings. Whoever calls saves.</summary>
public sealed class PostingActs(LedgerContext db, TimeProvider clock)
{
    /// <summary>Posts an invoice, converted at the rate of its day.</summary>
    public async Task<CostPosting> PostAsync(PostedOn on, CostStage? stage, Money amount, DateOnly day, string document, string? from, ShareBasis? basis, CoveredDays? covers, Id<Person> by, CancellationToken cancellationToken)
    {
        var (house, conversion) = await ToHouseAsync(amount.Currency, day, cancellationToken);
        Rule.Require(await IsThereAsync(on, cancellationToken), "What it is posted on is not there: choose a contract, a shipment or a lot of the ledger.", nameof(CostPosting.LotId));
        Rule.Require(
            !await db.CostPostings.AnyAsync(one => one.WithdrawnAt == null && one.Document == document.Trim() && one.On == day && one.Stage == stage && one.Amount == amount && one.ContractId == on.ContractId && one.ShipmentId == on.ShipmentId && one.LotId == on.LotId, cancellationToken),
            "This invoice is posted already, with the same number, day and amount: withdraw that posting first if it was wrong.", nameof(CostPosting.Document));
        var posting = new CostPosting(on, new Invoice(stage, amount, conversion, day, document, from, basis ?? CostPosting.UsualBasis(stage), covers), house, by, clock.GetUtcNow());
        db.Add(posting);
        return posting;
    }

    /// <summary>The house currency, and the conversion into it that holds on a day.</summary>
    /// <exception cref="RuleBrokenException">A rate is missing.</exception>
    public async Task<(Currency House, Conversion Conversion)> ToHouseAsync(Currency from, DateOnly day, CancellationToken cancellationToken)
    {
        var house = await db.Houses.Select(one => one.Currency).SingleAsync(cancellationToken);
        var rates = new ExchangeRates(await db.ExchangeRates.HoldingOn(RateKind.Market, day).AsNoTracking().ToListAsync(cancellationToken));
        var conversion = rates.Find(from, house, day);
        Rule.Require(conversion is not null, $"There is no exchange rate of {rates.Missing(from, house, day)} on {Display.Figures.Day(day)} or before: enter it under Pricing, Exchange rates.", nameof(CostPosting.Amount));
        return (house, conversion);
    }

    private async Task<bool> IsThereAsync(PostedOn on, CancellationToken cancellationToken) => on switch
    {
        { ContractId: { } contract } => await db.Contracts.AnyAsync(one => one.Id == contract, cancellationToken),
        { ShipmentId: { } shipment } => await db.Shipments.AnyAsync(one => one.Id == shipment, cancellationToken),
        { LotId: { } lot } => await db.Lots.AnyAsync(one => one.Id == lot, cancellationToken),
        _ => true,
    };
}
