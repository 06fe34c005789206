namespace GreenLedger.Web.People;

/// <summary>
/// Puts a page or an API handler into an area of docs/roles.md other than that of its folder or path.
/// </summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
internal sealed class InAreaAttribute(string area) : Attribute
{
    public string Area { get; } = area;
}
