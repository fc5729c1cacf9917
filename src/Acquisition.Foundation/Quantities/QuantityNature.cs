namespace Acquisition.Core;

/// <summary>How a value of a kind behaves: linear ones scale and add, tagged amplitudes say how they were stated, logarithmic ones follow the rules of decibels.</summary>
public enum QuantityNature
{
    /// <summary>An ordinary quantity.</summary>
    Linear,

    /// <summary>An amplitude stated from mean to peak.</summary>
    Peak,

    /// <summary>An amplitude stated from peak to peak.</summary>
    PeakToPeak,

    /// <summary>An amplitude stated as root mean square.</summary>
    Rms,

    /// <summary>A point on a scale, such as a temperature: points cannot be added.</summary>
    Point,

    /// <summary>A ratio in decibels.</summary>
    DecibelRatio,

    /// <summary>A level: decibels re a stated reference.</summary>
    Level,

    /// <summary>Decibels per length, per octave or per decade.</summary>
    DecibelSlope,

    /// <summary>A level per bandwidth, such as dBm/Hz.</summary>
    LevelDensity,
}
