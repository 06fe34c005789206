namespace GreenLedger.Documents.Tests.Offers;

/// <summary>
/// Offer lists as suppliers send them, kept beside the repository where there is such a folder. Tests of them run when
/// it is there; the equal cases that the project makes itself run always.
/// </summary>
internal static class SharedInputs
{
    public static string? Folder { get; } = Find();

    public static byte[] Read(string name) => File.ReadAllBytes(Path.Combine(Folder!, name));

    private static string? Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var inputs = Path.Combine(folder.FullName, "shared", "inputs");
            if (File.Exists(Path.Combine(inputs, "expected.json")))
            {
                return inputs;
            }
        }

        return null;
    }
}
