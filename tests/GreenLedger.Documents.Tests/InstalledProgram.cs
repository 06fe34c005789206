using System.Diagnostics;

namespace GreenLedger.Documents.Tests;

/// <summary>A program of the distribution that reads our documents back; where it is missing the test is skipped.</summary>
internal static class InstalledProgram
{
    public static async Task RunAsync(string program, string package, params string[] arguments)
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        Assert.SkipUnless(folders.Any(folder => File.Exists(Path.Combine(folder, program))), $"No {program} on this machine: install {package}, or run tests/run, which does.");
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start)!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}: {await output}{await errors}");
    }
}
