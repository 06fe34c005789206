using Stateless;
using Stateless.Graph;

namespace GreenLedger.Domain.Contracts;

/// <summary>What the price of a contract depends on when it moves.</summary>
/// <param name="IsSigned">A version of the contract is signed, and it is neither closed nor cancelled.</param>
/// <param name="IsWhole">After the move nothing is open.</param>
/// <param name="IsNone">After the move nothing is fixed.</param>
/// <param name="IsOutright">The terms in force name an outright price.</param>
internal sealed record PriceFacts(bool IsSigned, bool IsWhole, bool IsNone, bool IsOutright);

/// <summary>The moves that the price of a contract can make, and what each needs.</summary>
public static class PriceMachine
{
    private const string Signed = "the contract is signed and open";

    /// <summary>The state after a move.</summary>
    /// <exception cref="RuleBrokenException">This move cannot be made from here, or lacks what it needs.</exception>
    internal static PriceState After(PriceState state, PriceMove move, PriceFacts facts)
    {
        Rule.Require(facts.IsSigned, $"The price of a contract that is not signed, or is closed or cancelled, cannot {move.Word()}: sign the contract first.");
        var machine = Of(state, facts);
        Rule.Require(machine.CanFire(move), $"The price of this contract is {state.Word()}: there is nothing to {move.Word()}.");
        machine.Fire(move);
        return machine.State;
    }

    internal static bool Allows(PriceState state, PriceMove move, PriceFacts facts) => Of(state, facts).CanFire(move);

    /// <summary>All states and moves as a Mermaid picture.</summary>
    public static string Picture() => MermaidGraph.Format(Of(PriceState.Unfixed, new PriceFacts(false, false, false, false)).GetInfo());

    private static StateMachine<PriceState, PriceMove> Of(PriceState state, PriceFacts facts)
    {
        var machine = new StateMachine<PriceState, PriceMove>(state);
        Fixable(machine.Configure(PriceState.Unfixed).PermitReentryIf(PriceMove.Roll, () => facts.IsSigned, Signed), facts)
            .PermitIf(PriceMove.Fix, PriceState.PartlyFixed, () => facts is { IsSigned: true, IsWhole: false }, "something is left open");
        Fixable(machine.Configure(PriceState.PartlyFixed).PermitReentryIf(PriceMove.Roll, () => facts.IsSigned, Signed), facts)
            .PermitReentryIf(PriceMove.Fix, () => facts is { IsSigned: true, IsWhole: false }, "something is left open")
            .PermitIf(PriceMove.TakeBack, PriceState.Unfixed, () => facts is { IsSigned: true, IsNone: true }, "nothing stays fixed")
            .PermitReentryIf(PriceMove.TakeBack, () => facts is { IsSigned: true, IsNone: false }, "something stays fixed")
            .PermitReentryIf(PriceMove.Amend, () => facts is { IsSigned: true, IsWhole: false }, "something is left open")
            .PermitIf(PriceMove.Amend, PriceState.Fixed, () => facts is { IsSigned: true, IsWhole: true }, "nothing is left open");
        machine.Configure(PriceState.Fixed)
            .PermitIf(PriceMove.TakeBack, PriceState.Unfixed, () => facts is { IsSigned: true, IsNone: true }, "nothing stays fixed")
            .PermitIf(PriceMove.TakeBack, PriceState.PartlyFixed, () => facts is { IsSigned: true, IsNone: false }, "something stays fixed")
            .PermitIf(PriceMove.Amend, PriceState.PartlyFixed, () => facts is { IsSigned: true, IsWhole: false }, "more is to be fixed")
            .PermitReentryIf(PriceMove.Amend, () => facts is { IsSigned: true, IsWhole: true }, "all of it is fixed");
        machine.Configure(PriceState.Unfixed)
            .PermitReentryIf(PriceMove.Amend, () => facts is { IsSigned: true, IsOutright: false }, "to be fixed")
            .PermitIf(PriceMove.Amend, PriceState.Outright, () => facts is { IsSigned: true, IsOutright: true }, "an outright price");
        machine.Configure(PriceState.Outright)
            .PermitReentryIf(PriceMove.Amend, () => facts is { IsSigned: true, IsOutright: true }, "an outright price")
            .PermitIf(PriceMove.Amend, PriceState.Unfixed, () => facts is { IsSigned: true, IsOutright: false }, "to be fixed");
        return machine;
    }

    private static StateMachine<PriceState, PriceMove>.StateConfiguration Fixable(
        StateMachine<PriceState, PriceMove>.StateConfiguration state, PriceFacts facts) =>
        state.PermitIf(PriceMove.Fix, PriceState.Fixed, () => facts is { IsSigned: true, IsWhole: true }, "nothing is left open");
}
