using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;
using Route = GreenLedger.Domain.Pricing.Route;

namespace GreenLedger.Web.Pages.Pricing;

public sealed class RouteModel(LedgerContext db) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Route>? Id { get; set; }

    [BindProperty]
    public RouteForm Input { get; set; } = new();

    public string Title { get; private set; } = "";

    public bool IsInUse { get; private set; } = true;

    /// <summary>Answers to choose from; a further leg of a stage may be left out again.</summary>
    public IEnumerable<SelectListItem> Ways(CostStage stage, bool isFirst) => Enum.GetValues<LegWay>()
        .Where(way => way != LegWay.PercentOfCif || stage >= CostStage.Insurance)
        .Where(way => isFirst || way.HasFigure())
        .Select(way => new SelectListItem(way.Word(), way.ToString()))
        .Prepend(new SelectListItem(isFirst ? "choose…" : "left out", ""));

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (Id is null)
        {
            Input.Legs = [.. CostStages.All.Select(stage => new LegForm { Stage = stage })];
            return Page();
        }

        if (await FindAsync(cancellationToken) is not { } route)
        {
            return NotFound();
        }

        Show(route);
        Input = RouteForm.Of(route);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var route = Id is null
            ? new Route(Input.Name, Input.PortOfLoading, Input.PortOfDestination, Input.Warehouse, Input.OriginCountry)
            : await FindAsync(cancellationToken);
        if (route is null)
        {
            return NotFound();
        }

        if (Id is null)
        {
            db.Routes.Add(route);
        }
        else
        {
            OpenedOn(route, Input.Version);
        }

        Input.Onto(route);
        await db.Routes.AsNoTracking().RequireFreeNameAsync(route, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"The route {route.Name} is saved.");
        return RedirectToPage("/Pricing/Index");
    }

    /// <summary>Adds an empty leg for the same stage and shows the form as it was typed.</summary>
    public async Task<IActionResult> OnPostAnotherAsync(int after, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (after >= 0 && after < Input.Legs.Count && Input.Legs.Count < 100)
        {
            Input.Legs.Insert(after + 1, new LegForm { Stage = Input.Legs[after].Stage });
        }

        ModelState.Clear();
        return Page();
    }

    public Task<IActionResult> OnPostPutAwayAsync(CancellationToken cancellationToken) =>
        ChangeAsync(route => route.PutAway(), "is put away: no offer takes it.", cancellationToken);

    public Task<IActionResult> OnPostTakeUpAsync(CancellationToken cancellationToken) =>
        ChangeAsync(route => route.TakeUp(), "is in use again.", cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        if (Id is not null && await FindAsync(cancellationToken) is { } route)
        {
            Show(route);
        }
    }

    private Task<Route?> FindAsync(CancellationToken cancellationToken) =>
        db.Routes.Whole().SingleOrDefaultAsync(route => route.Id == Id, cancellationToken);

    private void Show(Route route) => (Title, IsInUse) = (route.Name, route.IsInUse);

    private async Task<IActionResult> ChangeAsync(Action<Route> act, string said, CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } route)
        {
            return NotFound();
        }

        act(route);
        await db.SaveChangesAsync(cancellationToken);
        Say($"The route {route.Name} {said}");
        return RedirectToPage("/Pricing/Index");
    }

    public sealed class RouteForm
    {
        public int Version { get; set; }

        [Required(ErrorMessage = "Name the route.")]
        [Display(Name = "Name of the route")]
        public string Name { get; set; } = "";

        [Display(Name = "Country of origin")]
        public string? OriginCountry { get; set; }

        [Required(ErrorMessage = "State the port of loading.")]
        [Display(Name = "Port of loading")]
        public string PortOfLoading { get; set; } = "";

        [Required(ErrorMessage = "State the port of destination.")]
        [Display(Name = "Port of destination")]
        public string PortOfDestination { get; set; } = "";

        [Required(ErrorMessage = "State the warehouse.")]
        public string Warehouse { get; set; } = "";

        [Display(Name = "Containers are shared over")]
        public SharedOver SharedOver { get; set; }

        [Display(Name = "Fill of a container, kg")]
        public decimal FillKg { get; set; } = 19_200m;

        [Display(Name = "Containers per shipment")]
        public int ContainersPerShipment { get; set; } = 1;

        [Display(Name = "Weight loss, %")]
        public decimal WeightLossPercent { get; set; }

        [Display(Name = "Insured share, %")]
        public decimal InsuredPercent { get; set; } = 110m;

        public IList<LegForm> Legs { get; set; } = [];

        public static RouteForm Of(Route route) => new()
        {
            Version = route.Version,
            Name = route.Name,
            OriginCountry = route.OriginCountry,
            PortOfLoading = route.PortOfLoading,
            PortOfDestination = route.PortOfDestination,
            Warehouse = route.Warehouse,
            SharedOver = route.SharedOver,
            FillKg = route.Fill.Kilograms / 1.000000000m,
            ContainersPerShipment = route.ContainersPerShipment,
            WeightLossPercent = route.WeightLoss.Points,
            InsuredPercent = route.Insured.Points,
            Legs =
            [
                .. route.Legs.Select(leg => LegForm.Of(leg.Line))
                    .Concat(route.Unanswered.Select(stage => new LegForm { Stage = stage }))
                    .OrderBy(leg => leg.Stage),
            ],
        };

        public void Onto(Route route)
        {
            route.Rename(Name, PortOfLoading, PortOfDestination, Warehouse, OriginCountry);
            route.Share(SharedOver, Weight.FromKilograms(FillKg), ContainersPerShipment, Percent.Of(WeightLossPercent), Percent.Of(InsuredPercent));
            route.Answer([.. Legs.Select((leg, index) => leg.Leg(index)).OfType<RouteLeg>()]);
            route.RequireComplete();
        }
    }

    public sealed class LegForm
    {
        public CostStage Stage { get; set; }

        public LegWay? Way { get; set; }

        [Display(Name = "Amount or %")]
        public decimal? Figure { get; set; }

        public string? Currency { get; set; }

        public int? Time { get; set; }

        public string? Name { get; set; }

        public static LegForm Of(LegLine line) => new()
        {
            Stage = line.Stage,
            Way = line.Way,
            Figure = line.Figure / 1.000000000m,
            Currency = line.Currency?.Code,
            Time = line.Time,
            Name = line.Name == line.Stage.Word() ? null : line.Name,
        };

        /// <summary>Null when nothing is chosen.</summary>
        public RouteLeg? Leg(int index) => Way is not { } way ? null : RouteLeg.From(
            new LegLine(Stage, way, Figure, string.IsNullOrEmpty(Currency) ? null : Domain.Measures.Currency.Of(Currency), Time, Name), $"Legs[{index}].");
    }
}
