using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>The house's words for what is tasted, and the forms that stand beside the score.</summary>
public static class Descriptors
{
    public static async Task<IReadOnlyList<string>> FamiliesAsync(this LedgerContext db, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        return await db.Descriptors.Select(word => word.Family).Distinct().OrderBy(family => family).ToListAsync(cancellationToken);
    }

    /// <exception cref="RuleBrokenException">The house has this word already.</exception>
    public static async Task RequireNewWordAsync(this LedgerContext db, Descriptor word, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(word);
        var family = await db.Descriptors.Where(other => other.Word == word.Word && other.Id != word.Id).Select(other => other.Family).FirstOrDefaultAsync(cancellationToken);
        Rule.Require(family is null, $"The house has the word “{word.Word}” already, in the family “{family}”.", nameof(word.Word));
    }

    /// <summary>The descriptive form in its newest revision.</summary>
    public static Task<DescriptiveForm> NewestDescriptiveAsync(this LedgerContext db, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.DescriptiveForms.OrderByDescending(form => form.Revision).FirstAsync(cancellationToken);
    }
}
