using Google.OrTools.LinearSolver;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Choosing;

/// <summary>A limit that can stand against the needs.</summary>
internal enum PlanLimit
{
    Budget = 0,
    Storage = 1,
    Lots = 2,
    Supplier = 3,
    Origin = 4,
    LeastBags = 5,
}

/// <summary>
/// A plan as an integer program: whole bags of each offer for each need that it fits, in each month from its first. Running sums of what
/// comes meet running sums of what is needed. In kilograms and the house currency.
/// </summary>
internal sealed class PlanProgram : IDisposable
{
    private readonly PlanRequest _request;
    private readonly IReadOnlySet<PlanLimit> _waived;
    private readonly Solver _solver = Solver.CreateSolver("SCIP") ?? throw new InvalidOperationException("The solver SCIP is not in this build of OR-Tools.");
    private readonly List<(PlanOffer Offer, PlanNeed Need, int Month, Variable Bags)> _parts = [];
    private readonly List<(PlanNeed Need, int Month, Variable Kilograms)> _short = [];

    /// <param name="request">What is asked.</param>
    /// <param name="waived">Limits that do not hold.</param>
    /// <param name="mayLack">Whether needs may be missed; then as little as possible is missed, whatever it costs.</param>
    public PlanProgram(PlanRequest request, IReadOnlySet<PlanLimit> waived, bool mayLack)
    {
        (_request, _waived) = (request, waived);
        foreach (var offer in request.Offers)
        {
            Add(offer);
        }

        foreach (var need in request.Needs)
        {
            Meet(need, mayLack);
        }

        KeepBudget();
        KeepStorage();
        KeepShares(PlanLimit.Supplier, request.Limits.MostOfSupplier, offer => offer.Supplier);
        KeepShares(PlanLimit.Origin, request.Limits.MostOfOrigin, offer => offer.Origin);
        Aim(mayLack);
    }

    public double? Gap => Math.Abs(_solver.Objective().Value()) < 1e-9 ? 0 : Math.Abs(_solver.Objective().Value() - _solver.Objective().BestBound()) / Math.Abs(_solver.Objective().Value());

    /// <summary>Kilograms that are missed, by need and month.</summary>
    public IEnumerable<(PlanNeed Need, int Month, double Kilograms)> Short => _short.Select(one => (one.Need, one.Month, one.Kilograms.SolutionValue())).Where(one => one.Item3 > 1e-6);

