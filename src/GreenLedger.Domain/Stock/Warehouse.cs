
namespace GreenLedger.Domain.Stock;

/// <summary>A place where the house keeps green coffee.</summary>
public sealed class Warehouse
{
    private Warehouse() => Name = "";

    /// <exception cref="RuleBrokenException">It has no name.</exception>
    public Warehouse(string name)
        : this()
    {
        Id = Id<Warehouse>.New();
        Call(name);
    }

    public Id<Warehouse> Id { get; private set; }

    public int Version { get; private set; }

    public string Name { get; private set; }

    /// <summary>The name folded, so that no two warehouses differ by a capital or an accent alone.</summary>
    public string SearchText { get; private set; } = "";

    /// <exception cref="RuleBrokenException">It has no name.</exception>
    public void Call(string name)
    {
        Name = Rule.Text(name, "The name of the warehouse", 80, nameof(Name));
        SearchText = Measures.SearchText.Of(Name);
    }
}
