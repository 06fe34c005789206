using System.Globalization;
using Google.OrTools.LinearSolver;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// Why needs cannot be met: what is missed at least, and which limits stand against it. Limits are named only in sets of which each is needed for
/// the conflict: each limit is left out in turn, and stays out where what is left conflicts all the same. That set is then waived and the next is looked
/// for, until the limits that are left take nothing away. (The deletion filter for an irreducible infeasible set; from memory.)
/// </summary>
internal sealed class PlanConflict
{
    /// <summary>Kilograms below which the solver’s figures say nothing.</summary>
    private const double Noise = 0.5;

    /// <summary>So many programs are solved at the most, each in its share of the time.</summary>
    private const int Programs = 12;

    private readonly PlanRequest _request;
    private readonly TimeSpan _each;
    private readonly List<PlanLimit> _present;

    private PlanConflict(PlanRequest request, TimeSpan most)
    {
        (_request, _each) = (request, most / Programs);
        _present = [.. Present(request.Limits, request.Offers)];
    }

    public static IReadOnlyList<string> Of(PlanRequest request, TimeSpan most) => [.. new PlanConflict(request, most).Told()];

    private IEnumerable<string> Told()
    {
        var (missed, whatever) = (Missed(_present), Missed([]));
        foreach (var need in missed.GroupBy(one => one.Need))
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"{need.Key.Name}: at least {need.Sum(one => one.Kilograms):#,0.#} kg of {need.Key.Total.Kilograms:#,0.#} kg cannot be had, first in {_request.MonthName(need.Min(one => one.Month))}.");
        }

        var (all, least) = (Sum(missed), Sum(whatever));
        for (var held = _present; Sum(Missed(held)) > least + Noise;)
        {
            if (Needed(held, least) is not { Count: > 0 } set)
            {
                // Only where the time was up before a program was solved.
                break;
            }

            yield return Against(set, all - Sum(Missed([.. _present.Except(set)])));
            held = [.. held.Except(set)];
        }

        foreach (var line in TooFew(whatever))
        {
            yield return line;
        }
    }

    /// <summary>Of limits that conflict, as many as conflict still and no more.</summary>
    private List<PlanLimit> Needed(List<PlanLimit> held, double least)
    {
        var set = held;
        foreach (var limit in held)
        {
            var without = set.Where(one => one != limit).ToList();
            if (Sum(Missed(without)) > least + Noise)
            {
                set = without;
            }
        }

        return set;
    }

    private static string Against(List<PlanLimit> set, double more) => set switch
    {
        [var one] when more > Noise => string.Create(CultureInfo.InvariantCulture, $"{Words(one)} stands against it: without it, {more:#,0.#} kg more could be had."),
        [var one] => $"{Words(one)} stands against it, and not alone: loosening it is needed and not enough.",
        _ => string.Create(
            CultureInfo.InvariantCulture,
            $"{string.Join(" and ", set.Select((one, at) => at == 0 ? Words(one) : char.ToLowerInvariant(Words(one)[0]) + Words(one)[1..]))} stand against it together: loosen one of them{(more > Noise ? $"; without them, {more:#,0.#} kg more could be had" : "")}."),
    };

    /// <summary>What no limit explains: the offers that fit are too few or come too late.</summary>
    private IEnumerable<string> TooFew(List<(PlanNeed Need, int Month, double Kilograms)> whatever) =>
        from one in whatever
        group one by one.Need into need
        let fit = _request.Offers.Where(need.Key.Fits).ToList()
        select fit.Count == 0
            ? $"No offer is of the process and score that {need.Key.Name} asks for."
            : string.Create(
                CultureInfo.InvariantCulture,
                $"Whatever the limits, the {fit.Count:#,0} offers that fit {need.Key.Name} are too few or come too late: {need.Sum(one => one.Kilograms):#,0.#} kg stay missing; the first can be here in {_request.MonthName(fit.Min(offer => offer.FirstMonth))}.");

    /// <summary>The least that is missed where only these limits hold.</summary>
    private List<(PlanNeed Need, int Month, double Kilograms)> Missed(IReadOnlyCollection<PlanLimit> held)
    {
        using var program = new PlanProgram(_request, Enum.GetValues<PlanLimit>().Except(held).ToHashSet(), mayLack: true);
        return program.Solve(_each) is Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE ? [.. program.Short] : [];
    }

    private static double Sum(List<(PlanNeed Need, int Month, double Kilograms)> missed) => missed.Sum(one => one.Kilograms);

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
        PlanLimit.Lots => "The limit on lots",
        PlanLimit.Supplier => "The most from one supplier",
        PlanLimit.Origin => "The most from one origin",
        PlanLimit.LeastBags => "The least lot",
        _ => throw new ArgumentOutOfRangeException(nameof(limit)),
    };
}
