namespace GreenLedger.Domain.Archive;

/// <summary>A whole house at one moment, to be written into an archive.</summary>
public interface IArchiveSource
{
    IReadOnlyList<ArchiveTable> Tables { get; }

    /// <summary>The rows of a table in the order of their keys; a column of bytes has the name of their member instead.</summary>
    IAsyncEnumerable<object?[]> RowsAsync(ArchiveTable table, CancellationToken cancellationToken);

    /// <summary>The files and messages of all tables, one after the other.</summary>
    IAsyncEnumerable<ArchivedFile> FilesAsync(CancellationToken cancellationToken);
}

/// <summary>An archive that somebody reads back; what is wrong with it is refused with a sentence that says where.</summary>
public interface IArchiveContent
{
    /// <summary>The tables in it.</summary>
    IReadOnlySet<string> Tables { get; }

    /// <summary>How many files its tables are to name.</summary>
    int Files { get; }

    /// <summary>The cells of each row, in the order of the table's columns.</summary>
    /// <exception cref="RuleBrokenException">The table has other columns or another number of rows than it says, or cannot be read.</exception>
    IAsyncEnumerable<string[]> RowsAsync(ArchiveTable table, CancellationToken cancellationToken);

    /// <exception cref="RuleBrokenException">There is no such member.</exception>
    Task<byte[]> FileAsync(string member, CancellationToken cancellationToken);
}

/// <summary>Bytes that the ledger keeps, as a member of an archive.</summary>
/// <param name="Member">Its name in the archive, with the name of the file at its end.</param>
/// <param name="Bytes">As they were received or sent.</param>
/// <param name="Received">SHA-256 when the file was received, in small hexadecimal letters; null for what was not received.</param>
public sealed record ArchivedFile(string Member, ReadOnlyMemory<byte> Bytes, string? Received);

/// <summary>What an archive says of itself.</summary>
/// <param name="House">The name of the house.</param>
/// <param name="MadeAt">The moment that it shows.</param>
/// <param name="Ledger">The newest change of the database that it knows, by which its version is told.</param>
public sealed record ArchiveAbout(string House, DateTimeOffset MadeAt, string Ledger);
