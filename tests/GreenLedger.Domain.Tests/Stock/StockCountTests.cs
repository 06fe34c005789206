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

    private Dictionary<Id<Holding>, RunningStock> Days => new() { [_holding.Id] = new(_ledger.Select(one => (one.On, one.Amount))) };

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

    private StockCount Counted(int bags, decimal weighed)
    {
        var count = new StockCount(_holding.WarehouseId, Today, [_holding], null, Counter, Noon);
        count.Count(count.Lines[0].Id, bags, Kg(weighed), null, Counter);
        return count;
    }

    private static Weight Kg(decimal kilograms) => Weight.FromKilograms(kilograms);
}
