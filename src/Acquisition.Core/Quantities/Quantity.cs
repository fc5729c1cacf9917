using System;

namespace Acquisition.Core;

/// <summary>A quantity whose kind is known at run time only: what text and formulas work with.</summary>
/// <remarks>The value is finite. The default value is the plain number 0.</remarks>
public readonly struct Quantity : IEquatable<Quantity>, IQuantity
{
    private readonly QuantityKind? _kind;

    /// <summary>A value in the unit that <paramref name="kind"/> is held in.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="siValue"/> is not finite.</exception>
    public Quantity(double siValue, QuantityKind kind)
    {
        _kind = kind ?? throw new ArgumentNullException(nameof(kind));
        SiValue = Math.Abs(siValue) <= double.MaxValue ? siValue : throw Refuse.NotFinite(siValue, kind, nameof(siValue));
    }

    /// <summary>The value in the SI unit; for logarithmic kinds in their own unit (dB, dBm, dBV ...).</summary>
    public double SiValue { get; }

    /// <summary>What the quantity is.</summary>
    public QuantityKind Kind => _kind ?? QuantityKind.Ratio;

    /// <summary>The dimension.</summary>
    public Dimension Dimension => Kind.Dimension;

    /// <inheritdoc/>
    public Quantity ToQuantity() => this;

    internal double Require(QuantityKind kind, string argument) =>
        ReferenceEquals(Kind, kind) ? SiValue : throw new ArgumentException($"found a {Kind.Name} ({this}), expected a {kind.Name}", argument);

    /// <inheritdoc/>
    public bool Equals(Quantity other) => SiValue == other.SiValue && ReferenceEquals(Kind, other.Kind);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Quantity other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => (SiValue + 0.0).GetHashCode();

    /// <summary>Whether value and kind are the same.</summary>
    public static bool operator ==(Quantity left, Quantity right) => left.Equals(right);

    /// <summary>Whether value or kind differ.</summary>
    public static bool operator !=(Quantity left, Quantity right) => !left.Equals(right);

    /// <inheritdoc/>
    public override string ToString() => QuantityText.Format(SiValue, Kind, null, null);
}
