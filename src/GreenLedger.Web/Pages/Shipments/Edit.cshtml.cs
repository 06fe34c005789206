using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Shipments;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Shipments;

/// <summary>Writes down a shipment, new or known: passage, containers, and the lots of signed contracts on it.</summary>
public sealed class EditModel(LedgerContext db, ShipmentQuery query, HouseZone house, TimeProvider clock) : FormPage
{
    /// <summary>Empty for a new one.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Shipment>? Id { get; set; }

    /// <summary>The contract whose lots are put on it.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Contract>? Contract { get; set; }

    [BindProperty]
    public EditForm Input { get; set; } = new();

    public string? Ref { get; private set; }

    /// <summary>Signed and open ones, to choose from.</summary>
    public IReadOnlyList<Contract> Contracts { get; private set; } = [];

    /// <summary>What of each of them is on board and left.</summary>
    public IReadOnlyDictionary<Id<Contract>, ContractProgress> Progress { get; private set; } = new Dictionary<Id<Contract>, ContractProgress>();

    /// <summary>How each lot of the form is called.</summary>
    public IReadOnlyDictionary<Id<ContractLot>, string> Names { get; private set; } = new Dictionary<Id<ContractLot>, string>();

    /// <summary>The lots of the form that are not on board yet and lack the approval that their contract asks for.</summary>
    public IReadOnlyList<string> Unapproved =>
    [
        .. Contracts.SelectMany(contract => contract.Lots.Where(lot => contract.LacksApproval(lot.LotId)))
            .Where(lot => Input.Lots.Exists(line => line.ContractLot == lot.Id.Value) && !Boarded.Contains(lot.Id)).Select(lot => Names[lot.Id]),
    ];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        var shipment = await FindAsync(cancellationToken);
        if (Id is not null && shipment is null)
        {
            return NotFound();
        }

