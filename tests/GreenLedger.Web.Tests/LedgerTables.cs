using System.Data.Common;
using GreenLedger.Data;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests;

/// <summary>Every row of every table of the ledger and its history, as text; sign-in, keys and the nodes' work are left out.</summary>
internal static class LedgerTables
{
    private static readonly string[] NotOfTheBusiness = ["Jobs", "ApiTokens", "DataProtectionKeys"];

    public static async Task<SortedDictionary<string, string>> ReadAsync(LedgerContext db)
    {
        var names = db.Model.GetEntityTypes().Select(type => type.GetTableName()!).Distinct()
            .Where(name => !name.StartsWith("AspNet", StringComparison.Ordinal) && !NotOfTheBusiness.Contains(name));
        await db.Database.OpenConnectionAsync();
        var tables = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var name in names)
        {
            tables[name] = await RowsAsync(db.Database.GetDbConnection(), name);
        }

        return tables;
    }

    private static async Task<string> RowsAsync(DbConnection connection, string table)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = $"SELECT * FROM \"{table}\"";
        await using var reader = await command.ExecuteReaderAsync();
        var rows = new List<string>();
        while (await reader.ReadAsync())
        {
            rows.Add(string.Join('|', Enumerable.Range(0, reader.FieldCount).Select(column => reader.GetValue(column) switch
            {
                byte[] bytes => Convert.ToHexString(bytes),
                var value => value.ToString(),
            })));
        }

        return string.Join('\n', rows.Order(StringComparer.Ordinal));
    }
}
