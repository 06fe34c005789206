using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Stock.Reading;
using GreenLedger.Domain.Trace;

namespace GreenLedger.Domain.Tests.Stock;

/// <summary>Earlier contracts from a file, by the rules of the contract room. Figures are worked by hand beside each.</summary>
public sealed class EarlierTakingTests
{
    private const string Open = "Contract|Supplier|Contract date|Lot|Bags|Bag weight (kg)|Incoterm|Place|Shipment until|Futures month|Differential|Lots to fix|Lots fixed|Fixed at|Fixed on";
    private const string Past = "Contract|Supplier|Contract date|Lot|Name|Origin|Bags|Bag weight (kg)|Price|Shipped on|Arrived on|Received (kg)|Landed cost per kg|Landed cost currency|Score|Left (kg)|Bags left";

    private static readonly DateOnly Today = new(2026, 11, 26);
    private static readonly Warehouse Quay = new("Quay");

    [Fact]
    public void A_differential_contract_stands_signed_with_its_fixings_and_its_open_lots()
    {
        // 640 bags of 59 kg = 37,760 kg; a lot is 37,500 lb = 17,009.71 kg (handbook, trade 2.1): 2.22, so two lots, one of them fixed.
        var contract = Assert.Single(Take(Open, "P25-1|Serra do Mel|2026-08-03|SM-1|640|59|FOB|Santos|December 2026|KCH27|12||1|281.40|2026-09-14").Contracts).Contract;

        Assert.Equal((GoodsState.ReadyToShip, PriceState.PartlyFixed), (contract.Goods, contract.Price));
        Assert.Equal((Weight.FromKilograms(37_760m), new DateOnly(2026, 8, 3), new DateOnly(2026, 12, 31)), (contract.NetWeight, contract.ShipFrom, contract.ShipUntil));
        Assert.Equal(("KCH27", Weight.FromPounds(37_500m)), (contract.OpenMonth.ToString(), contract.OpenWeight));
        Assert.Equal((281.40m, 12m, new DateOnly(2026, 9, 14)), (contract.Fixings[0].Level, contract.Fixings[0].Differential, contract.Fixings[0].On));
    }

    [Fact]
    public void Several_fixings_stand_one_after_the_other()
    {
        var contract = Assert.Single(Take(Open, "P25-1|Serra do Mel|2026-08-03|SM-1|960|53.15|FOB|Santos|2026-12-31|KCH27|-4,5|3|2; 1|281.40; 279.85|").Contracts).Contract;

        Assert.Equal((PriceState.Fixed, null), (contract.Price, contract.OpenMonth));
        // Worked by hand: (2 × 281.40 + 279.85) ÷ 3 − 4.50 US cents/lb.
        Assert.Equal((842.65m / 3m) - 4.5m, contract.Position!.Final!.Value, 10);
    }

    [Fact]
    public void All_fixes_what_is_open()
    {
        var contract = Assert.Single(Take(Open, "P25-1|Serra do Mel|2026-08-03|SM-1|640|59|FOB|Santos|2026-12-31|KCH27|12||all|281.40|").Contracts).Contract;

        Assert.Equal((PriceState.Fixed, 2), (contract.Price, contract.Fixings[0].Lots));
    }

