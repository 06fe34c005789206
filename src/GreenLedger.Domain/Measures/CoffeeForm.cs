namespace GreenLedger.Domain.Measures;

/// <summary>In which form coffee is weighed.</summary>
public enum CoffeeForm
{
    Green = 0,

    /// <summary>Fruit dried whole.</summary>
    DriedCherry = 1,

    /// <summary>Dry, still in its parchment.</summary>
    Parchment = 2,

    DecaffeinatedGreen = 3,

    Roasted = 4,

    /// <summary>Instant coffee, and the solids of a liquid one.</summary>
    Soluble = 5,
}

/// <summary>
/// What a weight of coffee in another form is in green coffee: the net weight times the factor that statistics and trade use
/// (International Coffee Organization, as ITC, The Coffee Guide, 01.01.02 prints them; handbook, trade 1.2). Fresh cherry has
/// no standard factor and is left out. The factors are conventions: a lot's own outturn differs.
/// </summary>
public static class CoffeeForms
{
    public static IReadOnlyList<CoffeeForm> All { get; } = Enum.GetValues<CoffeeForm>();

    /// <summary>Forms in which a harvest is weighed.</summary>
    public static IReadOnlyList<CoffeeForm> OfHarvest { get; } = [CoffeeForm.Green, CoffeeForm.Parchment, CoffeeForm.DriedCherry];

    public static string Word(this CoffeeForm form) => form switch
    {
        CoffeeForm.Green => "green",
        CoffeeForm.DriedCherry => "dried cherry",
        CoffeeForm.Parchment => "parchment",
        CoffeeForm.DecaffeinatedGreen => "decaffeinated green",
        CoffeeForm.Roasted => "roasted",
        CoffeeForm.Soluble => "soluble",
        _ => throw new ArgumentOutOfRangeException(nameof(form)),
    };

    /// <summary>Kilograms of green coffee for one kilogram of this form.</summary>
    public static decimal GreenFactor(this CoffeeForm form) => form switch
    {
        CoffeeForm.Green => 1m,
        CoffeeForm.DriedCherry => 0.5m,
        CoffeeForm.Parchment => 0.8m,
        CoffeeForm.DecaffeinatedGreen => 1.05m,
        CoffeeForm.Roasted => 1.19m,
        CoffeeForm.Soluble => 2.6m,
        _ => throw new ArgumentOutOfRangeException(nameof(form)),
    };

    /// <summary>A net weight of this form in green coffee, rounded half up to the microgram.</summary>
    public static Weight InGreen(this CoffeeForm form, Weight net) => Weight.FromKilograms(net.Kilograms * form.GreenFactor());

    /// <summary>A net weight of green coffee in this form, rounded half up to the microgram.</summary>
    public static Weight FromGreen(this CoffeeForm form, Weight green) => Weight.FromKilograms(green.Kilograms / form.GreenFactor());
}
