using System.Security.Cryptography;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Papers;

/// <summary>
/// A file as it was received, kept in the database so that every node has it. A parked file waits for a decision
/// (an offer list in preview) and is swept after a day if nothing follows.
/// </summary>
public sealed class StoredFile
{
    private StoredFile()
    {
        Name = ContentType = Sha256 = "";
        Content = null!;
    }

    public StoredFile(string name, string contentType, byte[] bytes, Id<Person>? by, DateTimeOffset at)
    {
        Id = Id<StoredFile>.New();
        Name = Rule.Text(Path.GetFileName(name), "The file's name", 255, nameof(Name));
        ContentType = contentType;
        Size = bytes.LongLength;
        Sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes));
        Content = new StoredBytes(Id, bytes);
        By = by;
        At = at;
    }

    public Id<StoredFile> Id { get; private set; }

    public string Name { get; private set; }

    public string ContentType { get; private set; }

    /// <summary>In bytes.</summary>
    public long Size { get; private set; }

    /// <summary>Lower-case hexadecimal SHA-256 of the bytes: two files with the same one are the same file.</summary>
    public string Sha256 { get; private set; }

    public bool IsParked { get; private set; } = true;

    public Id<Person>? By { get; private set; }

    public DateTimeOffset At { get; private set; }

    /// <summary>Loaded only where the file is read or served.</summary>
    public StoredBytes? Content { get; private set; }

    public void Keep() => IsParked = false;
}
