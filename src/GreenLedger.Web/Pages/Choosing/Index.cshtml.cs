using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Documents.Choosing;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Choosing;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Choosing;

public sealed class IndexModel(LedgerContext db, ShortlistQuery query, HouseZone house) : PageModel
{
    /// <summary>Rows a page: each says much, and on a phone each is a card.</summary>
    private const int RowsAPage = 25;

    private Dictionary<string, string> _countries = [];
    private Dictionary<Id<Offer>, Decision> _decisions = [];

    [BindProperty(SupportsGet = true)]
    public RankingWish Wish { get; set; } = new();

    [BindProperty(SupportsGet = true)]
    public string? Sort { get; set; }

    /// <summary>The page of the lots below the ranked ones, from 1.</summary>
    [BindProperty(SupportsGet = true)]
    public int Below { get; set; } = 1;

    public IReadOnlyList<string> Names { get; private set; } = [];

    public BuyingRules? Chosen { get; private set; }

    /// <summary>The rules' weights, or those that are tried.</summary>
    public Weights Weights { get; private set; } = new();

    public Shortlist? Shortlist { get; private set; }

    /// <summary>The ranked lots of this page, in the order asked for.</summary>
    public IReadOnlyList<ShortlistEntry> Shown { get; private set; } = [];

    public ScatterChart? Chart { get; private set; }

    /// <summary>Why these rules cannot rank, in a sentence; null where they can.</summary>
    public string? Trouble { get; private set; }

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public bool TriesWeights => Chosen is not null && Weights != Chosen.Terms.Weights;

    public async Task<IActionResult> OnGetAsync([FromQuery(Name = "pageNumber")] int number, CancellationToken cancellationToken)
    {
        Names = await db.BuyingRules.InUse().OrderBy(set => set.Name).Select(set => set.Name).ToListAsync(cancellationToken);
        (Chosen, Shortlist, Trouble) = await Ranking.OfAsync(Wish, db, query, house.Today, cancellationToken);
        if (Chosen is null)
        {
            return Names.Count > 0 ? NotFound() : Page();
        }

        Weights = Wish.TermsOf(Chosen).Weights;
        Trouble = ModelState.IsValid ? Trouble : "A weight is a number from 0 up.";
        if (Shortlist is { } list)
        {
            Paging = Paging.Of(number, list.Ranked.Count, "ranked lot", "ranked lots", RowsAPage);
            Shown = [.. ShortlistOrder.Of(list.Ranked, Sort).Skip(Paging.Skip).Take(Paging.Size)];
            Chart = ScatterChart.Of(list);
            await LoadAsync([.. Shown, .. Unranked(list.Failed).Shown, .. Unranked(list.OtherForm).Shown], cancellationToken);
        }

        return Page();
    }

    /// <summary>What the page shows, as a workbook that goes on computing.</summary>
    public Task<IActionResult> OnGetWorkbookAsync([FromServices] ShortlistPapers papers, CancellationToken cancellationToken) =>
        AsFileAsync(papers, ShortlistWorkbook.Write, TableWorkbook.MediaType, ".xlsx", cancellationToken);

    /// <summary>What the page shows, on one or two pages for those who decide on it.</summary>
    public Task<IActionResult> OnGetPdfAsync([FromServices] ShortlistPapers papers, CancellationToken cancellationToken) =>
        AsFileAsync(papers, ShortlistPdf.Write, ShortlistPdf.MediaType, ".pdf", cancellationToken);

    /// <summary>The part of a list below the ranked lots that this page shows.</summary>
    public (Paging Paging, IReadOnlyList<ShortlistEntry> Shown) Unranked(IReadOnlyList<ShortlistEntry> entries)
    {
        var paging = Paging.Of(Below, entries.Count, "lot", "lots", RowsAPage);
        return (paging, [.. entries.Skip(paging.Skip).Take(paging.Size)]);
    }

    public string? CountryOf(string? code) => code is null ? null : _countries.GetValueOrDefault(code, code);

    /// <summary>The newest decision on the offer that stands.</summary>
    public Decision? DecisionOn(Id<Offer> offer) => _decisions.GetValueOrDefault(offer);

    /// <summary>The lot's process in the chart, and its word; where there are many, the last of them are drawn as one.</summary>
    public (ChartSeries? Series, string Word) SeriesOf(Candidate lot)
    {
        var word = lot.Process ?? "not stated";
        return (Chart?.Series.FirstOrDefault(series => series.Word == word) ?? (Chart is { Series.Count: > 0 } ? Chart.Series[^1] : null), word);
    }

    private async Task<IActionResult> AsFileAsync(
        ShortlistPapers papers, Action<ShortlistReport, Stream> write, string mediaType, string ending, CancellationToken cancellationToken)
    {
        if (!ModelState.IsValid || await papers.FindAsync(Wish, User.PersonName(), cancellationToken) is not { } report)
        {
            return NotFound();
        }

        var stream = new MemoryStream();
        write(report, stream);
        stream.Position = 0;
        return File(stream, mediaType, report.FileName + ending);
    }

    /// <summary>What the rows say beside the ranking.</summary>
    private async Task LoadAsync(List<ShortlistEntry> entries, CancellationToken cancellationToken)
    {
        _countries = await db.Countries.AsNoTracking().ToDictionaryAsync(country => country.Code, country => country.Name, cancellationToken);
        var offers = entries.ConvertAll(entry => entry.Candidate.OfferId);
        var decisions = await db.Decisions.Standing().Where(decision => offers.Contains(decision.OfferId)).AsNoTracking().ToListAsync(cancellationToken);
        _decisions = decisions.GroupBy(decision => decision.OfferId).ToDictionary(offer => offer.Key, offer => offer.MaxBy(decision => decision.At)!);
    }
}
