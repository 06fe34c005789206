namespace GreenLedger.Domain.Cupping;

/// <summary>How strong something is, from 0 to <paramref name="Highest"/>; a note of the cup, never points.</summary>
public sealed record IntensityLine(string Key, string Name, int Highest);

/// <summary>A word to check; <paramref name="Parent"/> is the key of the broader word it belongs to, if any.</summary>
public sealed record CheckWord(string Key, string Word, string? Parent = null);

/// <summary>Check all that apply, up to so many words.</summary>
public sealed record CheckList(string Key, string Name, int MostPicks, IReadOnlyList<CheckWord> Words);

/// <summary>A descriptive form as data: intensities and lists of words.</summary>
public sealed record DescriptiveRules(IReadOnlyList<IntensityLine> Intensities, IReadOnlyList<CheckList> Lists);

/// <summary>What one cupper described: an intensity by key, and the words checked in each list by key.</summary>
public sealed record SheetDescription(IReadOnlyDictionary<string, int> Intensities, IReadOnlyDictionary<string, IReadOnlyList<string>> Picks)
{
    public bool IsEmpty => Intensities.Count == 0 && Picks.All(list => list.Value.Count == 0);

    /// <exception cref="RuleBrokenException">An intensity, a list or a word is not of this form, or too many words are checked.</exception>
    public void Check(DescriptiveRules rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        foreach (var (key, value) in Intensities)
        {
            var line = rules.Intensities.FirstOrDefault(line => line.Key == key);
            Rule.Require(line is not null, $"The descriptive form has no intensity '{key}'.", key);
            Rule.Require(value >= 0 && value <= line.Highest, $"{line.Name}: an intensity lies between 0 and {line.Highest}.", key);
        }

        foreach (var (key, words) in Picks)
        {
            var list = rules.Lists.FirstOrDefault(list => list.Key == key);
            Rule.Require(list is not null, $"The descriptive form has no list '{key}'.", key);
            Rule.Require(words.Count <= list.MostPicks, $"{list.Name}: check at most {list.MostPicks}.", key);
            var other = words.FirstOrDefault(word => list.Words.All(known => known.Key != word));
            Rule.Require(other is null, $"{list.Name} has no word '{other}'.", key);
        }
    }
}

/// <summary>
/// A form that says what a coffee tastes like, in one edition and revision. It stands beside a score form and adds no
/// points.
/// </summary>
public sealed class DescriptiveForm
{
    /// <summary>The descriptive form of SCA-103 (2024) as far as the handbook has it.</summary>
    public static readonly Id<DescriptiveForm> Sca103Id = Id<DescriptiveForm>.Parse("01000000-2024-7000-8000-000000000103", null);

    private DescriptiveForm()
    {
        Name = "";
        Edition = "";
        Rules = Sca103Rules();
    }

    public Id<DescriptiveForm> Id { get; private set; }

    public string Name { get; private set; }

    public string Edition { get; private set; }

    /// <summary>1 as delivered.</summary>
    public int Revision { get; private set; }

    public DescriptiveRules Rules { get; private set; }

    /// <summary>Why the house changed it; null as delivered.</summary>
    public string? Reason { get; private set; }

    /// <summary>
    /// Seven intensities from 0 to 15 and four lists; handbook quality.md section 1.2. The wording of the lists and how
    /// many may be checked are from memory there, which is why they are data with a revision.
    /// </summary>
    public static DescriptiveForm Sca103() => new()
    {
        Id = Sca103Id,
        Name = "Descriptive form (SCA-103)",
        Edition = "2024",
        Revision = 1,
    };

