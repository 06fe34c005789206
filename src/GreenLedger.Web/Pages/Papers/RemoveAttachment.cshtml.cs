using GreenLedger.Data;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Papers;

namespace GreenLedger.Web.Pages.Papers;

internal sealed class RemoveAttachmentModel(LedgerContext db, PapersReader papers, TimeProvider clock) : RemovalPage<Attachment>(db, papers, clock)
{
    protected override string Called(Attachment paper) => paper.FileName;
}
