using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using Route = GreenLedger.Domain.Pricing.Route;

namespace GreenLedger.Web.Api;

internal sealed record MoneyReply(decimal Amount, string Currency)
{
    public static MoneyReply Of(Money money) => new(money.Amount, money.Currency.Code);
}

/// <summary>One line of a landed cost; the stage is null for the coffee itself, the amount where a rate is missing.</summary>
internal sealed record LandedCostLineReply(
    CostStage? Stage,
    string Name,
    Payer Payer,
    LegWay? Way,
    MoneyReply Original,
    MoneyReply? Amount,
    decimal PerKg,
    decimal? ExchangeRate,
    DateOnly? ExchangeRateOn,
    string Arithmetic)
{
    public static LandedCostLineReply Of(LandedCostLine line) => new(
        line.Stage,
        line.Name,
        line.Payer,
        line.Leg?.Way,
        MoneyReply.Of(line.Original),
        line.IsConverted ? MoneyReply.Of(line.Amount) : null,
        line.PerKilogram,
        line.Conversion.IsSame ? null : line.Conversion.Rate,
        line.Conversion.On,
        line.Arithmetic);
}

/// <summary>A figure that is missing, and at which stage.</summary>
internal sealed record CostProblemReply(CostGap Gap, CostStage? Stage, string Message);

/// <summary>A landed cost with its arithmetic. With problems there is no total and nothing per kg.</summary>
internal sealed record LandedCostReply(
    MoneyReply? Total,
    MoneyReply? AccountingTotal,
    MoneyReply? LandedCostPerKg,
    decimal? LandedCostPerKgUnrounded,
    decimal ShippedKg,
    decimal? LandedKg,
    string? Route,
    DeliveryPlace? Place,
    SharedOver? SharedOver,
    MoneyReply? PricePerKg,
    string? FuturesMonth,
    decimal? FuturesQuoted,
    DateOnly? FuturesQuotedOn,
    DateOnly On,
    IReadOnlyList<LandedCostLineReply> Lines,
    IReadOnlyList<string> Assumptions,
    IReadOnlyList<CostProblemReply> Problems)
{
    public static LandedCostReply Of(LandedCost cost) => new(
        cost.Total is { } total ? MoneyReply.Of(total) : null,
        cost.AccountingTotal is { } accounting ? MoneyReply.Of(accounting) : null,
        cost.ShownPerKilogram is { } shown ? new(shown, cost.Currency.Code) : null,
        cost.PerKilogram,
        cost.Shipped.Kilograms,
        cost.IsKnown ? cost.Landed.Kilograms : null,
        cost.Route?.Name,
        cost.Split?.Place,
        cost.Route?.SharedOver,
        cost.Price is { } price ? new(Math.Round(price.PerKilogram, 6), price.Currency.Code) : null,
        cost.Quote?.Month.ToString(),
        cost.Quote?.Quoted,
        cost.Quote?.On,
        cost.On,
        [.. cost.Lines.Select(LandedCostLineReply.Of)],
        cost.Assumptions,
        [.. cost.Problems.Select(problem => new CostProblemReply(problem.Gap, problem.Stage, problem.Message))]);
}

internal sealed record RateReply(Guid Id, string Currency, DateOnly On, decimal UnitsPerEuro, RateKind Kind, string Source)
{
    public static RateReply Of(ExchangeRate rate) => new(rate.Id.Value, rate.Currency.Code, rate.On, rate.UnitsPerEuro, rate.Kind, rate.Source);
}

internal sealed record QuoteReply(Guid Id, string Month, DateOnly On, decimal Quoted, string Unit, string Source)
{
    public static QuoteReply Of(FuturesQuote quote) =>
        new(quote.Id.Value, quote.Month.ToString(), quote.On, quote.Quoted, quote.Month.Market.QuoteUnit(), quote.Source);
}

internal sealed record LegReply(CostStage Stage, LegWay Way, decimal? Figure, string? Currency, int? Time, string Name);

internal sealed record RouteReply(
    Guid Id,
    int Version,
    string Name,
    string PortOfLoading,
    string PortOfDestination,
    string Warehouse,
    string? OriginCountry,
    bool IsInUse,
    SharedOver SharedOver,
    decimal FillKg,
    int ContainersPerShipment,
    decimal WeightLossPercent,
    decimal InsuredPercent,
    IReadOnlyList<LegReply> Legs,
    IReadOnlyList<CostStage> Unanswered)
{
    public static RouteReply Of(Route route) => new(
        route.Id.Value,
        route.Version,
        route.Name,
        route.PortOfLoading,
        route.PortOfDestination,
        route.Warehouse,
        route.OriginCountry,
        route.IsInUse,
        route.SharedOver,
        route.Fill.Kilograms,
        route.ContainersPerShipment,
        route.WeightLoss.Points,
        route.Insured.Points,
        [.. route.Legs.Select(leg => leg.Line).Select(line => new LegReply(line.Stage, line.Way, line.Figure, line.Currency?.Code, line.Time, line.Name!))],
        route.Unanswered);
}

/// <summary>What an import took: new entries, corrected ones, known ones, and codes or rows that were left out.</summary>
internal sealed record TakenReply(int Added, int Corrected, int Unchanged, IReadOnlyList<string> LeftOut, IReadOnlyList<Problem> Problems);
