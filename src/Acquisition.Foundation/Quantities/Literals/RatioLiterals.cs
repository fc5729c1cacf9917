namespace Acquisition.Core.Literals;

/// <summary>Ratio literals: <c>5.Percent()</c>.</summary>
public static class RatioLiterals
{
    /// <summary>A value in Percent.</summary>
    public static Ratio Percent(this double value) => Ratio.FromPercent(value);

    /// <summary>A value in Percent.</summary>
    public static Ratio Percent(this int value) => Ratio.FromPercent(value);

    /// <summary>A value in Ppm.</summary>
    public static Ratio Ppm(this double value) => Ratio.FromPartsPerMillion(value);

    /// <summary>A value in Ppm.</summary>
    public static Ratio Ppm(this int value) => Ratio.FromPartsPerMillion(value);
}
