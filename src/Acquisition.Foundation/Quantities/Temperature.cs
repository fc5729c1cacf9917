using System;

namespace Acquisition.Core;

/// <summary>A thermodynamic temperature: a point on a scale, so that two of them cannot be added.</summary>
/// <remarks>Held in kelvins, finite and not below absolute zero. The default value is 0 K. Immutable and thread-safe.</remarks>
public readonly partial struct Temperature
{
    private const double CelsiusZeroInKelvins = 273.15;

    private readonly double _value;

    private Temperature(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.Temperature;

    internal double SiValue => _value;

    internal static Temperature FromSi(double value, string argument) =>
        IsInRange(value) ? new Temperature(value) : throw Refuse.NegativeOrNotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static Temperature FromResult(double value, string operand) =>
        IsInRange(value) ? new Temperature(value) : throw Refuse.NegativeOrNotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => value >= 0 && value <= double.MaxValue;

    /// <summary>The standard noise temperature, 290 K (handbook 6.5).</summary>
    public static Temperature StandardNoise => new(290);

    /// <summary>The temperature in kelvins.</summary>
    public double Kelvins => _value;

    /// <summary>A temperature given in kelvins.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Temperature FromKelvins(double kelvins) => FromSi(kelvins, nameof(kelvins));

    /// <summary>The temperature in degrees Celsius.</summary>
    public double DegreesCelsius => _value - CelsiusZeroInKelvins;

    /// <summary>A temperature given in degrees Celsius.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is below -273.15 °C or not finite.</exception>
    public static Temperature FromDegreesCelsius(double degreesCelsius) => FromSi(degreesCelsius + CelsiusZeroInKelvins, nameof(degreesCelsius));
}
