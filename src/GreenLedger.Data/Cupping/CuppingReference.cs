using GreenLedger.Domain.Cupping;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>The published forms, the protocol and the habits that every ledger has from the start.</summary>
internal static class CuppingReference
{
    /// <summary>Adds the published forms that are missing; revisions of the house are left alone.</summary>
    public static async Task FillAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        var there = await db.CuppingForms.Select(form => form.Id).ToListAsync(cancellationToken);
        db.CuppingForms.AddRange(CuppingForm.Published().Where(form => !there.Contains(form.Id)));
        await FillTableAsync(db, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
    }

    private static async Task FillTableAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        if (!await db.TastingProtocols.AnyAsync(protocol => protocol.Id == TastingProtocol.UsualId, cancellationToken))
        {
            db.Add(TastingProtocol.Usual());
        }

        if (!await db.DescriptiveForms.AnyAsync(form => form.Id == DescriptiveForm.Sca103Id, cancellationToken))
        {
            db.Add(DescriptiveForm.Sca103());
        }

        if (!await db.Descriptors.AnyAsync(cancellationToken))
        {
            db.AddRange(Descriptor.Usual());
        }

        if (!await db.CuppingHabits.AnyAsync(cancellationToken))
        {
            db.Add(CuppingHabits.Usual());
        }
    }
}
