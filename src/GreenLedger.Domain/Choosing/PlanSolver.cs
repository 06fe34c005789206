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
