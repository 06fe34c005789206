using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Arrivals;

/// <summary>
/// What an allowance does to the price of a kilogram that landed: lost weight that is not refunded makes it dearer, the
/// allowance cheaper (handbook, trade 8). Freight, duty and the like are not touched by it and stay out.
/// </summary>
/// <param name="Invoiced">The weight that is paid.</param>
/// <param name="Value">What it costs at the contract's price.</param>
/// <param name="Landed">The weight that there is.</param>
/// <param name="Allowance">What the seller pays or credits.</param>
public sealed record CostEffect(Weight Invoiced, PricePerWeight Price, Money Value, Weight Landed, Money Allowance)
{
    /// <summary>Of a landed kilogram without the allowance, unrounded.</summary>
    public decimal BeforePerKilogram => Value.Amount / Landed.Kilograms;

    /// <summary>With it.</summary>
    public decimal AfterPerKilogram => (Value - Allowance).Amount / Landed.Kilograms;

    /// <summary>The arithmetic, line by line, to four decimals.</summary>
    public IReadOnlyList<string> Sentences =>
    [
        $"{ClaimLine.Kg(Invoiced)} invoiced at {Price.AsQuoted()}: {ClaimLine.Said(Value)}.",
        $"Over {ClaimLine.Kg(Landed)} landed: {PerKilogram(BeforePerKilogram)}.",
        $"Less {ClaimLine.Said(Allowance)}: {PerKilogram(AfterPerKilogram)}, {PerKilogram(BeforePerKilogram - AfterPerKilogram)} less.",
    ];

    /// <summary>Null where no price is known or nothing landed.</summary>
    public static CostEffect? Of(ClaimCase found, Money? allowance)
    {
        ArgumentNullException.ThrowIfNull(found);
        return found is { Price: { } price, Receipt.Landed: { Micrograms: > 0 } landed }
            ? new CostEffect(found.Invoiced, price, price * found.Invoiced, landed, allowance ?? Money.Zero(price.Currency))
            : null;
    }

    private string PerKilogram(decimal amount) => amount.ToString("#,0.0000", CultureInfo.InvariantCulture) + $" {Price.Currency}/kg";
}
