namespace GreenLedger.Domain.Cupping;

/// <summary>A word of the house for what is tasted, in a family of the house's own.</summary>
public sealed class Descriptor
{
    /// <summary>Where a word goes that a cupper wrote and nobody has sorted yet.</summary>
    public const string Unsorted = "not sorted yet";

    private Descriptor()
    {
        Word = "";
        Family = "";
    }

    /// <exception cref="RuleBrokenException">The word or its family is empty or too long.</exception>
    public Descriptor(string word, string family = Unsorted)
    {
        Id = Id<Descriptor>.New();
        Word = Rule.Text(word, "The word", 60, nameof(Word));
        Family = Rule.Text(family, "The family", 60, nameof(Family));
    }

    public Id<Descriptor> Id { get; private set; }

    public int Version { get; private set; }

    /// <summary>As cuppers write it; unique in the house.</summary>
    public string Word { get; private set; }

    public string Family { get; private set; }

    /// <summary>No longer proposed while cuppers type; sheets that have the word keep it.</summary>
    public bool IsRetired { get; private set; }

    /// <summary>Puts the word right or into another family. Sheets keep the word as it was written on them.</summary>
    /// <exception cref="RuleBrokenException">The word or its family is empty or too long.</exception>
    public void Sort(string? word, string? family)
    {
        Word = Rule.Text(word, "The word", 60, nameof(Word));
        Family = Rule.Text(family, "The family", 60, nameof(Family));
    }

    public void Retire(bool isRetired) => IsRetired = isRetired;

    /// <summary>The words that a new house begins with; our own choice of everyday words, no source.</summary>
    public static IReadOnlyList<Descriptor> Usual() =>
    [
        .. Of("orchard", "apple", "green apple", "pear", "peach", "apricot", "plum", "cherry"),
        .. Of("hedge and garden", "strawberry", "raspberry", "blueberry", "blackberry", "redcurrant", "rhubarb"),
        .. Of("citrus grove", "lemon", "lime", "orange", "mandarin", "grapefruit", "bergamot"),
        .. Of("warm countries", "mango", "pineapple", "passion fruit", "papaya", "banana", "lychee"),
        .. Of("dried on the shelf", "raisin", "prune", "date", "fig", "dried apricot"),
        .. Of("flowers and leaves", "jasmine", "rose", "orange blossom", "elderflower", "hibiscus", "black tea", "green tea"),
        .. Of("kitchen sugar", "honey", "caramel", "brown sugar", "molasses", "maple syrup", "vanilla"),
        .. Of("nuts and cocoa", "almond", "hazelnut", "walnut", "peanut", "cocoa", "dark chocolate", "milk chocolate"),
        .. Of("spice drawer", "cinnamon", "clove", "cardamom", "nutmeg", "black pepper", "liquorice"),
        .. Of("bread and grain", "malt", "toast", "oat", "biscuit"),
        .. Of("cellar and wood", "cedar", "tobacco", "earthy", "winey", "boozy", "leather"),
        .. Of("gone wrong", "phenolic", "mouldy", "potato", "fermented", "rubbery", "papery", "woody", "hay", "smoky"),
    ];

    private static IEnumerable<Descriptor> Of(string family, params string[] words) => words.Select(word => new Descriptor(word, family));
}
