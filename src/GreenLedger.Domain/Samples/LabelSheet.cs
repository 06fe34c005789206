namespace GreenLedger.Domain.Samples;

/// <summary>
/// A sheet of labels, or a roll with one label on each page, in millimetres. Sizes are those that labels are usually
/// sold in, from memory; margins follow from a block centred on ISO 216 A4 (210 × 297 mm) or US letter (215.9 × 279.4 mm).
/// </summary>
/// <param name="Across">From the left edge of one label to that of the next.</param>
/// <param name="Down">From the top edge of one label to that of the next.</param>
public sealed record LabelSheet(
    string Code,
    string Name,
    decimal PageWidth,
    decimal PageHeight,
    int Columns,
    int Rows,
    decimal LabelWidth,
    decimal LabelHeight,
    decimal Across,
    decimal Down)
{
    public static IReadOnlyList<LabelSheet> Usual { get; } =
    [
        A4("a4-3x8", 3, 8, 70m, 37m, 70m),
        A4("a4-3x7", 3, 7, 63.5m, 38.1m, 66m),
        A4("a4-2x7", 2, 7, 99.1m, 38.1m, 101.6m),
        A4("a4-2x4", 2, 4, 99.1m, 67.7m, 101.6m),
        new("letter-3x10", "US letter, 3 × 10, 66.7 × 25.4 mm (2⅝ × 1 in)", 215.9m, 279.4m, 3, 10, 66.675m, 25.4m, 69.85m, 25.4m),
        new("letter-2x5", "US letter, 2 × 5, 101.6 × 50.8 mm (4 × 2 in)", 215.9m, 279.4m, 2, 5, 101.6m, 50.8m, 106.3625m, 50.8m),
        Single("single-62x29", 62m, 29m),
        Single("single-57x32", 57m, 32m),
        Single("single-89x36", 89m, 36m),
    ];

    public int LabelsOnPage => Columns * Rows;

    /// <summary>From the page's left edge to the first label.</summary>
    public decimal Left => (PageWidth - LabelWidth - (Columns - 1) * Across) / 2;

    /// <summary>From the page's top edge to the first label.</summary>
    public decimal Top => (PageHeight - LabelHeight - (Rows - 1) * Down) / 2;

    public static LabelSheet? Find(string? code) => Usual.FirstOrDefault(sheet => sheet.Code == code);

    /// <summary>Where the label at this place stands on its page; places count along the rows from 0.</summary>
    public (decimal X, decimal Y) At(int place) => (Left + place % Columns * Across, Top + place / Columns * Down);

    private static LabelSheet A4(string code, int columns, int rows, decimal width, decimal height, decimal across) =>
        new(code, FormattableString.Invariant($"A4, {columns} × {rows}, {width} × {height} mm"), 210m, 297m, columns, rows, width, height, across, height);

    private static LabelSheet Single(string code, decimal width, decimal height) =>
        new(code, FormattableString.Invariant($"Single labels, {width} × {height} mm"), width, height, 1, 1, width, height, width, height);
}
