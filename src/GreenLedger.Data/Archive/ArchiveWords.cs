using GreenLedger.Data.Papers;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using Microsoft.EntityFrameworkCore.Metadata;

namespace GreenLedger.Data.Archive;

/// <summary>What tables and columns mean: by the comments beside the code, else by their names in words.</summary>
internal static class ArchiveWords
{
    private static readonly Dictionary<(Type Value, string Member), string> Units = new()
    {
        [(typeof(Weight), nameof(Weight.Micrograms))] = "µg (1,000,000,000 are 1 kg)",
        [(typeof(Money), nameof(Money.MinorUnits))] = "smallest unit of the currency beside it (cents of EUR, yen of JPY)",
        [(typeof(Money), nameof(Money.Currency))] = "ISO 4217",
        [(typeof(PricePerWeight), nameof(PricePerWeight.Millionths))] = "millionths of the currency beside it, for the unit of weight beside it",
        [(typeof(PricePerWeight), nameof(PricePerWeight.Currency))] = "ISO 4217",
        [(typeof(PricePerWeight), nameof(PricePerWeight.Unit))] = "",
        [(typeof(PricePerWeight), "NanosPerKilogram")] = "billionths of the currency beside it per kg",
        [(typeof(Mark), nameof(Mark.Hundredths))] = "hundredths of a point",
        [(typeof(Score), nameof(Score.Millionths))] = "millionths of a point",
        [(typeof(Percent), nameof(Percent.TenThousandths))] = "ten-thousandths of a per cent (108,000 are 10.8 %)",
        [(typeof(WaterActivity), nameof(WaterActivity.TenThousandths))] = "ten-thousandths (5,500 are 0.55)",
        [(typeof(FullDefects), nameof(FullDefects.Hundredths))] = "hundredths of a full defect",
        [(typeof(ColourReading), nameof(ColourReading.Tenths))] = "tenths of the scale that is named beside it",
        [(typeof(Differential), nameof(Differential.QuotedTenThousandths))] = "ten-thousandths of a US cent per lb (arabica) or of a USD per tonne (robusta)",
        [(typeof(Differential), nameof(Differential.Month))] = "futures month: market, year and month",
    };

    public static string Of(ITable table)
    {
        var type = table.EntityTypeMappings.First().TypeBase.ClrType;
        return DocComments.Of(type) ?? Sentence($"One {RecordKinds.Words(type.Name)} in each row");
    }

    /// <summary>Empty where a column counts nothing.</summary>
    public static string UnitOf(IColumn column) =>
        PropertyOf(column) is { DeclaringType: IComplexType value } property ? Units.GetValueOrDefault((value.ClrType, property.Name), "") : "";

    public static string Of(IColumn column)
    {
        var property = PropertyOf(column)!;
        var said = Said(property);
        var choices = ChoicesOf(property.ClrType);
        return choices.Length == 0 ? said : $"{said} {choices}";
    }

    /// <summary>Whether a number in a value has its unit said.</summary>
    public static bool IsUnitKnown(IProperty property) =>
        property.DeclaringType is not IComplexType value || Units.ContainsKey((value.ClrType, property.Name)) || property.ClrType == typeof(string);

    private static IProperty? PropertyOf(IColumn column) => column.PropertyMappings is [var first, ..] ? first.Property : null;

    /// <summary>Of a value within a record: what the record says of it. A part of it says no more than its own name and unit.</summary>
    private static string Said(IProperty property)
    {
        var (type, member) = (property.DeclaringType, property.Name);
        while (type is IComplexType value)
        {
            (member, type) = (value.ComplexProperty.Name, value.ComplexProperty.DeclaringType);
        }

        var said = member == "SearchText" ? "What the search looks in: names without capitals and accents." : DocComments.Of(type.ClrType, member);
        var part = property.DeclaringType is IComplexType ? $" ({RecordKinds.Words(property.Name)})" : "";
        return said is not null && part.Length == 0 ? said : Sentence((said?.TrimEnd('.') ?? Named(property, member)) + part);
    }

    private static string Named(IProperty property, string member) => property switch
    {
        _ when property.IsPrimaryKey() && member == "Id" => "The identity of the row",
        _ when property.IsForeignKey() && PrincipalOf(property) is var principal && (member == principal + "Id" || member == "By") => $"Which {RecordKinds.Words(principal)}",
        _ when property.IsForeignKey() => $"Which {RecordKinds.Words(PrincipalOf(property))}: {RecordKinds.Words(member)}",
        _ when member == "Version" => "How many times the record was changed",
        _ when member == "At" => "When it was written down",
        _ => RecordKinds.Words(member),
    };

    private static string PrincipalOf(IProperty property) => property.GetContainingForeignKeys().First().PrincipalEntityType.ClrType.Name;

    private static string ChoicesOf(Type type)
    {
        var choice = Nullable.GetUnderlyingType(type) ?? type;
        return choice.IsEnum
            ? string.Join(", ", Enum.GetValuesAsUnderlyingType(choice).Cast<object>().Select(value => $"{value} {RecordKinds.Words(Enum.GetName(choice, value)!)}")) + "."
            : "";
    }

    private static string Sentence(string words) => char.ToUpperInvariant(words[0]) + words[1..] + ".";
}
