using System;

namespace Acquisition.Core;

/// <summary>
/// How a strong quantity type is made from a value in its SI unit, and its kind. The one table of the types, written out: generic code must make a value of a type parameter on
/// netstandard2.0, where interfaces have no static members, and without reflection, which trimming would break. A test holds it to the types.
/// </summary>
internal static class StrongType<T>
    where T : struct, IQuantity
{
    private static readonly Func<double, string, T>? Maker = (Func<double, string, T>?)Find();
    private static readonly QuantityKind? Known = Maker is null ? null : default(T).ToQuantity().Kind;

    /// <summary>The kind of the type.</summary>
    /// <exception cref="ArgumentException">The type is none of this library.</exception>
    internal static QuantityKind Kind => Known ?? throw Foreign();

    /// <summary>A value in the SI unit (logarithmic kinds in their own), and the argument it came from, to a value of the type.</summary>
    /// <exception cref="ArgumentException">The type is none of this library.</exception>
    internal static Func<double, string, T> FromSi => Maker ?? throw Foreign();

    /// <summary>The kind that text of the type must have; null where any will do.</summary>
    internal static QuantityKind? KindOfText => typeof(T) == typeof(Quantity) ? null : Kind;

    /// <summary>The quantity as a value of the type, boxed.</summary>
    /// <exception cref="ArgumentException">The quantity is of another kind, the type refuses the value, or the type is none of this library.</exception>
    internal static object Make(Quantity quantity) => typeof(T) == typeof(Quantity) ? quantity : FromSi(quantity.Require(Kind, nameof(quantity)), nameof(quantity));

    /// <summary>The value of the type that is nearest to a computed one: points are whole.</summary>
    /// <exception cref="ArgumentException">The type refuses the value, or is none of this library.</exception>
    internal static T Nearest(double si, string argument) => FromSi(ReferenceEquals(Known, QuantityKind.PointCount) ? Math.Round(si) : si, argument);

    private static ArgumentException Foreign() => new(typeof(T) == typeof(Quantity)
        ? "a Quantity may be of any kind, and here the type must say which; use one of the strong types, such as Voltage"
        : $"{typeof(T)} is no quantity type of this library, which cannot make values of it; use the strong type of its kind, such as Voltage, or convert by ToQuantity()");

    private static Delegate? Find() => default(T) switch
    {
        Angle => (Func<double, string, Angle>)Angle.FromSi,
        BitDepth => (Func<double, string, BitDepth>)BitDepth.FromSi,
        BitRate => (Func<double, string, BitRate>)BitRate.FromSi,
        Capacitance => (Func<double, string, Capacitance>)Capacitance.FromSi,
        Current => (Func<double, string, Current>)Current.FromSi,
        DecibelRatio => (Func<double, string, DecibelRatio>)DecibelRatio.FromSi,
        Duration => (Func<double, string, Duration>)Duration.FromSi,
        Frequency => (Func<double, string, Frequency>)Frequency.FromSi,
        Inductance => (Func<double, string, Inductance>)Inductance.FromSi,
        Length => (Func<double, string, Length>)Length.FromSi,
        NoiseDensity => (Func<double, string, NoiseDensity>)NoiseDensity.FromSi,
        PeakToPeakVoltage => (Func<double, string, PeakToPeakVoltage>)PeakToPeakVoltage.FromSi,
        PeakVoltage => (Func<double, string, PeakVoltage>)PeakVoltage.FromSi,
        PointCount => (Func<double, string, PointCount>)PointCount.FromSi,
        Power => (Func<double, string, Power>)Power.FromSi,
        PowerLevel => (Func<double, string, PowerLevel>)PowerLevel.FromSi,
        Ratio => (Func<double, string, Ratio>)Ratio.FromSi,
        Resistance => (Func<double, string, Resistance>)Resistance.FromSi,
        RmsVoltage => (Func<double, string, RmsVoltage>)RmsVoltage.FromSi,
        SampleRate => (Func<double, string, SampleRate>)SampleRate.FromSi,
        SlewRate => (Func<double, string, SlewRate>)SlewRate.FromSi,
        Temperature => (Func<double, string, Temperature>)Temperature.FromSi,
        Voltage => (Func<double, string, Voltage>)Voltage.FromSi,
        VoltageLevel => (Func<double, string, VoltageLevel>)VoltageLevel.FromSi,
        _ => null,
    };
}
