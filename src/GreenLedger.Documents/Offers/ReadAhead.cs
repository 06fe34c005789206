using System.Collections.Concurrent;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Documents.Offers;

/// <summary>
/// Unpacks a workbook on another thread, some thousand rows ahead of whoever reads them, since unpacking takes as long as
/// reading the meaning of the rows.
/// </summary>
internal static class ReadAhead
{
    private const int ChunkSize = 250;
    private const int MostChunks = 8;

    public static IEnumerable<OfferLine> Of(IEnumerable<OfferLine> lines)
    {
        using var stop = new CancellationTokenSource();
        using var chunks = new BlockingCollection<OfferLine[]>(MostChunks);
        var unpacking = Task.Run(() => Unpack(lines, chunks, stop.Token), CancellationToken.None);
        try
        {
            foreach (var chunk in chunks.GetConsumingEnumerable())
            {
                foreach (var line in chunk)
                {
                    yield return line;
                }
            }

            unpacking.GetAwaiter().GetResult();
        }
        finally
        {
            // Whoever stops early must not leave the thread behind with the collection gone.
            stop.Cancel();
            ((IAsyncResult)unpacking).AsyncWaitHandle.WaitOne();
        }
    }

    private static void Unpack(IEnumerable<OfferLine> lines, BlockingCollection<OfferLine[]> chunks, CancellationToken stop)
    {
        try
        {
            foreach (var chunk in lines.Chunk(ChunkSize))
            {
                chunks.Add(chunk, stop);
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Nobody wants the rest.
        }
        finally
        {
            chunks.CompleteAdding();
        }
    }
}
