using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Certificates;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Certificates;

/// <summary>Adds a certificate or changes what it says.</summary>
public sealed class EditModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public CertificateForm Input { get; set; } = new();

    /// <summary>None for a new one.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Certificate>? Id { get; set; }

    public Certificate? Certificate { get; private set; }

    public IReadOnlyList<string> Schemes { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Suppliers { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Producers { get; private set; } = [];

    public IEnumerable<SelectListItem> Holders => Enum.GetValues<CertificateHolder>().Select(holder => new SelectListItem(holder.Word(), holder.ToString()));

    protected override bool IsThere => Id is null || Certificate is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input = Certificate is { } known ? CertificateForm.Of(known) : new CertificateForm();
        return IsThere ? Page() : NotFound();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var known = Id is { } id ? await db.Certificates.SingleOrDefaultAsync(one => one.Id == id, cancellationToken) : null;
        if (Id is not null && known is null)
        {
            return NotFound();
        }

        if (known is null)
        {
            known = new Certificate(Input.Terms());
            db.Add(known);
        }
        else
        {
            OpenedOn(known, Input.Version);
            known.State(Input.Terms());
        }

        await db.SaveChangesAsync(cancellationToken);
        Say($"{known.Number} is saved.");
        return RedirectToPage("Certificate", new { id = known.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Certificate = Id is { } id ? await db.Certificates.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) : null;
        Schemes = await db.Certificates.Select(one => one.Scheme).Distinct().OrderBy(scheme => scheme).ToListAsync(cancellationToken);
        Suppliers = await db.Suppliers.OrderBy(one => one.Name).Select(one => new SelectListItem(one.Name, one.Id.ToString())).ToListAsync(cancellationToken);
        Producers = await db.Producers.OrderBy(one => one.Name).Select(one => new SelectListItem(one.Name, one.Id.ToString())).ToListAsync(cancellationToken);
    }

    public sealed class CertificateForm
    {
        public int Version { get; set; }

        [Required(ErrorMessage = "Which scheme is it of?")]
        public string? Scheme { get; set; }

        [Display(Name = "Held by")]
        public CertificateHolder Holder { get; set; } = CertificateHolder.Producer;

        [Display(Name = "Supplier")]
        public Id<Supplier>? SupplierId { get; set; }

        [Display(Name = "Producer")]
        public Id<Producer>? ProducerId { get; set; }

        [Required(ErrorMessage = "What is its number?")]
        public string? Number { get; set; }

        public string? Scope { get; set; }

        [Display(Name = "Issued by")]
        public string? IssuedBy { get; set; }

        [Required(ErrorMessage = "From which day on?")]
        [Display(Name = "Valid from")]
        public DateOnly? From { get; set; }

        [Required(ErrorMessage = "Until which day?")]
        [Display(Name = "Valid until")]
        public DateOnly? Until { get; set; }

        internal static CertificateForm Of(Certificate certificate) => new()
        {
            Version = certificate.Version,
            Scheme = certificate.Scheme,
            Holder = certificate.Holder,
            SupplierId = certificate.SupplierId,
            ProducerId = certificate.ProducerId,
            Number = certificate.Number,
            Scope = certificate.Scope,
            IssuedBy = certificate.IssuedBy,
            From = certificate.From,
            Until = certificate.Until,
        };

        internal CertificateTerms Terms() => new(Scheme, Holder, SupplierId, ProducerId, Number, Scope, IssuedBy, From!.Value, Until!.Value);
    }
}
