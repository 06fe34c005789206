using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;

namespace GreenLedger.Data.Papers;

/// <summary>A line of the history as a reader may see it.</summary>
/// <param name="Change">The line itself; null in place of one that is sealed from the reader.</param>
/// <param name="By">The person's name; null where the ledger itself acted.</param>
/// <param name="Members">What differs, as values.</param>
public sealed record HistoryRow(Change? Change, DateTimeOffset At, string? By, IReadOnlyList<HistoryMember> Members);

/// <summary>One member of a record, or of one of its parts, before and after.</summary>
/// <param name="Part">The part in words with its name; null for the record itself.</param>
/// <param name="Name">The member in words: <c>net weight</c>.</param>
/// <param name="Before">The value, such as a weight; the name of a record that it points to; null for none.</param>
/// <param name="After">Likewise.</param>
public sealed record HistoryMember(string? Part, string Name, object? Before, object? After);

/// <summary>Which lines are asked for; null leaves a question open.</summary>
public sealed record HistoryFilter(Id<Person>? By = null, string? Kind = null, DateOnly? From = null, DateOnly? To = null);
