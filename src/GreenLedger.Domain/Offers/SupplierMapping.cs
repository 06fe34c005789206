namespace GreenLedger.Domain.Offers;

/// <summary>
/// The mapping that a buyer confirmed for a supplier's lists with these headings: it is proposed again when the next list
/// has the same headings.
/// </summary>
public sealed class SupplierMapping
{
    private SupplierMapping()
    {
        Headings = "";
        Mapping = "";
    }

    public SupplierMapping(Id<Supplier> supplierId, string headings, string mapping, DateTimeOffset at)
    {
        Id = Id<SupplierMapping>.New();
        SupplierId = supplierId;
        Headings = headings;
        Mapping = mapping;
        At = at;
    }

    public Id<SupplierMapping> Id { get; private set; }

    public Id<Supplier> SupplierId { get; private set; }

    /// <summary>The folded headings, joined by bars: what the next list is recognised by.</summary>
    public string Headings { get; private set; }

    /// <summary>The mapping as JSON.</summary>
    public string Mapping { get; private set; }

    public DateTimeOffset At { get; private set; }

    public void Remember(string mapping, DateTimeOffset at)
    {
        Mapping = mapping;
        At = at;
    }
}
