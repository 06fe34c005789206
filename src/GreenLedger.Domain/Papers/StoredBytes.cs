namespace GreenLedger.Domain.Papers;

/// <summary>The bytes of a stored file, apart from its description so that lists of files stay light.</summary>
public sealed class StoredBytes
{
    private StoredBytes() => Bytes = [];

    internal StoredBytes(Id<StoredFile> id, byte[] bytes)
    {
        Id = id;
        Bytes = bytes;
    }

    public Id<StoredFile> Id { get; private set; }

#pragma warning disable CA1819 // The bytes are handed to streams as they are; copying megabytes would serve nobody.
    public byte[] Bytes { get; private set; }
#pragma warning restore CA1819
}
