#if NET8_0_OR_GREATER
using System;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Acquisition.Core;

/// <summary>Refuses to write a result into JSON member by member, and says what to write instead.</summary>
/// <remarks>
/// Results are no records of plain members: models refer to themselves, a value may be absent, degrees of freedom may be infinite, and much is computed only when it is asked for. A serializer
/// that walks them would loop, throw in production at the first absent value, or write megabytes. Reports (Acquisition.Reports) carry what a reader or a program needs, with a published schema; single
/// quantities and findings are written as they are.
/// </remarks>
public sealed class ResultJsonConverter : JsonConverterFactory
{
    /// <inheritdoc/>
    public override bool CanConvert(Type typeToConvert) => true;

    /// <inheritdoc/>
    /// <exception cref="NotSupportedException">Always; the message says what to write instead.</exception>
    public override JsonConverter? CreateConverter(Type typeToConvert, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(typeToConvert);
        string name = typeToConvert.Name;
        int generic = name.IndexOf('`', StringComparison.Ordinal);
        throw new NotSupportedException($"{(generic < 0 ? name : name[..generic])} is not written into JSON member by member: write its report, ToReport().ToJson() of Acquisition.Reports, or the values you need; quantities and findings are written as they are");
    }
}
#endif