        await LoadAsync(cancellationToken);
        Input = shipment is null ? new EditForm() : EditForm.Of(shipment);
        AddLots();
        return Page();
    }

    /// <summary>Shows the lots of a contract beside those that stand there; stores nothing.</summary>
    public async Task<IActionResult> OnPostLotsAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        ModelState.Clear();
        AddLots();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await using var turn = await db.NumberAsync(cancellationToken);
        var shipment = await FindAsync(cancellationToken);
        if (Id is not null && shipment is null)
        {
            return NotFound();
        }

        if (shipment is null)
        {
            shipment = new Shipment(await db.Shipments.NextRefAsync(house.Today, cancellationToken), Input.Passage());
            db.Add(shipment);
        }
        else
        {
            OpenedOn(shipment, Input.Version);
            shipment.Sail(Input.Passage());
        }

        shipment.Load(Input.ContainerLines());
        var lading = await query.LadingAsync(shipment, Input.Lots.ConvertAll(line => new Id<ContractLot>(line.ContractLot)), cancellationToken);
        lading.Enter(shipment, Input.Lots.Select(line => line.Lading()), Input.Reason, User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return RedirectToPage("Shipment", new { shipment.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Ref = Id is null ? null : await db.Shipments.Where(shipment => shipment.Id == Id).Select(shipment => shipment.Ref).SingleOrDefaultAsync(cancellationToken);
        Boarded = Id is null ? [] : (await db.Shipments.AsNoTracking().Where(shipment => shipment.Id == Id)
            .SelectMany(shipment => shipment.Lots.Where(lot => lot.BoardedOn != null), (_, lot) => lot.ContractLotId).ToListAsync(cancellationToken)).ToHashSet();
        Contracts = await db.Contracts.AsNoTracking().Whole()
            .Where(contract => contract.Goods != GoodsState.Drafted && contract.Goods != GoodsState.Closed && contract.Goods != GoodsState.Cancelled)
            .OrderByDescending(contract => contract.Ref).Take(200).ToListAsync(cancellationToken);
        Progress = await query.ProgressAsync(Contracts, cancellationToken);
        Names = Contracts.SelectMany(contract => contract.Lots.Select(lot => (lot.Id, Line: contract.Terms.Lots.FirstOrDefault(line => line.LotId == lot.LotId), contract.Ref)))
            .ToDictionary(lot => lot.Id, lot => $"{lot.Line?.Ref} {lot.Line?.Name} of {lot.Ref}");
    }

    /// <summary>Lots of this shipment that their contracts know to be on board: what lacked then is said already.</summary>
    private HashSet<Id<ContractLot>> Boarded { get; set; } = [];

    protected override bool IsJudged => Request.Query["handler"] != "Lots";

    private void AddLots() => Input.Lots.AddRange(Contracts.Where(contract => contract.Id == Contract).SelectMany(contract => Progress[contract.Id].Lots)
        .Where(lot => Input.Lots.TrueForAll(known => known.ContractLot != lot.Lot.Id.Value))
        .Select(lot => LotLine.Of(lot, isNew: Id is null)).ToList());

    private async Task<Shipment?> FindAsync(CancellationToken cancellationToken) =>
        Id is null ? null : await db.Shipments.Whole().SingleOrDefaultAsync(shipment => shipment.Id == Id, cancellationToken);

    public sealed class LotLine
    {
        public Guid ContractLot { get; set; }

        public int Bags { get; set; }

        public decimal NetKg { get; set; }

        internal LadingLine Lading() => new(new Id<ContractLot>(ContractLot), Bags, Weight.FromKilograms(Math.Clamp(NetKg, 0m, 1_000_000_000m)));

        /// <summary>On a new shipment: what no other shipment carries yet.</summary>
        internal static LotLine Of(LotProgress lot, bool isNew) => new()
        {
            ContractLot = lot.Lot.Id.Value,
            Bags = isNew ? Math.Max(0, lot.BagsLeft - lot.AnnouncedBags) : 0,
            NetKg = isNew ? Math.Max(0m, (lot.Left - lot.Announced).Kilograms) : 0m,
        };
    }

    public sealed class EditForm
    {
        public int Version { get; set; }

        [Display(Name = "Bill of lading")]
        public string? BillOfLading { get; set; }

        public string? Vessel { get; set; }

        public string? Voyage { get; set; }

        [Required(ErrorMessage = "Give the port of loading by its UN/LOCODE.")]
        [Display(Name = "Port of loading")]
        public string? PortOfLoading { get; set; }

        [Required(ErrorMessage = "Give the port of destination by its UN/LOCODE.")]
        [Display(Name = "Port of destination")]
        public string? PortOfDestination { get; set; }

        [Display(Name = "Planned departure")]
        public DateOnly? PlannedDeparture { get; set; }

        [Display(Name = "Planned arrival")]
        public DateOnly? PlannedArrival { get; set; }

        [Display(Name = "On board")]
        public DateOnly? ShippedOn { get; set; }

        [Display(Name = "Discharged")]
        public DateOnly? DischargedOn { get; set; }

        [Display(Name = "Cleared")]
        public DateOnly? ClearedOn { get; set; }

        [Display(Name = "Available")]
        public DateOnly? AvailableOn { get; set; }

        public string? Containers { get; set; }

        [Display(Name = "If it shipped without approval: what happened")]
        public string? Reason { get; set; }

        public List<LotLine> Lots { get; set; } = [];

        internal Passage Passage() => new(BillOfLading, Vessel, Voyage, PortOfLoading!, PortOfDestination!, PlannedDeparture, PlannedArrival, ShippedOn, DischargedOn, ClearedOn, AvailableOn);

        /// <summary>A line for each container: its number, and the seal behind it.</summary>
        internal IReadOnlyList<(string Number, string? Seal)> ContainerLines() =>
            [.. (Containers ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                .Select(line => line.Split([' ', '\t', ';', ','], 2, StringSplitOptions.TrimEntries))
                .Select(parts => (parts[0], parts.ElementAtOrDefault(1)))];

        internal static EditForm Of(Shipment shipment) => new()
        {
            Version = shipment.Version,
            BillOfLading = shipment.BillOfLading,
            Vessel = shipment.Vessel,
            Voyage = shipment.Voyage,
            PortOfLoading = shipment.PortOfLoading,
            PortOfDestination = shipment.PortOfDestination,
            PlannedDeparture = shipment.PlannedDeparture,
            PlannedArrival = shipment.PlannedArrival,
            ShippedOn = shipment.ShippedOn,
            DischargedOn = shipment.DischargedOn,
            ClearedOn = shipment.ClearedOn,
            AvailableOn = shipment.AvailableOn,
            Containers = string.Join('\n', shipment.Containers.Select(container => $"{container.Number} {container.SealNumber}".Trim())),
            Lots = [.. shipment.Lots.Select(lot => new LotLine { ContractLot = lot.ContractLotId.Value, Bags = lot.Bags, NetKg = lot.Net.Kilograms })],
        };
    }
}
