namespace GreenLedger.Web.Api;

/// <summary>What arrived, beside what was approved and shipped.</summary>
internal static class ArrivalsApi
{
    public static void MapArrivalsApi(this IEndpointRouteBuilder api)
    {
        var arrivals = api.MapGroup("/arrivals").WithTags("Arrivals");
        arrivals.MapPost("/calculate/verdict", ArrivalCalculators.Verdict).WithName("CalculateArrivalVerdict")
            .WithSummary("Whether an arrival matches the approved sample; stores nothing")
            .WithDescription("Two panels and a tolerance give the difference, its one-sided 95 % bounds, the verdict and, where that is undecided, the sheets that would likely decide. "
                + "With `inOneSession` cuppers are paired by name, and `others` are sheets of other coffees of that session. In two sessions the sheets of the house reference in each hold them together, else `betweenSessions`. "
                + "What was measured is held against `limits`, each on its own.");
        arrivals.MapPost("/calculate/weight-claim", ArrivalCalculators.WeightClaim).WithName("CalculateWeightClaim")
            .WithSummary("Landed against shipped weight, and what the loss beyond the franchise is worth; stores nothing")
            .WithDescription("`agreedKg` with `tolerancePercent` holds the shipped weight against the contract. `deadlines` with the days of their events in `happened` give the last day of each, the day of the event being day 0.");
        arrivals.MapReceipts();
        arrivals.MapComparison();
        arrivals.MapArrivalHabits();
        arrivals.MapArrivalLetters();
        arrivals.MapClaims();
        arrivals.MapMissing();
    }
}
