using System.Globalization;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using Microsoft.Data.Sqlite;

namespace GreenLedger.Benchmarks.Choosing;

/// <summary>
/// The peer of the ranking: gates, landed cost, weighted score and front by hand in one SQL statement over the same
/// file. Money is rounded leg by leg as the ledger rounds it, in whole numbers, so that both give the same cents. It
/// knows what this ledger holds (one house currency, prices in euro or dollars, cost shared over the fill) and nothing
/// more; it names no reasons.
/// </summary>
internal static class RankingSql
{
    private const string Statement = """
        WITH
        rate(cur, per) AS (
          SELECT "Currency", "HundredMillionthsPerEuro" FROM (
            SELECT *, ROW_NUMBER() OVER (PARTITION BY "Currency" ORDER BY "On" DESC) AS newest
            FROM "ExchangeRates" WHERE "Kind" = $market AND "On" <= $on) WHERE newest = 1
          UNION ALL SELECT 'EUR', 100000000),
        quote(month, quoted) AS (
          SELECT "Month", "QuotedTenThousandths" FROM (
            SELECT *, ROW_NUMBER() OVER (PARTITION BY "Month" ORDER BY "On" DESC) AS newest
            FROM "FuturesQuotes" WHERE "On" <= $on) WHERE newest = 1),
        way AS (
          SELECT r."Id" AS route, r."OriginCountry" AS country, r."PortOfLoading" AS place, d.delivery,
                 r."FillMicrograms" / 1000000000 AS fill, r."ContainersPerShipment" AS containers, r."InsuredTenThousandths" AS insured,
                 CASE WHEN d.delivery = $fob THEN r."WeightLossTenThousandths" ELSE 0 END AS loss
          FROM "Routes" r JOIN (SELECT $fob AS delivery UNION ALL SELECT $spot) d
            ON (d.delivery = $fob) = (r."OriginCountry" IS NOT NULL)
          WHERE r."IsInUse" = 1),
        leg AS MATERIALIZED (
          SELECT w.route, w.delivery, l."Stage" AS stage, l."Basis" AS basis, l."AmountMillionths" AS amount, l."Currency" AS cur,
                 l."RateTenThousandths" AS share, l."Days" AS days, l."Months" AS months, w.fill, w.containers, w.insured
          FROM way w JOIN "RouteLegs" l ON l."RouteId" = w.route
          WHERE l."Answer" = 0 AND substr(CASE w.delivery WHEN $fob THEN 'SSSSSSBBBBBBB-BBBBB' ELSE 'SSSSSSSSSSSSSBB--B-' END, l."Stage" + 1, 1) = 'B'),
        open AS MATERIALIZED (
          SELECT o."Id" AS id, o."LotId" AS lot, o."Ref" AS ref, w.route, w.delivery, w.loss, o."Bags" AS bags,
                 o."QuantityMicrograms" / 1000000000 AS kg, COALESCE(o."PriceCurrency", 'USD') AS cur,
                 CASE WHEN o."DifferentialMonth" IS NOT NULL
                        THEN (2 * (q.quoted + o."DifferentialQuotedTenThousandths") * (o."QuantityMicrograms" / 1000000000) * 10000 + 45359237) / (2 * 45359237)
                      WHEN o."PriceUnit" = 1
                        THEN (2 * o."PriceMillionths" * (o."QuantityMicrograms" / 1000000000) * 10000 + 45359237) / (2 * 45359237)
                      ELSE (2 * o."PriceMillionths" * (o."QuantityMicrograms" / 1000000000) + 10000) / 20000 END AS value
          FROM "Offers" o
          JOIN "Lots" t ON t."Id" = o."LotId"
          JOIN way w ON w.delivery = o."Incoterm" AND w.place = o."Place" AND (w.country IS NULL OR w.country = t."CountryCode")
          LEFT JOIN quote q ON q.month = o."DifferentialMonth"
          WHERE o."State" = 0 AND (o."ValidUntil" IS NULL OR o."ValidUntil" >= $on)),
        paid AS (
          SELECT o.id, l.cur AS legCur, l.stage, CASE WHEN l.basis IN (4, 6) THEN o.cur ELSE l.cur END AS cur, CASE l.basis
                 WHEN 0 THEN (2 * l.amount * o.kg + 10000) / 20000
                 WHEN 1 THEN (2 * l.amount * o.bags + 10000) / 20000
                 WHEN 2 THEN (2 * l.amount * o.kg + 10000 * l.fill) / (20000 * l.fill)
                 WHEN 3 THEN (2 * l.amount * o.kg + 10000 * l.fill * l.containers) / (20000 * l.fill * l.containers)
                 WHEN 4 THEN (2 * o.value * l.share + 1000000) / 2000000
                 WHEN 6 THEN (2 * o.value * l.share * l.days + 360000000) / 720000000
                 ELSE (2 * l.amount * o.kg * l.months + 10000000) / 20000000 END AS amount
          FROM open o JOIN leg l ON l.route = o.route AND l.delivery = o.delivery
          WHERE l.basis <> 5),
        summed AS (
          SELECT p.id, SUM((2 * p.amount * 100000000 + r.per) / (2 * r.per)) AS house, SUM(CASE WHEN p.stage <= 7 THEN p.amount ELSE 0 END) AS freight
          FROM paid p JOIN rate r ON r.cur = p.cur GROUP BY p.id),
        landed AS (
          SELECT o.*, ((2 * o.value * 100000000 + r.per) / (2 * r.per) + s.house + COALESCE((
                   SELECT (2 * ((2 * (o.value + s.freight) * l.share * l.insured + 1000000000000 - l.share * l.insured) / (2 * (1000000000000 - l.share * l.insured))) * 100000000 + r.per) / (2 * r.per)
                   FROM leg l WHERE l.route = o.route AND l.delivery = o.delivery AND l.basis = 5), 0))
                 / 100.0 / (o.kg * (1000000 - o.loss) / 1000000.0) AS cost
          FROM open o JOIN summed s ON s.id = o.id JOIN rate r ON r.cur = o.cur),
        cupped AS (
          SELECT "LotId" AS lot, "FittedMillionths" AS fitted, "LowMillionths" AS low FROM (
            SELECT *, ROW_NUMBER() OVER (PARTITION BY "LotId" ORDER BY "HeldOn" DESC, "AnyCupperErrorMillionths", "Id" DESC) AS newest
            FROM "SampleResults" WHERE "FormId" = $form) WHERE newest = 1),
        graded AS (
          SELECT "LotId" AS lot, "MoistureTenThousandths" AS moisture, "WaterActivityTenThousandths" AS activity, "Category1Hundredths" AS first, "Category2Hundredths" AS second FROM (
            SELECT *, ROW_NUMBER() OVER (PARTITION BY "LotId" ORDER BY "GradedOn" DESC, "Id" DESC) AS newest FROM "GreenGrades") WHERE newest = 1),
        judged AS MATERIALIZED (
          SELECT a.ref, a.cost, c.fitted, c.fitted / 1000000.0 AS points, COALESCE(p.liking, 0.0) AS liking,
                 CASE WHEN c.fitted IS NULL THEN 1 ELSE 0 END
               + CASE WHEN c.fitted < $leastScore THEN 4 ELSE 0 END
               + CASE WHEN c.low < $leastLow THEN 8 ELSE 0 END
               + CASE WHEN a.cost > $highestCost THEN 16 ELSE 0 END
               + CASE WHEN p.allowed = 0 THEN 32 ELSE 0 END
               + CASE WHEN g.moisture > $wettest OR g.moisture < $driest THEN 64 ELSE 0 END
               + CASE WHEN g.activity > $activity THEN 128 ELSE 0 END
               + CASE WHEN g.first > $first THEN 256 ELSE 0 END
               + CASE WHEN g.second > $second THEN 512 ELSE 0 END
               + CASE WHEN a.kg < $leastKg THEN 4096 ELSE 0 END
               + CASE WHEN t."CropYear" < $crop THEN 8192 ELSE 0 END AS failed
          FROM landed a
          JOIN "Lots" t ON t."Id" = a.lot
          LEFT JOIN cupped c ON c.lot = a.lot
          LEFT JOIN graded g ON g.lot = a.lot
          LEFT JOIN temp.process p ON p.id = t."ProcessMethodId"),
        weighed AS (
          SELECT ref, cost, fitted, failed,
                 CASE WHEN failed = 0 THEN $wScore * (points - $lowScore) / ($highScore - $lowScore) + $wCost * ($highCost - cost) / ($highCost - $lowCost) + 0.0 + $wProcess * liking END AS total,
                 CASE WHEN failed = 0 THEN fitted = MAX(fitted) OVER (PARTITION BY failed = 0, cost)
                   AND fitted > COALESCE(MAX(fitted) OVER (PARTITION BY failed = 0 ORDER BY cost GROUPS BETWEEN UNBOUNDED PRECEDING AND 1 PRECEDING), -1) ELSE 0 END AS front
          FROM judged)
        SELECT ref, failed, cost, total, front, CASE WHEN failed = 0 THEN ROW_NUMBER() OVER (PARTITION BY failed = 0 ORDER BY total DESC, fitted DESC, cost, ref) ELSE 0 END AS rank
        FROM weighed
        """;

