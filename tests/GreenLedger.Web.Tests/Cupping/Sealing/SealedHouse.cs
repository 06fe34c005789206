using System.Text;
using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Due;
using GreenLedger.Web.Offers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace GreenLedger.Web.Tests.Cupping.Sealing;

/// <summary>A small house in which sealed coffees stand on open tables and something of every kind lies in every room.</summary>
internal sealed class SealedHouse(HouseFixture house) : IAsyncDisposable
{
    public const Role Everything = Role.Viewer | Role.Cupper | Role.LeadCupper | Role.Buyer | Role.Administrator;

    private const string OfferList = "Ref;Country;Process;Score;Bags;kg/bag;USD/kg\nP-1;Kenya;washed;87;40;60;9.85\nP-2;Peru;natural;186;12;69;7.10\n";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>What a calendar's private address of somebody on the panel ends in.</summary>
    public const string Calendar = "a-calendar-of-the-panel";

    public HouseFixture House => house;

    /// <summary>Of which nothing that is saved stays while <paramref name="dry"/> is on; without the seal where it is to be shown that it matters.</summary>
    /// <param name="planted">What every answer says in a header, where it is to be shown that it is heard.</param>
    public static async Task<SealedHouse> OpenAsync(DryRun dry, bool isSealed, string? planted = null)
    {
        var house = new HouseFixture();
        await house.OpenHouseAsync();
        house.Replaces = services =>
        {
            services.ConfigureDbContext<SqliteLedgerContext>(options => options.AddInterceptors(dry));
            if (!isSealed)
            {
                services.AddScoped<SealQuery, NoSeal>();
            }

            if (planted is not null)
            {
                services.AddSingleton<IStartupFilter>(new Planting(planted));
            }
        };
        return new SealedHouse(house);
    }

    public async Task<Person> PersonAsync(string name, Role roles)
    {
        await using var scope = house.Services.CreateAsyncScope();
        var person = new Person(name, roles);
        await scope.ServiceProvider.GetRequiredService<Accounts>().AddAsync(person, EmailOf(person), HouseFixture.Password);
        return person;
    }

    public Task<Person> LeadAsync() => house.FromLedgerAsync(db => db.People.SingleAsync(person => person.Roles == Role.LeadCupper, Stop));

    public async Task<TestBrowser> SignedInAsync(Person person)
    {
        var browser = house.Visitor();
        await browser.SignInAsync(person.Roles == Role.LeadCupper ? HouseFixture.EmailOf(Role.LeadCupper) : EmailOf(person), HouseFixture.Password);
        return browser;
    }

    /// <summary>
    /// What the later rooms hold of the table's coffees, and what else a house has: an earlier session of these people, lists taken
    /// in and not yet, a long list that failed, and bowls with codes underneath.
    /// </summary>
    public async Task FillAsync(SealedTable table, IReadOnlyList<Person> people)
    {
        await SealedGoods.AddAsync(house, table);
        await house.InLedgerAsync(db => CloseEarlierAsync(db, people));
        await TakeInAsync();
        var browser = await SignedInAsync(people[^1]);
        await browser.SendFormAsync(
            "/Offers/Import", new Dictionary<string, string> { ["Input.Supplier"] = "Quay Traders" }, null, [("Input.File", "list.csv", Encoding.UTF8.GetBytes(OfferList.Replace("9.85", "9.95", StringComparison.Ordinal)))]);
        await browser.SendFormAsync("/Cupping/Import", new Dictionary<string, string>(), "Read", [("Input.File", "results.csv", Encoding.UTF8.GetBytes("Sample;Total\nP-1;83.50\n"))]);
        await house.InLedgerAsync(db => AddUnfinishedAsync(db, people[^1], calendarOf: people[0]));
    }

    public ValueTask DisposeAsync() => house.DisposeAsync();

    private static string EmailOf(Person person) => $"{person.Id}@sorrel-roasters.example";

