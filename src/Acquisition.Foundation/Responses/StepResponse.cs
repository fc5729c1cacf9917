using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>
/// What comes out when a step of 1 goes in at t = 0. A model supplies value and slope at any time and the times worth looking at; the search for levels and
/// extremes is the same for all: scan, bracket, refine (handbook 2.7).
/// </summary>
internal abstract class StepResponse
{
    private StepScan? _scan;
    private double[]? _integrals;

    /// <summary>The value long after the step: the gain at DC.</summary>
    internal abstract double Final { get; }

    /// <summary>Value and slope (per second) at a time in seconds.</summary>
    internal abstract double Value(double seconds, out double slope);

    internal virtual double Value(double seconds) => Value(seconds, out _);

    /// <summary>Value and slope at times so close that a cubic between neighbours shows every level crossing and extreme, from before the step until it has settled.</summary>
    private protected abstract StepScan Scan();

    /// <summary>The times of the scan, in order.</summary>
    internal List<double> Times => Scanned.Times;

    /// <summary>From when on a tail is too lively to be followed, s; infinite where it is followed until it has settled.</summary>
    internal double FarFrom => Scanned.FarFrom;

    private protected StepScan Scanned => _scan ??= Scan();

    /// <summary>The integral of the step response from its beginning to a time: the response to a ramp of slope 1.</summary>
    internal virtual double Integral(double seconds)
    {
        StepScan scan = Scanned;
        _integrals ??= Cumulate(scan);
        int last = scan.Count - 1;
        if (seconds <= scan.Times[0])
            return 0;
        if (seconds >= scan.Times[last])
            return _integrals[last] + Final * (seconds - scan.Times[last]);
        int index = scan.Times.BinarySearch(seconds);
        if (index >= 0)
            return _integrals[index];
        index = ~index - 1;
        return _integrals[index] + Panel(scan.Times[index], seconds);
    }

    /// <summary>The integral between two times near each other. Long after the step, where it would be the small difference of large numbers, it is taken from the values themselves.</summary>
    internal double Between(double low, double high)
    {
        if (low >= FarFrom)
            return Panel(low, high);
        List<double> scanned = Scanned.Times;
        double first = scanned[0], last = scanned[scanned.Count - 1];
        if (high > first && low < last && high < FarFrom && TryIntegrate(Math.Max(low, first), Math.Min(high, last), out double held))
            return held + Final * Math.Max(0, high - last);
        double before = Integral(low);
        if (!IsLong(before, high - low))
            return Integral(high) - before;
        List<double> times = Scanned.Times;
        int index = times.BinarySearch(low);
        double sum = 0, from = low;
        for (index = index < 0 ? ~index : index + 1; index < times.Count && times[index] < high; index++)
        {
            sum += Panel(from, times[index]);
            from = times[index];
        }
        return sum + Panel(from, high);
    }

    /// <summary>The integral between two times of the scan where the step is held as polynomials; false where it is not.</summary>
    private protected virtual bool TryIntegrate(double low, double high, out double integral)
    {
        integral = 0;
        return false;
    }

    /// <summary>Whether an integral has lost more than three digits for a stretch so short.</summary>
    private protected static bool IsLong(double integral, double stretch) => Math.Abs(integral) > 1e3 * stretch;

    private double[] Cumulate(StepScan scan)
    {
        var integrals = new double[scan.Count];
        for (int i = 1; i < scan.Count; i++)
        {
            (double low, double high) = (scan.Times[i - 1], scan.Times[i]);
            integrals[i] = integrals[i - 1] + (low < scan.FarFrom ? Panel(low, high) : 0.5 * (high - low) * (scan.Values[i - 1] + scan.Values[i]));
        }
        return integrals;
    }

    /// <summary>Gauss-Legendre with four points between neighbours of the scan, where the value is smooth.</summary>
    private double Panel(double low, double high)
    {
        const double near = 0.33998104358485626, far = 0.86113631159405258, nearWeight = 0.65214515486254614, farWeight = 0.34785484513745386;
        double half = 0.5 * (high - low), middle = 0.5 * (high + low);
        return half * (nearWeight * (Value(middle - half * near) + Value(middle + half * near)) + farWeight * (Value(middle - half * far) + Value(middle + half * far)));
    }

    /// <summary>The first time at which the value reaches a level of the same sign as the step; false when it never does.</summary>
    internal bool FirstReach(double level, out double seconds)
    {
        StepScan scan = Scanned;
        double sign = level < 0 ? -1 : 1;
        if (sign * scan.Values[0] >= sign * level)
        {
            seconds = scan.Times[0];
            return true;
        }
        for (int i = 1; i < scan.Count; i++)
        {
            if (sign * scan.Values[i] >= sign * level)
            {
                seconds = Root(level, scan.Times[i - 1], scan.Times[i]);
                return true;
            }
            if (scan.HasExtreme(i - 1, out double guess) && scan.MightReach(i - 1, guess, sign, sign * level))
            {
                double at = Extreme(scan, i - 1, guess);
                if (sign * Value(at) >= sign * level)
                {
                    seconds = Root(level, scan.Times[i - 1], at);
                    return true;
                }
            }
        }
        seconds = 0;
        return false;
    }

