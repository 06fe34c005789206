using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;

namespace GreenLedger.Web.Tests.Delivery;

/// <summary>One container of the image, as a process: its entry point with its settings, on a port of its own.</summary>
internal sealed class RunningNode : IAsyncDisposable
{
    private readonly ImageFixture _image;
    private readonly Process _process;
    private readonly StringBuilder _log = new();

    public RunningNode(ImageFixture image, IReadOnlyDictionary<string, string>? settings = null, params string[] options)
    {
        _image = image;
        Port = FreePort();
        var all = new Dictionary<string, string>(image.Settings);
        foreach (var (name, value) in settings ?? new Dictionary<string, string>())
        {
            all[name] = value;
        }

        all["ASPNETCORE_HTTP_PORTS"] = $"{Port}";
        _process = Shell.Start([.. JsonSerializer.Deserialize<string[]>(image.Final.Last("ENTRYPOINT"))!, .. options], image.ProgramFolder, all);
        _process.OutputDataReceived += (_, line) => Keep(line.Data);
        _process.ErrorDataReceived += (_, line) => Keep(line.Data);
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
    }

    public int Port { get; }

    public Uri Address => new($"http://127.0.0.1:{Port}");

    public async Task<bool> IsHealthyAsync()
    {
        var check = _image.Final.Last("HEALTHCHECK").Split(" CMD ")[1].Replace("8080", $"{Port}", StringComparison.Ordinal);
        return (await Shell.RunAsync(check, _image.ProgramFolder, _image.Settings)).Code == 0;
    }

    /// <summary>Waits until the health check says yes, five minutes at most, since a busy machine is no fault.</summary>
    public async Task<RunningNode> ReadyAsync()
    {
        var until = DateTime.UtcNow.AddMinutes(5);
        while (!await IsHealthyAsync())
        {
            Assert.False(_process.HasExited || DateTime.UtcNow > until, $"The node did not start:\n{Log()}");
            await Task.Delay(200);
        }

        return this;
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            _process.Kill(entireProcessTree: true);
            await _process.WaitForExitAsync();
        }

        _process.Dispose();
    }

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>What the node has printed so far.</summary>
    public string Log()
    {
        lock (_log)
        {
            return _log.ToString();
        }
    }

    private void Keep(string? line)
    {
        lock (_log)
        {
            _log.AppendLine(line);
        }
    }
}
