namespace GreenLedger.Documents.Tests.Offers;

/// <summary>Offer lists as suppliers send them, and what must come out of them, in tests/inputs.</summary>
internal static class SharedInputs
{
    public static byte[] Read(string name) => File.ReadAllBytes(Path.Combine(Folder(), name));

    private static string Folder()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var inputs = Path.Combine(folder.FullName, "inputs");
            if (File.Exists(Path.Combine(inputs, "expected.json")))
            {
                return inputs;
            }
        }

        throw new InvalidOperationException("The folder tests/inputs is missing.");
    }
}
