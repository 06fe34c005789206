using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>Approves or refuses a pre-shipment sample.</summary>
internal sealed class ApproveModel(LedgerContext db, ApprovalQuery query, Reader reader, HouseZone house, TimeProvider clock) : ContractPage(db, house, clock)
{
    [BindProperty]
    public ApproveForm Input { get; set; } = new();

    /// <summary>Pre-shipment samples of the contract's lots that are here and not judged, each beside the offer samples of its lot.</summary>
    public IReadOnlyList<ApprovalCase> Samples { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        (Input.Version, Input.On) = (Shown!.Version, Today);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var id = new Id<Sample>(Input.SampleId);
        var sample = await Db.Samples.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
        Rule.Require(sample is not null, "Choose the sample.", nameof(Input.SampleId));
        return await ActAsync(Input.Version, contract =>
        {
            contract.Judge(sample, Input.Verdict, Input.Remarks, Input.On!.Value, User.Person(), Now);
            return $"Sample {sample.LabelCode} is {Input.Verdict.Word()}; {contract.Ref} is {contract.Goods.Word()}.";
        }, cancellationToken);
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        await base.LoadAsync(cancellationToken);
        Samples = await query.ToJudgeAsync(Shown!, await reader.SealAsync(), cancellationToken);
    }

    internal sealed class ApproveForm
    {
        public int Version { get; set; }

        [Display(Name = "Sample")]
        public Guid SampleId { get; set; }

        [Display(Name = "It is")]
        public ApprovalVerdict Verdict { get; set; }

        [Display(Name = "Day")]
        [Required(ErrorMessage = "On which day was it judged?")]
        public DateOnly? On { get; set; }

        [Display(Name = "Remarks or reasons")]
        public string? Remarks { get; set; }
    }
}
