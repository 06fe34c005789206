using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace GreenLedger.Data.Archive;

/// <summary>What the comments beside the code say of a type or a member, in plain words: the files that the compiler writes of them lie beside the program.</summary>
internal static partial class DocComments
{
    private static readonly Lazy<IReadOnlyDictionary<string, string>> Written = new(Read);

    /// <summary>Null where nothing is said.</summary>
    public static string? Of(Type type) => Find("T:" + NameOf(type));

    /// <summary>Null where nothing is said. What a base class says holds for what is made of it.</summary>
    public static string? Of(Type type, string member)
    {
        for (var owner = type; owner is not null; owner = owner.BaseType)
        {
            if (Find($"P:{NameOf(owner)}.{member}") is { } said)
            {
                return said;
            }
        }

        return null;
    }

    private static string? Find(string key) => Written.Value.TryGetValue(key, out var said) && said.Length > 0 ? said : null;

    private static string NameOf(Type type) =>
        ((type.IsGenericType ? type.GetGenericTypeDefinition() : type).FullName ?? type.Name).Replace('+', '.');

    /// <summary>Of a type in several files the last says what it is: its parts come before it by their names.</summary>
    private static Dictionary<string, string> Read() => Directory.EnumerateFiles(AppContext.BaseDirectory, "GreenLedger.D*.xml")
        .SelectMany(file => XDocument.Load(file).Descendants("member"))
        .Where(member => member.Element("summary") is not null)
        .GroupBy(member => member.Attribute("name")!.Value)
        .ToDictionary(same => same.Key, same => Plain(same.First().Elements("summary").Last()));

    /// <summary>A reference to another member reads as that member's name.</summary>
    private static string Plain(XElement summary) => Space().Replace(string.Concat(summary.DescendantNodes().Select(node => node switch
    {
        XText text => text.Value,
        XElement { IsEmpty: true } see => Named(see),
        _ => "",
    })), " ").Trim();

    private static string Named(XElement see)
    {
        var whole = see.Attribute("cref")?.Value ?? see.Attribute("name")?.Value ?? see.Attribute("langword")?.Value ?? "";
        return whole.Split('(')[0].Split('.', ':')[^1];
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();
}
