using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Contracts;

/// <summary>What a weight of a contract is invoiced at.</summary>
/// <param name="IsProvisional">Part of the price is taken from a settlement and changes until it is fixed.</param>
/// <param name="Net">The weight invoiced.</param>
/// <param name="Settlement">What the open part is taken at, as the market quotes; null where nothing is open.</param>
/// <param name="Value">The whole value of the weight, rounded once.</param>
/// <param name="Share">What is paid of a provisional value, as agreed.</param>
public sealed record InvoiceValue(bool IsProvisional, Weight Net, decimal? Settlement, Money Value, Percent? Share)
{
    /// <summary>What the provisional invoice asks for, or the whole of a final one.</summary>
    public Money Due => IsProvisional && Share is { } share ? Money.Of(Value.Amount * share.Fraction, Value.Currency) : Value;

    /// <summary>What the final invoice asks for beyond what was paid; negative when too much was.</summary>
    /// <exception cref="RuleBrokenException">Paid in another currency.</exception>
    public Money Balance(Money paid)
    {
        Rule.Require(paid.Currency == Value.Currency, $"This contract is invoiced in {Value.Currency}: state what was paid in it.", "Paid");
        return Value - paid;
    }

    public static InvoiceValue Outright(PricePerWeight price, Weight net) => new(false, net, null, price * net, null);

    /// <summary>Null where something is open and no settlement is known.</summary>
    public static InvoiceValue? Of(FixingPosition position, Weight net, decimal? settlement, Percent? share)
    {
        ArgumentNullException.ThrowIfNull(position);
        return position.FinalValue(net) is { } final ? new InvoiceValue(false, net, null, final, null)
            : settlement is { } level ? new InvoiceValue(true, net, level, position.ProvisionalValue(net, level), share)
            : null;
    }
}
