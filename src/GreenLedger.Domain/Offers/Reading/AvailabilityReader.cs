using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers.Reading.Words;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>Whether a row can still be had, and from when: the text as written, and a day where one could be read.</summary>
internal sealed record Availability(OfferState State, string? AsWritten, DateOnly? From);

/// <summary>Reads "Si", "VENDIDO", "ene 2027", "ab Januar 2027" and their like.</summary>
internal static class AvailabilityReader
{
    private static readonly Availability Open = new(OfferState.OnOffer, null, null);

    /// <summary>A price cell may say "sold" too, since many lists write it over the price.</summary>
    public static Availability Read(Cell cell, Cell price)
    {
        if (cell.IsEmpty)
        {
            return price.Number is null && !price.IsEmpty && Says("sold", SearchText.Of(price.Text)) ? Open with { State = OfferState.Sold } : Open;
        }

        if (cell.Date is { } date)
        {
            return new Availability(OfferState.OnOffer, null, date);
        }

        var folded = SearchText.Of(cell.Text);
        if (TradeWords.Is("available", folded))
        {
            return Open;
        }

        if (Says("sold", folded))
        {
            return new Availability(OfferState.Sold, Beyond(cell, "sold", folded), null);
        }

        return TradeWords.Is("withdrawn", folded)
            ? Open with { State = OfferState.Withdrawn }
            : new Availability(OfferState.OnOffer, cell.Trimmed, DateText.Day(cell.Text) ?? FirstOf(DateText.Month(cell.Text)));
    }

    private static bool Says(string key, string folded) => TradeWords.Is(key, folded) || TradeWords.Has(key, folded);

    /// <summary>Text that says more than the word alone is kept.</summary>
    private static string? Beyond(Cell cell, string key, string folded) => TradeWords.Is(key, folded) ? null : cell.Trimmed;

    private static DateOnly? FirstOf((int Year, int Month)? month) => month is { } when ? new DateOnly(when.Year, when.Month, 1) : null;
}
