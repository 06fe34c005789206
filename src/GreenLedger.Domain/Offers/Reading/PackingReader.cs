using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers.Reading.Words;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>Reads how much a row offers and how it is packed, and checks that its figures agree.</summary>
internal sealed class PackingReader(SheetColumns columns, OfferMapping mapping, ListChecks checks)
{
    private static readonly ColumnMeaning[] Columns =
        [ColumnMeaning.Bags, ColumnMeaning.BagWeight, ColumnMeaning.Packaging, ColumnMeaning.Quantity, ColumnMeaning.NetWeight];

    private static readonly ColumnMeaning[] BigBagColumns =
        [ColumnMeaning.Packaging, ColumnMeaning.Quantity, ColumnMeaning.Notes, ColumnMeaning.BagWeight];

    private readonly bool _allBigBags = Array.Exists(BigBagColumns, meaning => Says(columns.Heading(meaning)));

    public static bool IsStated(SheetColumns columns) => Columns.Any(columns.Has);

    public Packing Read(OfferLine line, RowProblems problems)
    {
        var isBigBag = _allBigBags || Array.Exists(BigBagColumns, meaning => Says(columns.Text(line, meaning)));
        var packaging = columns.Text(line, ColumnMeaning.Packaging);
        var bagWeight = WeightIn(line, ColumnMeaning.BagWeight, NumberRange.BagWeight, problems)
            ?? (packaging is null ? null : QuantityText.PerBag(packaging));
        var packing = new Packing(BagsIn(line, problems), bagWeight, WeightIn(line, ColumnMeaning.NetWeight, NumberRange.Quantity, problems));
        packing = WithQuantity(packing, line, isBigBag, problems);
        if (packing.BagWeight is null && packing.Bags is not null && mapping.Terms.BagKg is { } kg)
        {
            packing = packing with { BagWeight = Weight.FromKilograms(kg) };
        }

        Check(packing, isBigBag, problems);
        return packing;
    }

    /// <summary>The least lot in bags; of kilograms as many bags as hold them. Null where none is named, also as 0.</summary>
    public int? LeastBags(OfferLine line, Packing packing, RowProblems problems)
    {
        var cell = columns.Cell(line, ColumnMeaning.LeastBags);
        if (cell.IsEmpty || NumberText.Read(cell, NumberRange.Bags) == 0m)
        {
            return null;
        }

        var unit = (cell.Number is null ? QuantityText.UnitOf(cell.Text) : null) ?? columns.Column(ColumnMeaning.LeastBags)!.Unit ?? WeightUnit.Bags;
        if (unit == WeightUnit.Bags)
        {
            return InRange(Count(cell, ColumnMeaning.LeastBags, problems), problems);
        }

        if (packing.BagWeight is not { Micrograms: > 0 } bag || WeightIn(line, ColumnMeaning.LeastBags, NumberRange.Quantity, problems) is not { } least)
        {
            problems.Add(ColumnMeaning.LeastBags, $"The least lot '{cell.Trimmed}' is a weight, and what a bag holds is not stated: type it in bags, or leave it empty.");
            return null;
        }

        return InRange((int)Math.Min(int.MaxValue, (least.Micrograms + bag.Micrograms - 1) / bag.Micrograms), problems);
    }

    private static int? InRange(int? bags, RowProblems problems)
    {
        if (bags > 10_000)
        {
            problems.Add(ColumnMeaning.LeastBags, $"A least lot of {RowProblems.Figure(bags.Value)} bags is more than any plan buys: correct it, or leave it empty.");
        }

        return bags;
    }

    private int? BagsIn(OfferLine line, RowProblems problems)
    {
        var cell = columns.Cell(line, ColumnMeaning.Bags);
        return cell.IsEmpty ? null : Count(cell, ColumnMeaning.Bags, problems);
    }

    private static int? Count(Cell cell, ColumnMeaning meaning, RowProblems problems)
    {
        switch (NumberText.Read(cell, NumberRange.Bags))
        {
            case null:
                problems.Add(meaning, $"The number of bags is not a number ('{cell.Trimmed}'): type how many bags are on offer.");
                return null;
            case < 0m and var negative:
                problems.Add(meaning, $"The number of bags is negative ({RowProblems.Figure(negative)}): type how many bags are on offer.");
                return null;
            case var count when count != Math.Truncate(count.Value):
                problems.Add(meaning, $"{RowProblems.Figure(count.Value)} is no whole number of bags: type how many bags are on offer.");
                return null;
            case > 1_000_000m and var many:
                problems.Add(meaning, $"{RowProblems.Figure(many)} bags are more than any list offers: type how many bags are on offer.");
                return null;
            case var count:
                return decimal.ToInt32(count.Value);
        }
    }

