using System;
using System.Collections.Generic;
using Acquisition.Core.Responses;

namespace Acquisition.Core;

public abstract partial class Response
{
    /// <summary>What to know about the data of the response: <c>phase-step-too-coarse</c>. Empty for models.</summary>
    public virtual IReadOnlyList<Finding> Findings => Array.Empty<Finding>();

    /// <summary>
    /// A response measured point by point: the gain is interpolated in dB over the logarithm of frequency, the phase unwrapped and linear in frequency; both go through
    /// every point. Outside the data the answer is what the caller chose.
    /// </summary>
    /// <param name="name">What was measured.</param>
    /// <param name="points">At least two points, frequencies rising. A point at 0 Hz is welcome: step and bandwidth re DC need to know the gain there.</param>
    /// <param name="below">What holds below the data.</param>
    /// <param name="above">What holds above the data.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> or <paramref name="points"/> is null.</exception>
    /// <exception cref="ArgumentException">There are fewer than two points, or the frequencies do not rise.</exception>
    public static Response Measured(string name, IReadOnlyList<FrequencyPoint> points, OutsideBand below = OutsideBand.Hold, OutsideBand above = OutsideBand.Refuse)
    {
        _ = name ?? throw new ArgumentNullException(nameof(name));
        _ = points ?? throw new ArgumentNullException(nameof(points));
        if (points.Count < 2)
            throw new ArgumentException($"points must be at least two; {(points.Count == 1 ? "was one" : "were none")}", nameof(points));
        for (int i = 1; i < points.Count; i++)
        {
            if (!(points[i].Frequency > points[i - 1].Frequency))
                throw new ArgumentException($"points must have rising frequencies; point {i} is at {points[i].Frequency}, after {points[i - 1].Frequency}", nameof(points));
        }
        return new MeasuredResponse(name, points, below, above);
    }
}
