using System.Diagnostics.CodeAnalysis;

namespace GreenLedger.Domain.People;

/// <summary>Somebody of the house: a buyer, a cupper, a manager. Records of what happened point here.</summary>
public sealed class Person
{
    private Person()
    {
        Name = "";
        SearchText = "";
    }

    public Person(string name, Role roles)
    {
        Id = Id<Person>.New();
        Rename(name);
        Roles = roles;
    }

    public Id<Person> Id { get; private set; }

    public string Name { get; private set; }

    public string SearchText { get; private set; }

    public Role Roles { get; private set; }

    /// <summary>False once the person has left: the name stays in the ledger, signing in does not work.</summary>
    public bool IsActive { get; private set; } = true;

    [MemberNotNull(nameof(Name), nameof(SearchText))]
    public void Rename(string name)
    {
        Name = Rule.Text(name, "The name", field: nameof(Name));
        SearchText = Measures.SearchText.Of(Name);
    }

    public void Give(Role roles) => Roles = roles;

    public void Leave() => IsActive = false;

    public void Return() => IsActive = true;
}
