namespace Acquisition.Core.Literals;

/// <summary>Angle literals: <c>2.rad()</c>.</summary>
public static class AngleLiterals
{
    /// <summary>A angle in radians.</summary>
    public static Angle rad(this double value) => Angle.FromRadians(value);

    /// <summary>A angle in radians.</summary>
    public static Angle rad(this int value) => Angle.FromRadians(value);

    /// <summary>A angle in degrees.</summary>
    public static Angle deg(this double value) => Angle.FromDegrees(value);

    /// <summary>A angle in degrees.</summary>
    public static Angle deg(this int value) => Angle.FromDegrees(value);
}
