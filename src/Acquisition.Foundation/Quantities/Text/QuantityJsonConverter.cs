#if NET8_0_OR_GREATER
using System;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Acquisition.Core;

/// <summary>Writes a quantity into JSON as text such as <c>"100 MHz"</c>, as value or property name, and reads it back.</summary>
/// <typeparam name="T">The strong type, or <see cref="Quantity"/>.</typeparam>
/// <remarks>A number without a unit is refused, and so is null unless the property is nullable. The refusal carries the path.</remarks>
public sealed class QuantityJsonConverter<T> : JsonConverter<T>
    where T : struct, IQuantity, ISpanParsable<T>, ISpanFormattable
{
    /// <inheritdoc/>
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Parse(QuantityJson.Text(ref reader, typeof(T).Name));

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => QuantityJson.Write(writer, value);

    /// <inheritdoc/>
    public override T ReadAsPropertyName(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Parse(reader.GetString()!);

    /// <inheritdoc/>
    public override void WriteAsPropertyName(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => QuantityJson.WriteName(writer, value);

    private static T Parse(string text)
    {
        try
        {
            return T.Parse(text, null);
        }
        catch (QuantityFormatException problem)
        {
            throw new JsonException(problem.Message, problem);
        }
    }
}

/// <summary>What does not depend on the type.</summary>
internal static class QuantityJson
{
    internal static string Text(ref Utf8JsonReader reader, string type) => reader.TokenType == JsonTokenType.String
        ? reader.GetString()!
        : throw new JsonException($"found a JSON {Name(reader.TokenType)}, expected a text such as \"100 MHz\" for a {type}");

    internal static void Write<T>(Utf8JsonWriter writer, T value)
        where T : ISpanFormattable
    {
        ArgumentNullException.ThrowIfNull(writer);
        Span<char> text = stackalloc char[QuantityWriter.BufferLength];
        value.TryFormat(text, out int length, default, null);
        writer.WriteStringValue(text[..length]);
    }

    internal static void WriteName<T>(Utf8JsonWriter writer, T value)
        where T : ISpanFormattable
    {
        ArgumentNullException.ThrowIfNull(writer);
        Span<char> text = stackalloc char[QuantityWriter.BufferLength];
        value.TryFormat(text, out int length, default, null);
        writer.WritePropertyName(text[..length]);
    }

    private static string Name(JsonTokenType token) => token switch
    {
        JsonTokenType.Number => "number",
        JsonTokenType.Null => "null",
        JsonTokenType.True or JsonTokenType.False => "truth value",
        JsonTokenType.StartArray => "array",
        _ => "object",
    };
}
#endif
