namespace GreenLedger.Domain.Offers.Reading;

/// <summary>A producer as a list writes it in one cell: "Kiamwari, Kirinyaga, AB" is a station, its region and a grade.</summary>
internal sealed record ProducerText(string Name, string? Region, string? Grade)
{
    /// <summary>Grades by size as East African lists put them behind a name (common practice, no source).</summary>
    private static readonly HashSet<string> Grades = ["AA", "AB", "A", "B", "C", "PB", "E", "TT", "T", "AA+", "AB+", "A1", "G1", "G2", "G3", "G4"];

    /// <summary>The parts after a comma are read only where no column of its own states the region.</summary>
    public static ProducerText? Read(string? text, bool hasRegion)
    {
        if (text is null)
        {
            return null;
        }

        var parts = text.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).ToList();
        if (hasRegion || parts.Count < 2)
        {
            return new ProducerText(text, null, null);
        }

        var grade = Grades.Contains(parts[^1]) ? parts[^1] : null;
        var region = string.Join(", ", parts.Skip(1).Take(parts.Count - (grade is null ? 1 : 2)));
        return new ProducerText(parts[0], region.Length == 0 ? null : region, grade);
    }
}
