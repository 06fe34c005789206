using System.Globalization;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Documents.Summaries;

/// <summary>The sentences of a feedback report in one language. Braces are filled with figures, which follow the language too.</summary>
internal sealed partial record FeedbackWords
{
    public required string Language { get; init; }

    public required string Culture { get; init; }

    public required string PageOf { get; init; }

    public required string Title { get; init; }

    /// <summary>{0} is the supplier.</summary>
    public required string For { get; init; }

    public required string Opening { get; init; }

    /// <summary>{0} code, {1} kind, {2} day.</summary>
    public required string Sample { get; init; }

    public required string Cup { get; init; }

    /// <summary>{0} day, {1} form, {2} score, {3} low, {4} high, {5} cuppers.</summary>
    public required string Scored { get; init; }

    public required string NotCupped { get; init; }

    public required string Profile { get; init; }

    public required string Points { get; init; }

    public required string Attribute { get; init; }

    public required string Lowest { get; init; }

    public required string Mean { get; init; }

    public required string Highest { get; init; }

    /// <summary>{0} the words, with how many cuppers said each.</summary>
    public required string Said { get; init; }

    public required string CupDefects { get; init; }

    public required string Green { get; init; }

    public required string NotGraded { get; init; }

    public required string Measure { get; init; }

    public required string Found { get; init; }

    public required string Moisture { get; init; }

    public required string WaterActivity { get; init; }

    public required string Density { get; init; }

    public required string Category1 { get; init; }

    public required string Category2 { get; init; }

    public required string Quakers { get; init; }

    /// <summary>{0} grams.</summary>
    public required string DefectsIn { get; init; }

    public required string Beans { get; init; }

    public required string Avoid { get; init; }

    public required string Standing { get; init; }

    public required IReadOnlyDictionary<SeasonQuarter, string> Quarters { get; init; }

    public required string TooFew { get; init; }

    public required string Decision { get; init; }

    /// <summary>{0} day.</summary>
    public required IReadOnlyDictionary<Outcome, string> Outcomes { get; init; }

    public required string NotDecided { get; init; }

    public required string Because { get; init; }

    public required string ToBuy { get; init; }

    public required IReadOnlyDictionary<Gate, string> Failed { get; init; }

    /// <summary>{0} and {1} are what the rules ask.</summary>
    public required IReadOnlyDictionary<Gate, string> Asked { get; init; }

    public required string Farewell { get; init; }

    public required IReadOnlyDictionary<SampleKind, string> Kinds { get; init; }

    /// <summary>By the key of the form's line; a line without a word keeps its own name.</summary>
    public required IReadOnlyDictionary<string, string> Attributes { get; init; }

    /// <summary>By the code of the kind of defect; a kind without a word keeps its own name.</summary>
    public required IReadOnlyDictionary<string, string> Defects { get; init; }

    /// <summary>How to avoid it, by the code of the kind.</summary>
    public required IReadOnlyDictionary<string, string> Advice { get; init; }

    public CultureInfo Reader => CultureInfo.GetCultureInfo(Culture);

    public static IReadOnlyList<string> Languages { get; } = ["en", "es", "pt", "fr"];

    public static FeedbackWords In(string? language) => language?.ToLowerInvariant() switch
    {
        "es" => Spanish,
        "pt" => Portuguese,
        "fr" => French,
        _ => English,
    };

    public string Day(DateOnly day) => day.ToString("d MMMM yyyy", Reader);

    public string Number(decimal figure, int decimals) => figure.ToString("N" + decimals.ToString(CultureInfo.InvariantCulture), Reader);

    public string Fill(string sentence, params object[] figures) => string.Format(Reader, sentence, figures);

    /// <summary>The kinds of one group of defects have one advice; the keys are codes of the schemes.</summary>
    private static Dictionary<string, string> AdviceOn(string fermented, string insect, string unripe, string mould, string milling, string drying) => new()
    {
        ["full-black"] = drying,
        ["partial-black"] = drying,
        ["full-sour"] = fermented,
        ["partial-sour"] = fermented,
        ["severe-insect"] = insect,
        ["slight-insect"] = insect,
        ["immature"] = unripe,
        ["withered"] = unripe,
        ["floater"] = unripe,
        ["fungus"] = mould,
        ["broken"] = milling,
        ["shell"] = milling,
        ["hull"] = milling,
        ["parchment"] = milling,
        ["dried-cherry"] = milling,
        ["foreign-matter"] = milling,
    };
}
