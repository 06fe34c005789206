using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// What the buyer decided about one offer, with the rules and the figures as they stood. It is never erased: withdrawing
/// it is one more record on it.
/// </summary>
public sealed class Decision
{
    private Decision()
    {
        Rules = "";
        Figures = "";
    }

    public Id<Decision> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Lot> LotId { get; private set; }

    public Id<Offer> OfferId { get; private set; }

    public Outcome Outcome { get; private set; }

    /// <summary>How much to buy; null for anything but buying.</summary>
    public Weight? Quantity { get; private set; }

    /// <summary>What the rules advised at the time.</summary>
    public Outcome Advised { get; private set; }

    /// <summary>Why the decision goes against the advice; null where it follows it.</summary>
    public string? Reason { get; private set; }

    public string? Note { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    /// <summary>The rules as they stood: a <see cref="RulesSnapshot"/> as JSON text.</summary>
    public string Rules { get; private set; }

    /// <summary>The lot's figures as they stood: a <see cref="FiguresSnapshot"/> as JSON text.</summary>
    public string Figures { get; private set; }

    public string? WithdrawnBecause { get; private set; }

    public Id<Person>? WithdrawnBy { get; private set; }

    public DateTimeOffset? WithdrawnAt { get; private set; }

    public bool IsWithdrawn => WithdrawnAt is not null;

    /// <exception cref="RuleBrokenException">
    /// A purchase has no quantity or more than is on offer, or the decision goes against the advice without a reason.
    /// </exception>
    public static Decision Take(
        Advice advice, Choice choice, RulesSnapshot rules, FiguresSnapshot figures, Candidate candidate, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(choice);
        ArgumentNullException.ThrowIfNull(candidate);
        Rule.Require(Enum.IsDefined(choice.Outcome), "Choose to buy, hold or decline.", nameof(Outcome));
        if (choice.Outcome == Outcome.Buy)
        {
            Rule.Require(choice.Quantity > Weight.Zero, "How many kilograms do you want to buy?", nameof(Quantity));
            Rule.Require(candidate.Quantity == Weight.Zero || choice.Quantity <= candidate.Quantity, $"Only {candidate.Quantity} are on offer.", nameof(Quantity));
        }

        var reason = Rule.OptionalText(choice.Reason, "The reason", 2000, nameof(Reason));
        Rule.Require(choice.Outcome == advice.Outcome || reason is not null, $"The rules advise to {advice.Outcome.Word()}: please give your reason for deciding otherwise.", nameof(Reason));
        return new Decision
        {
            Id = Id<Decision>.New(),
            LotId = candidate.LotId,
            OfferId = candidate.OfferId,
            Outcome = choice.Outcome,
            Quantity = choice.Outcome == Outcome.Buy ? choice.Quantity : null,
            Advised = advice.Outcome,
            Reason = choice.Outcome == advice.Outcome ? null : reason,
            Note = Rule.OptionalText(choice.Note, "The note", 2000, nameof(Note)),
            By = by,
            At = at,
            Rules = FrozenJson.Write(rules),
            Figures = FrozenJson.Write(figures),
        };
    }

    public void Withdraw(string reason, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(!IsWithdrawn, "This decision was already withdrawn.", nameof(WithdrawnBecause));
        WithdrawnBecause = Rule.Text(reason, "The reason for withdrawing", 2000, nameof(WithdrawnBecause));
        WithdrawnBy = by;
        WithdrawnAt = at;
    }
}

/// <summary>What the buyer chose on the page. The reason is asked for where the choice goes against the advice.</summary>
public sealed record Choice(Outcome Outcome, Weight? Quantity, string? Reason, string? Note);
