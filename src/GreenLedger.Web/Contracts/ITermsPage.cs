using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;

namespace GreenLedger.Web.Contracts;

/// <summary>A page with the form of a contract's terms on it.</summary>
public interface ITermsPage
{
    TermsForm Input { get; }

    /// <summary>The lots that may stand on the contract, with their names.</summary>
    IReadOnlyList<ContractedLot> Known { get; }

    /// <summary>The standard forms in use, to choose from.</summary>
    IReadOnlyList<StandardForm> Forms { get; }

    /// <summary>The defect tables that full defects may be counted by.</summary>
    GradingStandards Standards { get; }

    /// <summary>True for a contract that is drafted, which gets its number.</summary>
    bool IsNew { get; }

    /// <summary>True where the version is an amendment, which needs a reason.</summary>
    bool IsAmendment { get; }

    /// <summary>What the button says.</summary>
    string Button { get; }
}
