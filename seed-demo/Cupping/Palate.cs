using GreenLedger.Domain.Origins;
using GreenLedger.SeedDemo.Offers;
using GreenLedger.SeedDemo.People;

namespace GreenLedger.SeedDemo.Cupping;

/// <summary>How one cupper tastes: above or below the others, how steadily, and with what liking for dry-processed coffee.</summary>
internal sealed record Palate(Cast.Member Member, double Bias, double Repeats, double LikesNaturals, double Attends)
{
    public static IReadOnlyList<Palate> Of(Cast cast) =>
    [
        new(cast.Cuppers[0], 0.05, 0.38, 0.0, 0.92),
        new(cast.Cuppers[1], -0.40, 0.45, -0.25, 0.86),
        new(cast.Cuppers[2], 0.55, 0.60, 0.35, 0.82),
        new(cast.Cuppers[3], -0.10, 0.42, 0.10, 0.85),
        new(cast.Cuppers[4], 0.80, 0.95, 0.30, 0.85),
    ];

    /// <summary>What this cupper would give the coffee today, in points of the 100-point form.</summary>
    public double Taste(Coffee coffee, double today, Draw draw) =>
        coffee.Quality + today + Bias + (coffee.Family == ProcessFamily.Natural ? LikesNaturals : 0) + draw.Normal(0, Repeats);
}
