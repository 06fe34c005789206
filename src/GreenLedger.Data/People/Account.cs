using GreenLedger.Domain;
using GreenLedger.Domain.People;
using Microsoft.AspNetCore.Identity;

namespace GreenLedger.Data.People;

/// <summary>How a person signs in: e-mail, password, passkeys, lockout. Who the person is stands in the ledger.</summary>
public sealed class Account : IdentityUser<Guid>
{
    public Account() => Id = Guid.CreateVersion7();

    public Id<Person> PersonId { get; set; }

    /// <summary>Weights in pounds or in kilograms; null follows the house.</summary>
    public bool? ShowsPounds { get; set; }
}
