namespace Acquisition.Core;

/// <summary>How a transition goes from one level to the other.</summary>
public enum EdgeShape
{
    /// <summary>A straight ramp: 10 % to 90 % is 0.8 of the whole.</summary>
    Linear,

    /// <summary>The step of a Gaussian response: smooth, symmetrical; 10 % to 90 % is 2.563 standard deviations (handbook 2.2).</summary>
    Gaussian,

    /// <summary>The step of one RC pole: fast at first, then slow; 10 % to 90 % is ln 9 time constants (handbook 2.2).</summary>
    Exponential,
}