    private async Task TakeInAsync()
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        using var form = new MultipartFormDataContent
        {
            { new StringContent("Quay Traders"), "supplier" }, { new StringContent("true"), "commit" }, { new StringContent(OfferList), "file", "list.csv" },
        };
        (await script.PostAsync(new Uri("/api/offers/import", UriKind.Relative), form, Stop)).EnsureSuccessStatusCode();
    }

    /// <summary>Two coffees of no secret, cupped by all, and a score that was agreed on in talk.</summary>
    private static async Task CloseEarlierAsync(LedgerContext db, IReadOnlyList<Person> people)
    {
        var now = DateTimeOffset.UtcNow.AddDays(-20);
        var lots = new[] { new Lot("PLAIN-1", "Plain one"), new Lot("PLAIN-2", "Plain two") };
        var samples = lots.Select((lot, at) => new Sample(lot.Id, SampleKind.Offer, $"PLAIN{at}", new DateOnly(2026, 10, 20), Weight.FromGrams(300m))).ToList();
        var session = new CuppingSession("Earlier", new DateOnly(2026, 11, 2), await FormAsync(db), 5, people[0].Id);
        foreach (var (at, sample) in samples.Index())
        {
            session.Pour(sample, $"{401 + at}");
            foreach (var (seat, cupper) in people.Index())
            {
                var known = await db.People.SingleAsync(person => person.Id == cupper.Id, Stop);
                session.Submit($"{401 + at}", known, new SheetMarks([.. Enumerable.Repeat(Mark.Of(8m - at * 0.25m - seat % 3 * 0.25m), 7)], [5, 5, 5], [0, 0]), now);
            }
        }

        session.Close(people[0].Id, now, new ExpectedErrors(1.0, 0.5));
        session.Result!.Discuss(samples[0].Id, 84.5m, "Cupped again side by side.", people[0].Id, now);
        db.AddRange([.. lots, .. samples, session]);
        await db.SaveChangesAsync(Stop);
    }

    private static async Task AddUnfinishedAsync(LedgerContext db, Person by, Person calendarOf)
    {
        var file = await db.StoredFiles.OrderByDescending(one => one.Id).FirstAsync(Stop);
        var job = new Job(ListWork.Load, new ListOrder(file.Id.Value, "Quay Traders", new DateOnly(2026, 11, 25), "{}").ToJson(), by.Id, DateTimeOffset.UtcNow);
        job.Fail("The list holds no row that can be read.", DateTimeOffset.UtcNow);
        var alone = new CuppingSession("Alone", new DateOnly(2026, 11, 26), await FormAsync(db), 5, by.Id);
        foreach (var sample in await db.Samples.Where(one => one.LabelCode.StartsWith("PLAIN")).OrderBy(one => one.LabelCode).ToListAsync(Stop))
        {
            alone.Pour(sample, Random.Shared);
        }

        alone.Prepare(null, null, null, Blinding.Undersides);
        alone.Seat(await db.People.SingleAsync(person => person.Id == by.Id, Stop), [1, 2]);
        db.AddRange(job, alone, new CalendarFeed(calendarOf.Id, CalendarAddress.Hash(Calendar), DateTimeOffset.UtcNow));
        await db.SaveChangesAsync(Stop);
    }

    private static Task<CuppingForm> FormAsync(LedgerContext db) => db.CuppingForms.SingleAsync(one => one.Id == CuppingForm.HundredPointId, Stop);

    private sealed class NoSeal(LedgerContext db) : SealQuery(db)
    {
        public override Task<Seal> ForAsync(Id<Person> person, Role roles, CancellationToken cancellationToken) => Task.FromResult(Seal.None);
    }

    private sealed class Planting(string planted) : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use((context, rest) =>
            {
                context.Response.Headers["X-Planted"] = planted;
                return rest(context);
            });
            next(app);
        };
    }
}
