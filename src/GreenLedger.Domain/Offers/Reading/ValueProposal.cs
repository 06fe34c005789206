using GreenLedger.Domain.Offers.Reading.Words;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>Guesses what a column holds from its values, where its heading is unknown or missing.</summary>
internal static class ValueProposal
{
    /// <summary>Bags as packed in the trade, in kg (handbook, trade 1.1).</summary>
    private static readonly decimal[] UsualBags = [15m, 24m, 30m, 35m, 46m, 50m, 59m, 60m, 69m, 70m];

    /// <summary>The meaning that most of the filled cells speak for, or null.</summary>
    public static ColumnMeaning? Of(IReadOnlyList<Cell> sample, ListReference reference)
    {
        var cells = sample.Where(cell => !cell.IsEmpty).ToList();
        if (cells.Count == 0)
        {
            return null;
        }

        bool Most(Func<Cell, bool> claim) => cells.Count(claim) * 10 >= cells.Count * 7;
        return Most(cell => reference.CountryOf(cell.Text) is not null) ? ColumnMeaning.Country
            : Most(cell => cell.Number is null && reference.ProcessOf(cell.Text) is not null) ? ColumnMeaning.Process
            : Most(cell => cell.Number is null && CertificateWords.In(cell.Text).Any()) ? ColumnMeaning.Certificates
            : Most(cell => IcoMark.Normalise(cell.Text) is not null) ? ColumnMeaning.IcoMark
            : Most(cell => cell.Number is null && PriceQuote.Find(cell.Text)?.Quote.IsWhole == true) ? ColumnMeaning.Price
            : Most(cell => cell.Number is null && QuantityText.PerBag(cell.Text) is not null) ? ColumnMeaning.Packaging
            : Most(cell => cell.Number is null && IsCropYear(cell.Trimmed)) ? ColumnMeaning.CropYear
            : Most(cell => NumberText.Read(cell, NumberRange.BagWeight) is { } kg && UsualBags.Contains(kg)) ? ColumnMeaning.BagWeight
            : Most(cell => NumberText.Read(cell, NumberRange.Score) is >= 75m and <= 96m) ? ColumnMeaning.StatedScore
            : Most(cell => NumberText.ReadRange(cell, NumberRange.Altitude)?.From is >= 400m and <= 2600m) ? ColumnMeaning.Altitude
            : IsReference(cells) ? ColumnMeaning.Ref
            : null;
    }

    /// <summary>What a bag holds where bags and net weight agree on one weight in most rows and no column says it.</summary>
    public static decimal? BagKg(ListLook look, IReadOnlyList<MappedColumn> columns)
    {
        var bags = columns.FirstOrDefault(column => column.Meaning == ColumnMeaning.Bags);
        var net = columns.FirstOrDefault(column => column.Meaning == ColumnMeaning.NetWeight);
        if (bags is null || net is null || columns.Any(column => column.Meaning is ColumnMeaning.BagWeight or ColumnMeaning.Packaging))
        {
            return null;
        }

        var ratios = look.Samples[bags.Heading].Zip(look.Samples[net.Heading])
            .Select(pair => (Bags: NumberText.Read(pair.First, NumberRange.Bags), Net: NumberText.Read(pair.Second, NumberRange.Quantity)))
            .Where(pair => pair is { Bags: > 0m, Net: > 0m })
            .Select(pair => QuantityText.Of(pair.Net!.Value, net.Unit ?? WeightUnit.Kilogram).Kilograms / pair.Bags!.Value).ToList();
        var most = ratios.GroupBy(kg => kg).MaxBy(group => group.Count());
        return most is not null && most.Count() >= 2 && most.Count() * 10 >= ratios.Count * 6 ? most.Key : null;
    }

    private static bool IsCropYear(string text) => text.Length <= 9 && text.Contains('/', StringComparison.Ordinal) && CropYear.Read(text) is not null;

    private static bool IsReference(List<Cell> cells) =>
        cells.Count > 1 && cells.Select(cell => cell.Trimmed).Distinct().Count() == cells.Count
        && cells.All(cell => cell.Trimmed.Length <= 24 && cell.Trimmed.Any(char.IsAsciiDigit) && cell.Trimmed.Any(char.IsLetter));
}
