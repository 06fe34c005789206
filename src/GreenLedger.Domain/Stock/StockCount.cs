using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Stock;

/// <summary>
/// A count of what really lies in a warehouse. The lines begin with what the ledger says; what was counted is written beside
/// it, and the differences become losses and gains when somebody approves them.
/// </summary>
public sealed class StockCount
{
    private readonly List<CountLine> _lines = [];
    private readonly List<Guid> _counters = [];

    private StockCount()
    {
    }

    /// <param name="warehouseId">What is counted.</param>
    /// <param name="on">The day of the count.</param>
    /// <param name="holdings">What lies there now.</param>
    /// <param name="lastMoved">The last day on which something moved there; a count of an earlier day would correct that again.</param>
    /// <param name="by">Who begins it.</param>
    /// <param name="at">When.</param>
    /// <exception cref="RuleBrokenException">The warehouse holds nothing, or something moved after the day.</exception>
    public StockCount(Id<Warehouse> warehouseId, DateOnly on, IReadOnlyList<Holding> holdings, DateOnly? lastMoved, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(holdings);
        Rule.Day(on, nameof(On));
        Rule.Require(on <= DateOnly.FromDateTime(at.UtcDateTime.AddHours(14)), "This day is still to come: write down what was counted.", nameof(On));
        Rule.Require(lastMoved is null || on >= lastMoved, string.Create(CultureInfo.InvariantCulture, $"Coffee moved here on {lastMoved:d MMMM yyyy}: the count is of that day or a later one."), nameof(On));
        var held = holdings.Where(holding => holding.WarehouseId == warehouseId && holding.Weighed > Weight.Zero).ToList();
        Rule.Require(held.Count > 0, "This warehouse holds nothing by the ledger: there is nothing to count. Write what is there as opening stock.", nameof(WarehouseId));
        Id = Id<StockCount>.New();
        (WarehouseId, On, By, At) = (warehouseId, on, by, at);
        _lines.AddRange(held.Select(holding => new CountLine(holding)));
    }

    public Id<StockCount> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Warehouse> WarehouseId { get; private set; }