    /// <summary>The same form with other intensities or words: a new revision, so that earlier sessions keep theirs.</summary>
    /// <exception cref="RuleBrokenException">A line or list was left out, the numbers or words contradict each other, or no reason is given.</exception>
    public DescriptiveForm Revise(DescriptiveRules rules, string? reason)
    {
        ArgumentNullException.ThrowIfNull(rules);
        RequireWhole(rules);
        Rule.Require(
            rules.Intensities.Select(line => line.Key).SequenceEqual(Rules.Intensities.Select(line => line.Key)) && rules.Lists.Select(list => list.Key).SequenceEqual(Rules.Lists.Select(list => list.Key)),
            "A revision keeps the intensities and the lists of its form.", nameof(Rules));
        Rule.Require(rules.Intensities.All(line => line.Highest is >= 1 and <= 100), "An intensity runs from 0 up to a number between 1 and 100.", nameof(Rules));
        foreach (var list in rules.Lists)
        {
            Rule.Require(list.Words.Count > 0, $"{list.Name}: a list needs at least one word.", list.Key);
            var twice = list.Words.GroupBy(word => word.Word, StringComparer.OrdinalIgnoreCase).FirstOrDefault(word => word.Count() > 1);
            Rule.Require(twice is null, $"{list.Name}: '{twice?.Key}' stands there twice.", list.Key);
            Rule.Require(list.MostPicks >= 1 && list.MostPicks <= list.Words.Count, $"{list.Name}: between 1 and {list.Words.Count} words may be checked.", list.Key);
        }

        return new DescriptiveForm
        {
            Id = Id<DescriptiveForm>.New(),
            Name = Name,
            Edition = Edition,
            Revision = Revision + 1,
            Rules = rules,
            Reason = Rule.Text(reason, "The reason for the change", 500, nameof(Reason)),
        };
    }

    private static void RequireWhole(DescriptiveRules rules)
    {
        Rule.Require(
            rules.Intensities is not null && rules.Intensities.All(line => line is not null && !string.IsNullOrWhiteSpace(line.Name)), "Send every intensity of the form, each with its name.", nameof(rules.Intensities));
        Rule.Require(
            rules.Lists is not null && rules.Lists.All(list => list?.Words is not null && !string.IsNullOrWhiteSpace(list.Name)), "Send every list of the form, each with its name and its words.", nameof(rules.Lists));
        Rule.Require(
            rules.Lists.SelectMany(list => list.Words).All(word => word is not null && !string.IsNullOrWhiteSpace(word.Key) && !string.IsNullOrWhiteSpace(word.Word)),
            "A word of a list is empty: leave it out.", nameof(rules.Lists));
    }

    public override string ToString() => Revision == 1 ? $"{Name}, {Edition}" : $"{Name}, {Edition}, revision {Revision}";

    private static DescriptiveRules Sca103Rules() => new(
        [
            new("fragrance", "Fragrance", 15), new("aroma", "Aroma", 15), new("flavor", "Flavor", 15), new("aftertaste", "Aftertaste", 15),
            new("acidity", "Acidity", 15), new("sweetness", "Sweetness", 15), new("mouthfeel", "Mouthfeel", 15),
        ],
        [
            new("smell", "Fragrance and aroma", 5, Families()),
            new("flavor", "Flavor and aftertaste", 5, Families()),
            new("tastes", "Main tastes", 2, [new("salty", "salty"), new("sour", "sour"), new("sweet", "sweet"), new("bitter", "bitter"), new("umami", "umami")]),
            new("mouthfeel", "Mouthfeel", 2, [new("rough", "rough"), new("oily", "oily"), new("smooth", "smooth"), new("mouth-drying", "mouth-drying"), new("metallic", "metallic")]),
        ]);

    private static List<CheckWord> Families() =>
    [
        new("floral", "floral"),
        new("fruity", "fruity"), new("berry", "berry", "fruity"), new("dried-fruit", "dried fruit", "fruity"), new("citrus", "citrus", "fruity"),
        new("sour-fermented", "sour/fermented"), new("sour", "sour", "sour-fermented"), new("fermented", "fermented", "sour-fermented"),
        new("green", "green/vegetative"),
        new("other", "other"), new("chemical", "chemical", "other"), new("musty", "musty/earthy", "other"), new("papery", "papery/woody", "other"),
        new("roasted", "roasted"), new("cereal", "cereal", "roasted"), new("burnt", "burnt", "roasted"), new("tobacco", "tobacco", "roasted"),
        new("nutty-cocoa", "nutty/cocoa"), new("nutty", "nutty", "nutty-cocoa"), new("cocoa", "cocoa", "nutty-cocoa"),
        new("spice", "spice"),
        new("sweet", "sweet"), new("vanilla", "vanilla", "sweet"), new("brown-sugar", "brown sugar", "sweet"),
    ];
}
