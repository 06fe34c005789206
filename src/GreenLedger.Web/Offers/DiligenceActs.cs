using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Display;
using GreenLedger.Web.Papers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Offers;

/// <summary>What is said about where a lot grew, from its page and from scripts. Whoever calls saves.</summary>
internal sealed class DiligenceActs(LedgerContext db, PapersReader papers, AttachmentRules rules, DiligenceQuery diligences, HouseZone house, TimeProvider clock)
{
    /// <param name="id">The lot.</param>
    /// <param name="version">As it was read; 0 where nothing was held.</param>
    /// <param name="facts">What is said anew.</param>
    /// <param name="plots">All plots that it grew on.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    /// <returns>Null where there is no such lot.</returns>
    /// <exception cref="RuleBrokenException">A fact has not its shape, or a plot is another producer's.</exception>
    public async Task<DueDiligence?> StateAsync(Id<Lot> id, int version, DiligenceFacts facts, IReadOnlyCollection<Id<Plot>> plots, CancellationToken cancellationToken)
    {
        if (await db.Lots.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } lot)
        {
            return null;
        }

        var held = await HeldAsync(id, cancellationToken);
        if (db.Entry(held).State != EntityState.Added)
        {
            db.Entry(held).Property(one => one.Version).OriginalValue = version;
        }

        held.State(facts);
        Rule.Require(await db.Plots.CountAsync(plot => plots.Contains(plot.Id) && plot.ProducerId == lot.ProducerId, cancellationToken) == plots.Distinct().Count(), "Choose plots of the lot's own producer.", nameof(DueDiligence.Plots));
        held.GrewOn(plots);
        return held;
    }

    /// <summary>Takes a file as evidence and attaches it to the lot.</summary>
    /// <exception cref="RuleBrokenException">The file is not taken, or an open session seals the lot.</exception>
    public async Task<Attachment> TakeAsync(Id<Lot> id, EvidenceKind kind, IFormFile? sent, Id<Person> by, CancellationToken cancellationToken)
    {
        Rule.Require(await papers.MayWriteAsync(PapersOn.The(id)), "An open cupping session keeps the papers of this lot sealed: attach the file once it is closed.", "");
        var file = await rules.ReadAsync(sent, by, clock.GetUtcNow(), cancellationToken);
        var attachment = new Attachment(PapersOf.Lot, id.Value, file, by, clock.GetUtcNow());
        (await HeldAsync(id, cancellationToken)).Take(kind, attachment);
        db.AddRange(file, attachment);
        return attachment;
    }

    /// <summary>Lets a file go before it is removed; with a reason, evidence is taken back as attached by mistake.</summary>
    /// <exception cref="RuleBrokenException">It is evidence that is still to be kept, and no mistake of this person's today.</exception>
    public async Task LetGoAsync(Attachment file, string? mistake, Id<Person> by, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(file);
        if (!string.IsNullOrWhiteSpace(mistake) && await diligences.OfFileAsync(file.Id, cancellationToken) is { } held)
        {
            held.TakeBack(file, mistake, by, clock.GetUtcNow(), house.Zone);
            return;
        }

        await diligences.LetGoAsync(file.Id, house.Today, cancellationToken);
    }

    private async Task<DueDiligence> HeldAsync(Id<Lot> id, CancellationToken cancellationToken)
    {
        var held = db.DueDiligences.Local.FirstOrDefault(one => one.LotId == id)
            ?? await db.DueDiligences.Include(one => one.Plots).Include(one => one.Files).AsSplitQuery().SingleOrDefaultAsync(one => one.LotId == id, cancellationToken);
        return held ?? db.Add(new DueDiligence(id)).Entity;
    }
}
