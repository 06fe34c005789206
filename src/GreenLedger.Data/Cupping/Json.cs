using System.Text.Json;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace GreenLedger.Data.Cupping;

/// <summary>Keeps data of a form or a sheet as JSON text in one column.</summary>
internal static class Json
{
    private static readonly JsonSerializerOptions Plain = new() { IgnoreReadOnlyProperties = true };

    public static ValueConverter<T, string> Of<T>() => new(value => Write(value), json => JsonSerializer.Deserialize<T>(json, Plain)!);

    public static ValueComparer<T> Comparer<T>() => new(
        (one, other) => Write(one!) == Write(other!), value => Write(value).GetHashCode(StringComparison.Ordinal), value => value);

    private static string Write<T>(T value) => JsonSerializer.Serialize(value, Plain);
}
