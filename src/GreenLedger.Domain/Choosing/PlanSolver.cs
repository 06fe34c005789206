using System.Diagnostics;
using Google.OrTools.LinearSolver;

namespace GreenLedger.Domain.Choosing;

/// <summary>Finds the best plan, or says what stands against it.</summary>
public static class PlanSolver
{
    /// <summary>How long a page waits for a plan.</summary>
    public static TimeSpan UsualTime { get; } = TimeSpan.FromSeconds(20);

    private static readonly HashSet<PlanLimit> None = [];

    /// <summary>
    /// The plan of least worth (<see cref="PlanRequest.Worth"/>) that meets every need within every limit, solved as an integer program by branch and
    /// bound. Where there is none, needs are relaxed and each limit is waived in turn, so that the conflict can be named.
    /// </summary>
    /// <exception cref="RuleBrokenException">A figure of the request is out of range.</exception>
    public static PurchasePlan Solve(PlanRequest request, TimeSpan most)
    {
        ArgumentNullException.ThrowIfNull(request);
        request.Check();
        var clock = Stopwatch.StartNew();
        using var program = new PlanProgram(request, None, mayLack: false);
        var status = program.Solve(most);
        if (status is Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE)
        {
            var isBest = status == Solver.ResultStatus.OPTIMAL;
            return PlanWords.Told(request, [.. program.Parts()], isBest ? PlanEnd.Best : PlanEnd.WithinGap, isBest ? 0 : program.Gap, clock.Elapsed);
        }

        return status == Solver.ResultStatus.INFEASIBLE
            ? new PurchasePlan(request, PlanEnd.Impossible, [], [], null, clock.Elapsed, PlanConflict.Of(request, most))
            : new PurchasePlan(request, PlanEnd.OutOfTime, [], [], null, clock.Elapsed, ["No plan was found in the time given: ask for fewer months or offers, or loosen a limit."]);
    }
}

/// <summary>Why needs cannot be met: what is missed at least, and which limit, if it did not hold, would let more be bought.</summary>
internal static class PlanConflict
{
    private const double Noise = 0.5;

    public static IReadOnlyList<string> Of(PlanRequest request, TimeSpan most)
    {
        var each = most / 8;
        var missed = Missed(request, new HashSet<PlanLimit>(), each);
        var sentences = missed.GroupBy(one => one.Need).Select(need => string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{need.Key.Name}: at least {need.Sum(one => one.Kilograms):#,0.#} kg of {need.Key.Total.Kilograms:#,0.#} kg cannot be had, first in {request.MonthName(need.Min(one => one.Month))}.")).ToList();
        var all = missed.Sum(one => one.Kilograms);
        foreach (var limit in Present(request.Limits, request.Offers))
        {
            var without = Missed(request, new HashSet<PlanLimit> { limit }, each).Sum(one => one.Kilograms);
            if (without < all - Noise)
            {
                sentences.Add(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Words(limit)} stands against it: without it, {all - without:#,0.#} kg more could be had."));
            }
        }

        return [.. sentences, .. TooFew(request, each)];
    }

    /// <summary>What no limit explains: the offers that fit are too few or come too late.</summary>
    private static IEnumerable<string> TooFew(PlanRequest request, TimeSpan most) =>
        from one in Missed(request, new HashSet<PlanLimit>(Enum.GetValues<PlanLimit>()), most)
        group one by one.Need into need
        let fit = request.Offers.Where(need.Key.Fits).ToList()
        select fit.Count == 0
            ? $"No offer is of the process and score that {need.Key.Name} asks for."
            : string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"Whatever the limits, the {fit.Count:#,0} offers that fit {need.Key.Name} are too few or come too late: {need.Sum(one => one.Kilograms):#,0.#} kg stay missing; the first can be here in {request.MonthName(fit.Min(offer => offer.FirstMonth))}.");

    private static List<(PlanNeed Need, int Month, double Kilograms)> Missed(PlanRequest request, IReadOnlySet<PlanLimit> waived, TimeSpan most)
    {
        using var program = new PlanProgram(request, waived, mayLack: true);
        return program.Solve(most) is Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE ? [.. program.Short] : [];
    }

    private static IEnumerable<PlanLimit> Present(PlanLimits limits, IReadOnlyList<PlanOffer> offers)
    {
        var present = new (PlanLimit Limit, bool Holds)[]
        {
            (PlanLimit.Budget, limits.Budget.Any(budget => budget is not null)),
            (PlanLimit.Storage, limits.Storage is not null),
            (PlanLimit.Lots, limits.MostLots is not null),
            (PlanLimit.Supplier, limits.MostOfSupplier is not null),
            (PlanLimit.Origin, limits.MostOfOrigin is not null),
            (PlanLimit.LeastBags, offers.Any(offer => offer.LeastBags > 1)),
        };
        return present.Where(one => one.Holds).Select(one => one.Limit);
    }

    private static string Words(PlanLimit limit) => limit switch
    {
        PlanLimit.Budget => "The budget",
        PlanLimit.Storage => "The storage",
        PlanLimit.Lots => "The most lots",
        PlanLimit.Supplier => "The most from one supplier",
        PlanLimit.Origin => "The most from one origin",
        PlanLimit.LeastBags => "The least number of bags of a lot",
        _ => throw new ArgumentOutOfRangeException(nameof(limit)),
    };
}
