using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Contracts;

/// <summary>
/// A standard form of the trade that contracts refer to, with the figures that it usually brings to a draft. The figures are
/// the house's own notes and no text of the form; a contract keeps those that stood when it was written.
/// </summary>
public sealed class StandardForm
{
    private StandardForm() => Name = Edition = Arbitration = "";

    public StandardForm(string name, string edition)
    {
        Id = Id<StandardForm>.New();
        Name = Edition = Arbitration = "";
        Call(name, edition);
    }

    public Id<StandardForm> Id { get; private set; }

    public int Version { get; private set; }

    public string Name { get; private set; }

    public string Edition { get; private set; }

    /// <summary>Where disputes are usually heard, as a suggestion for the draft.</summary>
    public string Arbitration { get; private set; }

    public Percent Franchise { get; private set; }

    public Percent Tolerance { get; private set; }

    public int? WeighWithinDays { get; private set; }

    public int? QualityClaimDays { get; private set; }

    public int? OtherClaimDays { get; private set; }

    /// <summary>The days of a quality claim run from discharge or clearance, whichever is later; else from discharge.</summary>
    public bool QualityFromClearance { get; private set; }

    /// <summary>What the days for weighing run from.</summary>
    public WeighingStart WeighFrom { get; private set; }

    public bool IsInUse { get; private set; } = true;

    /// <summary>As a contract writes it: name and edition.</summary>
    public string Title => Edition.Length == 0 ? Name : $"{Name}, {Edition}";

    public void Call(string name, string? edition)
    {
        Name = Rule.Text(name, "The name of the form", field: nameof(Name));
        Edition = Rule.OptionalText(edition, "The edition", 80, nameof(Edition)) ?? "";
    }

    /// <summary>The figures of its weights: loss that is not refunded, and by how much the quantity may differ.</summary>
    public void Allow(Percent franchise, Percent tolerance)
    {
        Rule.Require(franchise.Points is >= 0m and <= 10m, "The franchise lies between 0 and 10 %.", nameof(Franchise));
        Rule.Require(tolerance.Points is >= 0m and <= 20m, "The tolerance lies between 0 and 20 %.", nameof(Tolerance));
        (Franchise, Tolerance) = (franchise, tolerance);
    }

    /// <summary>Calendar days for weighing and claims, and where disputes are heard; empty where the form says nothing.</summary>
    public void Give(int? weighWithin, int? qualityClaim, int? otherClaim, string? arbitration, bool qualityFromClearance = false, WeighingStart weighFrom = WeighingStart.Discharge)
    {
        Rule.Require(Enum.IsDefined(weighFrom), "Choose what the days for weighing run from.", nameof(WeighFrom));
        WeighFrom = weighFrom;
        QualityFromClearance = qualityFromClearance;
        WeighWithinDays = Days(weighWithin, nameof(WeighWithinDays));
        QualityClaimDays = Days(qualityClaim, nameof(QualityClaimDays));
        OtherClaimDays = Days(otherClaim, nameof(OtherClaimDays));
        Arbitration = Rule.OptionalText(arbitration, "The place of arbitration", field: nameof(Arbitration)) ?? "";
    }

    public void PutAway() => IsInUse = false;

    public void TakeUp() => IsInUse = true;

    private static int? Days(int? days, string field)
    {
        Rule.Require(days is null or (>= 0 and <= 400), "Days lie between 0 and 400.", field);
        return days;
    }
}
