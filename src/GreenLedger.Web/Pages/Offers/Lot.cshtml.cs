using GreenLedger.Data.Offers;
using GreenLedger.Data.Pricing;
using GreenLedger.Data.Trace;
using GreenLedger.Documents.Trace;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Trace;
using GreenLedger.Web.Display;
using GreenLedger.Web.Offers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Offers;

public sealed class LotModel(LotQuery lots, LotWayQuery ways, LotFindingsQuery findings, WholeWayQuery wholeWays, LandedCostsQuery landedCosts, LotDossiers dossiers, HouseZone house) : PageModel
{
    private LandedCosts? _costs;

    [BindProperty(SupportsGet = true)]
    public Id<Lot> Id { get; set; }

    public LotView View { get; private set; } = null!;

    public IReadOnlyList<WayStop> Way { get; private set; } = [];

    public LotFindings Findings { get; private set; } = null!;

    public WholeWay WholeWay { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await lots.FindAsync(Id, cancellationToken) is not { } view)
        {
            return NotFound();
        }

        View = view;
        Way = await ways.FindAsync(Id, cancellationToken);
        Findings = await findings.FindAsync(Id, house.Today, cancellationToken);
        WholeWay = await wholeWays.FindAsync(Id, house.Day, cancellationToken);
        _costs = await landedCosts.FindAsync(house.Today, cancellationToken);
        return Page();
    }

    /// <summary>The lot's complete way as one paper.</summary>
    public async Task<IActionResult> OnGetDossierAsync(CancellationToken cancellationToken)
    {
        if (await dossiers.FindAsync(Id, User.PersonName(), cancellationToken) is not { } dossier)
        {
            return NotFound();
        }

        var stream = new MemoryStream();
        LotDossierPdf.Write(dossier, stream);
        stream.Position = 0;
        return File(stream, LotDossierPdf.MediaType, dossier.FileName + ".pdf");
    }

    /// <summary>Null while no house is set up.</summary>
    public LandedCost? CostOf(Offer offer) => _costs?.Of(Parcel.Of(offer, View.Lot.CountryCode));
}
