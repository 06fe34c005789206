using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Offers;

/// <summary>A lot's due diligence with what it is held against.</summary>
/// <param name="Held">A new one where nothing is held yet.</param>
/// <param name="Plots">All of the lot's producer, by name.</param>
/// <param name="Papers">Its evidence that came as files, without what was removed.</param>
/// <param name="ReceivedOn">The last day on which some of the lot was received.</param>
public sealed record DiligenceView(
    Lot Lot, DueDiligence Held, Producer? Producer, IReadOnlyList<Plot> Plots, bool IsLowRisk, IReadOnlyList<Attachment> Papers, DateOnly? ReceivedOn, DiligenceHabits Habits, CountryOutlines Outlines)
{
    /// <summary>The plots that the lot is said to have grown on.</summary>
    public IReadOnlyList<Plot> Grown { get; } = [.. Plots.Where(plot => Held.Plots.Any(one => one.PlotId == plot.Id))];

    public OpenPoints Open => Held.Open(Case);

    public IReadOnlyList<string> Missing => Held.Missing(Case);

    private DiligenceCase Case => new(Lot, Producer, Grown, IsLowRisk) { Filed = [.. Enum.GetValues<EvidenceKind>().Where(kind => FilesOf(kind).Any())], Habits = Habits, Outlines = Outlines };

    /// <summary>The last day on which its files are kept; null while the coffee is not placed on the market.</summary>
    public DateOnly? KeptUntil => Held.KeptUntil(ReceivedOn, Habits);

    /// <summary>Whether what came of it was placed on the market before the regulation applied to the house.</summary>
    public bool WasPlacedBefore => (Held.PlacedOn ?? ReceivedOn) < Habits.AppliesFrom;

    public IEnumerable<Attachment> FilesOf(EvidenceKind kind) => Papers.Where(paper => Held.Files.Any(file => file.Kind == kind && file.AttachmentId == paper.Id && !file.IsMistaken));
}

/// <summary>Reads what is held about where lots grew.</summary>
public sealed class DiligenceQuery(LedgerContext db, CountryOutlines outlines)
{
    /// <summary>Null where there is no such lot.</summary>
    public async Task<DiligenceView?> FindAsync(Id<Lot> id, CancellationToken cancellationToken) =>
        (await ViewsAsync(db.Lots.Where(one => one.Id == id), cancellationToken)).SingleOrDefault();

    /// <summary>Of several lots, in a number of statements that does not grow with them; by their references.</summary>
    public Task<IReadOnlyList<DiligenceView>> ListAsync(IReadOnlyCollection<Id<Lot>> ids, CancellationToken cancellationToken) =>
        ViewsAsync(db.Lots.Where(lot => ids.Contains(lot.Id)), cancellationToken);

    /// <summary>Files of a lot that are evidence and still to be kept, each until which day.</summary>
    public async Task<IReadOnlyDictionary<Id<Attachment>, DateOnly>> KeptAsync(Id<Lot> lot, DateOnly today, CancellationToken cancellationToken)
    {
        var held = await db.DueDiligences.AsNoTracking().Include(one => one.Files).SingleOrDefaultAsync(one => one.LotId == lot, cancellationToken);
        return held is { Files.Count: > 0 } && held.KeptUntil(await ReceivedAsync(lot, cancellationToken), await db.DiligenceHabits.AsNoTracking().OfHouseAsync(cancellationToken)) is { } until && today <= until
            ? held.Files.Where(file => !file.IsMistaken).ToDictionary(file => file.AttachmentId, _ => until)
            : new Dictionary<Id<Attachment>, DateOnly>();
    }

    /// <summary>The due diligence that a file is evidence in, to be changed; null where it is none.</summary>
    public Task<DueDiligence?> OfFileAsync(Id<Attachment> file, CancellationToken cancellationToken) =>
        db.DueDiligences.Include(one => one.Files).FirstOrDefaultAsync(one => one.Files.Any(evidence => evidence.AttachmentId == file), cancellationToken);

    /// <exception cref="RuleBrokenException">The file is evidence that is still to be kept.</exception>
    public async Task LetGoAsync(Id<Attachment> file, DateOnly today, CancellationToken cancellationToken)
    {
        if (await db.DueDiligences.AsNoTracking().Include(one => one.Files).FirstOrDefaultAsync(one => one.Files.Any(evidence => evidence.AttachmentId == file), cancellationToken) is { } held)
        {
            held.LetGo(file, await ReceivedAsync(held.LotId, cancellationToken), await db.DiligenceHabits.AsNoTracking().OfHouseAsync(cancellationToken), today);
        }
    }

    private Task<DateOnly?> ReceivedAsync(Id<Lot> lot, CancellationToken cancellationToken) =>
        db.Arrivals.Where(arrival => arrival.LotId == lot).MaxAsync(arrival => (DateOnly?)arrival.ReceivedOn, cancellationToken);

    private async Task<IReadOnlyList<DiligenceView>> ViewsAsync(IQueryable<Lot> which, CancellationToken cancellationToken)
    {
        var lots = await which.AsNoTracking().OrderBy(lot => lot.Ref).ThenBy(lot => lot.Id).ToListAsync(cancellationToken);
        var (ids, producerIds) = (lots.ConvertAll(lot => lot.Id), lots.ConvertAll(lot => lot.ProducerId));
        var held = await db.DueDiligences.AsNoTracking().Include(one => one.Plots).Include(one => one.Files).AsSplitQuery().Where(one => ids.Contains(one.LotId)).ToDictionaryAsync(one => one.LotId, cancellationToken);
        var fileIds = held.Values.SelectMany(one => one.Files).Select(file => file.AttachmentId).ToList();
        var papers = await db.Attachments.AsNoTracking().Where(paper => fileIds.Contains(paper.Id) && paper.RemovedAt == null).OrderBy(paper => paper.At).ToListAsync(cancellationToken);
        var producers = await db.Producers.AsNoTracking().Where(one => producerIds.Contains(one.Id)).ToDictionaryAsync(one => one.Id, cancellationToken);
        var plots = (await db.Plots.AsNoTracking().Where(plot => producerIds.Contains(plot.ProducerId)).OrderBy(plot => plot.Name).ThenBy(plot => plot.Id).ToListAsync(cancellationToken)).ToLookup(plot => plot.ProducerId);
        var lowRisk = await db.Countries.Where(country => country.IsLowRisk).Select(country => country.Code).ToListAsync(cancellationToken);
        var received = await db.Arrivals.Where(arrival => ids.Contains(arrival.LotId)).GroupBy(arrival => arrival.LotId).Select(group => new { group.Key, On = group.Max(arrival => arrival.ReceivedOn) }).ToDictionaryAsync(one => one.Key, one => one.On, cancellationToken);
        var habits = await db.DiligenceHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        return [.. lots.Select(lot => new DiligenceView(
            lot,
            held.GetValueOrDefault(lot.Id) ?? new DueDiligence(lot.Id),
            lot.ProducerId is { } producer ? producers.GetValueOrDefault(producer) : null,
            lot.ProducerId is { } grower ? [.. plots[grower]] : [],
            lowRisk.Contains(lot.CountryCode ?? ""),
            [.. papers.Where(paper => paper.AboutId == lot.Id.Value)],
            received.TryGetValue(lot.Id, out var on) ? on : null,
            habits,
            outlines))];
    }
}
