using System.Text.RegularExpressions;
using AutoMapper;
using AutoMapper.Internal;

namespace GreenLedger.Data.Tests;

/// <summary>
/// What keeps the ledger clear of AutoMapper's advisory GHSA-rvv3-g6hj-g44x (self-referencing object graphs): every map
/// is a flat query projection, none can come back to a type it started from, and nothing is mapped in memory.
/// </summary>
public sealed partial class MappingTests
{
    [Fact]
    public void Every_member_of_every_row_has_a_source() => LedgerDatabase.Mapper().AssertConfigurationIsValid();

    [Fact]
    public void Every_map_is_a_query_projection() =>
        Assert.All(Maps(LedgerDatabase.Mapper()), map => Assert.True(map.Projection, map.Types.ToString()));

    [Fact]
    public void No_map_can_recurse() => Assert.Empty(Recursions(LedgerDatabase.Mapper()));

    [Fact]
    public void A_map_that_recurses_would_be_found()
    {
        var looping = new MapperConfiguration(configuration =>
        {
            configuration.CreateProjection<Branch, BranchRow>();
            configuration.CreateProjection<Leaf, LeafRow>();
        });

        Assert.Equal([typeof(BranchRow), typeof(LeafRow)], Recursions(looping).OrderBy(type => type.Name));
    }

    [Fact]
    public void Nothing_is_mapped_in_memory()
    {
        var sources = Directory.GetFiles(Repository.Folder("src"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}"))
            .ToList();

        Assert.NotEmpty(sources);
        Assert.DoesNotContain(sources, file => InMemoryMap().IsMatch(File.ReadAllText(file)));
    }

    private static IEnumerable<TypeMap> Maps(MapperConfiguration configuration) => configuration.Internal().GetAllTypeMaps();

    /// <summary>Row types that can be reached from themselves over the members of other rows.</summary>
    private static List<Type> Recursions(MapperConfiguration configuration)
    {
        var rows = Maps(configuration).Select(map => map.DestinationType).ToHashSet();
        return [.. rows.Where(row => Reachable(row, rows).Contains(row))];
    }

    private static HashSet<Type> Reachable(Type start, HashSet<Type> rows)
    {
        var found = new HashSet<Type>();
        var open = new Queue<Type>([start]);
        while (open.TryDequeue(out var type))
        {
            foreach (var next in MembersOf(type).Where(rows.Contains).Where(found.Add))
            {
                open.Enqueue(next);
            }
        }

        return found;
    }

    /// <summary>The types of a row's members, looking through lists, arrays and optional values.</summary>
    private static IEnumerable<Type> MembersOf(Type type) => type.GetProperties()
        .Select(property => property.PropertyType)
        .SelectMany(member => member.IsArray ? [member.GetElementType()!] : member.GetGenericArguments().Append(member));

    [GeneratedRegex(@"\b[mM]apper\s*\.\s*Map\s*[<(]")]
    private static partial Regex InMemoryMap();

    private sealed record Branch(List<Leaf> Leaves);

    private sealed record Leaf(Branch Branch);

    private sealed record BranchRow(IReadOnlyList<LeafRow> Leaves);

    private sealed record LeafRow(BranchRow Branch);
}
