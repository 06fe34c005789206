using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Grading;

/// <summary>What green coffee weighs at another moisture, its dry matter staying the same.</summary>
public static class MoistureChange
{
    /// <summary>m2 = m1 × (1 − w1) / (1 − w2), both moistures as shares of the wet mass: handbook quality.md section 2.3.</summary>
    /// <exception cref="RuleBrokenException">A moisture is 100 % or more.</exception>
    public static Weight Of(Weight mass, Percent now, Percent then)
    {
        Rule.Require(now.Points is >= 0m and < 100m && then.Points is >= 0m and < 100m, "Moisture lies between 0 % and below 100 %.", nameof(GreenGrade.Moisture));
        return Weight.FromKilograms(mass.Kilograms * (100m - now.Points) / (100m - then.Points));
    }
}
