namespace Acquisition.Core.Literals;

/// <summary>Temperature literals: <c>25.degC()</c>.</summary>
public static class TemperatureLiterals
{
    /// <summary>A value in K.</summary>
    public static Temperature K(this double value) => Temperature.FromKelvins(value);

    /// <summary>A value in K.</summary>
    public static Temperature K(this int value) => Temperature.FromKelvins(value);

    /// <summary>A value in degC.</summary>
    public static Temperature degC(this double value) => Temperature.FromDegreesCelsius(value);

    /// <summary>A value in degC.</summary>
    public static Temperature degC(this int value) => Temperature.FromDegreesCelsius(value);
}
