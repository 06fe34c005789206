namespace GreenLedger.Domain.People;

/// <summary>What a person may do in the house; one person may hold several. The table is in docs/roles.md.</summary>
[Flags]
public enum Role
{
    None = 0,
    Viewer = 1,
    Cupper = 2,
    LeadCupper = 4,
    Buyer = 8,
    Administrator = 16,
}