    public static IReadOnlyList<RankedRow> Rank(SqliteConnection connection, RuleTerms terms, DateOnly on)
    {
        FillProcesses(connection, terms);
        using var command = connection.CreateCommand();
        command.CommandText = Statement;
        foreach (var (name, value) in Parameters(terms, on))
        {
            command.Parameters.AddWithValue(name, value);
        }

        var rows = new List<RankedRow>(Sizes.Offers);
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            rows.Add(new RankedRow(
                reader.GetString(0), (Gate)reader.GetInt32(1), reader.GetDouble(2), reader.IsDBNull(3) ? 0 : reader.GetDouble(3), reader.GetBoolean(4), reader.GetInt32(5)));
        }

        return rows;
    }

    private static void FillProcesses(SqliteConnection connection, RuleTerms terms)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "DROP TABLE IF EXISTS temp.process; CREATE TEMP TABLE process (id TEXT PRIMARY KEY, allowed INTEGER, liking REAL);"
            + string.Concat(terms.Processes.Select(choice => string.Create(
                CultureInfo.InvariantCulture,
                $"INSERT INTO temp.process VALUES ('{choice.MethodId.ToString().ToUpperInvariant()}', {(choice.IsAllowed ? 1 : 0)}, {(double)choice.Preference:R});")));
        command.ExecuteNonQuery();
    }

    private static IEnumerable<(string Name, object Value)> Parameters(RuleTerms terms, DateOnly on)
    {
        var (gates, weights, sum) = (terms.Gates, terms.Weights, (double)terms.Weights.Sum);
        return
        [
            ("$on", on), ("$market", (int)RateKind.Market), ("$fob", (int)Incoterm.Fob), ("$spot", (int)Incoterm.ExWarehouse), ("$form", terms.FormId.Value),
            ("$leastScore", gates.LeastScore!.Value.Millionths), ("$leastLow", gates.LeastLowerBound!.Value.Millionths), ("$highestCost", (double)gates.HighestCostPerKilogram!.Value),
            ("$wettest", gates.HighestMoisture!.Value.TenThousandths), ("$driest", gates.LeastMoisture!.Value.TenThousandths), ("$activity", gates.HighestWaterActivity!.Value.TenThousandths),
            ("$first", gates.HighestCategory1!.Value.Hundredths), ("$second", gates.HighestCategory2!.Value.Hundredths), ("$leastKg", (long)gates.LeastQuantity!.Value.Kilograms), ("$crop", gates.EarliestCropYear!),
            ("$wScore", (double)weights.Score / sum), ("$wCost", (double)weights.Cost / sum), ("$wProcess", (double)weights.Process / sum),
            ("$lowScore", (double)terms.Anchors.LowScore.Points), ("$highScore", (double)terms.Anchors.HighScore.Points),
            ("$lowCost", (double)terms.Anchors.LowCost), ("$highCost", (double)terms.Anchors.HighCost),
        ];
    }
}

/// <summary>What both sides return of each offer. Total and rank are 0 where a gate is failed.</summary>
internal sealed record RankedRow(string Ref, Gate Failed, double Cost, double Total, bool IsOnFront, int Rank);
