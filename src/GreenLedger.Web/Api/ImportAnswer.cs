using System.Text.Json.Nodes;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Web.Offers;

namespace GreenLedger.Web.Api;

/// <summary>An amount with its ISO 4217 currency.</summary>
internal sealed record AmountRow(decimal Amount, string Currency);

/// <summary>An offer as a flat row, the unit in the name; prices per kilogram to four decimals.</summary>
internal sealed record OfferAnswer(
    string Ref,
    string Name,
    string State,
    decimal? Kg,
    int? Bags,
    decimal? BagKg,
    AmountRow? PricePerKg,
    string? PriceAsQuoted,
    decimal? DifferentialCentsPerLb,
    decimal? DifferentialUsdPerTonne,
    string? FuturesMonth,
    string? Incoterm,
    string? Place,
    DateOnly? ValidUntil,
    string? Process,
    string? ProcessAsWritten,
    decimal? Score,
    string? Country,
    string? CropYear)
{
    public static OfferAnswer Of(Offer offer, Lot lot, string? process) => new(
        offer.Ref,
        lot.Name,
        offer.State.Word(),
        offer.Quantity == Weight.Zero ? null : offer.Quantity.Kilograms,
        offer.Bags,
        offer.BagWeight?.Kilograms,
        offer.Price is { } price ? new AmountRow(Math.Round(price.PerKilogram, 4, MidpointRounding.AwayFromZero), price.Currency.Code) : null,
        offer.Price?.ToString(),
        offer.Differential is { Month.Market: FuturesMarket.Arabica } cents ? cents.Quoted : null,
        offer.Differential is { Month.Market: FuturesMarket.Robusta } dollars ? dollars.Quoted : null,
        offer.Differential?.Month.ToString(),
        offer.Incoterm?.Word(),
        offer.Place,
        offer.ValidUntil,
        process,
        lot.ProcessAsWritten,
        offer.StatedScore?.Points,
        lot.CountryCode,
        lot.CropYear);
}

/// <summary>A row that could not be taken: its number in the list, its cells by heading, and a sentence that says what to do.</summary>
internal sealed record SetAsideAnswer(int Row, string? Sheet, string? Ref, IReadOnlyDictionary<string, string> Values, string? Column, string Reason);

/// <summary>What a list comes to.</summary>
internal sealed record ImportAnswer(
    string Supplier,
    bool Stored,
    string? ListId,
    int Accepted,
    int Revised,
    int Unchanged,
    IReadOnlyList<SetAsideAnswer> SetAside,
    IReadOnlyList<OfferAnswer> Offers,
    JsonNode? Mapping)
{
    public static ImportAnswer Of(OpenedList list, ListOutcome outcome, IEnumerable<RowOutcome> accepted, bool stored) => new(
        list.Sender.Supplier.Name,
        stored,
        stored ? outcome.List.Id.ToString() : null,
        outcome.Accepted.Count,
        outcome.Revised.Count,
        outcome.Unchanged.Count,
        [.. outcome.SetAside.Select(row => SetAsideOf(row.Line, row.Problem, list.Mapping))],
        [.. accepted.Concat(outcome.Revised).Concat(outcome.Unchanged).OrderBy(row => row.Row.RowNumber).Select(row => OfferAnswer.Of(row.Offer, row.Lot, row.Row.Process?.Name))],
        JsonNode.Parse(list.Mapping.ToJson()));

    private static SetAsideAnswer SetAsideOf(OfferLine line, Domain.Problem problem, OfferMapping mapping) => new(
        line.RowNumber, line.Sheet, RefOf(line, mapping), ValuesOf(line, mapping), problem.Column, problem.Message);

    private static Dictionary<string, string> ValuesOf(OfferLine line, OfferMapping mapping) =>
        mapping.Columns.Select((column, at) => (column.Heading, line[at].Text))
            .Where(pair => pair.Text.Length > 0).ToDictionary(pair => pair.Heading, pair => pair.Text);

    private static string? RefOf(OfferLine line, OfferMapping mapping)
    {
        var meanings = mapping.Terms.RefWithGrade ? new[] { ColumnMeaning.Ref, ColumnMeaning.Grade } : [ColumnMeaning.Ref];
        var parts = meanings.SelectMany(meaning => mapping.Columns.Select((column, at) => (column, at)).Where(pair => pair.column.Meaning == meaning))
            .Select(pair => line[pair.at].Trimmed).Where(text => text.Length > 0).ToList();
        return parts.Count == 0 ? null : string.Join(' ', parts);
    }
}
