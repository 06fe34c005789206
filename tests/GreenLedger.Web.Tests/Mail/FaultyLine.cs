using System.Net;
using System.Net.Sockets;
using System.Text;

namespace GreenLedger.Web.Tests.Mail;

/// <summary>What happens on a line to the mail server.</summary>
public enum Fault
{
    None = 0,

    /// <summary>The server asks for the text, and the line is cut before a byte of it went out.</summary>
    CutBeforeText = 1,

    /// <summary>The server asks for the text, and nobody hears it.</summary>
    StallBeforeText = 2,

    /// <summary>The server has taken the text over, and its answer is lost.</summary>
    CutAfterText = 3,

    /// <summary>The server has taken the text over, and its answer never comes.</summary>
    StallAfterText = 4,
}

/// <summary>A line between the ledger and a real mail server that a test can cut or hold at the worst moment.</summary>
internal sealed class FaultyLine : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _closing = new();
    private readonly int _server;

    public FaultyLine(int server)
    {
        _server = server;
        _listener.Start();
        _ = AcceptAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    public Fault Fault { get; set; }

    public async ValueTask DisposeAsync()
    {
        await _closing.CancelAsync();
        _listener.Dispose();
        _closing.Dispose();
    }

    private async Task AcceptAsync()
    {
        while (!_closing.IsCancellationRequested)
        {
            try
            {
                _ = CarryAsync(await _listener.AcceptTcpClientAsync(_closing.Token));
            }
            catch (Exception closed) when (closed is OperationCanceledException or ObjectDisposedException or SocketException)
            {
                return;
            }
        }
    }

    private async Task CarryAsync(TcpClient ledger)
    {
        using var near = ledger;
        using var far = new TcpClient();
        try
        {
            await far.ConnectAsync(IPAddress.Loopback, _server, _closing.Token);
            var there = near.GetStream().CopyToAsync(far.GetStream(), _closing.Token);
            await AnswersAsync(far.GetStream(), near.GetStream());
            near.Client.LingerState = new LingerOption(true, 0);
        }
        catch (Exception broken) when (broken is IOException or SocketException or OperationCanceledException or ObjectDisposedException)
        {
            // The ledger or the server hung up first.
        }
    }

    /// <summary>Carries the server's answers back until the fault happens: 354 is its call for the text (RFC 5321, section 4.2.3).</summary>
    private async Task AnswersAsync(NetworkStream server, NetworkStream ledger)
    {
        var buffer = new byte[4096];
        var isText = false;
        while (await server.ReadAsync(buffer, _closing.Token) is > 0 and var read)
        {
            var calls = Encoding.ASCII.GetString(buffer, 0, read).Contains("354", StringComparison.Ordinal);
            var moment = calls ? Fault.CutBeforeText : isText ? Fault.CutAfterText : Fault.None;
            if (moment != Fault.None && Fault == moment)
            {
                return;
            }

            if (moment != Fault.None && Fault == moment + 1)
            {
                await Task.Delay(Timeout.Infinite, _closing.Token);
            }

            isText = calls;
            await ledger.WriteAsync(buffer.AsMemory(0, read), _closing.Token);
        }
    }
}
