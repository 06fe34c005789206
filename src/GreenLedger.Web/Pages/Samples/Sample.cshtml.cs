using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Grading;
using GreenLedger.Data.Roasting;
using GreenLedger.Data.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Samples;

internal sealed class SampleModel(LedgerContext db, SessionQuery sessions, SampleWayQuery ways, ApprovalQuery approvals, Reader reader, HouseZone house) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Sample> Id { get; set; }

    public Sample Found { get; private set; } = null!;

    /// <summary>Null while an open session keeps it from the reader.</summary>
    public Lot? Lot { get; private set; }

    public IReadOnlyList<GreenGrade> Grades { get; private set; } = [];

    public IReadOnlyList<SampleRoast> Roasts { get; private set; } = [];

    public IReadOnlyList<LotResultRow> Results { get; private set; } = [];

    /// <summary>Empty while an open session keeps the sample from the reader.</summary>
    public SampleOnItsWay Way { get; private set; } = SampleOnItsWay.Nowhere;

    /// <summary>Green coffee still kept; null while it is not here, or an open session keeps the sample from the reader.</summary>
    public Weight? LeftOver { get; private set; }

    /// <summary>Refused samples that this one replaces.</summary>
    public IReadOnlyList<(Id<Sample> Id, string Code)> Replaced { get; private set; } = [];

    /// <summary>Samples that replaced this one when it was refused.</summary>
    public IReadOnlyList<(Id<Sample> Id, string Code)> ReplacedBy { get; private set; } = [];

    /// <summary>Whom it was asked of, for those who may see who offers what.</summary>
    public string? AskedOf { get; private set; }

    /// <summary>There is an earlier step to go back to, and nothing was found on it yet.</summary>
    public bool MayGoBack { get; private set; }

    private IReadOnlyDictionary<Id<Person>, string> _names = new Dictionary<Id<Person>, string>();

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.Samples.AsNoTracking().Include(sample => sample.SetBacks).SingleOrDefaultAsync(sample => sample.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        if ((await reader.SealAsync()).Covers(Id.Value))
        {
            return Page();
        }

        Lot = await db.Lots.AsNoTracking().SingleAsync(lot => lot.Id == found.LotId, cancellationToken);
        Grades = await db.GreenGrades.AsNoTracking().WithWithdrawn().OfSample(Id).ToListAsync(cancellationToken);
        Roasts = await db.SampleRoasts.AsNoTracking().WithWithdrawn().Where(roast => roast.SampleId == Id).OrderByDescending(roast => roast.RoastedAt).ToListAsync(cancellationToken);
        Results = [.. (await sessions.OfLotAsync(found.LotId, cancellationToken)).Where(row => row.Result.SampleId == Id)];
        LeftOver = found.IsReceived ? (await db.LeftOfAsync([found], cancellationToken))[Id] : null;
        Way = await ways.FindAsync(found, house.Today, cancellationToken);
        (Replaced, ReplacedBy) = User.MayRead("Contracts") ? await approvals.ReplacedAsync(found, cancellationToken) : ([], []);
        AskedOf = User.MayRead("Offers") ? await db.Suppliers.Where(one => one.Id == found.AskedOf).Select(one => one.Name).SingleOrDefaultAsync(cancellationToken) : null;
        MayGoBack = found.Step != SampleStep.Asked && found.AskedOn is not null && !await db.IsUsedAsync(found, cancellationToken);
        var people = found.SetBacks.Select(back => back.By).ToList();
        _names = await db.People.Where(person => people.Contains(person.Id)).ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
        return Page();
    }

    public string NameOf(Id<Person> person) => _names.GetValueOrDefault(person, "");
}
