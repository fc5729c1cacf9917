namespace Acquisition.Core.Responses;

/// <summary>What a measured response answers outside its data.</summary>
public enum OutsideBand
{
    /// <summary>Nothing: asking is an error that names the limits of the data.</summary>
    Refuse,

    /// <summary>The magnitude of the nearest point, with the phase going on at the delay of the end of the data.</summary>
    Hold,

    /// <summary>The slope of the last octave of the data, in dB per logarithm of frequency (never rising above the data), with the phase going on at the delay of the end.</summary>
    ExtendSlope,

    /// <summary>Nothing passes above the data; below it the magnitude of the first point. What a step computed from a cut-off spectrum assumes: it rings (handbook 2.4).</summary>
    Zero,
}
