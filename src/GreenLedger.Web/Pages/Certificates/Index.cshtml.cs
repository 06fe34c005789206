using GreenLedger.Data;
using GreenLedger.Data.Certificates;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Certificates;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Certificates;

/// <summary>Certificates of producers, suppliers and the house, those that ended left out unless they are asked for.</summary>
public sealed class IndexModel(LedgerContext db, CertificateQuery query, HouseZone house) : PageModel
{
    private static readonly TableColumn<HeldCertificate>[] Columns =
    [
        TableColumn<HeldCertificate>.Text("Scheme", held => held.Certificate.Scheme),
        TableColumn<HeldCertificate>.Text("Number", held => held.Certificate.Number),
        TableColumn<HeldCertificate>.Text("Held by", held => held.Holder, 32),
        TableColumn<HeldCertificate>.Text("Scope", held => held.Certificate.Scope, 40),
        TableColumn<HeldCertificate>.Text("Issued by", held => held.Certificate.IssuedBy),
        TableColumn<HeldCertificate>.Day("From", held => held.Certificate.From),
        TableColumn<HeldCertificate>.Day("Until", held => held.Certificate.Until),
        TableColumn<HeldCertificate>.Text("Standing", held => held.Certificate.Standing.Word(), 12),
        TableColumn<HeldCertificate>.Text("Standing because", held => held.Certificate.StandingReason, 40),
    ];

    [BindProperty(SupportsGet = true)]
    public string? Scheme { get; set; }

    [BindProperty(SupportsGet = true)]
    public bool Ended { get; set; }

    [BindProperty(SupportsGet = true, Name = "sort")]
    public string? Sort { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public IReadOnlyList<HeldCertificate> Held { get; private set; } = [];

    public IReadOnlyList<string> Schemes { get; private set; } = [];

    public CertificateHabits Habits { get; private set; } = new();

    public Paging Paging { get; private set; } = null!;

    public DateOnly Today => house.Today;

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Schemes = await db.Certificates.Select(one => one.Scheme).Distinct().OrderBy(scheme => scheme).ToListAsync(cancellationToken);
        Habits = await db.CertificateHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        var all = await FittingAsync(cancellationToken);
        Paging = Paging.Of(PageNumber, all.Count, "certificate", "certificates");
        Held = [.. all.Skip(Paging.Skip).Take(Paging.Size)];
    }

    /// <summary>What the list shows, every page of it, as a workbook.</summary>
    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken) =>
        await this.WorkbookAsync("Certificates", Columns, await FittingAsync(cancellationToken), cancellationToken);

    private async Task<List<HeldCertificate>> FittingAsync(CancellationToken cancellationToken)
    {
        var all = await query.ListAsync(string.IsNullOrEmpty(Scheme) ? null : Scheme, Ended ? null : Today, cancellationToken);
        IComparable? Key(HeldCertificate held) => Sort?.TrimStart('-') switch
        {
            "number" => held.Certificate.Number,
            "holder" => held.Holder,
            "from" => held.Certificate.From,
            "until" => held.Certificate.Until,
            "standing" => held.Certificate.Standing,
            _ => held.Certificate.Scheme,
        };
        return [.. Sort?.StartsWith('-') == true ? all.OrderByDescending(Key) : all.OrderBy(Key)];
    }
}
