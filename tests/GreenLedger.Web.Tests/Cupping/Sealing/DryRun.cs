using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace GreenLedger.Web.Tests.Cupping.Sealing;

/// <summary>While it is on, nothing that is saved stays: every form can be sent and every act tried on the same open session.</summary>
internal sealed class DryRun : ISaveChangesInterceptor, IDbTransactionInterceptor
{
    public bool IsOn { get; set; }

    public ValueTask<InterceptionResult<int>> SavingChangesAsync(DbContextEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
    {
        if (IsOn)
        {
            eventData.Context!.Database.AutoTransactionBehavior = AutoTransactionBehavior.Always;
        }

        return ValueTask.FromResult(result);
    }

    /// <summary>A transaction that was not committed is taken back when it is disposed of.</summary>
    public ValueTask<InterceptionResult> TransactionCommittingAsync(DbTransaction transaction, TransactionEventData eventData, InterceptionResult result, CancellationToken cancellationToken = default) =>
        ValueTask.FromResult(IsOn ? InterceptionResult.Suppress() : result);

    public InterceptionResult TransactionCommitting(DbTransaction transaction, TransactionEventData eventData, InterceptionResult result) =>
        IsOn ? InterceptionResult.Suppress() : result;
}
