using System.Runtime.CompilerServices;

namespace GreenLedger.Data.Tests;

/// <summary>Where the sources are, for tests that read them.</summary>
internal static class Repository
{
    public static string Folder(string name, [CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", name));
}
