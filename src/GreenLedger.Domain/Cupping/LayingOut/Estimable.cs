using System.Globalization;

namespace GreenLedger.Domain.Cupping.LayingOut;

/// <summary>What a session's sheets may show.</summary>
public enum Question
{
    /// <summary>How far one cupper's scores of one coffee spread.</summary>
    Repeatability = 0,

    /// <summary>Whether each cupper tells the samples apart.</summary>
    Discrimination = 1,

    /// <summary>Whether the cuppers agree.</summary>
    Agreement = 2,

    /// <summary>The error of a fitted score from the session's own sheets.</summary>
    OwnError = 3,

    /// <summary>Whether the panel scores as high as in earlier sessions.</summary>
    Level = 4,

    /// <summary>Whether scores change from flight to flight.</summary>
    Drift = 5,

    /// <summary>Whether the cups of one sample are alike.</summary>
    Uniformity = 6,
}

/// <summary>Whether a layout can answer a question, and in a sentence why or how well.</summary>
public sealed record Estimable(Question Question, bool Can, string Reason)
{
    /// <summary>All questions that a layout raises; those it cannot answer tell the buyer what was given up.</summary>
    public static IReadOnlyList<Estimable> Of(SessionLayout layout, ExpectedErrors expected)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(expected);
        List<Estimable> all = [Repeatability(layout, expected), Discrimination(layout), Agreement(layout), OwnError(layout, expected), Level(layout)];
        if (layout.Flights > 1)
        {
            all.Add(Drift(layout));
        }

        all.Add(Uniformity(layout));
        return all;
    }

    private static Estimable Repeatability(SessionLayout layout, ExpectedErrors expected)
    {
        if (layout.Duplicates == 0)
        {
            return new Estimable(Question.Repeatability, false, string.Create(CultureInfo.InvariantCulture, $"No sample is poured twice: how well the cuppers repeat their own score cannot be estimated, and whether they disagree or only repeat badly cannot be told apart. The house's {expected.Repeatability:0.00} points stands for it."));
        }

        var (low, high) = Cupping.Repeatability.Factors(layout.Repeats);
        return new Estimable(Question.Repeatability, true, string.Create(CultureInfo.InvariantCulture, $"{Count(layout.Duplicates, "hidden duplicate")} and {Count(layout.Cuppers, "cupper")} give {Count(layout.Repeats, "repeat")}: the panel's true repeatability then lies between {low:0.00} and {high:0.00} times the one found (95 %). One cupper's own needs several sessions."));
    }

    private static Estimable Discrimination(SessionLayout layout) => layout switch
    {
        { Samples: < 2 } => new(Question.Discrimination, false, "One sample: there is nothing to tell apart."),
        { Duplicates: 0 } => new(Question.Discrimination, false, "No sample is poured twice: whether a cupper tells the samples apart cannot be tested, because nobody's own spread is known."),
        _ => new(Question.Discrimination, true, "Each cupper's differences between samples can be held against the cupper's own spread."),
    };

    private static Estimable Agreement(SessionLayout layout) => layout switch
    {
        { Cuppers: < 2 } => new(Question.Agreement, false, "One cupper: there is nobody to agree with."),
        { Samples: < 2 } => new(Question.Agreement, false, "One sample: whether cuppers rank alike cannot be seen."),
        _ => new(Question.Agreement, true, "Correlations and rank agreement are computed over the samples that everyone cups."),
    };

    private static Estimable OwnError(SessionLayout layout, ExpectedErrors expected)
    {
        var can = layout.Cuppers > 1 && layout.DegreesOfFreedom >= ExpectedErrors.LeastDegreesOfFreedom;
        return new Estimable(Question.OwnError, can, can
            ? $"The sheets leave {layout.DegreesOfFreedom} degrees of freedom: the intervals come from this session's own spread."
            : string.Create(CultureInfo.InvariantCulture, $"{(layout.Cuppers == 1 ? "One cupper cannot show" : "These sheets are too few to show")} how far cuppers spread: the intervals come from the house's reproducibility of {expected.Reproducibility:0.00} points."));
    }

    private static Estimable Level(SessionLayout layout) => layout.HasReference
        ? new(Question.Level, true, "The house reference shows whether the panel scores as high as in earlier sessions.")
        : new(Question.Level, false, "No house reference is on the table: a session in which everyone scores high or low cannot be told from one with better or worse coffees.");

    private static Estimable Drift(SessionLayout layout) => layout.TiesFlights
        ? new(Question.Drift, true, "A coffee stands in more than one flight: a change of scores from flight to flight shows.")
        : new(Question.Drift, false, "No coffee stands in two flights: a change of scores from flight to flight cannot be told from a difference between their coffees.");

    private static Estimable Uniformity(SessionLayout layout) => layout.CupsPerSample > 1
        ? new(Question.Uniformity, true, $"{layout.CupsPerSample} cups a sample show whether its cups are alike.")
        : new(Question.Uniformity, false, "One cup a sample: whether its cups are alike cannot be seen.");

    private static string Count(int number, string what) => number == 1 ? $"1 {what}" : $"{number} {what}s";
}
