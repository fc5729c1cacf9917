using System;

namespace Acquisition.Core.Responses;

/// <summary>The bandwidth that one stage needs, so that it and another together have a demanded one (handbook 3.4).</summary>
public static class RequiredStage
{
    /// <summary>Of two Gaussian stages: 1/√(1/B² - 1/f²).</summary>
    /// <param name="together">The demanded bandwidth B of both together.</param>
    /// <param name="other">The bandwidth of the other stage.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="together"/> is not above 0 Hz, or <paramref name="other"/> is not above it.</exception>
    public static Frequency Gaussian(Frequency together, Frequency other)
    {
        double ratio = RequireWider(together, other);
        return Frequency.FromSi(together.SiValue / Math.Sqrt(1 - ratio * ratio), nameof(together));
    }

    /// <summary>Of two single-pole stages: B/√(2/(1 + (B/f)²) - 1).</summary>
    /// <param name="together">The demanded bandwidth B of both together.</param>
    /// <param name="other">The bandwidth of the other stage.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="together"/> is not above 0 Hz, or <paramref name="other"/> is not above it.</exception>
    public static Frequency SinglePole(Frequency together, Frequency other)
    {
        double ratio = RequireWider(together, other);
        return Frequency.FromSi(together.SiValue / Math.Sqrt(2 / (1 + ratio * ratio) - 1), nameof(together));
    }

    private static double RequireWider(Frequency together, Frequency other)
    {
        Refuse.UnlessAboveZero(together.SiValue, Frequency.Kind, nameof(together));
        if (!(other.SiValue > together.SiValue))
            throw Refuse.OutOfRange(other.SiValue, Frequency.Kind, nameof(other), $"above {together}, the bandwidth of both together", "no second stage makes up for a first that is too slow");
        return together.SiValue / other.SiValue;
    }
}
