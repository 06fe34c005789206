using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Display;
using GreenLedger.Web.Papers;

namespace GreenLedger.Web.Pages.Papers;

internal sealed class RemoveAttachmentModel(LedgerContext db, PapersReader papers, DiligenceQuery diligences, HouseZone house, TimeProvider clock) : RemovalPage<Attachment>(db, papers, clock)
{
    protected override string Called(Attachment paper) => paper.FileName;

    /// <summary>Evidence of due diligence is kept for the years that the house states.</summary>
    protected override Task LetGoAsync(CancellationToken cancellationToken) => diligences.LetGoAsync(Id, house.Today, cancellationToken);
}
