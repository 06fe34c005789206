using System.Globalization;
using System.Text.Json;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Summaries;
using GreenLedger.Data.Tests.Demo;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Summaries;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Summaries;

/// <summary>The demo's summary against SQL of its own: kilograms are added by the database, money by the arithmetic below.</summary>
[Collection(FilledDemo.Name)]
public sealed class PurchaseSummaryQueryTests(FilledDemo demo, Ledgers ledgers)
{
    private static readonly DateOnly Today = DateOnly.FromDateTime(FilledDemo.Now.UtcDateTime);
    private static readonly Period Year = Period.Of(new DateOnly(2025, 12, 1), new DateOnly(2026, 11, 30));

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task Kilograms_contracted_by_origin_are_those_that_the_database_adds_up(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var expected = await db.Database.SqlQuery<GroupSum>(
            $"""
            SELECT o."Name" AS "Name", CAST(SUM(cl."Bags" * cl."BagWeightMicrograms") AS bigint) AS "Micrograms", CAST(COUNT(*) AS bigint) AS "Lots"
            FROM "ContractLots" cl
            JOIN "Contracts" c ON c."Id" = cl."ContractId"
            JOIN "ContractVersions" v ON v."ContractId" = c."Id" AND v."Number" = 1
            JOIN "Lots" l ON l."Id" = cl."LotId"
            JOIN "Countries" o ON o."Code" = l."CountryCode"
            WHERE c."Goods" NOT IN (0, 6) AND v."SignedOn" >= {Year.From} AND v."SignedOn" <= {Year.Until}
            GROUP BY o."Name"
            """).ToListAsync(Stop);

        var groups = (await SummaryAsync(db, Cut.Origin)).Groups().Where(group => group.Contracted.Rows > 0).ToList();

        Assert.True(expected.Count > 3, "the demo buys of several origins");
        Assert.Equal(
            expected.Select(one => (one.Name, one.Micrograms, one.Lots)).Order(),
            groups.Select(group => (group.Name, group.Contracted.Net.Micrograms, (long)group.Contracted.Rows)).Order());
    }

    [Theory, EveryEngine]
    public async Task Money_of_what_is_priced_is_that_of_the_terms_and_fixings_at_the_rate_of_the_signature(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var lots = await db.Database.SqlQuery<LotLine>(
            $"""
            SELECT c."Id" AS "ContractId", CAST(cl."Bags" * cl."BagWeightMicrograms" AS bigint) AS "Micrograms", v."SignedOn" AS "SignedOn",
                (SELECT t."Terms" FROM "ContractVersions" t WHERE t."ContractId" = c."Id" AND t."SignedOn" IS NOT NULL ORDER BY t."Number" DESC LIMIT 1) AS "Terms"
            FROM "ContractLots" cl
            JOIN "Contracts" c ON c."Id" = cl."ContractId"
            JOIN "ContractVersions" v ON v."ContractId" = c."Id" AND v."Number" = 1
            WHERE c."Goods" NOT IN (0, 6) AND c."OpenMonth" IS NULL AND v."SignedOn" >= {Year.From} AND v."SignedOn" <= {Year.Until}
            """).ToListAsync(Stop);
        var fixings = await db.Database.SqlQuery<FixedLine>(
            $"""SELECT "ContractId", "WeightMicrograms" AS "Micrograms", "LevelTenThousandths" + "DifferentialTenThousandths" AS "TenThousandths", "Month" FROM "PriceFixings" WHERE "TakenBackAt" IS NULL""").ToListAsync(Stop);
        var rates = await db.Database.SqlQuery<RateLine>(
            $"""SELECT "Currency", "On", "HundredMillionthsPerEuro" AS "PerEuro" FROM "ExchangeRates" WHERE "Kind" = 0""").ToListAsync(Stop);

        var total = (await SummaryAsync(db, Cut.Supplier)).Total(SummaryFigure.Contracted);

        Assert.Equal(0, total.WithoutValue);
        Assert.Equal(lots.Sum(lot => ValueInEuro(lot, fixings, rates)), (total.Value - total.Provisional).Amount);
        Assert.True(total.Provisional > Money.Zero(Currency.Eur), "the demo has something to fix");
    }

