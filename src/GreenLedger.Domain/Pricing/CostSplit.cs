using System.Collections.Frozen;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Pricing;

/// <summary>Who pays for a stage under a delivery rule.</summary>
public enum Payer
{
    Seller = 0,
    Buyer = 1,

    /// <summary>The stage does not occur under this rule, or the handbook's table does not count it.</summary>
    Nobody = 2,
}

/// <summary>
/// Which stages the buyer still pays under a delivery rule and its named place: ICC Incoterms 2020 (A4/A5, A9/B9) as
/// tabled in the handbook, trade 3.1 and 3.2. FAS is not in that table: seller up to alongside the ship, from memory.
/// </summary>
public sealed class CostSplit
{
    private static readonly FrozenDictionary<(Incoterm, DeliveryPlace), CostSplit> Splits = Table();

    private readonly Payer[] _payers;

    private CostSplit(Incoterm delivery, DeliveryPlace place, string letters)
    {
        Delivery = delivery;
        Place = place;
        _payers = [.. letters.Where(letter => letter != ' ').Select(letter => letter switch
        {
            'S' => Payer.Seller,
            'B' => Payer.Buyer,
            _ => Payer.Nobody,
        })];
    }

    public Incoterm Delivery { get; }

    public DeliveryPlace Place { get; }

    /// <summary>True when loss of weight on the way is the buyer's: every rule under which risk passes at origin.</summary>
    public bool LosesWeight => Delivery is not (Incoterm.Dap or Incoterm.Dpu or Incoterm.Ddp or Incoterm.ExWarehouse);

    /// <summary>Every split there is, in the order of the way.</summary>
    public static IReadOnlyList<CostSplit> All { get; } =
        [.. Splits.Values.OrderBy(split => Order(split.Delivery)).ThenBy(split => split.Place)];

    /// <summary>The split of a rule at a kind of place; a place the rule cannot have is read as the rule's usual one.</summary>
    public static CostSplit Of(Incoterm delivery, DeliveryPlace place) =>
        Splits.TryGetValue((delivery, place), out var split) ? split : Splits[(delivery, UsualPlace(delivery))];

    public Payer PayerOf(CostStage stage) => _payers[(int)stage];

    /// <summary>
    /// Where a rule delivers when its place is not known. Before the main carriage is paid it is the place that leaves
    /// the buyer the most to pay, so that a landed cost is never too low for want of a word; from DAP on the warehouse.
    /// </summary>
    public static DeliveryPlace UsualPlace(Incoterm delivery) => delivery switch
    {
        Incoterm.Exw or Incoterm.Fca => DeliveryPlace.Mill,
        Incoterm.Fas or Incoterm.Fob => DeliveryPlace.PortOfLoading,
        Incoterm.Cfr or Incoterm.Cif or Incoterm.Cpt or Incoterm.Cip => DeliveryPlace.PortOfDestination,
        Incoterm.Dap or Incoterm.Dpu or Incoterm.Ddp => DeliveryPlace.Inland,
        _ => DeliveryPlace.SpotWarehouse,
    };

    private static int Order(Incoterm delivery) => delivery switch
    {
        Incoterm.Exw => 0,
        Incoterm.Fca => 1,
        Incoterm.Fas => 2,
        Incoterm.Fob => 3,
        Incoterm.ExWarehouse => 20,
        _ => 4 + (int)delivery,
    };

    /// <summary>
    /// Letters by stage: at origin (packing, loading, inland, export, terminal, on board) · freight, insurance · at
    /// destination (terminal, documents, import clearance, inspection, duty) · handling out · haulage, unloading,
    /// weighing and sampling · finance, storage.
    /// </summary>
    private static FrozenDictionary<(Incoterm, DeliveryPlace), CostSplit> Table()
    {
        CostSplit[] splits =
        [
            new(Incoterm.Exw, DeliveryPlace.Mill, "SBBBBB BB BBBBB - BBB BB"),
            new(Incoterm.Fca, DeliveryPlace.Mill, "SSBSBB BB BBBBB - BBB BB"),
            new(Incoterm.Fca, DeliveryPlace.OriginTerminal, "SSSSBB BB BBBBB - BBB BB"),
            new(Incoterm.Fca, DeliveryPlace.PortOfLoading, "SSSSBB BB BBBBB - BBB BB"),
            new(Incoterm.Fas, DeliveryPlace.PortOfLoading, "SSSSSB BB BBBBB - BBB BB"),
            new(Incoterm.Fob, DeliveryPlace.PortOfLoading, "SSSSSS BB BBBBB - BBB BB"),
            new(Incoterm.Cfr, DeliveryPlace.PortOfDestination, "SSSSSS SB BBBBB - BBB BB"),
            new(Incoterm.Cif, DeliveryPlace.PortOfDestination, "SSSSSS SS BBBBB - BBB BB"),
            new(Incoterm.Cpt, DeliveryPlace.PortOfDestination, "SSSSSS SB BBBBB - BBB BB"),
            new(Incoterm.Cpt, DeliveryPlace.Inland, "SSSSSS SB SSBBB - SBB BB"),
            new(Incoterm.Cip, DeliveryPlace.PortOfDestination, "SSSSSS SS BBBBB - BBB BB"),
            new(Incoterm.Cip, DeliveryPlace.Inland, "SSSSSS SS SSBBB - SBB BB"),
            new(Incoterm.Dap, DeliveryPlace.PortOfDestination, "SSSSSS SS SSBBB - BB- BB"),
            new(Incoterm.Dap, DeliveryPlace.Inland, "SSSSSS SS SSBBB - SB- BB"),
            new(Incoterm.Dpu, DeliveryPlace.PortOfDestination, "SSSSSS SS SSBBB - BB- BB"),
            new(Incoterm.Dpu, DeliveryPlace.Inland, "SSSSSS SS SSBBB - SS- BB"),
            new(Incoterm.Ddp, DeliveryPlace.PortOfDestination, "SSSSSS SS SSSSS - BB- BB"),
            new(Incoterm.Ddp, DeliveryPlace.Inland, "SSSSSS SS SSSSS - SB- BB"),
            new(Incoterm.ExWarehouse, DeliveryPlace.SpotWarehouse, "SSSSSS SS SSSSS B B-- B-"),
        ];
        return splits.ToFrozenDictionary(split => (split.Delivery, split.Place));
    }
}
