using Stateless;
using Stateless.Graph;

namespace GreenLedger.Domain.Contracts;

/// <summary>What the goods of a contract depend on when they move.</summary>
/// <param name="AsksApproval">The terms in force ask for an approved pre-shipment sample.</param>
/// <param name="IsApproved">Every lot has an approval on record.</param>
/// <param name="RefusalCancels">A refusal ends the contract: no approval no sale, or the last replacement was refused.</param>
/// <param name="IsPriced">Nothing is left to be fixed.</param>
internal sealed record GoodsFacts(bool AsksApproval, bool IsApproved, bool RefusalCancels, bool IsPriced);

/// <summary>The moves that the goods of a contract can make, and what each needs.</summary>
public static class GoodsMachine
{
    /// <summary>The state after a move.</summary>
    /// <exception cref="RuleBrokenException">This move cannot be made from here, or lacks what it needs.</exception>
    internal static GoodsState After(GoodsState state, GoodsMove move, GoodsFacts facts)
    {
        var machine = Of(state, facts);
        if (!machine.CanFire(move, out var lacking))
        {
            Rule.Require(false, lacking is not { Count: > 0 }
                ? $"The goods of this contract are “{state.Word()}”: from there they cannot go on to “{move.Word()}”."
                : $"To {move.Word()} this contract, one thing is missing: {string.Join(" or ", lacking)}.");
        }

        machine.Fire(move);
        return machine.State;
    }

    internal static bool Allows(GoodsState state, GoodsMove move, GoodsFacts facts) => Of(state, facts).CanFire(move);

    /// <summary>All states and moves as a Mermaid picture.</summary>
    public static string Picture() => MermaidGraph.Format(Of(GoodsState.Drafted, new GoodsFacts(false, false, false, false)).GetInfo());

    private static StateMachine<GoodsState, GoodsMove> Of(GoodsState state, GoodsFacts facts)
    {
        var machine = new StateMachine<GoodsState, GoodsMove>(state);
        machine.Configure(GoodsState.Drafted)
            .PermitIf(GoodsMove.Sign, GoodsState.AwaitingApproval, () => facts.AsksApproval, "approval is asked for")
            .PermitIf(GoodsMove.Sign, GoodsState.ReadyToShip, () => !facts.AsksApproval, "no approval is asked for")
            .Permit(GoodsMove.Cancel, GoodsState.Cancelled);
        machine.Configure(GoodsState.AwaitingApproval)
            .PermitReentryIf(GoodsMove.Amend, () => facts.AsksApproval, "approval is asked for")
            .PermitIf(GoodsMove.Amend, GoodsState.ReadyToShip, () => !facts.AsksApproval, "no approval is asked for")
            .PermitReentryIf(GoodsMove.Approve, () => !facts.IsApproved, "other lots wait for approval")
            .PermitIf(GoodsMove.Approve, GoodsState.ReadyToShip, () => facts.IsApproved, "every lot is approved")
            .PermitReentryIf(GoodsMove.Refuse, () => !facts.RefusalCancels, "a replacement may come")
            .PermitIf(GoodsMove.Refuse, GoodsState.Cancelled, () => facts.RefusalCancels, "no replacement may come")
            .Permit(GoodsMove.ShipPart, GoodsState.PartShipped)
            .Permit(GoodsMove.Ship, GoodsState.Shipped)
            .Permit(GoodsMove.Cancel, GoodsState.Cancelled);
        machine.Configure(GoodsState.ReadyToShip)
            .PermitReentryIf(GoodsMove.Amend, () => !facts.AsksApproval || facts.IsApproved, "no approval is missing")
            .PermitIf(GoodsMove.Amend, GoodsState.AwaitingApproval, () => facts.AsksApproval && !facts.IsApproved, "an approval is missing")
            .Permit(GoodsMove.ShipPart, GoodsState.PartShipped)
            .Permit(GoodsMove.Ship, GoodsState.Shipped)
            .Permit(GoodsMove.Cancel, GoodsState.Cancelled);
        ConfigureOnBoard(machine, facts);
        return machine;
    }

    /// <summary>A later part, or papers put right, may take the goods back to an earlier state: more is afloat again.</summary>
    private static void ConfigureOnBoard(StateMachine<GoodsState, GoodsMove> machine, GoodsFacts facts)
    {
        machine.Configure(GoodsState.PartShipped)
            .PermitReentry(GoodsMove.Amend)
            .PermitReentry(GoodsMove.Approve)
            .PermitReentry(GoodsMove.Refuse)
            .PermitReentry(GoodsMove.ShipPart)
            .Permit(GoodsMove.Ship, GoodsState.Shipped)
            .Permit(GoodsMove.ShipNoMore, GoodsState.Shipped);
        machine.Configure(GoodsState.Shipped)
            .PermitReentry(GoodsMove.Amend)
            .Permit(GoodsMove.ShipPart, GoodsState.PartShipped)
            .PermitReentry(GoodsMove.Ship)
            .Permit(GoodsMove.Arrive, GoodsState.Arrived);
        machine.Configure(GoodsState.Arrived)
            .PermitReentry(GoodsMove.Amend)
            .Permit(GoodsMove.ShipPart, GoodsState.PartShipped)
            .Permit(GoodsMove.Ship, GoodsState.Shipped)
            .PermitIf(GoodsMove.Close, GoodsState.Closed, () => facts.IsPriced, "the price is fixed");
    }
}
