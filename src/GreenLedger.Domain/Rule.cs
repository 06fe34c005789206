using System.Diagnostics.CodeAnalysis;

namespace GreenLedger.Domain;

/// <summary>States a rule in one line at the top of a method, in the buyer's words.</summary>
public static class Rule
{
    /// <exception cref="RuleBrokenException">The condition does not hold.</exception>
    public static void Require([DoesNotReturnIf(false)] bool condition, string otherwise, string? field = null)
    {
        if (!condition)
        {
            throw new RuleBrokenException(otherwise, field);
        }
    }

    /// <summary>Text that must be there: trimmed, not empty, not longer than the ledger holds.</summary>
    /// <exception cref="RuleBrokenException">The text is empty, too long, or holds a control character.</exception>
    public static string Text(string? value, string what, int longest = 200, string? field = null)
    {
        var text = value?.Trim() ?? "";
        Require(text.Length > 0, $"{what} is missing: please fill it in.", field);
        Require(text.Length <= longest, $"{what} is longer than {longest} characters: please shorten it.", field);
        Require(!text.Any(IsUnreadable), $"{what} holds a character that cannot be read: please type it again.", field);
        return text;
    }

    /// <summary>Text that may be left out: trimmed, null when empty.</summary>
    /// <exception cref="RuleBrokenException">The text is too long.</exception>
    public static string? OptionalText(string? value, string what, int longest = 200, string? field = null) =>
        string.IsNullOrWhiteSpace(value) ? null : Text(value, what, longest, field);

    /// <summary>A control character; PostgreSQL cannot even store the one with the number 0.</summary>
    private static bool IsUnreadable(char character) => char.IsControl(character) && character is not ('\n' or '\r' or '\t');
}
