using System.ComponentModel.DataAnnotations;
using GreenLedger.Data.Trace;
using GreenLedger.Domain.Trace;
using GreenLedger.Web.People;
using GreenLedger.Web.Trace;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Trace;

/// <summary>Starts a mock recall of a lot, a plot, a shipment, or whatever else a trace starts from.</summary>
public sealed class NewRecallModel(TraceQuery query, RecallActs acts) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public TraceFrom From { get; set; }

    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    [BindProperty]
    public RecallForm Input { get; set; } = new();

    public string? Name { get; private set; }

    protected override bool IsThere => Name is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return IsThere ? Page() : NotFound();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) =>
        await acts.StartAsync(From, Id, Input.Reason, User.Person(), cancellationToken) is { } recall ? RedirectToPage("Recall", new { id = recall.Id }) : NotFound();

    protected override async Task LoadAsync(CancellationToken cancellationToken) => Name = (await query.FindAsync(From, Id, cancellationToken))?.Name;

    public sealed class RecallForm
    {
        [Required(ErrorMessage = "Why is it held?")]
        public string? Reason { get; set; }
    }
}
