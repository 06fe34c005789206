using GreenLedger.Data.Search;
using GreenLedger.Domain;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>The search box for scripts.</summary>
internal static class SearchApi
{
    private const int RowsEach = 8;

    public static void MapSearchApi(this IEndpointRouteBuilder api) =>
        api.MapGet("/search", GetSearch).WithTags("Search")
            .WithSummary("Lots, offers, ICO marks, suppliers, producers and samples by any part of a name or code")
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    /// <param name="q">At least two letters or digits; capitals and accents do not matter, every word must be found.</param>
    /// <param name="kind">Only this kind, page by page: lot, offer, mark, supplier, producer or sample.</param>
    /// <param name="page">From 1, with a kind only; a page has 50 rows.</param>
    private static async Task<Ok<SearchAnswer>> GetSearch(
        string q, SearchQuery search, Reader reader, CancellationToken cancellationToken, string? kind = null, int page = 1)
    {
        Rule.Require(!SearchQuery.IsTooShort(q), $"Ask for at least {SearchQuery.FewestLetters} letters or digits.", nameof(q));
        var seal = await reader.SealAsync();
        if (kind is null)
        {
            var groups = await search.FindAsync(q, RowsEach, reader.MayRead, seal, cancellationToken);
            return TypedResults.Ok(new SearchAnswer(1, [.. groups.Select(GroupAnswer.Of)]));
        }

        Rule.Require(Enum.TryParse<FoundKind>(kind, ignoreCase: true, out var known) && Enum.IsDefined(known), "Ask for one of: lot, offer, mark, supplier, producer, sample.", nameof(kind));
        var number = Math.Max(1, page);
        var group = await search.ListAsync(known, q, (number - 1) * Paging.UsualSize, Paging.UsualSize, reader.MayRead, seal, cancellationToken);
        return TypedResults.Ok(new SearchAnswer(number, [GroupAnswer.Of(group)]));
    }

    internal sealed record SearchAnswer(int Page, IReadOnlyList<GroupAnswer> Groups);

    /// <param name="Total">How many there are; the rows are the first of them, or one page.</param>
    internal sealed record GroupAnswer(FoundKind Kind, int Total, IReadOnlyList<FoundAnswer> Rows)
    {
        public static GroupAnswer Of(FoundGroup group) =>
            new(group.Kind, group.Total, [.. group.Rows.Select(row => new FoundAnswer(row.Id, row.Name, row.Code, row.Detail))]);
    }

    internal sealed record FoundAnswer(Guid Id, string Name, string? Code, string? Detail);
}
