using System.Globalization;
using GreenLedger.Data.Choosing;
using GreenLedger.Data.Due;
using GreenLedger.Data.Summaries;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Due;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages;

internal sealed class IndexModel(FirstHourQuery ledger, WaitingQuery waiting, LateSamplesQuery late, DecisionQuery decisions, DueQuery due, Reader reader, HouseZone house) : PageModel
{
    private const int NewestDecisions = 5;

    public string House { get; private set; } = "";

    public IReadOnlyList<FirstStep> Steps { get; private set; } = [];

    public IReadOnlyList<Figure> Holds { get; private set; } = [];

    /// <summary>What waits in the rooms that this person may read, in the order of the coffee's way.</summary>
    public IReadOnlyList<WaitingLine> Waits { get; private set; } = [];

    /// <summary>What is late or due within the days that the house chose.</summary>
    public IReadOnlyList<DueLine> Due { get; private set; } = [];

    /// <summary>The newest decisions that stand; none for those who may not read them.</summary>
    public IReadOnlyList<DecisionRow> Decided { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var held = await ledger.FindAsync(cancellationToken);
        House = held.House;
        FirstStep[] steps =
        [
            Make("Name and currency", "Landed cost and shortlists are in the currency of the house.", true, "Settings", "Set up", "/Settings/Index"),
            Make("A route to your warehouse", "From the port of loading to your door, with what each leg costs.", held.Routes > 0, "Pricing", "Set up a route", "/Pricing/Routes", "/Pricing/Index"),
            Make("Market and exchange rates", "Differentials need the futures of their month, foreign prices the day's rate.", held.Quotes > 0, "Pricing", "Enter rates", "/Pricing/Rates", "/Pricing/Index"),
            Make("The first offer list", "As the exporter sent it: a workbook or a text table.", held.OfferLists > 0 || held.Offers > 0, "Offers", "Load a list", "/Offers/Import", "/Offers/Index"),
            Make("What the samples scored", "Enter score sheets, or import past results.", held.CuppedSamples > 0, "Cupping", "Enter sheets", "/Cupping/Index"),
            Make("Buying rules", "What a lot must meet, and what weighs how much among those that do.", held.RuleSets > 0, "Choosing", "Write rules", held.RuleSets > 0 ? "/Choosing/Rules" : "/Choosing/EditRules"),
            Make("The first decision", "The shortlist ranks the offers by your rules: buy, hold or decline.", held.Decisions > 0, "Choosing", "To the shortlist", "/Choosing/Index"),
        ];
        var next = Array.Find(steps, step => !step.IsDone && step.Address is not null);
        Steps = [.. steps.Select(step => step with { IsNext = step == next })];
        Holds =
        [
            new("offers", held.Offers, AddressIn("Offers")),
            new("lots", held.Lots, AddressIn("Offers")),
            new("samples cupped", held.CuppedSamples, AddressIn("Cupping")),
            new("decisions", held.Decisions, User.MayRead("Choosing") ? Url.Page("/Choosing/Decisions") : null),
            new("routes", held.Routes, AddressIn("Pricing")),
        ];
        if (Steps.All(step => step.IsDone))
        {
            var seal = await reader.SealAsync();
            Waits = [.. Lines(await waiting.FindAsync(house.Today, seal, cancellationToken), await late.FindAsync(house.Today, seal, cancellationToken)).OfType<WaitingLine>()];
            var within = (await due.HabitsAsync(cancellationToken)).NoticeDays;
            Due = [.. (await due.ListAsync(reader.MayRead, seal, house.Today, cancellationToken)).Where(line => line.DaysLeft(house.Today) <= within)];
            Decided = User.MayRead("Choosing")
                ? await decisions.ListAsync(new DecisionFilter(IsWithdrawn: false), 0, NewestDecisions, cancellationToken)
                : [];
        }
    }

