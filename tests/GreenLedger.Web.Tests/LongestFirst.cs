using GreenLedger.Web.Tests.Delivery;
using GreenLedger.Web.Tests.InBrowser;
using Xunit.Sdk;
using Xunit.v3;

namespace GreenLedger.Web.Tests;

/// <summary>Begins with the classes that take minutes: begun last, they would keep one processor busy while the other waits.</summary>
public sealed class LongestFirst : ITestCollectionOrderer
{
    private static readonly string[] Longest = [.. new[]
    {
        typeof(FilledCrawlTests), typeof(CrawlTests), typeof(MainJobTests), typeof(ImageTests),
    }.Select(type => type.FullName!)];

    public IReadOnlyCollection<TTestCollection> OrderTestCollections<TTestCollection>(IReadOnlyCollection<TTestCollection> testCollections)
        where TTestCollection : ITestCollection =>
        [.. testCollections.OrderBy(collection => Place(collection.TestCollectionDisplayName)).ThenBy(collection => collection.UniqueID, StringComparer.Ordinal)];

    /// <summary>A class is a collection of its own, whose name holds that of the class.</summary>
    private static int Place(string collection)
    {
        var place = Array.FindIndex(Longest, name => collection.Contains(name, StringComparison.Ordinal));
        return place < 0 ? Longest.Length : place;
    }
}
