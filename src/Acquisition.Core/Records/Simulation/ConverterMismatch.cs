using System;

namespace Acquisition.Core;

/// <summary>How one of several interleaved converters differs from the ideal one (handbook 5.7).</summary>
/// <remarks>Immutable.</remarks>
public sealed class ConverterMismatch
{
    /// <summary>A converter with its errors.</summary>
    /// <param name="offset">What it adds.</param>
    /// <param name="gain">By what part its gain is too large.</param>
    /// <param name="skew">How late it samples.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gain"/> is not above -1.</exception>
    public ConverterMismatch(Voltage offset, Ratio gain, Duration skew)
    {
        if (!(gain.SiValue > -1))
            throw Refuse.OutOfRange(gain.SiValue, Ratio.Kind, nameof(gain), "above -1");
        Offset = offset;
        Gain = gain;
        Skew = skew;
    }

    /// <summary>What it adds.</summary>
    public Voltage Offset { get; }

    /// <summary>By what part its gain is too large.</summary>
    public Ratio Gain { get; }

    /// <summary>How late it samples.</summary>
    public Duration Skew { get; }
}
