namespace GreenLedger.Web.People;

/// <summary>What a role may do in an area: nothing, look, or change.</summary>
internal enum Access
{
    None = 0,
    Read = 1,
    Write = 2,
}
