using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Roasting;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Roasting;
using GreenLedger.Web.Settings;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Settings;

/// <summary>How long samples may stand, how they are graded, and the windows of the roast protocol.</summary>
public sealed class SampleRoomModel(LedgerContext db, TimeProvider clock) : FormPage
{
    [BindProperty]
    public SampleRoomForm Input { get; set; } = new();

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var habits = await db.SampleHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        var windows = (await db.RoastProtocols.AsNoTracking().NewestAsync(cancellationToken))?.Windows ?? RoastWindows.Usual;
        var grading = await db.GradingHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        Input = new SampleRoomForm
        {
            Version = habits.Version,
            AskedDays = habits.AskedDays,
            OnTheWayDays = habits.OnTheWayDays,
            ReceivedDays = habits.ReceivedDays,
            GradedDays = habits.GradedDays,
            RoastedDays = habits.RoastedDays,
            CuppedDays = habits.CuppedDays,
            Protocol = windows.Name,
            LeastMinutes = windows.LeastMinutes,
            MostMinutes = windows.MostMinutes,
            LeastRestHours = windows.LeastRestHours,
            MostRestHours = windows.MostRestHours,
            ColourScale = windows.ColourScale,
            WholeBean = windows.WholeBean?.Value,
            Ground = windows.Ground?.Value,
            ColourTolerance = windows.ColourTolerance,
            Fractions = grading.Fractions,
            MoistureMethod = grading.MoistureMethod,
        };
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await db.StateAsync(Input.Version, Input.Days(), new GradingChoice(Input.Fractions, Input.MoistureMethod), Input.Windows(), clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say("The settings of the sample room are saved.");
        return RedirectToPage();
    }

    public sealed class SampleRoomForm
    {
        public int Version { get; set; }

        [Display(Name = "Asked for")]
        public int? AskedDays { get; set; }

        [Display(Name = "On the way")]
        public int? OnTheWayDays { get; set; }

        [Display(Name = "Received")]
        public int? ReceivedDays { get; set; }

        [Display(Name = "Graded")]
        public int? GradedDays { get; set; }

        [Display(Name = "Roasted")]
        public int? RoastedDays { get; set; }

        [Display(Name = "Cupped")]
        public int? CuppedDays { get; set; }

        [Required(ErrorMessage = "Name the protocol and its edition.")]
        [Display(Name = "Protocol and edition")]
        public string? Protocol { get; set; }

        [Display(Name = "Roast, at least (min)")]
        public decimal LeastMinutes { get; set; }

        [Display(Name = "Roast, at most (min)")]
        public decimal MostMinutes { get; set; }

        [Display(Name = "Rest, at least (h)")]
        public decimal LeastRestHours { get; set; }

        [Display(Name = "Rest, at most (h)")]
        public decimal MostRestHours { get; set; }

        [Display(Name = "Colour scale")]
        public string? ColourScale { get; set; }

        [Display(Name = "Colour, whole bean")]
        public decimal? WholeBean { get; set; }

        [Display(Name = "Colour, ground")]
        public decimal? Ground { get; set; }

        [Display(Name = "Colour may differ by")]
        public decimal ColourTolerance { get; set; }

        [Display(Name = "Full defects")]
        public DefectFractions Fractions { get; set; }

        [Display(Name = "Moisture is measured by")]
        public string? MoistureMethod { get; set; }

        internal StandingDays Days() => new(AskedDays, OnTheWayDays, ReceivedDays, GradedDays, RoastedDays, CuppedDays);

        public RoastWindows Windows() => new(
            Protocol!, LeastMinutes, MostMinutes, LeastRestHours, MostRestHours, ColourScale,
            WholeBean is { } whole ? ColourReading.Of(whole) : null, Ground is { } ground ? ColourReading.Of(ground) : null, ColourTolerance);
    }
}
