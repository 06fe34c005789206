using GreenLedger.Domain.Summaries;

namespace GreenLedger.Web.Api;

/// <summary>The share of one contract in a row; no contract for stock that none brought.</summary>
internal sealed record PositionPartReply(Guid? ContractId, string? ContractRef, decimal ContractedKg, decimal PricedKg, decimal UnpricedKg, decimal ToComeKg, decimal InStockKg);

/// <summary>What stands against a futures month, or against none: outright prices, and stock without a contract.</summary>
internal sealed record PositionRowReply(
    string? FuturesMonth, bool IsOutright, decimal ContractedKg, decimal PricedKg, decimal UnpricedKg, decimal? LotsToFix, MoneyReply PerCent, decimal ToComeKg, decimal InStockKg, IReadOnlyList<PositionPartReply> Contracts)
{
    public static PositionRowReply Of(PositionRow row) => new(
        row.Month?.ToString(), row.IsOutright, row.Contracted.Kilograms, row.Priced.Kilograms, row.Unpriced.Kilograms, row.UnpricedLots, MoneyReply.Of(row.PerCent), row.ToCome.Kilograms, row.InStock.Kilograms,
        [.. row.Parts.Select(part => new PositionPartReply(
            part.ContractId?.Value, part.ContractId is null ? null : part.Ref, part.Contracted.Kilograms, part.Priced.Kilograms, part.Unpriced.Kilograms, part.ToCome.Kilograms, part.InStock.Kilograms))]);
}

/// <summary>What a move does to a month, for coffee with a contract or without; levels as the market quotes with their day, none where no quote is known.</summary>
internal sealed record MarketMoveReply(string FuturesMonth, string Name, decimal HeldKg, decimal Change, decimal? Level, DateOnly? QuotedOn, decimal? Then, MoneyReply UnpricedCostsMore, MoneyReply BuyingAgainCostsMore);

/// <summary>What stands against no futures month, and why no move of a market touches it.</summary>
internal sealed record NotMovedReply(string Name, decimal HeldKg, string Reason);

internal sealed record MarketPositionReply(IReadOnlyList<PositionRowReply> Rows, PositionRowReply Total, IReadOnlyList<MarketMoveReply> Moves, IReadOnlyList<NotMovedReply> NotMoved)
{
    public static MarketPositionReply Of(MarketPosition position, IReadOnlyList<MarketMove> moves) => new(
        [.. position.Rows.Select(PositionRowReply.Of)],
        PositionRowReply.Of(position.Total) with { IsOutright = false, Contracts = [] },
        [.. moves.Select(move => new MarketMoveReply(move.Month.ToString(), move.Name, move.Held.Kilograms, move.Change, move.Level, move.Quote?.On, move.Then, MoneyReply.Of(move.Unpriced), MoneyReply.Of(move.Replacement)))],
        [.. position.NotMoved.Select(still => new NotMovedReply(still.Name, still.Held.Kilograms, still.Reason))]);
}
