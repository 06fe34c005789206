using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Domain.Tests.Stock;

public sealed class StockCountTests
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 26, 12, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly Today = new(2026, 11, 26);
    private static readonly Id<Person> Counter = Id<Person>.New();
    private static readonly Id<Person> Approver = Id<Person>.New();

    private readonly Holding _holding = new(Id<Lot>.New(), Id<Warehouse>.New());
    private readonly List<Movement> _ledger = [];

    public StockCountTests() => _ledger.Add(_holding.Add(MovementKind.Opening, new StockAmount(10, Kg(690m), Kg(685.5m)), new MovementNote(Today, null, null), Counter, Noon));

    private Dictionary<Id<Holding>, RunningStock> Days => new() { [_holding.Id] = RunningStock.Of(_ledger) };

    [Fact]
    public void What_is_missing_becomes_a_loss_when_a_second_person_approves()
    {
        var count = Counted(9, 616.5m);

        Assert.Throws<RuleBrokenException>(() => count.Approve([_holding], Days, true, Counter, Noon));
        var movement = Assert.Single(count.Approve([_holding], Days, true, Approver, Noon));

        // Worked by hand: 10 bags with 685.5 kg are on the books.
        Assert.Equal((MovementKind.Loss, -1, Kg(-69m)), (movement.Kind, movement.Bags, movement.Weighed));
        Assert.Equal((9, Kg(616.5m)), (_holding.Bags, _holding.Weighed));
        Assert.False(count.IsOpen);
    }

    [Fact]
    public void What_is_more_becomes_a_gain()
    {
        var movement = Assert.Single(Counted(10, 686.25m).Approve([_holding], Days, false, Counter, Noon));

        Assert.Equal((MovementKind.Gain, 0, Kg(0.75m)), (movement.Kind, movement.Bags, movement.Weighed));
    }

    [Fact]
    public void A_count_that_agrees_writes_nothing() => Assert.Empty(Counted(10, 685.5m).Approve([_holding], Days, false, Counter, Noon));

    [Fact]
    public void A_count_is_not_approved_before_all_is_counted()
    {
        var count = new StockCount(_holding.WarehouseId, Today, [_holding], null, Counter, Noon);

        var refused = Assert.Throws<RuleBrokenException>(() => count.Approve([_holding], Days, false, Approver, Noon));

        Assert.StartsWith("1 of 1 lots are not counted yet", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Coffee_that_moved_since_the_count_began_is_not_corrected_twice()
    {
        var count = Counted(9, 616.5m);
        _ledger.Add(_holding.Take(MovementKind.Release, 1, Kg(68.55m), Days[_holding.Id], new MovementNote(Today, null, null), Counter, Noon));

        Assert.Throws<RuleBrokenException>(() => count.Approve([_holding], Days, false, Approver, Noon));
        Assert.True(count.IsOpen);
    }

    [Fact]
    public void An_empty_warehouse_is_not_counted() =>
        Assert.Throws<RuleBrokenException>(() => new StockCount(Id<Warehouse>.New(), Today, [_holding], null, Counter, Noon));

    [Fact]
    public void A_count_of_a_day_before_the_last_movement_is_refused() =>
        Assert.Throws<RuleBrokenException>(() => new StockCount(_holding.WarehouseId, Today.AddDays(-1), [_holding], Today, Counter, Noon));

    [Fact]
    public void Whoever_counted_first_does_not_approve_what_another_put_right()
    {
        var count = Counted(9, 616.5m);
        count.Count(count.Lines[0].Id, 9, Kg(616.0m), null, Id<Person>.New());

        Assert.Throws<RuleBrokenException>(() => count.Approve([_holding], Days, true, Counter, Noon));
    }

    [Fact]
    public void A_lot_that_is_found_here_becomes_a_gain_with_bags_as_its_papers_say()
    {
        var other = new Holding(Id<Lot>.New(), _holding.WarehouseId);
        var count = Counted(10, 685.5m);

        var line = count.Find(other, 2, Kg(118.6m), null, Counter);
        var days = new Dictionary<Id<Holding>, RunningStock>(Days) { [other.Id] = new([]) { Bag = Kg(60m) } };
        var movement = Assert.Single(count.Approve([_holding, other], days, true, Approver, Noon));

        Assert.Equal((0, Kg(0m), 2, Kg(118.6m)), (line.BookBags, line.Book, line.CountedBags!.Value, line.Counted!.Value));
        Assert.Equal((MovementKind.Gain, 2, Kg(120m), Kg(118.6m), "Found here"), (movement.Kind, movement.Bags, movement.Packed, movement.Weighed, movement.Reason));
    }

    [Fact]
    public void What_is_on_the_count_or_in_another_warehouse_is_not_found_here()
    {
        var count = Counted(10, 685.5m);

        Assert.Throws<RuleBrokenException>(() => count.Find(_holding, 1, Kg(60m), null, Counter));
        Assert.Throws<RuleBrokenException>(() => count.Find(new Holding(_holding.LotId, Id<Warehouse>.New()), 1, Kg(60m), null, Counter));
        Assert.Throws<RuleBrokenException>(() => count.Find(new Holding(Id<Lot>.New(), _holding.WarehouseId), 0, Kg(0m), null, Counter));
    }

    /// <summary>Bags that a count misses are gone by the papers as well (handbook, trade 1.1), whatever the scales say of the others.</summary>
    [Fact]
    public void A_missing_bag_takes_along_what_its_papers_say()
    {
        Counted(9, 616.2m).Approve([_holding], Days, true, Approver, Noon);

        Assert.Equal(new StockAmount(9, Kg(621m), Kg(616.2m)), _holding.Amount);
    }

    private StockCount Counted(int bags, decimal weighed)
    {
        var count = new StockCount(_holding.WarehouseId, Today, [_holding], null, Counter, Noon);
        count.Count(count.Lines[0].Id, bags, Kg(weighed), null, Counter);
        return count;
    }

    private static Weight Kg(decimal kilograms) => Weight.FromKilograms(kilograms);
}
