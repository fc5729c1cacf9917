using System;
using System.Collections.Generic;

namespace Acquisition.Core.Planning;

/// <summary>The worst error of drawing a sine through its samples, as a fraction of its amplitude: for a few frequencies as it is, for many between those of a grid.</summary>
internal sealed class ErrorOfDrawing(Reconstruction interpolation, SampleRate rate)
{
    /// <summary>So many frequencies are computed one by one.</summary>
    private const int Few = 32;

    /// <summary>Points of the grid from 0 to half the rate; the error curves upwards, so that a straight line between them is no less.</summary>
    private const int Grid = 256;

    private readonly Dictionary<int, double> _known = [];
    private int _asked;

    /// <summary>The error at a frequency below half the rate.</summary>
    internal double At(double hertz)
    {
        if (_asked++ < Few)
            return Computed(hertz);
        double place = 2 * Grid * hertz / rate.SiValue;
        int below = (int)place;
        // Half the rate itself has no error of its own: a sine there is not determined.
        if (below + 1 >= Grid)
            return Computed(hertz);
        return OnGrid(below) + ((place - below) * (OnGrid(below + 1) - OnGrid(below)));
    }

    private double OnGrid(int point)
    {
        if (point == 0)
            return 0;
        if (!_known.TryGetValue(point, out double error))
            _known.Add(point, error = Computed(point * rate.SiValue / (2 * Grid)));
        return error;
    }

    private double Computed(double hertz) => interpolation.WorstError(Frequency.FromSi(hertz, "frequency"), rate).SiValue;
}
