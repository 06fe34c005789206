using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Stock.Reading;
using GreenLedger.Web.Display;

namespace GreenLedger.Web.Stock;

/// <summary>Holds the rows of a file of opening stock against the ledger: which lot, which warehouse, which rate; what does not fit is set aside.</summary>
internal sealed class OpeningJudge(
    OpeningList list, KnownNames names, IReadOnlyList<Warehouse> warehouses, IReadOnlyList<Country> countries, OpeningDefaults defaults, Currency house)
{
    public required DateOnly Today { get; init; }

    public required ExchangeRates Rates { get; init; }

    /// <summary>Opening stock that stands in the ledger.</summary>
    public required IReadOnlySet<(Id<Lot> Lot, Id<Warehouse> Warehouse, DateOnly On, Weight Weighed)> Written { get; init; }

    public IReadOnlyList<OpeningLine> Lines()
    {
        var lines = new List<OpeningLine>();
        foreach (var row in list.Rows.ToList())
        {
            try
            {
                lines.Add(Line(row));
            }
            catch (RuleBrokenException broken)
            {
                list.Refuse(row, Enum.Parse<OpeningColumn>(broken.Field!), broken.Message);
            }
        }

        return lines;
    }

    private OpeningLine Line(OpeningRow row)
    {
        Rule.Require(!names.Unclear.TryGetValue(row.Lot, out var several), several ?? "", nameof(OpeningColumn.Lot));
        var warehouse = WarehouseOf(row);
        var on = row.On ?? defaults.On;
        Rule.Require(on <= Today, $"{Figures.Day(on)} lies ahead: opening stock is what was there on a day gone by.", nameof(OpeningColumn.On));
        var lotId = names.Known.TryGetValue(row.Lot, out var lot) ? lot.LotId : (Id<Lot>?)null;
        Rule.Require(
            lotId is not { } id || !Written.Contains((id, warehouse.Id, on, row.Amount.Weighed)),
            "The ledger has this opening stock already: the same lot, warehouse, day and kilograms.", nameof(OpeningColumn.Lot));
        return new OpeningLine(row, lotId, warehouse, on, CountryOf(row), ConversionOf(row, on));
    }

    private Warehouse WarehouseOf(OpeningRow row)
    {
        var warehouse = row.Warehouse is { } name
            ? warehouses.FirstOrDefault(one => SearchText.Of(one.Name) == SearchText.Of(name))
            : warehouses.FirstOrDefault(one => one.Id == defaults.WarehouseId);
        Rule.Require(
            warehouse is not null,
            row.Warehouse is { } named ? $"There is no warehouse '{named}': name it under Stock, Warehouses, or correct the row." : "The row names no warehouse: choose above where it lies.",
            nameof(OpeningColumn.Warehouse));
        return warehouse;
    }

    private string? CountryOf(OpeningRow row)
    {
        if (row.Country is not { } written)
        {
            return null;
        }

        var folded = SearchText.Of(written);
        var country = countries.FirstOrDefault(one => new[] { one.Code, one.Name }.Concat(one.OtherNames).Any(name => SearchText.Of(name) == folded));
        Rule.Require(country is not null, $"'{written}' is no country of the ledger: write its name or its two letters.", nameof(OpeningColumn.Country));
        return country.Code;
    }

    private Conversion? ConversionOf(OpeningRow row, DateOnly on)
    {
        if (row.Cost is not { Currency: var currency })
        {
            return null;
        }

        var conversion = Rates.Find(currency, house, on);
        Rule.Require(
            conversion is not null,
            $"There is no exchange rate of {Rates.Missing(currency, house, on)} on {Figures.Day(on)} or before: enter it under Pricing, Exchange rates, or write the cost in {house}.", nameof(OpeningColumn.Currency));
        return conversion;
    }
}
