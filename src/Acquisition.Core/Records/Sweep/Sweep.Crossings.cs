using System;
using System.Collections.Generic;

namespace Acquisition.Core;

public sealed partial class Sweep
{
    /// <summary>Every frequency at which the level crosses the reference level less a drop, by rising frequency (handbook 10.1).</summary>
    /// <param name="drop">The drop, positive: 3 dB, or exactly half power as <c>-DecibelRatio.HalfPower</c>. Zero and negative values find where the level passes the reference or lies above it.</param>
    public IReadOnlyList<SweepCrossing> Crossings(DecibelRatio drop)
    {
        double level = ReferenceDecibels - drop.Decibels;
        var found = new List<SweepCrossing>();
        for (int i = 0; i + 1 < Count; i++)
        {
            double left = _decibels[i] - level, right = _decibels[i + 1] - level;
            // A point exactly on the level belongs to the interval that it starts, so that it counts once.
            if (left >= 0 == right >= 0)
                continue;
            found.Add(CrossingBetween(i, left / (left - right), left >= 0));
        }
        return found;
    }

    private SweepCrossing CrossingBetween(int i, double share, bool falling)
    {
        double low = _hertz[i], high = _hertz[i + 1], width = Math.Log(high / low), step = _decibels[i + 1] - _decibels[i];
        double hertz = low * Math.Exp(share * width);
        double slope = Math.Abs(step) / width / hertz;
        double? noise = null;
        if (_uncertainties is { } u)
        {
            double level = Square((1 - share) * u[i]) + Square(share * u[i + 1]);
            noise = Math.Min(Math.Sqrt(level + ReferenceDeviation * ReferenceDeviation) / slope, high);
        }
        double spacing = Bend(i) is { } bend ? Math.Min(bend / slope, high - low) : (high - low) / 2;
        return new SweepCrossing(hertz, low + share * (high - low), falling, low, high, noise, spacing / Math.Sqrt(3));
    }

    /// <summary>How far the curve may leave the straight line between points i and i + 1, by the larger of the second differences with a neighbour on either side; null without neighbours.</summary>
    private double? Bend(int i)
    {
        double? largest = null;
        for (int first = Math.Max(0, i - 1); first <= Math.Min(i, Count - 3); first++)
        {
            double x0 = Math.Log(_hertz[first]), x1 = Math.Log(_hertz[first + 1]), x2 = Math.Log(_hertz[first + 2]);
            double curvature = ((_decibels[first + 2] - _decibels[first + 1]) / (x2 - x1) - (_decibels[first + 1] - _decibels[first]) / (x1 - x0)) / (x2 - x0);
            double width = Math.Log(_hertz[i + 1] / _hertz[i]);
            // The sagitta at the middle of the interval wherever the crossing is: a roll-off bends at one end of a wide interval, not evenly.
            largest = Math.Max(largest ?? 0, Math.Abs(curvature) * width * width / 4);
        }
        return largest;
    }

    /// <summary>The bandwidth as measured: where the level first falls by half power (3.0103 dB) above the reference, and where below it.</summary>
    public SweepBandwidth Bandwidth() => Bandwidth(-DecibelRatio.HalfPower);

    /// <summary>Where the level first falls by a drop above the reference, and where it does below it.</summary>
    /// <param name="drop">The drop, above 0 dB.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="drop"/> is not above 0 dB.</exception>
    public SweepBandwidth Bandwidth(DecibelRatio drop)
    {
        Refuse.UnlessAboveZero(drop.Decibels, DecibelRatio.Kind, nameof(drop), "state the drop as a positive number");
        return new SweepBandwidth(this, drop);
    }

    /// <summary>Fits a response model with a free bandwidth: <c>sweep.FitTo(Response.SinglePole)</c>, <c>sweep.FitTo(f => Response.Butterworth(3, f))</c>.</summary>
    /// <param name="model">Makes the model of a bandwidth.</param>
    /// <exception cref="ArgumentNullException"><paramref name="model"/> is null.</exception>
    public SweepFit FitTo(Func<Frequency, Response> model) => SweepFit.To(this, model ?? throw new ArgumentNullException(nameof(model)), null);

    /// <summary>Fits a response model with a free bandwidth and a known level of its flat part.</summary>
    /// <param name="model">Makes the model of a bandwidth.</param>
    /// <param name="gain">The level of the flat part, on the scale of the sweep's levels.</param>
    /// <exception cref="ArgumentNullException"><paramref name="model"/> is null.</exception>
    public SweepFit FitTo(Func<Frequency, Response> model, DecibelRatio gain) => SweepFit.To(this, model ?? throw new ArgumentNullException(nameof(model)), gain.Decibels);
}