    /// <summary>The largest value in the direction of <paramref name="sign"/>, and when it is reached.</summary>
    internal double Largest(double sign, out double seconds)
    {
        StepScan scan = Scanned;
        double best = double.NegativeInfinity;
        seconds = scan.Times[0];
        for (int i = 0; i < scan.Count; i++)
        {
            if (sign * scan.Values[i] > best)
            {
                best = sign * scan.Values[i];
                seconds = scan.Times[i];
            }
            // Only an extreme between two points that might beat the best one so far is worth refining.
            if (i + 1 < scan.Count && scan.HasExtreme(i, out double guess) && scan.MightReach(i, guess, sign, best))
            {
                double at = Extreme(scan, i, guess), value = sign * Value(at);
                if (value > best)
                {
                    best = value;
                    seconds = at;
                }
            }
        }
        return sign * best;
    }

    /// <summary>The resonance that rings on after the end of the scan; null where there is none.</summary>
    internal virtual Ringing? Ringing => null;

    /// <summary>The last time at which the value is further than <paramref name="band"/> from the final one; the start where it never is. False where several things ring on at that time.</summary>
    internal bool TryLastOutside(double band, out double seconds)
    {
        seconds = LastOutside(Scanned, band);
        // What has settled well before the end of the scan stays so, because it decays.
        if (Ringing is not { } ringing || seconds < 0.75 * ringing.Until)
            return true;
        double from = Math.Max(ringing.Until, ringing.Alone);
        if (double.IsInfinity(from))
            return false;
        double amplitude = ringing.Amplitude(Value(from, out double slope) - Final, slope);
        if (amplitude <= band)
            return ringing.Alone <= ringing.Until;
        // A single decaying oscillation: its amplitude says when, a look at the last period says where in it.
        double last = from + Math.Log(amplitude / band) / ringing.Decay, period = 1 / ringing.Hertz;
        if (!(last < 1e9 * period))
            return false;
        var window = new StepScan();
        for (int i = -24; i <= 4; i++)
        {
            double time = last + i * period / 16, value = Value(time, out slope);
            window.Add(time, value, slope);
        }
        seconds = LastOutside(window, band);
        return true;
    }

    private double LastOutside(StepScan scan, double band)
    {
        for (int i = scan.Count - 1; i > 0; i--)
        {
            if (Math.Abs(scan.Values[i - 1] - Final) > band)
                return Root(Final + (scan.Values[i - 1] > Final ? band : -band), scan.Times[i - 1], scan.Times[i]);
            if (scan.HasExtreme(i - 1, out double guess))
            {
                double at = Extreme(scan, i - 1, guess), value = Value(at);
                if (Math.Abs(value - Final) > band)
                    return Root(Final + (value > Final ? band : -band), at, scan.Times[i]);
            }
        }
        return scan.Times[0];
    }

    /// <summary>Newton's method, kept inside a bracket at whose ends the value lies on opposite sides of the level.</summary>
    private double Root(double level, double low, double high)
    {
        double atLow = Value(low) - level, middle = 0.5 * (low + high);
        for (int i = 0; i < 100; i++)
        {
            double value = Value(middle, out double slope) - level;
            if (value == 0)
                return middle;
            if (value > 0 == atLow > 0)
                low = middle;
            else
                high = middle;
            double next = middle - value / slope;
            if (!(next > low && next < high))
                next = 0.5 * (low + high);
            if (Math.Abs(next - middle) <= 1e-14 * (Math.Abs(middle) + (high - low)))
                return next;
            middle = next;
        }
        return middle;
    }

    /// <summary>The zero of the slope between two scanned points, by the secant kept inside the bracket.</summary>
    private double Extreme(StepScan scan, int index, double guess)
    {
        double low = scan.Times[index], high = scan.Times[index + 1];
        double atLow = scan.Slopes[index], atHigh = scan.Slopes[index + 1], middle = guess, width = high - low;
        for (int i = 0; i < 60; i++)
        {
            Value(middle, out double slope);
            if (slope == 0)
                return middle;
            if (slope > 0 == atLow > 0)
            {
                low = middle;
                atLow = slope;
            }
            else
            {
                high = middle;
                atHigh = slope;
            }
            double next = low - atLow * (high - low) / (atHigh - atLow);
            if (i % 3 == 2)
                next = 0.5 * (low + high);
            // The value is flat here: a time good to 1e-9 of the interval gives the value to 1e-16.
            if (Math.Abs(next - middle) < 1e-9 * width)
                return next;
            middle = next;
        }
        return middle;
    }
}
