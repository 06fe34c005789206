using System.Globalization;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Contracts;

/// <summary>
/// A purchase agreed with a supplier: its versions, what is fixed of its price, and how far its goods and its price have
/// come. The two move independently; every move is on record.
/// </summary>
public sealed partial class Contract
{
    private readonly List<ContractVersion> _versions = [];
    private readonly List<ContractLot> _lots = [];
    private readonly List<ContractMove> _moves = [];

    private Contract() => Ref = SearchText = "";

    public Id<Contract> Id { get; private set; }

    public int Version { get; private set; }

    /// <summary>The house's own number of the contract: P26-014.</summary>
    public string Ref { get; private set; }

    public Id<Supplier> SupplierId { get; private set; }

    public GoodsState Goods { get; private set; }

    public PriceState Price { get; private set; }

    /// <summary>Net weight by the terms that hold.</summary>
    public Weight NetWeight { get; private set; }

    public DateOnly ShipFrom { get; private set; }

    public DateOnly ShipUntil { get; private set; }

    /// <summary>The futures month that what is open stands against; null where nothing is to be fixed any more.</summary>
    public FuturesMonth? OpenMonth { get; private set; }

    /// <summary>What is still to be fixed, as it weighs in the market.</summary>
    public Weight OpenWeight { get; private set; }

    public string SearchText { get; private set; }

    /// <summary>Oldest first.</summary>
    public IReadOnlyList<ContractVersion> Versions => _versions;

    public IReadOnlyList<ContractLot> Lots => _lots;

    /// <summary>Oldest first.</summary>
    public IReadOnlyList<ContractMove> Moves => _moves;

    /// <summary>The newest version, signed or not.</summary>
    public ContractVersion Newest => _versions.MaxBy(version => version.Number)!;

    /// <summary>The version that holds: the last signed one; null for a draft.</summary>
    public ContractVersion? InForce => _versions.Where(version => version.IsSigned).MaxBy(version => version.Number);

    /// <summary>The terms that hold, or those of the draft.</summary>
    public ContractTerms Terms => (InForce ?? Newest).Terms;

    public bool IsSigned => InForce is not null;

    /// <summary>Neither closed nor cancelled.</summary>
    public bool IsOpen => Goods is not (GoodsState.Closed or GoodsState.Cancelled);

    /// <summary>Drafts a contract; each lot may follow a decision to buy it.</summary>
    /// <exception cref="RuleBrokenException">The terms lack something.</exception>
    public static Contract Draft(
        string @ref, Id<Supplier> supplierId, ContractTerms terms, IReadOnlyDictionary<Id<Lot>, Id<Decision>> decisions, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(decisions);
        var contract = new Contract
        {
            Id = Id<Contract>.New(),
            Ref = Rule.Text(@ref, "The number of the contract", 20, nameof(Ref)),
            SupplierId = supplierId,
        };
        contract._versions.Add(new ContractVersion(1, terms, null, by, at));
        contract.TakeLots(decisions);
        contract.Price = contract.Terms.Price.Begins();
        contract.Restate();
        return contract;
    }

    /// <summary>Writes the version that is not signed anew.</summary>
    /// <exception cref="RuleBrokenException">Every version is signed, or the terms lack something.</exception>
    public void Redraft(ContractTerms terms, string? reason, Id<Person> by, DateTimeOffset at)
    {
        RequireOpen();
        RequireFitting(terms);
        Newest.Rewrite(terms, Newest.Number == 1 ? null : Rule.Text(reason, "The reason for the amendment", 1000, "Reason"), by, at);
        if (!IsSigned)
        {
            Price = terms.Price.Begins();
            TakeLots(null);
            Restate();
        }
    }

    /// <summary>Writes an amendment, which holds once it is signed.</summary>
    /// <exception cref="RuleBrokenException">The newest version is not signed yet, or the terms contradict what is fixed.</exception>
    public void Amend(ContractTerms terms, string reason, Id<Person> by, DateTimeOffset at)
    {
        RequireOpen();
        Rule.Require(Newest.IsSigned, $"Version {Newest.Number} is not signed yet: change that one, or sign it first.");
        RequireFitting(terms);
        _versions.Add(new ContractVersion(Newest.Number + 1, terms, Rule.Text(reason, "The reason for the amendment", 1000, "Reason"), by, at));
        SearchText = Index();
    }

    /// <summary>Drops an amendment that was never signed.</summary>
    public void DropAmendment()
    {
        Rule.Require(!Newest.IsSigned && Newest.Number > 1, "There is no amendment that could be dropped: every version is signed.");
        _versions.Remove(Newest);
        SearchText = Index();
    }

    /// <summary>Both sides have signed the newest version, which holds from now on.</summary>
    /// <exception cref="RuleBrokenException">It is signed already, or its terms contradict what was fixed meanwhile.</exception>
    public void Sign(DateOnly on, string? forSeller, Id<Person> by, DateTimeOffset at)
    {
        RequireOpen();
        var version = Newest;
        Rule.Require(!version.IsSigned, $"Version {version.Number} was signed on {Day(version.SignedOn)} already: a contract is signed once, then amended.", "SignedOn");
        Rule.Require(on <= DateOnly.FromDateTime(at.UtcDateTime.AddHours(14)), "A signature lies in the past: please check the day.", "SignedOn");
        RequireFitting(version.Terms);
        version.Sign(on, forSeller, by, at);
        TakeLots(null);
        Go(version.Number == 1 ? GoodsMove.Sign : GoodsMove.Amend, on, version.Reason, by, at);
        if (version.Number > 1)
        {
            Go(PriceMove.Amend, on, version.Reason, by, at);
        }

        Restate();
    }

    /// <summary>Ends the contract by agreement, before anything was shipped.</summary>
    public void Cancel(DateOnly on, string? reason, Id<Person> by, DateTimeOffset at)
    {
        Go(GoodsMove.Cancel, on, Rule.Text(reason, "The reason for cancelling", 1000, "Reason"), by, at);
        Restate();
    }

    /// <summary>The lots of the terms that hold; a lot keeps its identity from version to version.</summary>
    private void TakeLots(IReadOnlyDictionary<Id<Lot>, Id<Decision>>? decisions)
    {
        var lines = Terms.Lots;
        _lots.RemoveAll(lot => lines.All(line => line.LotId != lot.LotId));
        foreach (var line in lines)
        {
            if (_lots.Find(lot => lot.LotId == line.LotId) is { } known)
            {
                known.Take(line);
            }
            else
            {
                _lots.Add(new ContractLot(line, decisions is not null && decisions.TryGetValue(line.LotId, out var decision) ? decision : null));
            }
        }
    }

    private void RequireOpen() => Rule.Require(IsOpen, $"Contract {Ref} is {Goods.Word()}: it does not change any more.");

    private void Restate()
    {
        (NetWeight, ShipFrom, ShipUntil) = (Terms.Net(), Terms.Delivery.ShipFrom, Terms.Delivery.ShipUntil);
        var open = IsOpen && Position is { IsFixed: false } position ? position : null;
        (OpenMonth, OpenWeight) = (open?.Month, open?.Open ?? Weight.Zero);
        SearchText = Index();
    }

    private string Index() => Measures.SearchText.Of(
        [Ref, Terms.Seller, .. Newest.Terms.Lots.SelectMany(lot => new[] { lot.Ref, lot.Name }), .. Terms.Lots.SelectMany(lot => new[] { lot.Ref, lot.Name })]);

    private static string Day(DateOnly? day) => day?.ToString("d MMM yyyy", CultureInfo.InvariantCulture) ?? "";
}
