using System;
using System.Collections.Generic;
using Acquisition.Core.Responses;

namespace Acquisition.Core.Planning;

/// <summary>
/// What a response makes of straight ramps: the running mean of its step response. The integral of the step response is tabulated once (cubic between points), so that
/// ramps of any length are answered by two look-ups per instant.
/// </summary>
internal sealed class RampResponse
{
    private readonly List<double> _times = [];
    private readonly List<double> _values = [];
    private readonly List<double> _slopes = [];
    private readonly List<double> _integrals = [];
    private readonly double _rise;

    /// <param name="response">A response whose step rises through 10 % and 90 %.</param>
    /// <param name="rise">Its rise time, above 0 s.</param>
    internal RampResponse(Response response, double rise)
    {
        StepResponse step = response.StepResponse;
        double reference = response.StepReference;
        _rise = rise;
        // A response that answers before its step (Gaussian, brick wall) is followed back to where it is still; a causal one starts at the step.
        double start = 0;
        while (start > -60 * rise && Math.Abs(step.Value(start - (rise / 8)) / reference) > 1e-9)
            start -= rise / 2;
        double integral = 0, time = start, settledAt = double.NaN;
        Add(time, step, reference, 0);
        while (time < 1e5 * rise)
        {
            double spacing = Math.Max(rise / 48, 0.02 * (time - (8 * rise)));
            // The step itself may be a kink: it falls on a point.
            double next = time < 0 && time + spacing > -1e-9 * rise ? 0 : time + spacing;
            double before = _values[_values.Count - 1], slope = _slopes[_slopes.Count - 1], width = next - time;
            double value = step.Value(next, out double nextSlope) / reference;
            nextSlope /= reference;
            integral += (0.5 * width * (before + value)) + (width * width * (slope - nextSlope) / 12);
            time = next;
            Add(time, value, nextSlope, integral);
            if (Math.Abs(value - 1) > 1e-7)
                settledAt = double.NaN;
            else if (double.IsNaN(settledAt))
                settledAt = time;
            else if (time > settledAt + (2 * rise))
                break;
        }
    }

    /// <summary>The 10 % to 90 % duration of a ramp behind the response, s; NaN where it never rises through the levels.</summary>
    /// <param name="ramp">The whole length of the ramp, above 0 s.</param>
    internal double RiseTime(double ramp)
    {
        double spacing = (ramp + _rise) / 32, time = _times[0] - (ramp / 2);
        double ten = FirstReach(0.1, ramp, spacing, ref time);
        return double.IsNaN(ten) ? double.NaN : FirstReach(0.9, ramp, spacing, ref time) - ten;
    }

    private double FirstReach(double level, double ramp, double spacing, ref double from)
    {
        double low = from, high = from, end = _times[_times.Count - 1] + ramp;
        while (Value(high, ramp) < level)
        {
            low = high;
            high += spacing;
            if (low > end)
                return double.NaN;
        }
        from = low;
        for (int i = 0; i < 60 && high - low > 1e-13 * (ramp + _rise); i++)
        {
            double middle = 0.5 * (low + high);
            if (Value(middle, ramp) < level)
                low = middle;
            else
                high = middle;
        }
        return 0.5 * (low + high);
    }

    private double Value(double time, double ramp) => (Integral(time + (ramp / 2)) - Integral(time - (ramp / 2))) / ramp;

    private double Integral(double time)
    {
        int last = _times.Count - 1;
        if (time <= _times[0])
            return 0;
        if (time >= _times[last])
            return _integrals[last] + (time - _times[last]);
        int index = _times.BinarySearch(time);
        if (index < 0)
            index = ~index - 1;
        double width = _times[index + 1] - _times[index], x = (time - _times[index]) / width;
        double a = _values[index], b = _values[index + 1], da = _slopes[index] * width, db = _slopes[index + 1] * width;
        // The integral of the cubic through values and slopes of both ends.
        double cubic = (2 * a) - (2 * b) + da + db, square = (-3 * a) + (3 * b) - (2 * da) - db;
        return _integrals[index] + (width * x * (a + (x * ((da / 2) + (x * ((square / 3) + (x * cubic / 4)))))));
    }

    private void Add(double time, StepResponse step, double reference, double integral)
    {
        double value = step.Value(time, out double slope);
        Add(time, value / reference, slope / reference, integral);
    }

    private void Add(double time, double value, double slope, double integral)
    {
        _times.Add(time);
        _values.Add(value);
        _slopes.Add(slope);
        _integrals.Add(integral);
    }
}
