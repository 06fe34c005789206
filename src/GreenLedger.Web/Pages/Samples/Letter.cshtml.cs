using GreenLedger.Data;
using GreenLedger.Documents.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Samples;

/// <summary>
/// The letter that asks for a sample and for all others asked of the same sender on the same day. It names coffees, so
/// that it is not there for somebody from whom an open session keeps one of them.
/// </summary>
[InArea("Offers")]
internal sealed class LetterModel(LedgerContext db, Reader reader) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Sample> Id { get; set; }

    public SampleRequest Asked { get; private set; } = null!;

    public string? Email { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken) =>
        await FindAsync(cancellationToken) ? Page() : NotFound();

    public async Task<IActionResult> OnGetPdfAsync(CancellationToken cancellationToken)
    {
        if (!await FindAsync(cancellationToken))
        {
            return NotFound();
        }

        var file = new MemoryStream();
        RequestLetter.Write(Asked, file);
        file.Position = 0;
        return File(file, RequestLetter.MediaType, $"samples-{Asked.On:yyyy-MM-dd}.pdf");
    }

    private async Task<bool> FindAsync(CancellationToken cancellationToken)
    {
        var seal = await reader.SealAsync();
        if (await db.Samples.AsNoTracking().SingleOrDefaultAsync(sample => sample.Id == Id, cancellationToken) is not { AskedOn: { } on } asked || seal.Covers(Id.Value))
        {
            return false;
        }

        var rows = await db.Samples.AsNoTracking()
            .Where(sample => sample.Id == Id || (sample.AskedOf == asked.AskedOf && sample.AskedOn == on && sample.ReceivedOn == null))
            .Where(sample => !seal.Samples.Contains(sample.Id) && !seal.Lots.Contains(sample.LotId))
            .Join(db.Lots, sample => sample.LotId, lot => lot.Id, (sample, lot) => new { Sample = sample, lot.Ref, lot.Name })
            .OrderBy(row => row.Name).ThenBy(row => row.Sample.LabelCode).ToListAsync(cancellationToken);
        var supplier = await db.Suppliers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == asked.AskedOf, cancellationToken);
        Email = supplier?.Email;
        Asked = new SampleRequest(
            await db.Houses.Select(house => house.Name).SingleAsync(cancellationToken),
            supplier?.Name,
            supplier?.Language,
            on,
            await db.People.Where(person => person.Id == asked.AskedBy).Select(person => person.Name).SingleOrDefaultAsync(cancellationToken) ?? User.PersonName(),
            [.. rows.Select(row => new RequestedSample(row.Ref, row.Name, row.Sample.Kind, row.Sample.AskedWeight ?? default, row.Sample.LabelCode))]);
        return true;
    }
}
