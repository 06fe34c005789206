using System.Globalization;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.People;
using GreenLedger.Web.Tests.InBrowser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>A whole table on phones: ten samples, five cuppers, from laying out to the result, with two phones cut off for a while.</summary>
public sealed class TableOfFiveTests(Chromium chromium)
{
    private const int Samples = 10;

    private static readonly string[] Attributes = ["fragrance-aroma", "flavor", "aftertaste", "acidity", "body", "balance", "overall"];

    /// <summary>
    /// Presses a whole point for every attribute, and a quarter for one, of the codes from one place to another in the page's
    /// own buttons; marks a cup that is not like the others or not clean, and on some a taint or a fault with its name; picks a word of the
    /// house and a new one, and writes a note; then hands each sheet in. What was pressed comes back by code, under the names of the fields.
    /// </summary>
    private const string Press = """
        async ({ cupper, from, to, keys }) => {
          const place = document.querySelector("[data-cup-table]");
          const shows = async what => { const until = Date.now() + 60000; while (Date.now() < until) { if (what()) { return; } await new Promise(done => setTimeout(done, 2)); } throw new Error("The page did not follow: " + what); };
          const button = code => [...place.querySelectorAll("[data-codes] button")].find(one => one.firstChild.textContent === code);
          const codes = [...place.querySelectorAll("[data-codes] button")].map(one => one.firstChild.textContent);
          const pressed = {};
          for (const code of codes.slice(from, to)) {
            button(code).click();
            await shows(() => place.querySelector("[data-here]").textContent === code);
            const put = pressed[code] = {};
            const cup = async (field, usual, at) => {
              const row = () => [...place.querySelectorAll(`[data-field="${field}"] button`)];
              const stood = row()[at].getAttribute("aria-pressed");
              row()[at].click();
              await shows(() => row()[at].getAttribute("aria-pressed") !== stood);
              put[field] = row().map((one, i) => i === at ? (usual === "1" ? "0" : "1") : usual).join("");
            };
            const type = (field, text) => {
              const input = place.querySelector(`[data-field="${field}"] .form-control`);
              input.value = text;
              input.dispatchEvent(new Event("input", { bubbles: true }));
              input.dispatchEvent(new Event("change", { bubbles: true }));
              put[field] = text;
            };
            const turn = cupper + Number(code);
            for (const [i, key] of keys.entries()) {
              const whole = 6 + (cupper + Number(code) + i) % 4;
              const quarters = i === Number(code) % keys.length ? 1 + cupper % 3 : 0;
              const field = () => place.querySelector(`[data-field="mark.${key}"]`);
              const press = async (row, at, mark) => {
                field().querySelector(`[role=group]:nth-of-type(${row}) button:nth-child(${at})`).click();
                await shows(() => field().querySelector("output").textContent === mark);
              };
              put[`mark.${key}`] = String(whole + quarters / 4);
              await press(1, whole - 5, whole.toFixed(2));
              if (quarters > 0) {
                await press(2, quarters + 1, (whole + quarters / 4).toFixed(2));
              }
            }
            await cup("cups.uniformity", "1", turn % 5);
            await cup("cups.clean-cup", "1", (turn + 2) % 5);
            if (turn % 3 > 0) {
              await cup(turn % 3 === 1 ? "bad.taint" : "bad.fault", "0", (turn + 1) % 5);
              type("defect", `phenolic ${turn}`);
            }
            const house = [...place.querySelectorAll("#house-words option")].map(one => one.value).filter(word => !/[,;]/.test(word));
            for (const word of [house[turn % house.length], `harbour fog ${cupper}`]) {
              const input = place.querySelector("#field-words");
              input.value = word;
              input.dispatchEvent(new Event("change", { bubbles: true }));
              await shows(() => [...place.querySelectorAll(".word-chip")].some(chip => chip.getAttribute("aria-label") === `Take off ${word}`));
              put.words = put.words ? `${put.words}, ${word}` : word;
            }
            type("note", `Of ${code}, by ${cupper}: sweeter as it cools.`);
            place.querySelector("[data-hand-in]").click();
            await shows(() => button(code).textContent.endsWith("in"));
          }
          return pressed;
        }
        """;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Five_cuppers_and_ten_samples_from_laying_out_to_the_result_and_nothing_is_lost()
    {
        await using var house = new HouseFixture().Serve();
        var cuppers = await FillAsync(house);
        await using var lead = await chromium.OpenAsync(house.ClientOptions.BaseAddress, Chromium.Phone);
        await lead.SignInAsync(HouseFixture.EmailOf(Role.LeadCupper), HouseFixture.Password);
        var session = await LayOutAsync(lead, cuppers);
        var phones = await Task.WhenAll(cuppers.Select(cupper => SitAsync(house, cupper, session)));
        await PourAsync(lead, session, phones);

        var pressed = await Task.WhenAll(phones.Select((phone, cupper) => PressAsync(phone.Page, cupper, 0, 2)));
        var (cut, gone) = (phones[1], phones[3]);
        await Pictures.TakeAsync(phones[0], "phone-sheet", "[data-field='mark.flavor']");
        await Task.WhenAll(SavedAsync(cut.Page), SavedAsync(gone.Page));
        await Task.WhenAll(cut.Page.Context.SetOfflineAsync(true), gone.Page.Context.SetOfflineAsync(true));
        AddTo(pressed, await Task.WhenAll(phones.Select((phone, cupper) => PressAsync(phone.Page, cupper, 2, 5))));
        await OfflineAsync(cut.Page);
        await Pictures.TakeAsync(cut, "phone-offline");
        Assert.Empty(await cut.ViolationsAsync());
        await cut.Page.ReloadAsync();
        await ReadyAsync(cut.Page);
        gone = await ReopenAsync(gone, session);
        phones[3] = gone;
        await Pictures.TakeAsync(lead, "phone-live");
        Assert.Equal((5, 5), (await HandedInAsync(cut.Page), await HandedInAsync(gone.Page)));
        await SameClockAsync(phones);
        AddTo(pressed, await Task.WhenAll(phones.Select((phone, cupper) => PressAsync(phone.Page, cupper, 5, 8))));
        await Task.WhenAll(cut.Page.Context.SetOfflineAsync(false), gone.Page.Context.SetOfflineAsync(false));
        AddTo(pressed, await Task.WhenAll(phones.Select((phone, cupper) => PressAsync(phone.Page, cupper, 8, 100))));
        await Task.WhenAll(phones.Select(phone => SavedAsync(phone.Page)));

        await CompareAsync(house, session, cuppers, pressed);
        Assert.Empty(await cut.ViolationsAsync());
        Assert.Equal(0, await cut.SidewaysAsync());
        await CloseAsync(house, lead, session);
        await Task.WhenAll(phones.Select(phone => phone.DisposeAsync().AsTask()));
    }

