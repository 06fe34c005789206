using GreenLedger.Data.Search;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Display;

/// <summary>What the kinds of things that search finds are called, and where their pages are.</summary>
public static class SearchWords
{
    public static string Many(FoundKind kind) => kind switch
    {
        FoundKind.Lot => "lots",
        FoundKind.Offer => "offers",
        FoundKind.Mark => "ICO marks",
        FoundKind.Supplier => "suppliers",
        FoundKind.Producer => "producers",
        FoundKind.Sample => "samples",
        FoundKind.Contract => "contracts",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    public static string Heading(FoundKind kind) => ValueWords.Heading(Many(kind));

    /// <summary>A mark leads to its lot.</summary>
    public static string? Address(IUrlHelper url, FoundKind kind, Guid id) =>
        RecordPages.Find(url, kind == FoundKind.Mark ? nameof(FoundKind.Lot) : kind.ToString(), id.ToString());
}
