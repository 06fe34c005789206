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
        FileHash = "";
        Mapping = "";
    }

    internal OfferList(Id<Supplier> supplierId, StoredFile file, DateOnly receivedOn, string mapping, Id<Person> by, DateTimeOffset at)
    {
        Id = Id<OfferList>.New();
        SupplierId = supplierId;
        StoredFileId = file.Id;
        FileName = file.Name;
        FileHash = file.Sha256;
        ReceivedOn = receivedOn;
        Mapping = mapping;
        By = by;
        At = at;
    }

    public Id<OfferList> Id { get; private set; }

    public Id<Supplier> SupplierId { get; private set; }

    public string FileName { get; private set; }

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

    internal void Count(int accepted, int revised, int unchanged, IEnumerable<(OfferLine Line, Problem Problem)> setAside)
    {
        Accepted = accepted;
        Revised = revised;
        Unchanged = unchanged;
        _setAside.AddRange(setAside.Select(row => new SetAsideRow(Id, row.Line, row.Problem)));
        SetAsideCount = _setAside.Count;
    }
}