    public DateOnly On { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    public Id<Person>? ApprovedBy { get; private set; }

    public DateTimeOffset? ApprovedAt { get; private set; }

    /// <summary>Why it was given up; null where it was not.</summary>
    public string? DroppedBecause { get; private set; }

    public IReadOnlyList<CountLine> Lines => _lines;

    /// <summary>Everybody who wrote down a figure, also one that another person put right.</summary>
    public IReadOnlyList<Guid> Counters => _counters;

    public bool IsOpen => ApprovedAt is null && DroppedBecause is null;

    public bool IsCounted => _lines.TrueForAll(line => line.IsCounted);

    /// <summary>Writes down what was counted of a lot.</summary>
    /// <exception cref="RuleBrokenException">The count is closed, or the figures cannot be.</exception>
    public void Count(Id<CountLine> lineId, int bags, Weight weighed, string? reason, Id<Person> by)
    {
        Rule.Require(IsOpen, "This count is closed: begin a new one.", nameof(ApprovedAt));
        var line = _lines.Find(one => one.Id == lineId);
        Rule.Require(line is not null, "This lot is not on the count.", nameof(Lines));
        line.Count(bags, weighed, reason, by);
        if (!_counters.Contains(by.Value))
        {
            _counters.Add(by.Value);
        }
    }

    /// <summary>
    /// Adds a lot that lies here and not by the ledger: found elsewhere than it was written down. It becomes a gain when the count is approved.
    /// </summary>
    /// <param name="holding">The lot in this warehouse, which holds nothing of it.</param>
    /// <exception cref="RuleBrokenException">The count is closed, the lot is on it, or nothing was found.</exception>
    public CountLine Find(Holding holding, int bags, Weight weighed, string? reason, Id<Person> by)
    {
        ArgumentNullException.ThrowIfNull(holding);
        Rule.Require(IsOpen, "This count is closed: begin a new one.", nameof(ApprovedAt));
        Rule.Require(holding.WarehouseId == WarehouseId, "It is counted in another warehouse: open the count of that one.", nameof(WarehouseId));
        Rule.Require(!_lines.Exists(line => line.HoldingId == holding.Id), "This lot is on the count: write what is there on its line.", nameof(Lines));
        Rule.Require(weighed > Weight.Zero, "How many kilograms were found? They lie above zero.", nameof(CountLine.Counted));
        var line = new CountLine(holding);
        _lines.Add(line);
        Count(line.Id, bags, weighed, string.IsNullOrWhiteSpace(reason) ? "Found here" : reason, by);
        return line;
    }

    /// <summary>
    /// Approves the differences and writes them into the ledger, as losses and gains of the day of the count.
    /// </summary>
    /// <param name="needsSecondPerson">Whether the house asks for somebody other than those who counted.</param>
    /// <exception cref="RuleBrokenException">A line is not counted, moved since, or whoever counted approves where the house asks for a second person.</exception>
    public IReadOnlyList<Movement> Approve(IReadOnlyList<Holding> holdings, IReadOnlyDictionary<Id<Holding>, RunningStock> days, bool needsSecondPerson, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(IsOpen, "This count is closed already.", nameof(ApprovedAt));
        Rule.Require(IsCounted, $"{_lines.Count(line => !line.IsCounted)} of {_lines.Count} lots are not counted yet: write down what is there, 0 where nothing is.", nameof(Lines));
        Rule.Require(!needsSecondPerson || !_counters.Contains(by.Value), "The house asks for a second person: somebody who did not count approves the differences.", nameof(ApprovedBy));
        var movements = _lines.Select(line => line.Settle(holdings.Single(holding => holding.Id == line.HoldingId), days[line.HoldingId], On, by, at)).OfType<Movement>().ToList();
        (ApprovedBy, ApprovedAt) = (by, at);
        return movements;
    }

    /// <summary>Gives the count up; the ledger stays as it is.</summary>
    public void Drop(string reason)
    {
        Rule.Require(IsOpen, "This count is closed already.", nameof(DroppedBecause));
        DroppedBecause = Rule.Text(reason, "The reason", 500, nameof(DroppedBecause));
    }
}

/// <summary>A lot on a count: what the ledger said when the count began, and what is there.</summary>
public sealed class CountLine
{
    private CountLine()
    {
    }

    internal CountLine(Holding holding)
    {
        Id = Id<CountLine>.New();
        HoldingId = holding.Id;
        (BookBags, Book) = (holding.Bags, holding.Weighed);
    }

    public Id<CountLine> Id { get; private set; }

    public Id<Holding> HoldingId { get; private set; }

    public int BookBags { get; private set; }

    public Weight Book { get; private set; }

    public int? CountedBags { get; private set; }

    public Weight? Counted { get; private set; }

    public string? Reason { get; private set; }

    public Id<Person>? CountedBy { get; private set; }

    public bool IsCounted => Counted is not null;

    /// <summary>Counted less book; below zero where something is missing.</summary>
    public Weight? Difference => Counted is { } counted ? counted - Book : null;

    internal void Count(int bags, Weight weighed, string? reason, Id<Person> by)
    {
        Rule.Require(bags is >= 0 and <= 100_000, "The bags lie between 0 and 100,000.", nameof(CountedBags));
        Rule.Require(weighed >= Weight.Zero && weighed.Kilograms <= 100_000_000m, "The weight lies at 0 kg or above.", nameof(Counted));
        Rule.Require(weighed > Weight.Zero || bags == 0, "Bags without coffee are not counted: write 0 bags.", nameof(CountedBags));
        (CountedBags, Counted, CountedBy) = (bags, weighed, by);
        Reason = Rule.OptionalText(reason, "The reason", 300, nameof(Reason));
    }

    internal Movement? Settle(Holding holding, RunningStock days, DateOnly on, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(holding.Bags == BookBags && holding.Weighed == Book, "Coffee moved since this count began: give it up and count again, so that nothing is corrected twice.", nameof(Book));
        var note = new MovementNote(on, null, Reason ?? "Counted");
        var (bags, weight) = (CountedBags!.Value - BookBags, Counted!.Value - Book);
        return weight == Weight.Zero && bags == 0 ? null : holding.Settle(bags, weight, days, note, by, at);
    }
}
