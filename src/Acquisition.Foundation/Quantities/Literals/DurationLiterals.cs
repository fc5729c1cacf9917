namespace Acquisition.Core.Literals;

/// <summary>Duration literals: <c>2.s()</c>.</summary>
public static class DurationLiterals
{
    /// <summary>A duration in seconds.</summary>
    public static Duration s(this double value) => Duration.FromSeconds(value);

    /// <summary>A duration in seconds.</summary>
    public static Duration s(this int value) => Duration.FromSeconds(value);

    /// <summary>A duration in milliseconds.</summary>
    public static Duration ms(this double value) => Duration.FromMilliseconds(value);

    /// <summary>A duration in milliseconds.</summary>
    public static Duration ms(this int value) => Duration.FromMilliseconds(value);

    /// <summary>A duration in microseconds.</summary>
    public static Duration us(this double value) => Duration.FromMicroseconds(value);

    /// <summary>A duration in microseconds.</summary>
    public static Duration us(this int value) => Duration.FromMicroseconds(value);

    /// <summary>A duration in nanoseconds.</summary>
    public static Duration ns(this double value) => Duration.FromNanoseconds(value);

    /// <summary>A duration in nanoseconds.</summary>
    public static Duration ns(this int value) => Duration.FromNanoseconds(value);

    /// <summary>A duration in picoseconds.</summary>
    public static Duration ps(this double value) => Duration.FromPicoseconds(value);

    /// <summary>A duration in picoseconds.</summary>
    public static Duration ps(this int value) => Duration.FromPicoseconds(value);

    /// <summary>A duration in femtoseconds.</summary>
    public static Duration fs(this double value) => Duration.FromFemtoseconds(value);

    /// <summary>A duration in femtoseconds.</summary>
    public static Duration fs(this int value) => Duration.FromFemtoseconds(value);
}