    private Weight? WeightIn(OfferLine line, ColumnMeaning meaning, NumberRange range, RowProblems problems)
    {
        var cell = columns.Cell(line, meaning);
        if (cell.IsEmpty)
        {
            return null;
        }

        var figure = NumberText.Read(cell, range);
        if (figure is < 0m)
        {
            problems.Add(meaning, $"The {meaning.Word()} is negative ({RowProblems.Figure(figure.Value)}): correct it.");
            return null;
        }

        if (figure is null or > 1_000_000_000m)
        {
            problems.Add(meaning, $"The {meaning.Word()} is not a weight ('{cell.Trimmed}'): type a figure in kg.");
            return null;
        }

        var unit = cell.Number is null ? QuantityText.UnitOf(cell.Text) : null;
        return QuantityText.Of(figure.Value, unit ?? columns.Column(meaning)!.Unit ?? WeightUnit.Kilogram);
    }

    private Packing WithQuantity(Packing packing, OfferLine line, bool isBigBag, RowProblems problems)
    {
        var cell = columns.Cell(line, ColumnMeaning.Quantity);
        if (cell.IsEmpty)
        {
            return packing;
        }

        var unit = columns.Column(ColumnMeaning.Quantity)!.Unit ?? (packing.BagWeight is null ? null : WeightUnit.Bags);
        if (cell.Number is null && QuantityText.Read(cell.Text, isBigBag) is { } stated)
        {
            return new Packing(packing.Bags ?? stated.Bags, packing.BagWeight ?? stated.BagWeight, packing.StatedNet ?? stated.StatedNet);
        }

        if (unit is null)
        {
            problems.Add(ColumnMeaning.Quantity, $"The quantity '{cell.Trimmed}' has no unit: choose bags, kg or lb for its column.");
            return packing;
        }

        return unit == WeightUnit.Bags
            ? packing with { Bags = packing.Bags ?? Count(cell, ColumnMeaning.Quantity, problems) }
            : packing with { StatedNet = packing.StatedNet ?? WeightIn(line, ColumnMeaning.Quantity, NumberRange.Quantity, problems) };
    }

    private static bool Says(string? text) => text is { Length: >= 4 } && !char.IsAsciiDigit(text[0]) | text.Contains(' ', StringComparison.Ordinal)
        && TradeWords.Has("bigbag", SearchText.Of(text));

    private void Check(Packing packing, bool isBigBag, RowProblems problems)
    {
        var heaviest = isBigBag ? checks.HeaviestBigBag : checks.HeaviestBag;
        if (packing.BagWeight is { } each && (each > heaviest || each <= Weight.Zero))
        {
            problems.Add(ColumnMeaning.BagWeight, each <= Weight.Zero
                ? "A bag of 0 kg holds nothing: type what one bag holds."
                : $"A bag of {Kg(each)} is heavier than any in the trade ({Allowed(heaviest, isBigBag)}): correct the weight of a bag.");
        }
        else if (packing is { BagWeight: null, Bags: > 0 and var bags, StatedNet: { } net } && net > heaviest * bags)
        {
            problems.Add(ColumnMeaning.NetWeight, $"{Kg(net)} in {bags} bags makes a bag heavier than any in the trade ({Allowed(heaviest, isBigBag)}): correct one of the two.");
        }
        else if (packing.Difference is { } difference && Size(difference) > packing.StatedNet!.Value.Kilograms * checks.WeightTolerance.Fraction)
        {
            problems.Add(
                ColumnMeaning.NetWeight,
                $"{packing.Bags} bags of {Kg(packing.BagWeight!.Value)} make {Kg(packing.StatedNet.Value + difference)}, but the net weight says {Kg(packing.StatedNet.Value)}: correct one of them.");
        }
    }

    private static string Allowed(Weight heaviest, bool isBigBag) =>
        isBigBag ? $"a big bag holds up to {Kg(heaviest)}" : $"a bag holds up to {Kg(heaviest)}, unless the row says big bag";

    private static decimal Size(Weight weight) => Math.Abs(weight.Kilograms);

    private static string Kg(Weight weight) => RowProblems.Figure(weight.Kilograms) + " kg";
}
