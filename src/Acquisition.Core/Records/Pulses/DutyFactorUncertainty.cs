using System;

namespace Acquisition.Core;

/// <summary>
/// How far a mean duty factor can be trusted, by what makes it uncertain (handbook 8.7 step 9, 5.12, 11.12): standard uncertainties of independent causes, as parts of the period. A
/// time base that is off changes pulse and period alike and is no part of it.
/// </summary>
/// <remarks>Immutable.</remarks>
public sealed class DutyFactorUncertainty
{
    private readonly double _noise, _interpolation, _levels;

    internal DutyFactorUncertainty(double noise, double interpolation, double levels)
    {
        _noise = noise;
        _interpolation = interpolation;
        _levels = levels;
    }

    /// <summary>The combined standard uncertainty: the root of the sum of the squares (JCGM 100 5.1.2).</summary>
    public Ratio Standard => Ratio.FromFraction(Math.Sqrt(_noise * _noise + _interpolation * _interpolation + _levels * _levels));

    /// <summary>
    /// Of noise, quantisation and jitter, or of the spread of the values where that is more, over the cycles. A cycle ends with the edge that begins the next one, so that the mean
    /// of n cycles is up to 15 % less certain than the spread over the root of n.
    /// </summary>
    public Ratio Noise => Ratio.FromFraction(_noise);

    /// <summary>Of the straight lines between samples: the mean over the cycles of what the curvature around the crossings tells, with its sign.</summary>
    public Ratio Interpolation => Ratio.FromFraction(_interpolation);

    /// <summary>Of the state levels: one that is off moves rising and falling edges to opposite sides, in every cycle alike.</summary>
    public Ratio StateLevels => Ratio.FromFraction(_levels);

    /// <summary>The combined uncertainty and its parts in one line.</summary>
    public override string ToString() => $"u = {Standard.InWords(3)} (noise {Noise.InWords(3)}, interpolation {Interpolation.InWords(3)}, state levels {StateLevels.InWords(3)})";
}
