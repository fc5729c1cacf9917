using System;

namespace Acquisition.Core;

/// <summary>A measured value that is there, or absent with the finding that says why. It is never a guess.</summary>
/// <typeparam name="T">What is measured.</typeparam>
/// <remarks>Immutable. The default value is absent.</remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public readonly struct Measured<T>
    where T : notnull
{
    private static readonly Finding NotMeasured = new("not-measured", Severity.Note, "this was not measured");

    private readonly T? _value;
    private readonly Finding? _reason;

    /// <summary>A value that is there.</summary>
    public Measured(T value)
    {
        _value = value;
        HasValue = true;
        _reason = null;
    }

    /// <summary>A value that is absent.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="reason"/> is null.</exception>
    public Measured(Finding reason)
    {
        _value = default;
        HasValue = false;
        _reason = reason ?? throw new ArgumentNullException(nameof(reason));
    }

    /// <summary>Whether the value is there.</summary>
    public bool HasValue { get; }

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">It is absent; the message says why.</exception>
    public T Value => HasValue ? _value! : throw new InvalidOperationException(Reason!.ToString());

    /// <summary>Why the value is absent; null where it is there.</summary>
    public Finding? Reason => HasValue ? null : _reason ?? NotMeasured;

    /// <summary>The value, or another where it is absent.</summary>
    public T ValueOr(T other) => HasValue ? _value! : other;

    /// <summary>The value, a quantity with few digits, or why it is absent.</summary>
    public override string ToString() => !HasValue ? "absent: " + Reason!.Message : _value is IQuantity quantity ? quantity.ToQuantity().InWords() : _value!.ToString()!;
}
