using System.Buffers;
using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;

namespace GreenLedger.Domain;

/// <summary>States a rule in one line at the top of a method, in the buyer's words.</summary>
public static class Rule
{
    /// <summary>Control characters; PostgreSQL cannot even store the one with the number 0.</summary>
    private static readonly SearchValues<char> Unreadable = SearchValues.Create(
        [.. Enumerable.Range(0, 0xA0).Select(code => (char)code).Where(code => char.IsControl(code) && code is not ('\n' or '\r' or '\t'))]);

    /// <exception cref="RuleBrokenException">The condition does not hold.</exception>
    public static void Require([DoesNotReturnIf(false)] bool condition, string otherwise, string? field = null)
    {
        if (!condition)
        {
            throw new RuleBrokenException(otherwise, field);
        }
    }

    /// <summary>As above; the sentence is put together only when the rule is broken, since most rules hold a million times.</summary>
    /// <exception cref="RuleBrokenException">The condition does not hold.</exception>
    public static void Require(
        [DoesNotReturnIf(false)] bool condition, [InterpolatedStringHandlerArgument(nameof(condition))] ref RuleSentence otherwise, string? field = null)
    {
        if (!condition)
        {
            throw new RuleBrokenException(otherwise.ToStringAndClear(), field);
        }
    }

    /// <summary>Text that must be there: trimmed, not empty, not longer than the ledger holds.</summary>
    /// <exception cref="RuleBrokenException">The text is empty, too long, or holds a control character.</exception>
    public static string Text(string? value, string what, int longest = 200, string? field = null)
    {
        var text = value?.Trim() ?? "";
        Require(text.Length > 0, $"{what} is missing: please fill it in.", field);
        Require(text.Length <= longest, $"{what} is longer than {longest} characters: please shorten it.", field);
        Require(!text.AsSpan().ContainsAny(Unreadable), $"{what} holds a character that cannot be read: please type it again.", field);
        return text;
    }

    /// <summary>A day that the trade can mean: sums of days then stay within the calendar.</summary>
    /// <exception cref="RuleBrokenException">The day lies before 1990 or after 2099.</exception>
    public static void Day(DateOnly? day, string? field = null) =>
        Require(day is null or { Year: >= 1990 and <= 2099 }, "A day lies between 1990 and 2099: please check the year.", field);

    /// <summary>Text that may be left out: trimmed, null when empty.</summary>
    /// <exception cref="RuleBrokenException">The text is too long.</exception>
    public static string? OptionalText(string? value, string what, int longest = 200, string? field = null) =>
        string.IsNullOrWhiteSpace(value) ? null : Text(value, what, longest, field);
}

/// <summary>The sentence of a broken rule; while the rule holds nothing is written into it.</summary>
[InterpolatedStringHandler]
public ref struct RuleSentence
{
    private DefaultInterpolatedStringHandler _text;

    public RuleSentence(int literalLength, int formattedCount, bool condition, out bool isBroken)
    {
        isBroken = !condition;
        _text = isBroken ? new DefaultInterpolatedStringHandler(literalLength, formattedCount) : default;
    }

    public void AppendLiteral(string value) => _text.AppendLiteral(value);

    public void AppendFormatted<T>(T value) => _text.AppendFormatted(value);

    public void AppendFormatted<T>(T value, string? format) => _text.AppendFormatted(value, format);

    public string ToStringAndClear() => _text.ToStringAndClear();
}
