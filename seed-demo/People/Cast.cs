using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.SeedDemo.People;

/// <summary>
/// The invented house on the quay of Antwerp and its people. Nobody of these exists; the addresses end in
/// <c>.example</c>, which is kept free for such uses (RFC 2606).
/// </summary>
internal sealed class Cast
{
    public const string HouseName = "Vlierkade Koffie, Antwerp";

    /// <summary>The buyer's, for scripts; known to everybody who can read this, so a demo is no place for secrets.</summary>
    public const string Token = "gl_demo_vlierkade_quay_41_ledger_of_green_coffee";

    private const Role Reads = Role.Viewer;

    public House House { get; } = new(HouseName, Currency.Eur);

    public Member Buyer { get; } = new(
        "Marthe Vlierinck", "marthe@vlierkade.example", "Elder-Quay-Ledger-41", Reads | Role.Buyer | Role.Administrator);

    public Member Lead { get; } = new(
        "Joost Ravelaar", "joost@vlierkade.example", "Spoon-Bowl-Steep-73", Reads | Role.Cupper | Role.LeadCupper);

    public Member Viewer { get; } = new(
        "Odile Brackvoort", "odile@vlierkade.example", "Harbour-View-Only-58", Reads);

    /// <summary>The lead cups as well; the last one began half a year ago.</summary>
    public IReadOnlyList<Member> Cuppers { get; }

    public IReadOnlyList<Member> Everybody { get; }

    public Cast()
    {
        Cuppers =
        [
            Lead,
            new Member("Ines Okkerman", "ines@vlierkade.example", "Crust-Break-Slurp-26", Role.Cupper),
            new Member("Tobias Wendelhof", "tobias@vlierkade.example", "Green-Bean-Sieve-94", Role.Cupper),
            new Member("Amara Leclavier", "amara@vlierkade.example", "Jasmine-Cedar-Lime-37", Role.Cupper),
            new Member("Pim Zandkuyl", "pim@vlierkade.example", "First-Table-Trainee-65", Role.Cupper),
        ];
        Everybody = [Buyer, .. Cuppers, Viewer];
    }

    /// <summary>Somebody of the house with a way to sign in.</summary>
    internal sealed class Member(string name, string email, string password, Role roles)
    {
        public Person Person { get; } = new(name, roles);

        public Id<Person> Id => Person.Id;

        public string Email => email;

        public string Password => password;
    }
}
