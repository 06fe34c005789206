using System.Text;

namespace GreenLedger.Data.Archive;

/// <summary>Under which name bytes of a table leave: a file under the one that it was received with.</summary>
internal static class StoredNames
{
    private const string Unusable = "<>:\"/\\|?*";

    /// <summary>SQL for the name of a row's file, and for the hash that it was received with; <c>t</c> is the row.</summary>
    public static (string Name, string Received) SqlOf(StoredTable table) => table.Name switch
    {
        "StoredBytes" => (Of("Name"), Of("Sha256")),
        "Messages" => ("'message.eml'", "NULL"),
        _ => ($"'{table.Columns[table.BytesAt].Name}.bin'", "NULL"),
    };

    /// <summary>The member that holds the file: no name of a file can lead out of its folder.</summary>
    public static string Member(string table, string key, string? name)
    {
        var usable = new StringBuilder();
        foreach (var letter in (name ?? "").Trim('.', ' '))
        {
            usable.Append(char.IsControl(letter) || Unusable.Contains(letter, StringComparison.Ordinal) ? '_' : letter);
        }

        return $"files/{table}/{key}/{(usable.Length == 0 ? "file" : usable)}";
    }

    private static string Of(string column) => $"(SELECT f.\"{column}\" FROM \"StoredFiles\" f WHERE f.\"Id\" = t.\"Id\")";
}
