namespace GreenLedger.Documents.Origins;

/// <summary>
/// The property names that the EU's system reads, case by case (published description of its GeoJSON; handbook, trade 7.4). It
/// ignores all others.
/// </summary>
internal static class PlotProperties
{
    public const string Producer = "ProducerName";
    public const string Country = "ProducerCountry";
    public const string Place = "ProductionPlace";
    public const string Area = "Area";

    private static readonly string[] All = [Producer, Country, Place, Area];

    /// <summary>The right spelling of a property that is written almost so; null for a right or a strange one.</summary>
    public static string? Fix(string name) => All.Contains(name)
        ? null
        : All.FirstOrDefault(right => right.Equals(name.Replace("_", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase));
}
