using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

public sealed class CoffeeFormTests
{
    /// <summary>60 kg of green coffee in other forms: ITC, The Coffee Guide, 01.01.02 (handbook, trade 1.2 and check 33; the guide prints 50.4).</summary>
    [Theory]
    [InlineData(CoffeeForm.Green, 60)]
    [InlineData(CoffeeForm.DriedCherry, 120)]
    [InlineData(CoffeeForm.Parchment, 75)]
    [InlineData(CoffeeForm.Roasted, 50.420)]
    public void A_bag_of_60_kg_in_another_form(CoffeeForm form, double kilograms) =>
        Assert.Equal(kilograms, (double)form.FromGreen(Weight.FromKilograms(60m)).Kilograms, 3);

    /// <summary>The factors themselves: the same place.</summary>
    [Theory]
    [InlineData(CoffeeForm.DriedCherry, 50)]
    [InlineData(CoffeeForm.Parchment, 80)]
    [InlineData(CoffeeForm.DecaffeinatedGreen, 105)]
    [InlineData(CoffeeForm.Roasted, 119)]
    [InlineData(CoffeeForm.Soluble, 260)]
    public void A_hundred_kilograms_in_green_coffee(CoffeeForm form, int kilograms) =>
        Assert.Equal(Weight.FromKilograms(kilograms), form.InGreen(Weight.FromKilograms(100m)));
}
