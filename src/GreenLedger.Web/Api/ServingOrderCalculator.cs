using GreenLedger.Domain;
using GreenLedger.Domain.Cupping.LayingOut;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>How many samples and cuppers; the same seed gives the same orders again.</summary>
internal sealed record ServingOrderRequest(int Samples, int Cuppers, int? Seed = null);

/// <summary>One cupper's samples as served, both counted from 1.</summary>
internal sealed record CupperOrderReply(int Cupper, IReadOnlyList<int> Samples);

/// <summary>The orders with the seed that gives them again, and how near they come to favouring no sample.</summary>
internal sealed record ServingOrderReply(int Samples, int Cuppers, int Seed, IReadOnlyList<CupperOrderReply> Orders, ServingBalance Balance);

/// <summary>Serving orders for a table that is nowhere stored.</summary>
internal static class ServingOrderCalculator
{
    private const int MostSamples = 40;
    private const int MostCuppers = 200;

    [StoresNothing]
    public static Ok<ServingOrderReply> ServingOrder(ServingOrderRequest request)
    {
        Rule.Require(request.Samples is >= 1 and <= MostSamples, $"Serving orders are computed for 1 to {MostSamples} samples.", nameof(request.Samples));
        Rule.Require(request.Cuppers is >= 1 and <= MostCuppers, $"Serving orders are computed for 1 to {MostCuppers} cuppers.", nameof(request.Cuppers));
        var seed = request.Seed ?? Random.Shared.Next();
        var orders = ServingOrders.For(request.Samples, request.Cuppers, new Random(seed));
        return TypedResults.Ok(new ServingOrderReply(
            request.Samples,
            request.Cuppers,
            seed,
            [.. orders.Orders.Select((order, cupper) => new CupperOrderReply(cupper + 1, [.. order.Select(sample => sample + 1)]))],
            orders.Balance));
    }
}
