using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>What blends cost, and what a substitution changes.</summary>
internal static class BlendsApi
{
    public static void MapBlendsApi(this IEndpointRouteBuilder stock)
    {
        stock.MapGet("/blends", ListAsync).WithName("ListBlends").WithSummary("The blends of the house with cost and points, from the stock of their components");
        stock.MapPost("/calculate/blend", Calculate).WithName("CalculateBlend").WithSummary("Cost and points of a blend, and with another coffee in place of a component; stores nothing");
    }

    private static async Task<Ok<List<BlendReply>>> ListAsync(BlendQuery query, CancellationToken cancellationToken) =>
        TypedResults.Ok((await query.ListAsync(await query.LotsAsync(cancellationToken), cancellationToken)).Select(row => BlendReply.Of(row.Name, row.Cost)).ToList());

    [StoresNothing]
    private static Ok<BlendReply> Calculate(BlendAsked asked)
    {
        Rule.Require(asked.Parts is { Count: <= 100 } && asked.Parts.All(part => part.SharePercent is > 0m and <= 100m), "Send at most 100 components, each with a share above 0 and at most 100 %.", nameof(asked.Parts));
        Rule.Require(asked.Parts.All(part => part is { CostPerKg: null or (>= 0m and <= 1_000_000m), Points: null or (>= 0m and <= 100m) }), "A cost lies between 0 and 1,000,000, points between 0 and 100.", nameof(asked.Parts));
        var blend = BlendCost.Of([.. asked.Parts.Select(part => new BlendPart(part.Name, Percent.Of(part.SharePercent), part.CostPerKg, part.Points))]);
        return TypedResults.Ok(BlendReply.Of(asked.Name ?? "", asked.Replace is null ? blend : blend.With(asked.Replace, asked.CostPerKg, asked.Points)));
    }
}

internal sealed record BlendPartRow(string Name, decimal SharePercent, decimal? CostPerKg = null, decimal? Points = null);

/// <summary><c>Replace</c> names the component in whose place a coffee of that cost and those points stands.</summary>
internal sealed record BlendAsked(IReadOnlyList<BlendPartRow> Parts, string? Name = null, string? Replace = null, decimal? CostPerKg = null, decimal? Points = null);

internal sealed record BlendReply(string Name, decimal TogetherPercent, decimal? CostPerKg, decimal? Points, IReadOnlyList<BlendPartRow> Parts)
{
    public static BlendReply Of(string name, BlendCost cost) => new(
        name, cost.Together.Points, cost.CostPerKilogram, cost.Points, [.. cost.Parts.Select(part => new BlendPartRow(part.Name, part.Share.Points, part.CostPerKilogram, part.Points))]);
}
