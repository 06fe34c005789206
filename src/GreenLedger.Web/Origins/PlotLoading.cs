using GreenLedger.Data;
using GreenLedger.Documents.Origins;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Papers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Origins;

/// <summary>A plot of a file that can be taken.</summary>
/// <param name="Doubts">What is doubtful about it, beside the others of the file and those held.</param>
/// <param name="IsHeld">Whether it is the same place as one that is held, or as one before it in the file: left out unless somebody says otherwise.</param>
public sealed record LoadedPlot(int Row, Plot Plot, IReadOnlyList<string> Doubts, bool IsHeld);

/// <summary>A file of a producer's plots, read and judged; nothing of it is stored.</summary>
/// <param name="Plots">Those that can be taken, in the order of the file.</param>
/// <param name="Refused">Those that cannot, with the reason.</param>
/// <param name="Notes">What else is to be said of the file, such as a property that is ignored.</param>
/// <param name="Held">How many plots the producer has.</param>
public sealed record PlotPreview(string FileName, IReadOnlyList<LoadedPlot> Plots, IReadOnlyList<Problem> Refused, IReadOnlyList<Problem> Notes, int Held)
{
    /// <summary>As many as a producer may have.</summary>
    public const int MostPlots = 10_000;

    /// <summary>What is taken where nobody says otherwise: all but what is held already.</summary>
    public IReadOnlySet<int> Proposed => Plots.Where(one => !one.IsHeld).Select(one => one.Row).ToHashSet();

    public static PlotPreview Of(string fileName, PlotFile file, Producer producer, IReadOnlyList<Plot> held, IReadOnlyList<(Plot Plot, string Producer)> others, CountryOutlines outlines)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(producer);
        var (taken, problems) = file.Taken(producer.Id, producer.CountryCode);
        Rule.Require(taken.Count > 0 || problems.Count > 0, "The file holds no plot: export it again with one feature, or one line, for each plot.", "File");
        List<Plot> all = [.. held, .. taken.Select(one => one.Plot)];
        var place = all.Index().ToDictionary(one => one.Item.Id, one => one.Index);
        var doubts = PlotDoubts.Each(all, producer.CountryCode, outlines).Concat(PlotDoubts.Beside([.. taken.Select(one => one.Plot)], others)).SelectMany(doubt => doubt.About.Select(plot => (plot.Id, Doubt: doubt))).ToLookup(one => one.Id, one => one.Doubt);
        return new PlotPreview(
            fileName,
            [.. taken.Select(one => new LoadedPlot(
                one.Line.Row, one.Plot, [.. doubts[one.Plot.Id].Select(doubt => doubt.Said)],
                doubts[one.Plot.Id].Any(doubt => doubt.IsSamePlace && doubt.About.Any(other => place[other.Id] < place[one.Plot.Id]))))],
            [.. problems.Where(problem => problem.Column is null)], [.. problems.Where(problem => problem.Column is not null)], held.Count);
    }
}

/// <summary>Takes in a producer's plots from a file, for the page and for the API alike: read, looked at, and only then kept.</summary>
public sealed class PlotLoading(LedgerContext db, WorldMap world, TimeProvider clock)
{
    /// <summary>Keeps the file until something follows; the preview's address names it.</summary>
    /// <exception cref="RuleBrokenException">It cannot be read.</exception>
    public async Task<Id<StoredFile>> ParkAsync(IFormFile file, Id<Person> by, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(file);
        Rule.Require(file.Length <= PlotFile.MostBytes, "The file is larger than 25 MB: split it.", "File");
        var bytes = await file.BytesAsync(cancellationToken);
        var read = PlotFile.Read(bytes);
        Rule.Require(read.Lines.Count > 0 || read.Problems.Count > 0, "The file holds no plot: export it again with one feature, or one line, for each plot.", "File");
        return await db.ParkAsync(file, bytes, by, clock.GetUtcNow(), cancellationToken);
    }

    /// <summary>The parked file, judged; null when it was swept or is another person's.</summary>
    public async Task<PlotPreview?> ReadParkedAsync(Id<StoredFile> id, Producer producer, Id<Person> by, CancellationToken cancellationToken) =>
        await db.ParkedAsync(id, by, cancellationToken) is { Content: { } content } parked ? await ReadAsync(parked.Name, content.Bytes, producer, cancellationToken) : null;

    /// <summary>Reads and judges a file beside what is held of the producer, and of others where the land is the same.</summary>
    /// <exception cref="RuleBrokenException">It cannot be read.</exception>
    public async Task<PlotPreview> ReadAsync(string name, byte[] bytes, Producer producer, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(producer);
        var held = await db.Plots.AsNoTracking().Where(plot => plot.ProducerId == producer.Id).OrderBy(plot => plot.Name).ThenBy(plot => plot.Id).ToListAsync(cancellationToken);
        var others = await db.Plots.AsNoTracking().Where(plot => plot.ProducerId != producer.Id)
            .Join(db.Producers, plot => plot.ProducerId, other => other.Id, (plot, other) => new { Plot = plot, other.Name }).ToListAsync(cancellationToken);
        return PlotPreview.Of(name, PlotFile.Read(bytes), producer, held, others.ConvertAll(one => (one.Plot, one.Name)), world.Outlines);
    }

    /// <summary>Stores the plots of some rows, in one go.</summary>
    /// <returns>How many.</returns>
    public async Task<int> StoreAsync(PlotPreview preview, IReadOnlySet<int> rows, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(preview);
        var chosen = preview.Plots.Where(one => rows.Contains(one.Row)).Select(one => one.Plot).ToList();
        Rule.Require(chosen.Count > 0, preview.Plots.Count == 0 ? "No plot of this file can be taken: mend it and load it again." : "Every plot is left out: nothing is there to add.", "");
        Rule.Require(preview.Held + chosen.Count <= PlotPreview.MostPlots, $"A producer has at most {PlotPreview.MostPlots:#,0} plots here: split it into its groups.", "");
        db.AddRange(chosen);
        await db.SaveChangesAsync(cancellationToken);
        return chosen.Count;
    }
}
