using System.Diagnostics;
using System.Runtime.CompilerServices;

namespace GreenLedger.Web.Tests.Delivery;

/// <summary>Runs commands as a terminal would.</summary>
internal static class Shell
{
    /// <summary>The folder of the whole project.</summary>
    public static string Project([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", ".."));

    /// <summary>Runs the command to its end and hands back its exit code and all it printed.</summary>
    public static async Task<(int Code, string Output)> RunAsync(
        string command, string folder, IReadOnlyDictionary<string, string> environment)
    {
        using var process = Start(["bash", "-euc", command], folder, environment);
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, await output + await errors);
    }

    /// <summary>Starts a program; its input is empty.</summary>
    public static Process Start(
        IReadOnlyList<string> command, string folder, IReadOnlyDictionary<string, string> environment)
    {
        var start = new ProcessStartInfo(command[0], command.Skip(1))
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        var process = Process.Start(start)!;
        process.StandardInput.Close();
        return process;
    }
}
