using GreenLedger.Data.Contracts;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Offers;
using GreenLedger.Data.Samples;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Summaries;

/// <summary>What waits for somebody, room by room; counts only, so that nothing sealed is told.</summary>
/// <param name="RowsSetAside">Rows of offer lists that nobody has mended yet.</param>
/// <param name="OffersEnding">Open offers whose validity ends within <see cref="WaitingQuery.EndingWithinDays"/> days.</param>
/// <param name="SamplesToGrade">Samples received and not graded.</param>
/// <param name="SamplesToCup">Samples received that were not cupped and are on no open table.</param>
/// <param name="OpenSessions">Cupping sessions that are not closed.</param>
/// <param name="ContractsToSign">Contracts with a version that nobody has signed.</param>
/// <param name="ApprovalsDue">Contracts whose day to approve or refuse a pre-shipment sample is near or past.</param>
/// <param name="NextApproval">The nearest of those days; null where none is due.</param>
/// <param name="FixingsDue">Contracts whose last sensible day to fix or roll is near or past.</param>
/// <param name="NextFixing">The nearest of those days; null where none is due.</param>
/// <param name="NewestRate">The day of the newest exchange rate.</param>
/// <param name="NewestFutures">The day of the newest futures quote.</param>
public sealed record Waiting(
    int RowsSetAside, int OffersEnding, int SamplesToGrade, int SamplesToCup, int OpenSessions, int ContractsToSign, int ApprovalsDue, DateOnly? NextApproval, int FixingsDue, DateOnly? NextFixing, DateOnly? NewestRate, DateOnly? NewestFutures);

/// <summary>Counts what waits, for the first page.</summary>
public sealed class WaitingQuery(LedgerContext db, SampleQuery samples, ContractQuery contracts, FixingsQuery fixings, ApprovalQuery approvals)
{
    public const int EndingWithinDays = 7;

    /// <summary>An approval shows as a task so many days before its day. Common practice, no source.</summary>
    public const int ApprovalsWithinDays = 14;

    /// <param name="today">The day that "ends within" counts from.</param>
    /// <param name="seal">What an open session keeps from the person who asks.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<Waiting> FindAsync(DateOnly today, Seal seal, CancellationToken cancellationToken)
    {
        var last = today.AddDays(EndingWithinDays);
        var due = await fixings.DueAsync(today, cancellationToken);
        var approvalsDue = await approvals.DueAsync(today, ApprovalsWithinDays, cancellationToken);
        return new Waiting(
            await db.SetAsideRows.Waiting().CountAsync(cancellationToken),
            await db.Offers.CountAsync(offer => offer.State == OfferState.OnOffer && offer.ValidUntil >= today && offer.ValidUntil <= last, cancellationToken),
            await samples.CountAsync(new SampleFilter(Waiting: SampleStep.Graded), seal, cancellationToken),
            await samples.CountAsync(new SampleFilter(Waiting: SampleStep.Cupped), seal, cancellationToken),
            await db.CuppingSessions.Open().CountAsync(cancellationToken),
            await contracts.CountAsync(new ContractFilter(IsUnsigned: true), cancellationToken),
            approvalsDue.Count,
            approvalsDue.Next,
            due.Count,
            due.Count == 0 ? null : due[0].Last,
            await db.ExchangeRates.MaxAsync(rate => (DateOnly?)rate.On, cancellationToken),
            await db.FuturesQuotes.MaxAsync(quote => (DateOnly?)quote.On, cancellationToken));
    }
}
