using System.Security.Cryptography;

namespace GreenLedger.Documents.Archive;

/// <summary>Passes bytes on to or from another stream, counts them and works out their SHA-256; more than the most are refused.</summary>
internal sealed class CountedStream(Stream inner, long most = long.MaxValue) : Stream
{
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);

    public long Count { get; private set; }

    /// <summary>In small hexadecimal letters, of what passed until now.</summary>
    public string Sha256 => Convert.ToHexStringLower(_hash.GetCurrentHash());

    public override bool CanRead => inner.CanRead;

    public override bool CanSeek => false;

    public override bool CanWrite => inner.CanWrite;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => Count; set => throw new NotSupportedException(); }

    public override void Flush() => inner.Flush();

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        var read = inner.Read(buffer);
        Pass(buffer[..read]);
        return read;
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        inner.Write(buffer);
        Pass(buffer);
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
            _hash.Dispose();
        }

        base.Dispose(disposing);
    }

    private void Pass(ReadOnlySpan<byte> bytes)
    {
        Count += bytes.Length;
        if (Count > most)
        {
            throw new InvalidDataException("It is longer than it says.");
        }

        _hash.AppendData(bytes);
    }
}
