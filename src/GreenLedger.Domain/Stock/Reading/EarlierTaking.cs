using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Stock.Reading;

/// <summary>
/// Earlier contracts taken in by the rules of the contract room: each is drafted, signed, fixed, shipped and closed as it would
/// have been here. What breaks a rule is set aside with its whole contract; nothing of it is stored by this.
/// </summary>
public sealed class EarlierTaking
{
    private readonly EarlierList _list;
    private readonly EarlierCase _facts;
    private readonly List<EarlierContract> _contracts = [];
    private readonly Dictionary<string, Supplier> _newSuppliers = [];
    private readonly Dictionary<string, Lot> _newLots = new(StringComparer.OrdinalIgnoreCase);

    private EarlierTaking(EarlierList list, EarlierCase facts)
    {
        (_list, _facts) = (list, facts);
        foreach (var entry in list.Entries.ToList())
        {
            Take(entry);
        }
    }

    public IReadOnlyList<EarlierContract> Contracts => _contracts;

    public IReadOnlyList<Offers.Reading.RowSetAside> SetAside => _list.SetAside;

    public IReadOnlyCollection<Supplier> NewSuppliers => _newSuppliers.Values;

    public IReadOnlyCollection<Lot> NewLots => _newLots.Values;

    public static EarlierTaking Of(EarlierList list, EarlierCase facts)
    {
        ArgumentNullException.ThrowIfNull(list);
        ArgumentNullException.ThrowIfNull(facts);
        return new EarlierTaking(list, facts);
    }

    private void Take(EarlierEntry entry)
    {
        var drafting = new EarlierDrafting(entry, _facts, _newSuppliers, _newLots);
        try
        {
            var contract = drafting.Conclude();
            _contracts.Add(contract);
            if (contract.IsNewSupplier)
            {
                _newSuppliers[SearchText.Of(contract.Supplier.Name)] = contract.Supplier;
            }

            foreach (var line in contract.Lines.Where(line => line.IsNewLot))
            {
                _newLots[line.Lot.Ref] = line.Lot;
            }
        }
        catch (RuleBrokenException broken)
        {
            _list.Refuse(entry, drafting.At, EarlierDrafting.Named(broken));
        }
    }
}
