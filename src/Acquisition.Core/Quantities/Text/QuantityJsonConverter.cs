#if NET8_0_OR_GREATER
using System;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Acquisition.Core;

/// <summary>Writes a strong quantity into JSON as text such as <c>"100 MHz"</c>, and reads it back.</summary>
/// <typeparam name="T">The strong quantity type.</typeparam>
public sealed class QuantityJsonConverter<T> : JsonConverter<T>
    where T : struct, IQuantity, ISpanParsable<T>, ISpanFormattable
{
    /// <inheritdoc/>
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        T.TryParse(reader.GetString(), null, out T value) ? value : throw new JsonException($"'{reader.GetString()}' is not a {typeof(T).Name}");

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStringValue(value.ToString());
    }
}
#endif