    /// <summary>The button leads to the first of the pages that there is; without the right it names who can do it.</summary>
    private FirstStep Make(string title, string why, bool isDone, string area, string button, params string[] pages)
    {
        var address = User.MayWrite(area) || (isDone && User.MayRead(area))
            ? pages.Select(page => Url.Page(page)).FirstOrDefault(found => found is not null)
            : null;
        return new FirstStep(title, why, isDone, address, button, $"Ask {AreaAccess.WhoWrites(area)}.", IsNext: false);
    }

    private WaitingLine?[] Lines(Waiting waits, IReadOnlyDictionary<SampleStep, int> late) =>
    [
        Line("Offers", waits.RowsSetAside, "row set aside", "rows set aside", "to mend and take in", "/Offers/Lists", new { waiting = true }),
        Line("Offers", waits.OffersEnding, "offer", "offers", $"valid for {WaitingQuery.EndingWithinDays} days or less", "/Offers/Index", new { state = OfferState.OnOffer, sort = "valid" }),
        Line("Samples", waits.SamplesToGrade, "sample", "samples", "not graded yet", "/Samples/Index", new { waiting = "Graded" }),
        Line("Samples", waits.SamplesToCup, "sample", "samples", "not cupped yet", "/Samples/Index", new { waiting = "Cupped" }),
        .. late.OrderBy(step => step.Key).Select(step =>
            Line("Samples", step.Value, "sample", "samples", LateWords(step.Key) + ", longer than the house allows", "/Samples/Index", new { at = step.Key, late = true })),
        Line("Cupping", waits.OpenSessions, "session", "sessions", "open", "/Cupping/Index", new { closed = false }),
        Line("Contracts", waits.ContractsToSign, "contract", "contracts", "with a version to sign", "/Contracts/Index", new { toSign = true }),
        Line("Contracts", waits.ApprovalsDue, "contract", "contracts", $"whose sample is to be approved or refused, the next by {(waits.NextApproval is { } until ? Figures.Day(until) : "")}", "/Contracts/Index", new { goods = GoodsState.AwaitingApproval }),
        Line("Contracts", waits.FixingsDue, "contract", "contracts", $"to fix or roll, the next by {(waits.NextFixing is { } day ? Figures.Day(day) : "")}", "/Contracts/Open", new { }),
        Newest("exchange rate", waits.NewestRate, "/Pricing/Rates"),
        Newest("futures quote", waits.NewestFutures, "/Pricing/Quotes"),
    ];

    private static string LateWords(SampleStep step) => step switch
    {
        SampleStep.Asked => "asked for and not on the way",
        SampleStep.OnTheWay => "on the way and not here",
        _ => $"{step.Word()} and not {(step + 1).Word()}",
    };

    private WaitingLine? Line(string room, int count, string one, string many, string what, string page, object values) =>
        count > 0 && User.MayRead(room)
            ? new WaitingLine(room, Figures.Count(count, one, many), what, Url.Page(page, values))
            : null;

    private WaitingLine? Newest(string what, DateOnly? day, string page) => day is { } on && User.MayRead("Pricing")
        ? new WaitingLine("Pricing", $"newest {what}", AgeOf(house.Today.DayNumber - on.DayNumber, on), Url.Page(page))
        : null;

    private static string AgeOf(int days, DateOnly on) => days switch
    {
        <= 0 => "of today",
        1 => "of yesterday",
        _ => string.Create(CultureInfo.InvariantCulture, $"{days} days old ({Figures.Day(on)})"),
    };

    private string? AddressIn(string room) => User.MayRead(room) ? Url.Page($"/{room}/Index") : null;

    public sealed record FirstStep(string Title, string Why, bool IsDone, string? Address, string Button, string Who, bool IsNext);

    public sealed record Figure(string Word, int Count, string? Address);

    /// <param name="Room">The room where it waits.</param>
    /// <param name="Thing">How many of what: <c>3 samples</c>.</param>
    /// <param name="What">What they wait for.</param>
    /// <param name="Address">Where it is done.</param>
    public sealed record WaitingLine(string Room, string Thing, string What, string? Address);
}
