namespace GreenLedger.Domain.Offers;

/// <summary>How large a firm is, as Article 38 of Regulation (EU) 2023/1115 tells firms apart by.</summary>
public enum FirmSize
{
    /// <summary>Operators generally.</summary>
    General = 0,

    /// <summary>A natural person, or a micro or small undertaking that was established as such by 31 December 2024.</summary>
    Small = 1,
}

/// <summary>What the house states of the days and limits of due diligence.</summary>
public sealed record DiligenceTerms(
    FirmSize? Size, DateOnly AppliesGenerally, DateOnly AppliesToSmall, DateOnly NotDeforestedAfter, int KeepYears, int ExportMegabytes, string? Source, int MostPerHectare = DiligenceHabits.UsualMostPerHectare);

/// <summary>
/// Days and limits of Regulation (EU) 2023/1115 that the house goes by. One row. Handbook, trade 7.1 to 7.4: what was adopted after
/// 24 September 2026 is not known there, and the years of keeping are from memory; so all of it is the house's own to put right.
/// </summary>
public sealed class DiligenceHabits
{
    /// <summary>More green coffee than a hectare gives but for the best irrigated farms (from memory).</summary>
    public const int UsualMostPerHectare = 5_000;

    public Id<DiligenceHabits> Id { get; private set; } = Id<DiligenceHabits>.New();

    public int Version { get; private set; }

    /// <summary>How large the house is; null where nobody said, and the earlier day counts.</summary>
    public FirmSize? Size { get; private set; }

    /// <summary>The day from which the regulation applies to operators generally.</summary>
    public DateOnly AppliesGenerally { get; private set; } = new(2026, 12, 30);

    /// <summary>The day from which it applies to natural persons, micro and small undertakings.</summary>
    public DateOnly AppliesToSmall { get; private set; } = new(2027, 6, 30);

    /// <summary>The last day on which land may have been cleared of forest.</summary>
    public DateOnly NotDeforestedAfter { get; private set; } = new(2020, 12, 31);

    /// <summary>Years for which evidence is kept after the coffee was placed on the market.</summary>
    public int KeepYears { get; private set; } = 5;

    /// <summary>The largest file of plots that the EU's system takes, in megabytes of 1,048,576 bytes.</summary>
    public int ExportMegabytes { get; private set; } = 25;

    /// <summary>Kilograms of green coffee that a hectare hardly gives more than in one harvest; from memory, so the house's own.</summary>
    public int MostPerHectare { get; private set; } = UsualMostPerHectare;

    /// <summary>Where these days and limits were read.</summary>
    public string? Source { get; private set; } = "Regulation (EU) 2023/1115, Article 38, as amended by (EU) 2024/3234 and (EU) 2025/2650, read in September 2026; years of keeping from memory. Check EUR-Lex.";

    /// <summary>The day from which the regulation applies to this house.</summary>
    public DateOnly AppliesFrom => Size switch
    {
        FirmSize.General => AppliesGenerally,
        FirmSize.Small => AppliesToSmall,
        _ => AppliesGenerally < AppliesToSmall ? AppliesGenerally : AppliesToSmall,
    };

    public int ExportBytes => ExportMegabytes * 1024 * 1024;

    /// <summary>The last day on which evidence about coffee that was placed on the market on a day is kept.</summary>
    public DateOnly KeptUntil(DateOnly placedOn) => placedOn.AddYears(KeepYears);

    /// <exception cref="RuleBrokenException">A day or a number lies out of reach.</exception>
    public void Keep(DiligenceTerms terms)
    {
        ArgumentNullException.ThrowIfNull(terms);
        Rule.Require(terms.Size is null || Enum.IsDefined(terms.Size.Value), "Choose the size of the house.", nameof(Size));
        Rule.Day(terms.AppliesGenerally, nameof(AppliesGenerally));
        Rule.Day(terms.AppliesToSmall, nameof(AppliesToSmall));
        Rule.Day(terms.NotDeforestedAfter, nameof(NotDeforestedAfter));
        Rule.Require(terms.KeepYears is >= 1 and <= 50, "Evidence is kept for 1 to 50 years.", nameof(KeepYears));
        Rule.Require(terms.ExportMegabytes is >= 1 and <= 100, "A file of plots has 1 to 100 MB at most.", nameof(ExportMegabytes));
        Rule.Require(terms.MostPerHectare is >= 100 and <= 50_000, "A hectare gives 100 to 50,000 kg at most.", nameof(MostPerHectare));
        (Size, AppliesGenerally, AppliesToSmall, NotDeforestedAfter) = (terms.Size, terms.AppliesGenerally, terms.AppliesToSmall, terms.NotDeforestedAfter);
        (KeepYears, ExportMegabytes, MostPerHectare) = (terms.KeepYears, terms.ExportMegabytes, terms.MostPerHectare);
        Source = Rule.OptionalText(terms.Source, "The source", 500, nameof(Source));
    }
}
