using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using GreenLedger.SeedDemo.Origins;

namespace GreenLedger.SeedDemo.Offers;

/// <summary>
/// One lot as it truly is. The ledger sees of it only what a seller states, a grader measures and cuppers taste.
/// </summary>
/// <param name="Quality">Points that an endless panel without bias would give on the 100-point form.</param>
internal sealed record Coffee(
    Seller Seller,
    Grower Grower,
    string Ref,
    string Variety,
    string Process,
    ProcessFamily Family,
    string Grade,
    string CropYear,
    int Bags,
    decimal BagKg,
    double Quality,
    IReadOnlyList<string> Certificates,
    double Haggle)
{
    /// <summary>As the seller calls it, unlike any other lot of the crop.</summary>
    public required string Name { get; init; }

    public Origin Origin => Grower.Origin;

    public Weight BagWeight => Weight.FromKilograms(BagKg);

    public double Kilograms => Bags * (double)BagKg;

    public bool IsScreen => Grade.StartsWith("screen", StringComparison.Ordinal);

    /// <summary>
    /// The asking in US dollars for a kilogram FOB at a market of <paramref name="marketPerKg"/>: about 12 % for a
    /// point, more for small lots, rare processes and varieties, and what the seller thinks it can get.
    /// </summary>
    public double PriceAt(double marketPerKg)
    {
        var (reference, aPoint) = Origin.IsRobusta ? (79.5, 0.05) : (84, 0.118);
        var rare = Process.StartsWith("anaerobic", StringComparison.Ordinal) ? 0.09 : Process is "natural" or "washed" ? 0 : 0.03;
        var small = 0.055 * Math.Log(9_000 / Kilograms);
        return marketPerKg * Math.Exp(
            Origin.Premium + (aPoint * (Quality - reference)) + rare + small + (0.04 * Certificates.Count) + Haggle);
    }
}
