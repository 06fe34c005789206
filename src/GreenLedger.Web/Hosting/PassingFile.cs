namespace GreenLedger.Web.Hosting;

/// <summary>A file that is written apart from the answer, so that neither memory nor the ledger waits for whoever takes it.</summary>
internal static class PassingFile
{
    /// <summary>The whole file from its beginning; it is gone when the stream is closed, or when writing it fails.</summary>
    public static async Task<Stream> WriteAsync(Func<Stream, Task> write)
    {
        var file = new FileStream(Path.GetTempFileName(), FileMode.Create, FileAccess.ReadWrite, FileShare.None, 65_536, FileOptions.DeleteOnClose | FileOptions.Asynchronous);
        try
        {
            await write(file);
            file.Position = 0;
            return file;
        }
        catch
        {
            await file.DisposeAsync();
            throw;
        }
    }
}
