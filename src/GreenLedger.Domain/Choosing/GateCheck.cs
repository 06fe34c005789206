using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Choosing;

/// <summary>The rules' gates made ready for many lots. Every gate tests the unrounded value.</summary>
internal sealed class GateCheck
{
    private readonly RuleTerms _terms;
    private readonly Gates _gates;
    private readonly bool _required;
    private readonly Dictionary<Id<ProcessMethod>, bool> _processes;
    private readonly bool _asksProcess;

    public GateCheck(RuleTerms terms)
    {
        _terms = terms;
        _gates = terms.Gates;
        _required = terms.MeasurementsRequired;
        _processes = terms.Processes.ToDictionary(choice => choice.MethodId, choice => choice.IsAllowed);
        _asksProcess = !terms.OtherProcessesAllowed || terms.Processes.Any(choice => !choice.IsAllowed);
    }

    /// <summary>Every gate that the lot fails; a missing score and a missing cost are among them.</summary>
    public Gate Failed(Candidate candidate, in LotScore? score)
    {
        var failed = OnScoreAndCost(candidate, score) | OnMeasurements(candidate);
        if (_asksProcess && !IsAllowed(candidate))
        {
            failed |= Gate.Process;
        }

        if (_gates.LeastQuantity is { } least && candidate.Quantity < least)
        {
            failed |= Gate.Quantity;
        }

        if (_gates.EarliestCropYear is { } year && string.CompareOrdinal(candidate.CropYear, year) < 0)
        {
            failed |= Gate.CropYear;
        }

        return HasCertificates(candidate) ? failed : failed | Gate.Certificates;
    }

    private Gate OnScoreAndCost(Candidate candidate, in LotScore? score)
    {
        var failed = Gate.None;
        if (score is { } known)
        {
            failed |= When(_gates.LeastScore is { } least && known.Score < least, Gate.LeastScore);
            failed |= When(_gates.LeastLowerBound is { } bound && known.Low < bound, Gate.LeastLowerBound);
        }
        else
        {
            failed |= Gate.NoScore;
        }

        return candidate.CostPerKilogram is { } cost
            ? failed | When(_gates.HighestCostPerKilogram is { } highest && cost > highest, Gate.HighestCost)
            : failed | Gate.NoCost;
    }

    private Gate OnMeasurements(Candidate candidate) =>
        When(_gates.HighestMoisture is { } wet && (candidate.Moisture is { } m ? m > wet : _required), Gate.Moisture)
        | When(_gates.LeastMoisture is { } dry && (candidate.Moisture is { } n ? n < dry : _required), Gate.Moisture)
        | When(_gates.HighestWaterActivity is { } aw && (candidate.WaterActivity is { } w ? w > aw : _required), Gate.WaterActivity)
        | When(_gates.HighestCategory1 is { } one && (candidate.Category1 is { } c ? c > one : _required), Gate.Category1)
        | When(_gates.HighestCategory2 is { } two && (candidate.Category2 is { } d ? d > two : _required), Gate.Category2)
        | When(_gates.HighestQuakers is { } pale && (candidate.Quakers is { } q ? q > pale : _required), Gate.Quakers)
        | When(_gates.LeastRetained is { } kept && (candidate.Retained is { } r ? r < kept : _required), Gate.Screen);

    private bool IsAllowed(Candidate candidate) =>
        candidate.ProcessMethodId is { } method && _processes.TryGetValue(method, out var allowed)
            ? allowed
            : _terms.OtherProcessesAllowed;

    private bool HasCertificates(Candidate candidate)
    {
        foreach (var wanted in _gates.Certificates)
        {
            if (!candidate.Certificates.Contains(wanted, StringComparer.OrdinalIgnoreCase))
            {
                return false;
            }
        }

        return true;
    }

    private static Gate When(bool failed, Gate gate) => failed ? gate : Gate.None;
}
