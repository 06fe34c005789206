using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

public sealed class EditLotModel(LedgerContext db) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Lot> Id { get; set; }

    [BindProperty]
    public EditLotForm Input { get; set; } = new();

    public IReadOnlyList<SelectListItem> Countries { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Methods { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Producers { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await LotAsync(cancellationToken) is not { } lot)
        {
            return NotFound();
        }

        Input = EditLotForm.Of(lot);
        await LoadAsync(cancellationToken);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await LotAsync(cancellationToken) is not { } lot)
        {
            return NotFound();
        }

        OpenedOn(lot, Input.Version);
        lot.Rename(lot.Ref, Input.Name ?? "");
        lot.Grow(Input.CountryCode, Input.Region, Input.ProducerId, Input.Varieties, Input.AltitudeFrom, Input.AltitudeTo);
        lot.Process(Input.ProcessMethodId, lot.ProcessAsWritten);
        lot.Prepare(Input.CropYear, Input.Grade, Input.Screen, lot.StatedMoisture);
        lot.Certify((Input.Certificates ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries));
        lot.CountTo(Input.Programme);
        lot.Mark(Input.IcoMark);
        foreach (var offer in await db.Offers.Where(offer => offer.LotId == lot.Id).ToListAsync(cancellationToken))
        {
            offer.FindBy(lot);
        }

        await db.SaveChangesAsync(cancellationToken);
        Say("The lot is corrected.");
        return RedirectToPage("Lot", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Countries = await db.Countries.OrderBy(country => country.Name)
            .Select(country => new SelectListItem(country.Name, country.Code)).ToListAsync(cancellationToken);
        var methods = await db.ProcessMethods.AsNoTracking().OrderBy(method => method.Name).ToListAsync(cancellationToken);
        Methods = [.. methods.Select(method => new SelectListItem(method.Name, method.Id.ToString()))];
        var producers = await db.Producers.OrderBy(producer => producer.Name)
            .Select(producer => new { producer.Id, producer.Name }).ToListAsync(cancellationToken);
        Producers = [.. producers.Select(producer => new SelectListItem(producer.Name, producer.Id.ToString()))];
    }

    private Task<Lot?> LotAsync(CancellationToken cancellationToken) =>
        db.Lots.SingleOrDefaultAsync(lot => lot.Id == Id, cancellationToken);
}

public sealed class EditLotForm
{
    public int Version { get; set; }

    [Display(Name = "Name")]
    [Required(ErrorMessage = "The name of the lot is missing: please fill it in.")]
    public string? Name { get; set; }

    [Display(Name = "Country of origin")]
    public string? CountryCode { get; set; }

    public string? Region { get; set; }

    [Display(Name = "Producer")]
    public Id<Producer>? ProducerId { get; set; }

    public string? Varieties { get; set; }

    [Display(Name = "Altitude from, m")]
    public int? AltitudeFrom { get; set; }

    [Display(Name = "Altitude to, m")]
    public int? AltitudeTo { get; set; }

    [Display(Name = "Process")]
    public Id<ProcessMethod>? ProcessMethodId { get; set; }

    [Display(Name = "Crop year")]
    public string? CropYear { get; set; }

    public string? Grade { get; set; }

    public string? Screen { get; set; }

    public string? Certificates { get; set; }

    public string? Programme { get; set; }

    [Display(Name = "ICO mark")]
    public string? IcoMark { get; set; }

    public static EditLotForm Of(Lot lot) => new()
    {
        Version = lot.Version,
        Name = lot.Name,
        CountryCode = lot.CountryCode,
        Region = lot.Region,
        ProducerId = lot.ProducerId,
        Varieties = lot.Varieties,
        AltitudeFrom = lot.AltitudeFrom,
        AltitudeTo = lot.AltitudeTo,
        ProcessMethodId = lot.ProcessMethodId,
        CropYear = lot.CropYear,
        Grade = lot.Grade,
        Screen = lot.Screen,
        Certificates = string.Join(", ", lot.Certificates),
        Programme = lot.Programme,
        IcoMark = lot.IcoMark,
    };
}