    /// <summary>Ten received samples, and five people who cup.</summary>
    private static async Task<IReadOnlyList<Person>> FillAsync(HouseFixture house)
    {
        await house.OpenHouseAsync();
        await using var scope = house.Services.CreateAsyncScope();
        var accounts = scope.ServiceProvider.GetRequiredService<Accounts>();
        var cuppers = new List<Person>();
        foreach (var name in new[] { "Ana", "Bo", "Cleo", "Dirk", "Eve" })
        {
            cuppers.Add((await NewAsync(accounts, name)).Person);
        }

        await house.InLedgerAsync(async db =>
        {
            for (var number = 1; number <= Samples; number++)
            {
                var lot = new Lot($"T-{number:00}", $"Table lot {number:00}");
                db.AddRange(lot, new Sample(lot.Id, SampleKind.Offer, $"TAB{number:00}", DateOnly.FromDateTime(DateTime.UtcNow), Weight.FromGrams(350)));
            }

            await db.SaveChangesAsync(Stop);
        });
        return cuppers;
    }

    private static async Task<(Person Person, Data.People.Account Account)> NewAsync(Accounts accounts, string name)
    {
        var person = new Person(name, Role.Cupper);
        return (person, await accounts.AddAsync(person, $"{name.ToLowerInvariant()}@sorrel-roasters.example", HouseFixture.Password));
    }