    public Solver.ResultStatus Solve(TimeSpan most)
    {
        _solver.SetTimeLimit((long)most.TotalMilliseconds);
        using var exact = new MPSolverParameters();
        exact.SetDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, 0);
        return _solver.Solve(exact);
    }

    public IEnumerable<(PlanOffer Offer, PlanPart Part)> Parts() => _parts
        .Select(part => (part.Offer, new PlanPart(part.Need, part.Month, (int)Math.Round(part.Bags.SolutionValue())))).Where(part => part.Item2.Bags > 0);

    public void Dispose() => _solver.Dispose();

    /// <summary>Bags of the offer by need and month; together none, or from its least to all.</summary>
    private void Add(PlanOffer offer)
    {
        var needs = _request.Needs.Where(need => need.Fits(offer)).ToList();
        if (needs.Count == 0 || offer.FirstMonth >= _request.Months || offer.MostBags < offer.LeastBags)
        {
            return;
        }

        var isBought = _solver.MakeBoolVar("");
        var most = _solver.MakeConstraint(double.NegativeInfinity, 0);
        most.SetCoefficient(isBought, -offer.MostBags);
        var least = _solver.MakeConstraint(0, double.PositiveInfinity);
        least.SetCoefficient(isBought, _waived.Contains(PlanLimit.LeastBags) ? 0 : -offer.LeastBags);
        foreach (var need in needs)
        {
            for (var month = offer.FirstMonth; month < _request.Months; month++)
            {
                var bags = _solver.MakeIntVar(0, offer.MostBags, "");
                most.SetCoefficient(bags, 1);
                least.SetCoefficient(bags, 1);
                _parts.Add((offer, need, month, bags));
            }
        }

        _lots ??= _request.Limits.MostLots is { } lots && !_waived.Contains(PlanLimit.Lots) ? _solver.MakeConstraint(0, lots) : null;
        _lots?.SetCoefficient(isBought, 1);
    }

    private Constraint? _lots;

    private void Meet(PlanNeed need, bool mayLack)
    {
        var running = 0m;
        var missed = new List<Variable>();
        for (var month = 0; month < _request.Months; month++)
        {
            running += need.ByMonth[month].Kilograms;
            if (mayLack)
            {
                missed.Add(_solver.MakeNumVar(0, (double)need.ByMonth[month].Kilograms, ""));
                _short.Add((need, month, missed[^1]));
            }

            if (need.ByMonth[month] == Weight.Zero)
            {
                continue;
            }

            var met = _solver.MakeConstraint((double)running, double.PositiveInfinity);
            missed.ForEach(variable => met.SetCoefficient(variable, 1));
            foreach (var part in _parts.Where(part => part.Need == need && part.Month <= month))
            {
                met.SetCoefficient(part.Bags, (double)part.Offer.Bag.Kilograms);
            }
        }
    }

    private void KeepBudget()
    {
        for (var month = 0; month < _request.Months && !_waived.Contains(PlanLimit.Budget); month++)
        {
            if (_request.Limits.BudgetOf(month) is { } budget)
            {
                var spent = _solver.MakeConstraint(0, (double)budget);
                foreach (var part in _parts.Where(part => part.Month == month))
                {
                    spent.SetCoefficient(part.Bags, (double)(part.Offer.Bag.Kilograms * part.Offer.CostPerKilogram));
                }
            }
        }
    }

    /// <summary>What came less what was needed by then; what is missed was not used, but nothing lies over for it either.</summary>
    private void KeepStorage()
    {
        if (_request.Limits.Storage is not { } storage || _waived.Contains(PlanLimit.Storage))
        {
            return;
        }

        for (var month = 0; month < _request.Months; month++)
        {
            var used = _request.Needs.Sum(need => need.ByMonth.Take(month + 1).Sum(kg => kg.Kilograms));
            var over = _solver.MakeConstraint(double.NegativeInfinity, (double)(storage.Kilograms + used));
            foreach (var part in _parts.Where(part => part.Month <= month))
            {
                over.SetCoefficient(part.Bags, (double)part.Offer.Bag.Kilograms);
            }

            foreach (var missed in _short.Where(one => one.Month <= month))
            {
                over.SetCoefficient(missed.Kilograms, 1);
            }
        }
    }

    private void KeepShares(PlanLimit limit, Weight? most, Func<PlanOffer, string?> of)
    {
        if (most is not { } kilograms || _waived.Contains(limit))
        {
            return;
        }

        foreach (var group in _parts.Where(part => of(part.Offer) is not null).GroupBy(part => of(part.Offer)))
        {
            var sum = _solver.MakeConstraint(0, (double)kilograms.Kilograms);
            foreach (var part in group)
            {
                sum.SetCoefficient(part.Bags, (double)part.Offer.Bag.Kilograms);
            }
        }
    }

    private void Aim(bool mayLack)
    {
        var aim = _solver.Objective();
        aim.SetMinimization();
        foreach (var (_, _, kilograms) in _short)
        {
            aim.SetCoefficient(kilograms, 1);
        }

        if (!mayLack)
        {
            var worth = _request.Offers.Distinct().ToDictionary(offer => offer, offer => (double)offer.Bag.Kilograms * _request.Worth(offer));
            foreach (var part in _parts)
            {
                aim.SetCoefficient(part.Bags, worth[part.Offer]);
            }
        }
    }
}
