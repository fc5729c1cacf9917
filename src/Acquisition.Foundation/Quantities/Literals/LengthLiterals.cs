namespace Acquisition.Core.Literals;

/// <summary>Length literals: <c>2.m()</c>.</summary>
public static class LengthLiterals
{
    /// <summary>A length in metres.</summary>
    public static Length m(this double value) => Length.FromMeters(value);

    /// <summary>A length in metres.</summary>
    public static Length m(this int value) => Length.FromMeters(value);

    /// <summary>A length in millimetres.</summary>
    public static Length mm(this double value) => Length.FromMillimeters(value);

    /// <summary>A length in millimetres.</summary>
    public static Length mm(this int value) => Length.FromMillimeters(value);

    /// <summary>A length in micrometres.</summary>
    public static Length um(this double value) => Length.FromMicrometers(value);

    /// <summary>A length in micrometres.</summary>
    public static Length um(this int value) => Length.FromMicrometers(value);

    /// <summary>A length in inches.</summary>
    public static Length inch(this double value) => Length.FromInches(value);

    /// <summary>A length in inches.</summary>
    public static Length inch(this int value) => Length.FromInches(value);
}
