using System;

namespace Acquisition.Core;

/// <summary>
/// The strong type that goes with each kind, written out: converters must make a value of a type parameter on netstandard2.0, where interfaces have no static
/// members, and without reflection, which trimming would break. A test holds the list to the types.
/// </summary>
internal static class StrongTypes
{
    /// <summary>The quantity as a value of <typeparamref name="T"/>, boxed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The type refuses the value.</exception>
    internal static object Make<T>(Quantity quantity)
        where T : struct, IQuantity
    {
        if (typeof(T) == typeof(Angle)) return Angle.FromQuantity(quantity);
        if (typeof(T) == typeof(BitDepth)) return BitDepth.FromQuantity(quantity);
        if (typeof(T) == typeof(BitRate)) return BitRate.FromQuantity(quantity);
        if (typeof(T) == typeof(Capacitance)) return Capacitance.FromQuantity(quantity);
        if (typeof(T) == typeof(Current)) return Current.FromQuantity(quantity);
        if (typeof(T) == typeof(DecibelRatio)) return DecibelRatio.FromQuantity(quantity);
        if (typeof(T) == typeof(Duration)) return Duration.FromQuantity(quantity);
        if (typeof(T) == typeof(Frequency)) return Frequency.FromQuantity(quantity);
        if (typeof(T) == typeof(Inductance)) return Inductance.FromQuantity(quantity);
        if (typeof(T) == typeof(Length)) return Length.FromQuantity(quantity);
        if (typeof(T) == typeof(NoiseDensity)) return NoiseDensity.FromQuantity(quantity);
        if (typeof(T) == typeof(PeakToPeakVoltage)) return PeakToPeakVoltage.FromQuantity(quantity);
        if (typeof(T) == typeof(PeakVoltage)) return PeakVoltage.FromQuantity(quantity);
        if (typeof(T) == typeof(PointCount)) return PointCount.FromQuantity(quantity);
        if (typeof(T) == typeof(Power)) return Power.FromQuantity(quantity);
        if (typeof(T) == typeof(PowerLevel)) return PowerLevel.FromQuantity(quantity);
        if (typeof(T) == typeof(Ratio)) return Ratio.FromQuantity(quantity);
        if (typeof(T) == typeof(Resistance)) return Resistance.FromQuantity(quantity);
        if (typeof(T) == typeof(RmsVoltage)) return RmsVoltage.FromQuantity(quantity);
        if (typeof(T) == typeof(SampleRate)) return SampleRate.FromQuantity(quantity);
        if (typeof(T) == typeof(SlewRate)) return SlewRate.FromQuantity(quantity);
        if (typeof(T) == typeof(Temperature)) return Temperature.FromQuantity(quantity);
        if (typeof(T) == typeof(Voltage)) return Voltage.FromQuantity(quantity);
        if (typeof(T) == typeof(VoltageLevel)) return VoltageLevel.FromQuantity(quantity);
        if (typeof(T) == typeof(Quantity)) return quantity;
        throw new NotSupportedException($"{typeof(T)} is no quantity of this library");
    }

    /// <summary>The kind that text of <typeparamref name="T"/> must have; null where any will do.</summary>
    internal static QuantityKind? KindOf<T>()
        where T : struct, IQuantity => typeof(T) == typeof(Quantity) ? null : default(T).ToQuantity().Kind;
}