    private static async Task<Id<CuppingSession>> LayOutAsync(Window lead, IReadOnlyList<Person> cuppers)
    {
        await lead.GoAsync("/Cupping/New");
        await lead.Page.Locator("[name='Input.Title']").FillAsync("Table of five");
        foreach (var cupper in cuppers)
        {
            await lead.Page.GetByLabel($"{cupper.Name} cups").CheckAsync();
        }

        for (var number = 1; number <= Samples; number++)
        {
            await lead.Page.GetByLabel($"TAB{number:00}", new PageGetByLabelOptions { Exact = true }).CheckAsync();
        }

        await lead.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Lay out", Exact = true }).ClickAsync();
        await lead.Page.WaitForURLAsync(address => address.Contains("/Cupping/Table/", StringComparison.Ordinal));
        return Id<CuppingSession>.Parse(new Uri(lead.Page.Url).Segments[^1], CultureInfo.InvariantCulture);
    }

    private async Task<Window> SitAsync(HouseFixture house, Person cupper, Id<CuppingSession> session)
    {
        var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress, Chromium.Phone);
        await window.SignInAsync($"{cupper.Name.ToLowerInvariant()}@sorrel-roasters.example", HouseFixture.Password);
        await window.GoAsync(AddressOf(session));
        await ReadyAsync(window.Page);
        // The page and all its scripts have to be kept before the network may go.
        await window.Page.WaitForFunctionAsync(
            "async path => { const cache = await caches.open('greenledger-table-1'); return await cache.match(path) !== undefined && (await cache.keys()).filter(one => one.url.includes('/js/cup/')).length >= 7; }",
            AddressOf(session));
        return window;
    }

    /// <summary>The lead pours every flight, and each phone shows the same second of the first within what the asking takes.</summary>
    private static async Task PourAsync(Window lead, Id<CuppingSession> session, Window[] phones)
    {
        await lead.GoAsync($"/Cupping/Live/{session}");
        while (await lead.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Pouring now" }).CountAsync() is > 0 and var left)
        {
            await lead.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Pouring now" }).First.ClickAsync();
            await Assertions.Expect(lead.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Pouring now" })).ToHaveCountAsync(left - 1);
        }

        await SameClockAsync(phones);
        // The usual protocol: the crust is broken four minutes after the pour.
        Assert.Matches(@"^Pour · break the crust in [23]:\d\d$", await phones[0].Page.Locator("[data-step]").InnerTextAsync());
    }

    /// <summary>Each phone shows the same second of its first flight, whether it has a network or not.</summary>
    private static async Task SameClockAsync(Window[] phones)
    {
        foreach (var phone in phones)
        {
            await phone.Page.EvaluateAsync("() => document.querySelector('[data-codes] button').click()");
            await phone.Page.WaitForFunctionAsync("() => /^\\d+:\\d\\d$/.test(document.querySelector('[data-time]').textContent)");
        }

        var shown = await Task.WhenAll(phones.Select(phone => phone.Page.EvaluateAsync<double[]>(
            "() => { const [m, s] = document.querySelector('[data-time]').textContent.split(':').map(Number); return [m * 60 + s, Date.now() / 1000]; }")));
        var poured = shown.Select(one => one[1] - one[0]).ToList();
        Assert.True(poured.Max() - poured.Min() <= 2.5, $"The phones disagree on when it was poured by {poured.Max() - poured.Min():0.0} s.");
    }

    private static async Task<Dictionary<string, Dictionary<string, string>>> PressAsync(IPage page, int cupper, int from, int to) =>
        await page.EvaluateAsync<Dictionary<string, Dictionary<string, string>>>(Press, new { cupper, from, to, keys = Attributes });

    /// <summary>The page is closed, and opened anew while there is still no network.</summary>
    private static async Task<Window> ReopenAsync(Window closed, Id<CuppingSession> session)
    {
        var context = closed.Page.Context;
        await closed.Page.CloseAsync();
        var again = new Window(context, await context.NewPageAsync());
        await again.GoAsync(AddressOf(session));
        await ReadyAsync(again.Page);
        return again;
    }

    /// <summary>Every sheet that was handed in has everything that was pressed and typed on it, cup by cup, and nothing else.</summary>
    private static async Task CompareAsync(HouseFixture house, Id<CuppingSession> id, IReadOnlyList<Person> cuppers, Dictionary<string, Dictionary<string, string>>[] pressed)
    {
        var session = await house.FromLedgerAsync(db => db.CuppingSessions.AsNoTracking().Whole().SingleAsync(one => one.Id == id, Stop));
        Assert.True(session.Samples.Count >= Samples);
        Assert.Equal(cuppers.Count * session.Samples.Count, session.Sheets.Count);
        for (var cupper = 0; cupper < cuppers.Count; cupper++)
        {
            Assert.Equal(session.Samples.Select(sample => sample.Code).Order(), pressed[cupper].Keys.Order());
            foreach (var (code, put) in pressed[cupper])
            {
                var sheet = session.SheetOf(session.Poured(code), cuppers[cupper].Id)!;
                Assert.Equal(put.OrderBy(field => field.Key), Written(session, sheet).OrderBy(field => field.Key));
            }
        }
    }

    /// <summary>What the ledger holds of a sheet by the names of its fields; rows of cups in which all is as usual are left out, as nobody presses them.</summary>
    private static Dictionary<string, string> Written(CuppingSession session, ScoreSheet sheet)
    {
        var rules = session.Form.Rules;
        var written = rules.Scales.Zip(sheet.MarkHundredths, (line, hundredths) => ("mark." + line.Key, (hundredths / 100m).ToString("0.##", CultureInfo.InvariantCulture)))
            .Concat(rules.CupCounted.Select(line => ("cups." + line.Key, '1')).Concat(rules.Deductions.Select(line => ("bad." + line.Key, '0')))
                .Zip(sheet.Cups, (row, cups) => (row.Item1, cups.All(cup => cup == row.Item2) ? "" : cups)))
            .Append(("words", string.Join(", ", sheet.Descriptors))).Append(("defect", sheet.DefectName ?? "")).Append(("note", sheet.Note ?? ""));
        return written.Where(field => field.Item2.Length > 0).ToDictionary(field => field.Item1, field => field.Item2);
    }

    private static async Task CloseAsync(HouseFixture house, Window lead, Id<CuppingSession> id)
    {
        lead.Page.Dialog += (_, dialog) => _ = dialog.AcceptAsync();
        await lead.GoAsync($"/Cupping/Close/{id}");
        Assert.DoesNotContain("Sheets are missing", await lead.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        await lead.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Close and compute" }).ClickAsync();
        await lead.Page.WaitForURLAsync(address => address.Contains("/Cupping/Result/", StringComparison.Ordinal));
        var shown = await lead.Page.Locator("main").InnerTextAsync();
        var codes = await house.FromLedgerAsync(db => db.CuppingSessions.Where(one => one.Id == id).SelectMany(one => one.Samples).Select(sample => sample.Code).ToListAsync(Stop));
        Assert.All(codes, code => Assert.Contains(code, shown, StringComparison.Ordinal));
        Assert.All(Enumerable.Range(1, Samples), number => Assert.Contains($"Table lot {number:00}", shown, StringComparison.Ordinal));
        Assert.Equal(0, await lead.SidewaysAsync());
        await Pictures.TakeAsync(lead, "phone-result");
    }

    private static void AddTo(Dictionary<string, Dictionary<string, string>>[] pressed, Dictionary<string, Dictionary<string, string>>[] more)
    {
        foreach (var (before, now) in pressed.Zip(more))
        {
            foreach (var (code, marks) in now)
            {
                before.Add(code, marks);
            }
        }
    }

    private static string AddressOf(Id<CuppingSession> session) => $"/Cupping/Cup/{session}";

    private static Task ReadyAsync(IPage page) => page.Locator("[data-cup-table]").WaitForAsync();

    private static Task OfflineAsync(IPage page) => page.Locator("[data-line]", new PageLocatorOptions { HasTextString = "No network" }).WaitForAsync();

    /// <summary>What waits is sent; a sheet that the server holds up ends the waiting at once.</summary>
    private static async Task SavedAsync(IPage page)
    {
        await page.WaitForFunctionAsync("() => /Everything is saved|waits for you|Sign in again/.test(document.querySelector('[data-line]').textContent)");
        Assert.Equal("Everything is saved.", await page.Locator("[data-line]").InnerTextAsync());
    }

    private static async Task<int> HandedInAsync(IPage page) =>
        await page.EvaluateAsync<int>("() => [...document.querySelectorAll('[data-codes] button')].filter(button => button.textContent.endsWith('in')).length");
}