    [Theory]
    [InlineData("640", "281.43", "Fixed at", "it moves in steps of 0.05")] // the tick of New York, handbook trade 2.1
    [InlineData("640", "1; 281.40", "Fixed at", "Each fixing has its lots and its level")]
    [InlineData("0", "281.40", "Bags", "How many bags")]
    public void A_wrong_row_says_its_column_and_what_to_do(string bags, string level, string column, string sentence)
    {
        var aside = Assert.Single(Take(Open, $"P25-1|Serra do Mel|2026-08-03|SM-1|{bags}|59|FOB|Santos|2026-12-31|KCH27|12||1|{level}|").SetAside);

        Assert.Equal((2, column), (aside.Row, aside.Problem.Column));
        Assert.Contains(sentence, aside.Problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_contract_is_set_aside_whole_where_one_of_its_rows_is_wrong_and_the_others_are_taken()
    {
        var taking = Take(Past,
            "P23-1|Sierra Clara|2023-02-14|SC-1||Peru|100|69|4.10 USD/lb||2023-08-11||||||",
            "P23-1||||SC-2|Atlantis|50|69|||2023-08-11||||||",
            "P23-2|Sierra Clara|2023-02-14|SC-3||Peru|100|69|4.10 USD/lb||2023-08-11||||||");

        Assert.Equal("P23-2", Assert.Single(taking.Contracts).Contract.Ref);
        Assert.Equal([(2, null), (3, "Origin")], taking.SetAside.Select(row => (row.Row, row.Problem.Column)));
        Assert.StartsWith("Row 3 of the same contract", taking.SetAside[0].Problem.Message, StringComparison.Ordinal);
        Assert.Equal(("SC-3", "PE"), (Assert.Single(taking.NewLots).Ref, taking.NewLots.Single().CountryCode));
    }

    [Fact]
    public void Rows_of_one_contract_that_contradict_one_another_are_told()
    {
        var taking = Take(Past, "P23-1|Sierra Clara|2023-02-14|SC-1||Peru|100|69|4.10 USD/lb||2023-08-11||||||", "P23-1|||SC-2||Peru|50|69|4.30 USD/lb||2023-08-11||||||");

        Assert.Empty(taking.Contracts);
        Assert.Equal((3, "Price"), (taking.SetAside[1].Row, taking.SetAside[1].Problem.Column));
        Assert.Contains("'4.10 USD/lb' and '4.30 USD/lb'", taking.SetAside[1].Problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_has_arrived_is_a_closed_contract_with_what_was_received_and_what_is_left_of_it()
    {
        var one = Assert.Single(Take(Past, "P23-1|Sierra Clara|2023-02-14|SC-1|Clara|Peru|275|69|4.10 USD/lb|2023-06-20|2023-08-11|18941.3|10.12||86.25|1377.2|20").Contracts);
        var (contract, lot) = (one.Contract, one.Contract.Lots[0]);

        Assert.Equal((GoodsState.Closed, PriceState.Outright), (contract.Goods, contract.Price));
        Assert.Equal((new DateOnly(2023, 6, 20), new DateOnly(2023, 8, 11), 0), (contract.ShippedOn, contract.ArrivedOn, contract.DaysLate));
        // Worked by hand: 275 × 69 kg; received, landed cost and score as written.
        Assert.Equal((Weight.FromKilograms(18_975m), Weight.FromKilograms(18_941.3m)), (lot.Net, lot.Received));
        Assert.Equal((10.12m, 86.25m), (lot.LandedCost!.Value.PerKilogram, lot.EarlierScore!.Value.Points));
        var left = one.Lines[0].Left!;
        // Worked by hand: 1,377.2 kg × 10.12 EUR = 13,937.264 EUR.
        Assert.Equal((Quay.Id, 20, Weight.FromKilograms(1_377.2m), Money.Of(13_937.26m, Currency.Eur)), (left.Warehouse.Id, left.Amount.Bags, left.Amount.Weighed, left.Cost));
    }

    [Fact]
    public void A_past_purchase_whose_price_nobody_knows_is_taken_and_has_no_value()
    {
        var taking = Take(Past, "P23-1|Sierra Clara|2023-02-14|SC-1||Peru|275|69|||2023-08-11|18941.3|||||");
        var open = Take(InPart, "P23-2|Sierra Clara|2023-02-14|SC-2|10|69||FOB Callao|2026-12-31|||||||||||");
        var contract = Assert.Single(taking.Contracts).Contract;

        Assert.Equal((GoodsState.Closed, PriceState.NotKnown, false), (contract.Goods, contract.Price, contract.Price.IsKnown()));
        Assert.Null(contract.Value(contract.NetWeight, 300m));
        Assert.Equal(Weight.FromKilograms(18_941.3m), contract.Lots[0].Received);
        // What is open needs its price.
        Assert.Equal("Price", Assert.Single(open.SetAside).Problem.Column);
    }

    [Fact]
    public void A_landed_cost_in_another_currency_stands_at_the_rate_of_the_day_of_arrival()
    {
        // 11 USD a kilogram at 1.10 USD for a euro: 10 EUR.
        var lot = Assert.Single(Take(Past, "P23-1|Sierra Clara|2023-02-14|SC-1||Peru|275|69|4.10 USD/lb||2023-08-11||11|USD|||").Contracts).Contract.Lots[0];
        var without = Assert.Single(Take(Past, "P22-1|Sierra Clara|2022-02-14|SC-1||Peru|275|69|4.10 USD/lb||2022-08-11||11|USD|||").SetAside);

        Assert.Equal(10m, lot.LandedCost!.Value.PerKilogram);
        Assert.Equal("Landed cost currency", without.Problem.Column);
    }

    private const string InPart = "Contract|Supplier|Contract date|Lot|Bags|Bag weight (kg)|Price|Incoterm|Shipment until|Arrived on|Bags arrived|Received (kg)|Left (kg)|Bags left|Bags shipped|Shipped on|Port of loading|Port of destination|Futures month|Differential";

    [Fact]
    public void A_row_of_which_a_part_has_arrived_is_a_past_purchase_and_what_is_open()
    {
        var taking = Take(InPart, "P26-1|Sierra Clara|2026-02-14|SC-1|550|69|4.10 USD/lb|FOB Callao|2026-12-31|2026-08-11|275|18941.3|690|10|100|2026-11-02|PECLL|DEHAM||", "P26-1|||SC-2|50|69|||||||||||||||");

        Assert.Empty(taking.SetAside);
        var (past, open) = (taking.Contracts[0], taking.Contracts[1]);
        // Worked by hand: 275 of 550 bags of 69 kg came, and 275 and 50 bags are open, 100 of them on board.
        Assert.Equal(("P26-1/1", GoodsState.Closed, 18_975m, 18_941.3m), (past.Contract.Ref, past.Contract.Goods, past.Contract.NetWeight.Kilograms, past.Contract.Lots[0].Received!.Value.Kilograms));
        Assert.Equal(("P26-1", GoodsState.PartShipped, 22_425m), (open.Contract.Ref, open.Contract.Goods, open.Contract.NetWeight.Kilograms));
        Assert.Equal(6_900m, Assert.Single(open.Shipments).Net.Kilograms);
        Assert.Equal(past.Contract.Lots[0].LotId, open.Contract.Lots[0].LotId);
        Assert.Equal((690m, 10), (past.Lines[0].Left!.Amount.Weighed.Kilograms, past.Lines[0].Left!.Amount.Bags));
    }

    [Theory]
    [InlineData("2026-08-11", "551", "", "Between 1 and 550 bags")]
    [InlineData("", "20", "", "Bags have arrived")]
    [InlineData("2026-08-11", "275", "KCH27", "a contract number of its own")]
    public void A_part_that_cannot_be_is_told(string on, string came, string month, string sentence)
    {
        var taking = Take(InPart, $"P26-1|Sierra Clara|2026-02-14|SC-1|550|69|{(month.Length > 0 ? "" : "4.10 USD/lb")}|FOB Callao|2026-12-31|{on}|{came}||||||||{month}|{(month.Length > 0 ? "12" : "")}");

        Assert.Empty(taking.Contracts);
        Assert.Contains(sentence, Assert.Single(taking.SetAside).Problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Bags_on_board_become_a_shipment_and_the_contract_is_part_shipped()
    {
        var one = Assert.Single(Take(
            "Contract|Supplier|Contract date|Lot|Bags|Net weight (kg)|Incoterm|Shipment until|Price|Currency|Price unit|Bags shipped|Shipped on|Port of loading|Port of destination|Bill of lading|ETA",
            "P25-2|Serra do Mel|2026-07-01|SM-2|320|18880|FOB Santos|2026-11-30|385|US cents|lb|200|2026-10-20|BRSSZ|DEHAM|BL-77|2026-12-05").Contracts);
        var shipment = Assert.Single(one.Shipments);

        // 18,880 kg ÷ 320 bags = 59 kg; 200 of them are 11,800 kg. 385 US cents are 3.85 USD.
        Assert.Equal((GoodsState.PartShipped, Weight.FromKilograms(11_800m)), (one.Contract.Goods, shipment.Net));
        Assert.Equal(("S26-005", "BL-77", new DateOnly(2026, 12, 5)), (shipment.Ref, shipment.BillOfLading, shipment.PlannedArrival));
        Assert.Equal((3.85m, PriceUnit.Pound), (one.Contract.Terms.Price.Outright!.Value.Amount, one.Contract.Terms.Price.Outright.Value.Unit));
        Assert.Equal("Santos", one.Contract.Terms.Delivery.Place);
    }

    [Fact]
    public void A_number_that_the_ledger_has_is_left_alone_and_a_lot_that_it_knows_is_found()
    {
        var known = new Lot("SC-1", "Clara of the ledger");
        var names = new KnownNames(new Dictionary<string, KnownSample> { ["SC-1"] = new(known.Id, null) }, new Dictionary<string, string>());
        var taking = Take(Facts() with { Names = names, Lots = new Dictionary<Id<Lot>, Lot> { [known.Id] = known }, Numbers = new HashSet<string> { "P23-1" } }, Past,
            "p23-1|Sierra Clara|2023-02-14|SC-8||Peru|275|69|4.10 USD/lb||2023-08-11||||||", "P23-2|Sierra Clara|2023-02-14|SC-1||Peru|275|69|4.10 USD/lb||2023-08-11||||||");

        Assert.Contains("has a contract p23-1 already", Assert.Single(taking.SetAside).Problem.Message, StringComparison.Ordinal);
        Assert.Equal((known.Id, false), (taking.Contracts[0].Lines[0].Lot.Id, taking.Contracts[0].Lines[0].IsNewLot));
        Assert.Empty(taking.NewLots);
    }

    /// <summary>A reference that the ledger gave to another coffee would mix the two: facts of the trade, no source.</summary>
    [Theory]
    [InlineData("Sierra Clara", "Brazil", "stands in the ledger and is of PE, not of BR")]
    [InlineData("Vale do Sol", "Peru", "is another supplier's")]
    [InlineData("Sierra Clara", "Peru", null)]
    public void A_lot_of_the_ledger_is_taken_only_where_it_can_be_the_same_coffee(string supplier, string origin, string? sentence)
    {
        var seller = new Supplier("Sierra Clara", SupplierKind.Exporter);
        var known = new Lot("SC-1", "Clara of the ledger", seller.Id);
        known.Grow("PE", null, null, null, null, null);
        var names = new KnownNames(new Dictionary<string, KnownSample> { ["SC-1"] = new(known.Id, null) }, new Dictionary<string, string>());
        var taking = Take(
            Facts() with { Names = names, Lots = new Dictionary<Id<Lot>, Lot> { [known.Id] = known }, Suppliers = [seller] },
            Past, $"P23-2|{supplier}|2023-02-14|SC-1||{origin}|275|69|4.10 USD/lb||2023-08-11||||||");

        Assert.Equal(sentence is null ? 1 : 0, taking.Contracts.Count);
        Assert.All(taking.SetAside, aside => Assert.Contains(sentence!, aside.Problem.Message, StringComparison.Ordinal));
    }

    /// <summary>What was received before the ledger began, and what of it was left, is told: issue 6, mass balance at every step with its losses.</summary>
    [Fact]
    public void What_came_before_the_ledger_stands_in_the_mass_balance()
    {
        var one = Assert.Single(Take(Past, "P23-1|Sierra Clara|2023-02-14|SC-1|Clara|Peru|275|69|4.10 USD/lb|2023-06-20|2023-08-11|18941.3|10.12||86.25|1377.2|20").Contracts);
        var (lot, left) = (one.Lines[0].Lot, one.Lines[0].Left!);
        var holding = new Holding(lot.Id, Quay.Id);
        var opening = holding.Add(MovementKind.Opening, left.Amount, new MovementNote(left.On, null, "From the file"), Id<Person>.New(), new DateTimeOffset(2026, 11, 26, 12, 0, 0, TimeSpan.Zero));

        var balance = MassBalance.Of(lot.Id, new TraceFacts([lot], [], [], [], [], [one.Contract], [], [], [opening], [holding], [Quay], []));

        Assert.True(balance.Closes);
        // Worked by hand: 18,941.3 − 1,377.2 = 17,564.1 kg; 275 × 69 = 18,975 kg were contracted.
        Assert.Equal([new BalancePart("gone before this ledger", Weight.FromKilograms(17_564.1m))], balance.Steps[0].Parts);
        Assert.Equal([new BalancePart("came before this ledger on P23-1", Weight.FromKilograms(18_975m))], balance.Steps[1].Parts);
    }

    private static EarlierTaking Take(string heading, params string[] rows) => Take(Facts(), heading, rows);

    private static EarlierTaking Take(EarlierCase facts, string heading, params string[] rows)
    {
        List<OfferLine> lines = [.. rows.Prepend(heading).Select((row, at) => new OfferLine(at + 1, [.. row.Split('|').Select(Cell.Of)]))];
        return EarlierTaking.Of(EarlierList.Of(lines, Currency.Eur, Today), facts);
    }

    private static EarlierCase Facts()
    {
        var shipment = 4;
        return new EarlierCase(
            "Sorrel Roasters", Currency.Eur, null, new ListReference([new Country("PE", "Peru"), new Country("BR", "Brazil")], [], new ListChecks(), Today),
            new KnownNames(new Dictionary<string, KnownSample>(), new Dictionary<string, string>()), new Dictionary<Id<Lot>, Lot>(), [], [Quay], new HashSet<string>(), new HashSet<Id<Lot>>(),
            new ExchangeRates([new ExchangeRate(Currency.Usd, new DateOnly(2023, 8, 10), 1.10m, "test", null, new DateTimeOffset(2026, 11, 26, 12, 0, 0, TimeSpan.Zero))]),
            new EarlierDefaults(Quay.Id, Today, Incoterm.Fob), () => $"S26-{++shipment:000}", Id<Person>.New(), new DateTimeOffset(2026, 11, 26, 12, 0, 0, TimeSpan.Zero));
    }
}
