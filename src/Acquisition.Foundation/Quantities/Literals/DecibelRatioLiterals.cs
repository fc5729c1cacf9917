namespace Acquisition.Core.Literals;

/// <summary>Decibel literals: <c>-3.dB()</c>.</summary>
public static class DecibelRatioLiterals
{
    /// <summary>A value in dB.</summary>
    public static DecibelRatio dB(this double value) => DecibelRatio.FromDecibels(value);

    /// <summary>A value in dB.</summary>
    public static DecibelRatio dB(this int value) => DecibelRatio.FromDecibels(value);

    /// <summary>A value in Np.</summary>
    public static DecibelRatio Np(this double value) => DecibelRatio.FromNepers(value);

    /// <summary>A value in Np.</summary>
    public static DecibelRatio Np(this int value) => DecibelRatio.FromNepers(value);
}
