using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>Times, values and slopes of a step response, in order of time.</summary>
internal sealed class StepScan
{
    private readonly List<double> _times = new(), _values = new(), _slopes = new();

    internal int Count => _times.Count;

    internal List<double> Times => _times;

    internal List<double> Values => _values;

    internal List<double> Slopes => _slopes;

    internal void Add(double time, double value, double slope)
    {
        _times.Add(time);
        _values.Add(value);
        _slopes.Add(slope);
    }

    /// <summary>From this time on there are but a few looks, far apart, at a tail that is too lively to be followed; infinite where there is none.</summary>
    internal double FarFrom { get; private set; } = double.PositiveInfinity;

    /// <summary>Adds one of a few looks at a lively tail: its slope would say nothing of the time to the next look.</summary>
    internal void AddFar(double time, double value)
    {
        Add(time, value, 0);
        FarFrom = Math.Min(FarFrom, time);
    }

    /// <summary>Whether the slope changes sign between a point and the next, and where a straight line through the slopes puts it.</summary>
    internal bool HasExtreme(int index, out double time)
    {
        double left = _slopes[index], right = _slopes[index + 1];
        if (left > 0 == right > 0 || left == right)
        {
            time = 0;
            return false;
        }
        time = _times[index] + (_times[index + 1] - _times[index]) * (left / (left - right));
        return true;
    }

    /// <summary>Whether an extreme between two points can reach a level, by the cubic with half of its hump to spare.</summary>
    internal bool MightReach(int index, double time, double sign, double level)
    {
        double cubic = sign * CubicAt(index, time), higher = Math.Max(sign * _values[index], sign * _values[index + 1]);
        return cubic + 0.5 * Math.Abs(cubic - higher) >= level;
    }

    /// <summary>The cubic through two neighbours' values and slopes.</summary>
    internal double CubicAt(int index, double time)
    {
        double width = _times[index + 1] - _times[index], x = (time - _times[index]) / width, y = 1 - x;
        return y * y * (1 + 2 * x) * _values[index] + x * x * (1 + 2 * y) * _values[index + 1]
            + width * x * y * (y * _slopes[index] - x * _slopes[index + 1]);
    }
}
