using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// One cupper alone: codes stand under the bowls, the bowls are shuffled, and sheets are written by place. What was in which
/// place is read from under the bowls once every sheet is in.
/// </summary>
public sealed partial class CuppingSession
{
    /// <summary>A session that this person laid out for themselves and cups alone, openly or with codes under the bowls.</summary>
    public bool IsAloneOf(Id<Person> person) =>
        LaidOutBy == person && Blinding != Blinding.ByKey && _panel.TrueForAll(member => member.PersonId == person);

    /// <summary>Sheets are still written by place, because nobody has looked under the bowls yet.</summary>
    public bool IsByPlace => Blinding == Blinding.Undersides && _sheets.Count == 0;

    /// <summary>The places of the shuffled bowls.</summary>
    public IReadOnlyList<string> Places => [.. Enumerable.Range(1, _samples.Count).Select(PlaceOf)];

    /// <summary>The name of a place on the table, counted from 1.</summary>
    public static string PlaceOf(int number) => $"P{number}";

    /// <summary>Closes the sheet of a place; it becomes the sheet of a sample when the bowls are turned over.</summary>
    /// <exception cref="RuleBrokenException">Closed, no such place, or marks are missing.</exception>
    public SheetTotal HandInPlace(SheetDraft draft, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(draft);
        Rule.Require(!IsClosed, "This session is closed: no sheet can be handed in any more.", nameof(Sheets));
        Rule.Require(IsByPlace && Places.Contains(draft.Code), $"There is no place {draft.Code} to hand in for.", nameof(Places));
        var total = SheetTotal.Of(Form.Rules, SheetFields.Marks(draft.Values, Form.Rules, CupsPerSample), CupsPerSample);
        draft.HandIn(at);
        return total;
    }

    /// <summary>Says which code was found under the bowls of each place; the sheets of the places become those of the samples.</summary>
    /// <exception cref="RuleBrokenException">A sheet is not in yet, or the codes are not those of this table, each once.</exception>
    public void TurnOver(IReadOnlyDictionary<string, string> codes, IReadOnlyCollection<SheetDraft> drafts, Person cupper, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(codes);
        ArgumentNullException.ThrowIfNull(drafts);
        Rule.Require(IsByPlace, "There are no bowls to turn over in this session.", nameof(Places));
        var open = Places.Where(place => drafts.All(draft => draft.Code != place || draft.HandedInAt is null)).ToList();
        Rule.Require(open.Count == 0, $"Hand in every sheet before you look under the bowls; still open: {string.Join(", ", open)}.", nameof(Places));
        Rule.Require(
            Places.All(codes.ContainsKey) && codes.Values.Select(code => code.Trim()).Order().SequenceEqual(_samples.Select(sample => sample.Code).Order()),
            "Type the code under the bowls of each place: every code of this table stands under one place.", nameof(Places));
        foreach (var draft in drafts.Where(draft => Places.Contains(draft.Code)))
        {
            Take(draft, codes[draft.Code].Trim(), cupper, at);
        }
    }
}
