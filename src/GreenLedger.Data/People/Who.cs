using GreenLedger.Domain;
using GreenLedger.Domain.People;

namespace GreenLedger.Data.People;

/// <summary>
/// On whose behalf this unit of work writes: the person signed in, or the one who left the work to a node. Null while
/// nobody is: the ledger itself acts then, as at a first start.
/// </summary>
public sealed class Who(Func<Id<Person>?>? signedIn = null)
{
    private Id<Person>? _told;

    public Id<Person>? Person => _told ?? signedIn?.Invoke();

    /// <summary>For work outside a request, such as a job that somebody ordered.</summary>
    public void Is(Id<Person> person) => _told = person;
}
