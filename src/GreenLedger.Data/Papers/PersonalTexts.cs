using System.Data.Common;
using GreenLedger.Domain.Papers;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Storage;

namespace GreenLedger.Data.Papers;

/// <summary>In how many texts of a column somebody is named.</summary>
public sealed record NamedIn(string Table, string Column, int Texts);

/// <summary>
/// Looks through every text of every table for words that name somebody, row by row, and puts other words in their place. The
/// history gets no line of it: that would spell what is erased.
/// </summary>
internal sealed class PersonalTexts(LedgerContext db, ErasedWords words)
{
    /// <summary>Where they stand.</summary>
    public async Task<IReadOnlyList<NamedIn>> FindAsync(CancellationToken cancellationToken)
    {
        var found = new List<NamedIn>();
        foreach (var table in TextTable.All(db))
        {
            var hits = await HitsAsync(table, cancellationToken);
            found.AddRange(hits.GroupBy(hit => hit.Column.Name).Select(column => new NamedIn(table.Name, column.Key, column.Count())));
        }

        return found;
    }

    /// <summary>Within the transaction that the context is in: gives the number of texts that were changed.</summary>
    public async Task<int> ReplaceAsync(CancellationToken cancellationToken)
    {
        var changed = 0;
        foreach (var table in TextTable.All(db))
        {
            var hits = await HitsAsync(table, cancellationToken);
            if (hits.Count > 0)
            {
                await using var guards = await TableGuards.LiftAsync(db, table.Name, cancellationToken);
                foreach (var hit in hits)
                {
                    await ChangeAsync(table, hit, cancellationToken);
                }

                await guards.PutBackAsync(cancellationToken);
                changed += hits.Count;
            }
        }

        return changed;
    }

    private async Task<List<Hit>> HitsAsync(TextTable table, CancellationToken cancellationToken)
    {
        var hits = new List<Hit>();
        await db.Database.OpenConnectionAsync(cancellationToken);
        await using var command = Command();
        command.CommandText = $"SELECT {string.Join(", ", table.Key.Concat(table.Texts).Select(column => $"\"{column.Name}\""))} FROM \"{table.Name}\"";
        await using (var reader = await command.ExecuteReaderAsync(cancellationToken))
        {
            while (await reader.ReadAsync(cancellationToken))
            {
                for (var at = 0; at < table.Texts.Count; at++)
                {
                    if (Changed(reader.GetValue(table.Key.Count + at), table.Texts[at]) is { } changed)
                    {
                        hits.Add(new Hit(table.Texts[at], changed, [.. table.Key.Select((_, key) => reader.GetValue(key))]));
                    }
                }
            }
        }

        await db.Database.CloseConnectionAsync();
        return hits;
    }

    /// <summary>Null where nothing is to be changed.</summary>
    private object? Changed(object value, IColumn column) => value switch
    {
        string text => Shortened(words.Without(text, TextTable.IsFolded(column)), column),
        string[] texts when texts.Any(text => text is not null && words.Without(text, isFolded: false) is not null) =>
            Array.ConvertAll(texts, text => text is null ? null! : words.Without(text, isFolded: false) ?? text),
        _ => null,
    };

    private static string? Shortened(string? text, IColumn column) =>
        text is not null && TextTable.Longest(column) is { } longest && text.Length > longest ? text[..longest] : text;

    private async Task ChangeAsync(TextTable table, Hit hit, CancellationToken cancellationToken)
    {
        await using var command = Command();
        command.CommandText = $"UPDATE \"{table.Name}\" SET \"{hit.Column.Name}\" = @value WHERE {string.Join(" AND ", table.Key.Select((column, at) => $"\"{column.Name}\" = @key{at}"))}";
        Add(command, "@value", hit.Value);
        for (var at = 0; at < hit.Key.Count; at++)
        {
            Add(command, $"@key{at}", hit.Key[at]);
        }

        await command.ExecuteNonQueryAsync(cancellationToken);
    }

    private DbCommand Command()
    {
        var command = db.Database.GetDbConnection().CreateCommand();
        command.Transaction = db.Database.CurrentTransaction?.GetDbTransaction();
        return command;
    }

    private static void Add(DbCommand command, string name, object value)
    {
        var parameter = command.CreateParameter();
        (parameter.ParameterName, parameter.Value) = (name, value);
        command.Parameters.Add(parameter);
    }

    private sealed record Hit(IColumn Column, object Value, IReadOnlyList<object> Key);
}
