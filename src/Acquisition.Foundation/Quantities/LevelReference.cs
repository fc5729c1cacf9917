namespace Acquisition.Core;

/// <summary>What a level, or a ratio in decibels, is stated relative to (IEC 60027-3; handbook 1.3).</summary>
public enum LevelReference
{
    /// <summary>No reference: an ordinary quantity, or a ratio of two values that are both at hand (dB).</summary>
    None,

    /// <summary>1 mW: dBm, and dBW which lies 30 below it.</summary>
    Milliwatt,

    /// <summary>1 V rms: dBV, and dBmV, dBµV and dBu which lie a fixed distance from it.</summary>
    Volt,

    /// <summary>The carrier of the same signal: dBc.</summary>
    Carrier,

    /// <summary>A full-scale sine of the converter: dBFS.</summary>
    FullScale,
}
