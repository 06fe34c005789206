using System.Globalization;
using GreenLedger.Data.Papers;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Web.People;

namespace GreenLedger.Web.Display;

/// <summary>Any value of the ledger in words, by the same rules as on its own page; a dash for none.</summary>
public static class ValueWords
{
    public static string Of(object? value, bool inPounds, ClockZone zone) => value switch
    {
        null => "—",
        bool yes => yes ? "yes" : "no",
        Weight weight => Figures.Weight(weight, inPounds),
        Money money => Figures.Money(money),
        PricePerWeight price => Figures.Price(price),
        Differential differential => Figures.Differential(differential),
        Percent percent => Figures.Percent(percent),
        Score score => Figures.Score(score.Points),
        Mark mark => Figures.Score(mark.Points),
        DateOnly day => Figures.Day(day),
        DateTimeOffset moment => Figures.Moment(moment, zone),
        Incoterm term => term.Word(),
        Role roles => RoleNames.Of(roles),
        Enum word => RecordKinds.Words(word.ToString()),
        string text => text.Length == 0 ? "—" : text,
        _ => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "—",
    };

    /// <summary>With a capital: a kind or a member as a heading.</summary>
    public static string Heading(string words) =>
        words.Length == 0 ? "" : char.ToUpperInvariant(words[0]) + words[1..];
}
