using GreenLedger.Data;
using GreenLedger.Data.People;
using GreenLedger.Documents.Papers;
using GreenLedger.Domain;
using GreenLedger.Domain.Due;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Display;
using GreenLedger.Web.Mail;
using MailKit.Security;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;

namespace GreenLedger.Web.Tests.Mail;

/// <summary>Nodes that send mail over one SQLite file, with a clock of their own: a node sends when a test says so.</summary>
internal sealed class MailHouse : IAsyncDisposable
{
    public const string Address = "ines@cerro-alto.example";

    private readonly string _folder = Directory.CreateTempSubdirectory("greenledger-mail-").FullName;
    private readonly ServiceProvider _services;

    public MailHouse(bool asksForPassword = false, PostOffice? office = null)
    {
        Office = office ?? new PostOffice(asksForPassword);
        var settings = new ConfigurationBuilder().AddInMemoryCollection([new("GreenLedger:Data", _folder)]).Build();
        _services = new ServiceCollection().AddSingleton<TimeProvider>(Clock).AddScoped(_ => new Who()).AddScoped<HouseZone>().AddLedger(settings).BuildServiceProvider();
        Line = new FaultyLine(Office.Port);
    }

    public PostOffice Office { get; }

    public FaultyLine Line { get; }

    public StoppedClock Clock { get; } = new(new DateTimeOffset(2026, 11, 26, 9, 0, 0, TimeSpan.Zero));

    public Person Buyer { get; } = new("Tilda Brand", Role.Buyer);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static async Task<MailHouse> OpenAsync(bool asksForPassword = false, PostOffice? office = null)
    {
        var house = new MailHouse(asksForPassword, office);
        await house.InLedgerAsync(async db =>
        {
            await LedgerDatabase.PrepareAsync(db);
            db.Add(house.Buyer);
            await db.SaveChangesAsync(Stop);
        });
        return house;
    }

    /// <param name="port">Another one than that of the line.</param>
    public MailSender Node(int? port = null, string? user = null, string? password = null) => new(
        _services.GetRequiredService<IServiceScopeFactory>(),
        new MailSettings("127.0.0.1", port ?? Line.Port, SecureSocketOptions.None, user, password, "ledger@sorrel-roasters.example") { Patience = TimeSpan.FromSeconds(2) },
        Clock,
        NullLogger<MailSender>.Instance);

    /// <summary>One that speaks TLS, straight to the server.</summary>
    public MailSender Node(MailSettings settings) => new(
        _services.GetRequiredService<IServiceScopeFactory>(), settings with { Patience = TimeSpan.FromSeconds(5) }, Clock, NullLogger<MailSender>.Instance);

    public async Task<Id<Message>> PutAsync()
    {
        var draft = new MailDraft("Sorrel Roasters", "ledger@sorrel-roasters.example", Address, "Your samples", "We cupped them: très bien.", [new MailFile("feedback.pdf", "application/pdf", "%PDF-1.4"u8.ToArray())]);
        var message = new Message(MessagePurpose.Feedback, MailText.Write(draft, Clock.Now), null, Buyer.Id, Clock.Now);
        await InLedgerAsync(async db =>
        {
            db.Add(message);
            await db.SaveChangesAsync(Stop);
        });
        return message.Id;
    }

    /// <summary>A daily mail that the buyer wishes for, of the clock's day.</summary>
    public async Task<Id<Message>> PutDueAsync()
    {
        var draft = new MailDraft("Sorrel Roasters", "ledger@sorrel-roasters.example", Address, "Due", "- today: approve a sample", []);
        var message = new Message(MessagePurpose.Due, MailText.Write(draft, Clock.Now), null, null, Clock.Now).For(Buyer.Id, DateOnly.FromDateTime(Clock.Now.UtcDateTime));
        await InLedgerAsync(async db =>
        {
            db.AddRange(message, new DueMail(Buyer.Id, Clock.Now));
            await db.SaveChangesAsync(Stop);
        });
        return message.Id;
    }

    public async Task<Message> FindAsync(Id<Message> id)
    {
        await using var scope = _services.CreateAsyncScope();
        return await scope.ServiceProvider.GetRequiredService<LedgerContext>().Messages.AsNoTracking().SingleAsync(message => message.Id == id, Stop);
    }

    public Task ChangeAsync(Id<Message> id, Action<Message> change) => InLedgerAsync(async db =>
    {
        change(await db.Messages.SingleAsync(message => message.Id == id, Stop));
        await db.SaveChangesAsync(Stop);
    });

    public async ValueTask DisposeAsync()
    {
        await Line.DisposeAsync();
        await Office.DisposeAsync();
        await _services.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    public async Task InLedgerAsync(Func<LedgerContext, Task> work)
    {
        await using var scope = _services.CreateAsyncScope();
        await work(scope.ServiceProvider.GetRequiredService<LedgerContext>());
    }
}
