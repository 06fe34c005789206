using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Summaries;

/// <summary>How a summary's figures are written for a person, the same on the page and in the PDF.</summary>
public static class FigureWords
{
    private const string None = "–";

    private static readonly CultureInfo Reader = CultureInfo.InvariantCulture;

    public static bool IsNumber(this FigureKind kind) => kind is not (FigureKind.Text or FigureKind.Day);

    /// <summary>A value of a cell: a text, a day or a decimal; a dash where there is none.</summary>
    public static string Text(this FigureKind kind, object? value, Currency currency) => value switch
    {
        null or "" => None,
        string text => text,
        DateOnly day => day.ToString("d MMM yyyy", Reader),
        decimal figure => Figure(kind, figure, currency),
        _ => throw new ArgumentException($"A summary shows no {value.GetType().Name}.", nameof(value)),
    };

    private static string Figure(FigureKind kind, decimal figure, Currency currency) => kind switch
    {
        FigureKind.Count => figure.ToString("#,0", Reader),
        FigureKind.Kilograms => figure.ToString("#,0.###", Reader),
        FigureKind.Money => figure.ToString("N" + currency.Decimals.ToString(Reader), Reader),
        FigureKind.PerKilogram or FigureKind.Points => figure.ToString("#,0.00;−#,0.00", Reader),
        FigureKind.Share => (figure * 100m).ToString("0.0;−0.0", Reader) + "\u00a0%",
        FigureKind.PerPoint => figure.ToString("0.0000", Reader),
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
