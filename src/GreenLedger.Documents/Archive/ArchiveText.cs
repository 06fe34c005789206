using System.Globalization;
using GreenLedger.Domain.Archive;

namespace GreenLedger.Documents.Archive;

/// <summary>The texts of an archive: how it is read, and what each table and column means.</summary>
internal static class ArchiveText
{
    public static readonly string[] Heads = ["Table", "Column", "Type", "May be empty", "Unit", "Points to", "Meaning"];

    /// <summary>A line for each table, then one for each of its columns.</summary>
    public static IEnumerable<string[]> Lines(IEnumerable<ArchiveTable> tables) => tables.SelectMany(table => table.Columns
        .Select(column => new[] { table.Name, column.Name, column.Type, column.MayBeEmpty ? "yes" : "no", column.Unit, column.Reference, column.Meaning })
        .Prepend([table.Name, "", "", "", "", "", table.Meaning]));

    public static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    public static string Of(ArchiveAbout about, IReadOnlyList<ArchiveTable> tables)
    {
        var text = string.Create(CultureInfo.InvariantCulture, $"""
            {about.House}: the whole house, as it stood at {about.MadeAt.UtcDateTime:yyyy-MM-dd HH:mm:ss} UTC
            Written by GreenLedger, database {about.Ledger}, format {ArchiveFormat.Newest}.

            It holds everything the house keeps, personal data included: keep it as you keep the house.
            Not in it: passwords, passkeys, tokens, calendar addresses and the keys of sign-ins. Whoever is read back
            chooses a new password by an invitation. Settings of the machine (mail server, certificate) are not in it either.

            tables/NAME.csv   every table, by RFC 4180 in UTF-8: the first line names the columns, the rows stand in the order
                              of their key. Numbers have a point, days read 2026-11-30, moments are UTC. Lists are JSON. An
                              empty cell is nothing; where a column may be empty, a text without letters is a lone backslash,
                              and one that begins with a backslash has another in front.
            files/…           every file as it was received and every message as it was sent, under its own name. The table
                              names the member.
            description.csv   each table and each column: type, unit, where it points, what it means.
            members.csv       size and SHA-256 of each member, and for a file the SHA-256 that it was received with.
            manifest.json     format, moment, the rows of each table, and the SHA-256 of members.csv.

            Read back into an empty house of the same version it gives the same archive again.

            The tables:

            """);
        return text.ReplaceLineEndings("\r\n") + string.Concat(tables.Select(table => $"  {table.Name}: {table.Meaning}\r\n"));
    }
}
