using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Offers;

/// <summary>
/// A list as it was received from a supplier and loaded: the file, what was read from it and by which mapping, and how
/// many of its rows became new offers, revised offers, nothing new, or were set aside.
/// </summary>
public sealed class OfferList
{
    private readonly List<SetAsideRow> _setAside = [];

    private OfferList()
    {
        FileName = "";
        SearchText = "";
        FileHash = "";
        Mapping = "";
    }

    private OfferList(ListCase theCase)
    {
        Id = Id<OfferList>.New();
        SupplierId = theCase.Supplier.Id;
        StoredFileId = theCase.StoredFile.Id;
        FileName = theCase.StoredFile.Name;
        SearchText = Measures.SearchText.Of(FileName);
        FileHash = theCase.StoredFile.Sha256;
        ReceivedOn = theCase.ReceivedOn;
        Mapping = theCase.Mapping.ToJson();
        By = theCase.By;
        At = theCase.At;
    }

    public Id<OfferList> Id { get; private set; }

    public Id<Supplier> SupplierId { get; private set; }

    public string FileName { get; private set; }

    public string SearchText { get; private set; }

    public string FileHash { get; private set; }

    public DateOnly ReceivedOn { get; private set; }

    public Id<StoredFile> StoredFileId { get; private set; }

    /// <summary>The mapping that the rows were read by, as JSON.</summary>
    public string Mapping { get; private set; }

    public int Accepted { get; private set; }

    public int Revised { get; private set; }

    public int Unchanged { get; private set; }

    public int SetAsideCount { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    public IReadOnlyList<SetAsideRow> SetAside => _setAside;

    /// <summary>
    /// Compares a list that was read with what the ledger holds: rows of unknown references become new lots and offers,
    /// rows that say something new revise the offer, rows of an older list or of a file loaded before change nothing.
    /// </summary>
    public static ListOutcome From(ListReading reading, ListCase theCase)
    {
        var list = new OfferList(theCase);
        var taking = new ListTaking(theCase, list.Id);
        foreach (var row in reading.Rows)
        {
            taking.Take(row);
        }

        list.Accepted = taking.Accepted.Count;
        list.Revised = taking.Revised.Count;
        list.Unchanged = taking.Unchanged.Count;
        list._setAside.AddRange(reading.SetAside.Select(row => new SetAsideRow(list.Id, row.Line, row.Problem)));
        list.SetAsideCount = list._setAside.Count;
        return new ListOutcome(list, new AcceptedRows(taking.Accepted, taking.Make), taking.Revised, taking.Unchanged, reading.SetAside, taking.NewProducers, reading.Notes) { IsRepeat = theCase.IsRepeat };
    }

    /// <summary>
    /// Takes a mended row of this list in, as <see cref="From"/> would have taken it, though its file was loaded before.
    /// </summary>
    public MendedRow TakeIn(SetAsideRow mended, IReadOnlyList<Cell> cells, OfferRow row, ListCase theCase)
    {
        var taking = new ListTaking(theCase with { IsRepeat = false }, Id);
        taking.Take(row);
        var isNew = taking.Accepted.Count > 0;
        var outcome = isNew ? taking.Make(row) : taking.Revised.Concat(taking.Unchanged).Single();
        mended.Mend(cells, outcome.Offer.Id, theCase.By, theCase.At);
        return new MendedRow(outcome, taking.NewProducers.FirstOrDefault(), isNew, taking.Revised.Count > 0);
    }
}
