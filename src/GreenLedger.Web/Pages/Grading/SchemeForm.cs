using System.ComponentModel.DataAnnotations;
using System.Globalization;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;

namespace GreenLedger.Web.Pages.Grading;

/// <summary>A page that shows the lines of a defect table: the model of the partial <c>_SchemeLines</c>.</summary>
public interface ISchemePage
{
    SchemeForm Input { get; }
}

/// <summary>A defect table as it is typed, when it is added and when it is changed.</summary>
public class SchemeForm
{
    private const int EmptyLines = 3;

    [Display(Name = "Counted in (g)")]
    public decimal? SampleGrams { get; set; }

    public List<KindForm> Kinds { get; set; } = [];

    public List<ClassForm> Classes { get; set; } = [];

    public string? Reason { get; set; }

    /// <summary>Filled with the lines of a table.</summary>
    internal void Fill(DefectScheme scheme)
    {
        SampleGrams = scheme.SampleGrams;
        Kinds = [.. scheme.Kinds.Select(kind => new KindForm { Code = kind.Code, Was = kind.Name, Name = kind.Name, Category = kind.Category, BeansPerFullDefect = kind.BeansPerFullDefect })];
        Classes = [.. scheme.Classes.Select(one => new ClassForm { Was = one.Name, Name = one.Name, Category1 = one.Category1, Category2 = one.Category2, Total = one.Total, QuakersIn100Grams = one.QuakersIn100Grams })];
    }

    /// <summary>Lines to add something in, below those that are there.</summary>
    internal void AddLines()
    {
        Kinds.AddRange(Enumerable.Repeat(0, Math.Max(0, EmptyLines - Kinds.Count(kind => kind.IsEmpty))).Select(_ => new KindForm()));
        Classes.AddRange(Enumerable.Repeat(0, Math.Max(0, 1 - Classes.Count(one => one.IsEmpty))).Select(_ => new ClassForm()));
    }

    /// <exception cref="RuleBrokenException">A line lost its name and was not marked to be left out.</exception>
    internal IReadOnlyList<DefectKind> DefectKinds()
    {
        RequireNames(Kinds, "defect", nameof(Kinds));
        return [.. Kinds.Where(kind => !kind.IsEmpty && !kind.IsLeftOut).Select(kind => new DefectKind(kind.Code ?? "", kind.Name!.Trim(), kind.Category, kind.BeansPerFullDefect ?? 0m))];
    }

    /// <exception cref="RuleBrokenException">A line lost its name and was not marked to be left out.</exception>
    internal IReadOnlyList<QualityClass> QualityClasses()
    {
        RequireNames(Classes, "class", nameof(Classes));
        return [.. Classes.Where(one => !one.IsEmpty && !one.IsLeftOut).Select(one => new QualityClass(one.Name!.Trim(), one.Category1, one.Category2, one.Total, one.QuakersIn100Grams))];
    }

    private static void RequireNames(IEnumerable<LineForm> lines, string what, string field)
    {
        var (number, nameless) = lines.Select((line, at) => (at + 1, line)).FirstOrDefault(one => one.line is { IsEmpty: false, IsLeftOut: false } && string.IsNullOrWhiteSpace(one.line.Name));
        Rule.Require(
            nameless is null,
            string.Create(CultureInfo.InvariantCulture, $"Line {number} has lost the name of its {what}{(nameless?.Was is { Length: > 0 } was ? $" ({was})" : "")}: name it, or mark the line to be left out."),
            field);
    }
}

/// <summary>A line of a defect table: what it was called before, and whether it is to go.</summary>
public abstract class LineForm
{
    public string? Was { get; set; }

    public string? Name { get; set; }

    public bool IsLeftOut { get; set; }

    /// <summary>Nothing was ever in it.</summary>
    internal bool IsEmpty => string.IsNullOrWhiteSpace(Name) && string.IsNullOrEmpty(Was) && HasNoFigures;

    protected abstract bool HasNoFigures { get; }
}

public sealed class KindForm : LineForm
{
    public string? Code { get; set; }

    public int Category { get; set; } = 2;

    public decimal? BeansPerFullDefect { get; set; }

    protected override bool HasNoFigures => BeansPerFullDefect is null;
}

public sealed class ClassForm : LineForm
{
    public decimal? Category1 { get; set; }

    public decimal? Category2 { get; set; }

    public decimal? Total { get; set; }

    public decimal? QuakersIn100Grams { get; set; }

    protected override bool HasNoFigures => (Category1 ?? Category2 ?? Total ?? QuakersIn100Grams) is null;
}
