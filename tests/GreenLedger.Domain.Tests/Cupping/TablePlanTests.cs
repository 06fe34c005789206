using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Cupping;

public class TablePlanTests
{
    [Theory]
    // Handbook quality.md section 1.1, "dose" and "other bowl sizes": 0.055 g/mL at the full volume of the bowl.
    [InlineData(150, 8.25)]
    [InlineData(175, 9.63)]
    [InlineData(180, 9.90)]
    [InlineData(200, 11.00)]
    [InlineData(220, 12.10)]
    public void The_dose_is_proposed_from_the_cups_volume(int milliliters, double grams)
    {
        Assert.Equal(Weight.FromGrams((decimal)grams), TablePlan.ProposedDose(milliliters, 55m));
    }

    [Fact]
    public void A_plan_says_its_ratio_and_refuses_a_cup_or_dose_that_nobody_cups_with()
    {
        Assert.Equal(55m, new TablePlan(150, Weight.FromGrams(8.25m), null).GramsPerLiter);
        Assert.Throws<RuleBrokenException>(() => new TablePlan(5, Weight.FromGrams(8.25m), null));
        Assert.Throws<RuleBrokenException>(() => new TablePlan(150, Weight.FromGrams(80m), null));
    }

    [Fact]
    public void Other_times_of_the_protocol_are_a_new_revision_with_a_reason()
    {
        var usual = TastingProtocol.Usual();

        var later = usual.Retime(new Dictionary<string, int> { ["hot"] = 540 }, "Our bowls cool slowly");

        Assert.Equal((2, 540), (later.Revision, later.Steps.Single(step => step.Key == "hot").AfterSeconds));
        // Break at 4 minutes, handbook quality.md section 1.1: "3-5 min undisturbed (4 usual)".
        Assert.Equal(240, usual.Steps.Single(step => step.Key == "break").AfterSeconds);
        Assert.Throws<RuleBrokenException>(() => usual.Retime(new Dictionary<string, int> { ["hot"] = 100 }, "Before the break"));
        Assert.Throws<RuleBrokenException>(() => usual.Retime(new Dictionary<string, int> { ["hot"] = 540 }, ""));
    }
}
