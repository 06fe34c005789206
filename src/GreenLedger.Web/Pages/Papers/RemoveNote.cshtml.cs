using GreenLedger.Data;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Papers;

namespace GreenLedger.Web.Pages.Papers;

internal sealed class RemoveNoteModel(LedgerContext db, PapersReader papers, TimeProvider clock) : RemovalPage<Note>(db, papers, clock)
{
    protected override string Called(Note paper) => "The note";
}