    [Theory, EveryEngine]
    public async Task Shipped_and_arrived_count_by_the_papers_or_by_the_days_that_the_contract_tells(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var moved = await db.Database.SqlQuery<GroupSum>(
            $"""
            SELECT m."Move" AS "Name", CAST(SUM(cl."Bags" * cl."BagWeightMicrograms") AS bigint) AS "Micrograms", CAST(COUNT(*) AS bigint) AS "Lots"
            FROM "ContractMoves" m JOIN "ContractLots" cl ON cl."ContractId" = m."ContractId"
            WHERE m."Axis" = 0 AND m."Move" IN ('ship', 'arrive') AND m."On" >= {Year.From} AND m."On" <= {Year.Until}
                AND NOT EXISTS (SELECT 1 FROM "ShipmentLots" s WHERE s."ContractId" = m."ContractId")
            GROUP BY m."Move"
            """).ToDictionaryAsync(one => one.Name, Stop);
        var shipped = await db.Database.SqlQuery<GroupSum>(
            $"""
            SELECT 'ship' AS "Name", CAST(COALESCE(SUM(s."NetMicrograms"), 0) AS bigint) AS "Micrograms", CAST(COUNT(*) AS bigint) AS "Lots"
            FROM "ShipmentLots" s JOIN "Shipments" h ON h."Id" = s."ShipmentId" WHERE h."ShippedOn" >= {Year.From} AND h."ShippedOn" <= {Year.Until}
            """).SingleAsync(Stop);
        var landed = await db.Database.SqlQuery<GroupSum>(
            $"""
            SELECT 'arrive' AS "Name", CAST(COALESCE(SUM(a."LandedMicrograms"), 0) AS bigint) AS "Micrograms", CAST(COUNT(*) AS bigint) AS "Lots"
            FROM "Arrivals" a WHERE a."ReceivedOn" >= {Year.From} AND a."ReceivedOn" <= {Year.Until}
            """).SingleAsync(Stop);

        var summary = await SummaryAsync(db, Cut.Origin);

        Assert.Equal((moved.GetValueOrDefault("ship")?.Micrograms ?? 0) + shipped.Micrograms, summary.Total(SummaryFigure.Shipped).Net.Micrograms);
        Assert.Equal((moved.GetValueOrDefault("arrive")?.Micrograms ?? 0) + landed.Micrograms, summary.Total(SummaryFigure.Arrived).Net.Micrograms);
        Assert.True(summary.Total(SummaryFigure.Shipped).Rows > 3, "the demo ships");
    }

    [Theory, EveryEngine]
    public async Task In_stock_is_what_all_movements_add_up_to_at_the_cost_that_the_valuation_tells(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var micrograms = await db.Database.SqlQuery<long>(
            $"""SELECT CAST(SUM("WeighedMicrograms") AS bigint) AS "Value" FROM "Movements" WHERE "On" <= {Today}""").SingleAsync(Stop);
        var (_, valued, _) = await new Data.Stock.ValuationQuery(db).FindAsync(Today, Stop);

        var stock = (await SummaryAsync(db, Cut.Supplier)).Total(SummaryFigure.InStock);

        Assert.True(micrograms > 0, "the demo has stock");
        Assert.Equal(micrograms, stock.Net.Micrograms);
        Assert.Equal(valued.Sum(row => row.Cost?.MinorUnits ?? 0), stock.Value.MinorUnits);
    }

