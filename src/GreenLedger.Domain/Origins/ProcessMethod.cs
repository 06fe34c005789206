namespace GreenLedger.Domain.Origins;

/// <summary>
/// A way of processing by its trade word, with the other words that lists use for it. The buyer extends the list; a word
/// that no method has is kept on the lot as it was written.
/// </summary>
public sealed class ProcessMethod
{
    private readonly List<string> _synonyms = [];

    private ProcessMethod()
    {
        Name = "";
        SearchText = "";
    }

    public ProcessMethod(string name, ProcessFamily family, params IEnumerable<string> synonyms)
    {
        Id = Id<ProcessMethod>.New();
        Name = "";
        SearchText = "";
        Describe(name, family, synonyms);
    }

    public Id<ProcessMethod> Id { get; private set; }

    public int Version { get; private set; }

    /// <summary>In lower case, as the trade says it: <c>anaerobic natural</c>.</summary>
    public string Name { get; private set; }

    public ProcessFamily Family { get; private set; }

    /// <summary>Other words for it, in any language.</summary>
    public IReadOnlyList<string> Synonyms => _synonyms;

    public string SearchText { get; private set; }

    public void Describe(string name, ProcessFamily family, IEnumerable<string> synonyms)
    {
        Rule.Require(Enum.IsDefined(family), "Choose the family that this method belongs to.", nameof(Family));
        Name = Rule.Text(name, "The name of the process method", 80, nameof(Name)).ToLowerInvariant();
        Family = family;
        var kept = synonyms.Select(word => word.Trim()).Where(word => word.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        _synonyms.Clear();
        _synonyms.AddRange(kept);
        SearchText = Measures.SearchText.Of([Name, .. _synonyms]);
    }

    public void AddSynonym(string word)
    {
        var text = Rule.Text(word, "The word", 80, nameof(Synonyms));
        if (!_synonyms.Contains(text, StringComparer.OrdinalIgnoreCase))
        {
            Describe(Name, Family, [.. _synonyms, text]);
        }
    }
}
