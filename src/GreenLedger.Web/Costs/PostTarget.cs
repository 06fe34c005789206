using GreenLedger.Domain.Costs;

namespace GreenLedger.Web.Costs;

/// <summary>What an invoice may be charged to.</summary>
/// <param name="Key">As links carry it, <c>lot:</c> and its id.</param>
/// <param name="Ref">Its number.</param>
/// <param name="Written">What it is, its number and its name, as the list proposes it.</param>
public sealed record PostTarget(string Key, string Ref, string Written, PostedOn On)
{
    /// <summary>The one that is meant by what was typed: as proposed, by its number alone, or by a part that only one has. Null where none or several are.</summary>
    public static PostTarget? Find(IReadOnlyList<PostTarget> targets, string? typed)
    {
        ArgumentNullException.ThrowIfNull(targets);
        var text = (typed ?? "").Trim();
        return text.Length == 0 ? null
            : Only(targets, target => Is(target.Key, text) || Is(target.Written.Trim(), text))
            ?? Only(targets, target => Is(target.Ref, text))
            ?? Only(targets, target => target.Written.Contains(text, StringComparison.OrdinalIgnoreCase));
    }

    private static bool Is(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    private static PostTarget? Only(IReadOnlyList<PostTarget> targets, Func<PostTarget, bool> fits) =>
        targets.Where(fits).Take(2).ToList() is [var only] ? only : null;
}
