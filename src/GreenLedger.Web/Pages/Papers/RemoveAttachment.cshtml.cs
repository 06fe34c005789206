using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Display;
using GreenLedger.Web.Offers;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Papers;

internal sealed class RemoveAttachmentModel(LedgerContext db, PapersReader papers, DiligenceQuery diligences, DiligenceActs acts, HouseZone house, TimeProvider clock) : RemovalPage<Attachment>(db, papers, clock)
{
    [BindProperty]
    public MistakeForm Input { get; set; } = new();

    /// <summary>The last day on which it is kept as evidence; null for a file that can go.</summary>
    public DateOnly? KeptUntil { get; private set; }

    /// <summary>Whether this person may take it back as attached by mistake.</summary>
    public bool MayTakeBack { get; private set; }

    protected override string Called(Attachment paper) => paper.FileName;

    /// <summary>Evidence of due diligence is kept for the years that the house states, unless whoever attached it takes it back on the same day.</summary>
    protected override Task LetGoAsync(Attachment paper, CancellationToken cancellationToken) => acts.LetGoAsync(paper, Input.MistakenBecause, User.Person(), cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        await base.LoadAsync(cancellationToken);
        if (Paper is { About: PapersOf.Lot } paper && (await diligences.KeptAsync(new Id<Lot>(paper.AboutId), house.Today, cancellationToken)).TryGetValue(paper.Id, out var until))
        {
            KeptUntil = until;
            MayTakeBack = await diligences.OfFileAsync(paper.Id, cancellationToken) is { } held && held.MayTakeBack(paper, User.Person(), house.Today, house.Zone);
        }
    }

    internal sealed class MistakeForm
    {
        [Display(Name = "Why it was attached by mistake")]
        public string? MistakenBecause { get; set; }
    }
}
