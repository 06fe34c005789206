using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>Whether a form that is to be changed is the one in use.</summary>
public static class FormRevisions
{
    /// <exception cref="RuleBrokenException">The house made a newer revision of this form meanwhile.</exception>
    public static async Task RequireNewestAsync(this LedgerContext db, CuppingForm found, CancellationToken cancellationToken) => Require(
        await db.CuppingForms.Where(form => form.Code == found.Code && form.Edition == found.Edition).MaxAsync(form => form.Revision, cancellationToken), found.Revision);

    /// <exception cref="RuleBrokenException">The house made a newer revision of this form meanwhile.</exception>
    public static async Task RequireNewestAsync(this LedgerContext db, DescriptiveForm found, CancellationToken cancellationToken) => Require(
        await db.DescriptiveForms.Where(form => form.Name == found.Name && form.Edition == found.Edition).MaxAsync(form => form.Revision, cancellationToken), found.Revision);

    private static void Require(int newest, int revision) =>
        Rule.Require(newest == revision, $"There is a newer revision ({newest}) of this form: change that one.");
}
