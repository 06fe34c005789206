using System.Security.Cryptography;

namespace GreenLedger.Domain.Offers;

/// <summary>
/// A file exactly as it was received. It is parked when it arrives and swept after a day, unless something keeps it.
/// </summary>
public sealed class StoredFile
{
    private StoredFile()
    {
        Name = "";
        ContentType = "";
        Hash = "";
        Content = [];
    }

    public StoredFile(string name, string contentType, byte[] content, DateTimeOffset at)
    {
        Id = Id<StoredFile>.New();
        Name = Rule.Text(Path.GetFileName(name.Replace('\\', '/')), "The name of the file", 200, nameof(Name));
        ContentType = Rule.Text(contentType, "The type of the file", 200, nameof(ContentType));
        Content = content;
        Hash = HashOf(content);
        Length = content.Length;
        At = at;
        ParkedUntil = at.AddDays(1);
    }

    public Id<StoredFile> Id { get; private set; }

    public string Name { get; private set; }

    public string ContentType { get; private set; }

    /// <summary>SHA-256 of the content in hexadecimal capitals: two files with one hash are the same file.</summary>
    public string Hash { get; private set; }

    /// <summary>In bytes.</summary>
    public long Length { get; private set; }

    public byte[] Content { get; private set; }

    public DateTimeOffset At { get; private set; }

    /// <summary>When the sweeper may take it; null once something keeps it.</summary>
    public DateTimeOffset? ParkedUntil { get; private set; }

    public void Keep() => ParkedUntil = null;

    public static string HashOf(byte[] content) => Convert.ToHexString(SHA256.HashData(content));
}