    [Theory, EveryEngine]
    public async Task What_arrived_is_valued_at_the_bills_posted_for_it(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var summary = await SummaryAsync(db, Cut.Origin);

        var billed = summary.Rows(new RowFilter(SummaryFigure.Landed)).Where(row => row.Value is not null).ToList();

        Assert.NotEmpty(billed);
        var costs = await new Data.Costs.LotCostQuery(db).ListAsync([.. billed.Select(row => row.Lot.LotId)], null, Stop);
        Assert.All(billed, row => Assert.Equal(Money.Of(costs[row.Lot.LotId].PerKilogram!.Value * row.Net.Kilograms, Currency.Eur), row.Value));
    }

    [Theory, EveryEngine]
    public async Task Bands_that_the_house_states_come_back_and_part_the_purchases(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using (var db = ledger.Open())
        {
            var bands = new QualityBands();
            bands.State(bands.FormId, [new QualityBand("plain", Score.Of(0m)), new QualityBand("fine", Score.Of(84.5m))]);
            db.AddRange(CuppingForm.HundredPoint(), bands);
            await db.SaveChangesAsync(Stop);
        }

        await using var again = ledger.Open();
        var stored = await again.QualityBands.SingleAsync(Stop);

        Assert.Equal([("fine", 84.5m), ("plain", 0m)], stored.Bands.Select(band => (band.Name, band.From.Points)));
    }

    private static async Task<PurchaseSummary> SummaryAsync(LedgerContext db, Cut cut) =>
        (await new PurchaseSummaryQuery(db, new FixingsQuery(db)).FindAsync(new SummaryWish(Year, cut), Today, Stop))!;

    /// <summary>Price × weight, rounded to the cent; then by the last rate on or before the day of signature, rounded again (handbook, trade 1.4 and 9.4).</summary>
    private static decimal ValueInEuro(LotLine lot, IReadOnlyList<FixedLine> fixings, IReadOnlyList<RateLine> rates)
    {
        var kilograms = lot.Micrograms / 1_000_000_000m;
        using var terms = JsonDocument.Parse(lot.Terms);
        var (amount, currency) = terms.RootElement.GetProperty("Price").TryGetProperty("Outright", out var outright) && outright.GetString() is { } price
            ? Outright(price, kilograms)
            : (Fixed(fixings.Where(fixing => fixing.ContractId == lot.ContractId).ToList(), kilograms), "USD");
        var rounded = Math.Round(amount, 2, MidpointRounding.AwayFromZero);
        var perEuro = currency == "EUR" ? 1m : rates.Where(rate => rate.Currency == currency && rate.On <= lot.SignedOn).MaxBy(rate => rate.On)!.PerEuro / 100_000_000m;
        return Math.Round(rounded / perEuro, 2, MidpointRounding.AwayFromZero);
    }

    /// <summary>Written as <c>672 USD/50 kg</c>.</summary>
    private static (decimal Amount, string Currency) Outright(string price, decimal kilograms)
    {
        var parts = price.Split([' ', '/'], 3);
        var unit = parts[2] switch { "lb" => 0.45359237m, "kg" => 1m, "50 kg" => 50m, "46 kg" => 46m, "t" => 1000m, var other => throw new InvalidOperationException(other) };
        return (decimal.Parse(parts[0], CultureInfo.InvariantCulture) * kilograms / unit, parts[1]);
    }

    /// <summary>Levels with their differentials averaged by weight: US cents a pound in New York (KC), USD a tonne in London (RC).</summary>
    private static decimal Fixed(List<FixedLine> parts, decimal kilograms)
    {
        var average = parts.Sum(part => part.Micrograms * (decimal)part.TenThousandths) / parts.Sum(part => (decimal)part.Micrograms) / 10_000m;
        return parts[0].Month.StartsWith("RC", StringComparison.Ordinal) ? average / 1000m * kilograms : average / 100m / 0.45359237m * kilograms;
    }

    private sealed record GroupSum(string Name, long Micrograms, long Lots);

    private sealed record LotLine(Guid ContractId, long Micrograms, DateOnly SignedOn, string Terms);

    private sealed record FixedLine(Guid ContractId, long Micrograms, long TenThousandths, string Month);

    private sealed record RateLine(string Currency, DateOnly On, long PerEuro);
}
