using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// A named set of rules by which the house ranks what it is offered. Every edit is a revision that stays, so that an
/// earlier decision can be read with the rules it was made on.
/// </summary>
public sealed class BuyingRules
{
    private readonly List<RulesRevision> _revisions = [];

    private BuyingRules()
    {
        Name = "";
    }

    public BuyingRules(string name, RuleTerms terms, Id<Person>? by, DateTimeOffset at)
    {
        Id = Id<BuyingRules>.New();
        Name = "";
        Edit(name, terms, by, at);
    }

    public Id<BuyingRules> Id { get; private set; }

    public int Version { get; private set; }

    public string Name { get; private set; }

    /// <summary>Of the present terms; 1 for the first.</summary>
    public int Revision { get; private set; }

    /// <summary>Rules put away are kept for old decisions and no longer offered.</summary>
    public bool IsInUse { get; private set; } = true;

    /// <summary>One for each edit.</summary>
    public IReadOnlyList<RulesRevision> Revisions => _revisions;

    public RuleTerms Terms => _revisions.MaxBy(revision => revision.Number)!.Terms;

    /// <exception cref="RuleBrokenException">The name is missing or the terms contradict each other.</exception>
    public void Edit(string name, RuleTerms terms, Id<Person>? by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(terms);
        Name = Rule.Text(name, "The name of the rules", 80, nameof(Name));
        terms.Check();
        Revision++;
        _revisions.Add(new RulesRevision(Id, Revision, terms, by, at));
    }

    public void PutAway() => IsInUse = false;

    public void TakeUpAgain() => IsInUse = true;

    /// <summary>What these rules say about a lot of a shortlist that was ranked by them.</summary>
    public static Advice Advise(ShortlistEntry entry, Shortlist shortlist) => Advice.On(entry, shortlist);
}

/// <summary>What a rule set said from one moment on.</summary>
public sealed class RulesRevision
{
    private RulesRevision()
    {
        Terms = null!;
    }

    internal RulesRevision(Id<BuyingRules> rulesId, int number, RuleTerms terms, Id<Person>? by, DateTimeOffset at)
    {
        Id = Id<RulesRevision>.New();
        RulesId = rulesId;
        Number = number;
        Terms = terms;
        By = by;
        At = at;
    }

    public Id<RulesRevision> Id { get; private set; }

    public Id<BuyingRules> RulesId { get; private set; }

    public int Number { get; private set; }

    public RuleTerms Terms { get; private set; }

    /// <summary>Null for rules that came with the ledger.</summary>
    public Id<Person>? By { get; private set; }

    public DateTimeOffset At { get; private set; }
}
