using System.Text.Json;
using System.Text.Json.Serialization;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// Rules and figures as JSON text that anybody can read later: a value such as a score or a weight is written as it
/// prints (<c>"86.25"</c>, <c>"2660 kg"</c>), an enumeration by its name.
/// </summary>
public static class FrozenJson
{
    private static readonly JsonSerializerOptions Options = new()
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Converters = { new JsonStringEnumConverter(), new PrintedValues() },
    };

    public static string Write<T>(T value) => JsonSerializer.Serialize(value, Options);

    /// <exception cref="JsonException">The text was not written by <see cref="Write"/>.</exception>
    public static T Read<T>(string text) =>
        JsonSerializer.Deserialize<T>(text, Options) ?? throw new JsonException("The frozen text is empty.");

    /// <summary>For values of the ledger that print and parse.</summary>
    private sealed class PrintedValues : JsonConverterFactory
    {
        public override bool CanConvert(Type typeToConvert) =>
            typeToConvert.IsValueType && typeToConvert.Assembly == typeof(FrozenJson).Assembly && IsParsable(typeToConvert);

        public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
            (JsonConverter)Activator.CreateInstance(typeof(PrintedValue<>).MakeGenericType(typeToConvert))!;

        private static bool IsParsable(Type type) => type.GetInterfaces().Any(shape =>
            shape.IsGenericType && shape.GetGenericTypeDefinition() == typeof(IParsable<>) && shape.GenericTypeArguments[0] == type);
    }

    private sealed class PrintedValue<T> : JsonConverter<T>
        where T : struct, IParsable<T>
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            T.Parse(reader.GetString() ?? "", null);

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.ToString());
    }
}
