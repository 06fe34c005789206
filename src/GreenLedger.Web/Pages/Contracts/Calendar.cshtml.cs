using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>The markets' closing days and how their months are counted: the house's own data.</summary>
public sealed class CalendarModel(LedgerContext db, FixingsQuery fixings, HouseZone house) : FormPage
{
    private const int MostMonths = 5;

    [BindProperty]
    public CalendarForm Input { get; set; } = new();

    public ExchangeCalendar Calendar { get; private set; } = new([], new FixingHabits());

    public IReadOnlyList<FuturesMonth> Months { get; private set; } = [];

    public IReadOnlyList<ExchangeHoliday> Holidays { get; private set; } = [];

    public DateOnly Today => house.Today;

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input = CalendarForm.Of(Calendar.Habits);
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var habits = await db.FixingHabits.OfHouseAsync(cancellationToken);
        if (db.Entry(habits).State == EntityState.Detached)
        {
            db.Add(habits);
        }
        else
        {
            OpenedOn(habits, Input.Version);
        }

        habits.Count(Input.ArabicaNoticeDays, Input.RobustaNoticeDays, Input.ArabicaTradingDays, Input.RobustaTradingDays);
        habits.Keep(Input.MarginDays, Input.WarningDays);
        await db.SaveChangesAsync(cancellationToken);
        Say("The days are saved.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostCloseAsync(FuturesMarket market, DateOnly? on, string? name, CancellationToken cancellationToken)
    {
        Rule.Require(on is not null, "On which day is the market closed?");
        var holiday = new ExchangeHoliday(market, on.Value, name ?? "");
        await db.ExchangeHolidays.RequireOpenAsync(holiday, cancellationToken);
        db.Add(holiday);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{holiday.Name} is added.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostOpenAsync(Id<ExchangeHoliday> holiday, CancellationToken cancellationToken)
    {
        if (await db.ExchangeHolidays.SingleOrDefaultAsync(one => one.Id == holiday, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        db.Remove(found);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{found.Name} is taken away.");
        return RedirectToPage();
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Calendar = await fixings.CalendarAsync(cancellationToken);
        Holidays = await db.ExchangeHolidays.AsNoTracking().Where(day => day.On >= Today).OrderBy(day => day.On).ThenBy(day => day.Market).ToListAsync(cancellationToken);
        Months =
        [
            .. Enum.GetValues<FuturesMarket>().SelectMany(market => FuturesMonth.After(market, Today, MostMonths)),
        ];
    }

    public sealed class CalendarForm
    {
        public int Version { get; set; }

        [Display(Name = "First notice, New York")]
        public int ArabicaNoticeDays { get; set; }

        [Display(Name = "First notice, London")]
        public int RobustaNoticeDays { get; set; }

        [Display(Name = "Last trading, New York")]
        public int ArabicaTradingDays { get; set; }

        [Display(Name = "Last trading, London")]
        public int RobustaTradingDays { get; set; }

        [Display(Name = "Margin before first notice")]
        public int MarginDays { get; set; }

        [Display(Name = "Shown as a task")]
        public int WarningDays { get; set; }

        public static CalendarForm Of(FixingHabits habits) => new()
        {
            Version = habits.Version,
            ArabicaNoticeDays = habits.ArabicaNoticeDays,
            RobustaNoticeDays = habits.RobustaNoticeDays,
            ArabicaTradingDays = habits.ArabicaTradingDays,
            RobustaTradingDays = habits.RobustaTradingDays,
            MarginDays = habits.MarginDays,
            WarningDays = habits.WarningDays,
        };
    }
}
