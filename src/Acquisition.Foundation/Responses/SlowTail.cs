using System;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Responses;

/// <summary>
/// What the edges of long ago still do, as one smooth function over a period: a Chebyshev series through sums over all earlier periods. The first 128 of them are
/// added one by one, the rest by the midpoint rule of Euler and Maclaurin, because what is left by then changes little from period to period.
/// </summary>
internal sealed class SlowTail
{
    private const int MostPeriods = 16, OneByOne = 128, MostTransitions = 64;
    private const double Tolerance = 1e-11;

    /// <summary>Rounding of a step response. The sum over long ago takes the difference of integrals that reach over all unsettled periods, and brings it so many times.</summary>
    private const double Rounding = 1e-13;

    private readonly double[] _series;
    private readonly double _period;

    private SlowTail(double[] series, double period, int periods)
    {
        _series = series;
        _period = period;
        Periods = periods;
    }

    /// <summary>So many periods before the present one are not in it.</summary>
    internal int Periods { get; }

    /// <summary>The tail, or null where it is not smooth even many periods after the edges, or would take too long.</summary>
    internal static SlowTail? Of(Transition[] transitions, EdgeAnswer[] answers, double period, double settled)
    {
        if (transitions.Length > MostTransitions)
            return null;
        double size = 0;
        foreach (Transition transition in transitions)
            size = Math.Max(size, Math.Abs(transition.Change));
        double tolerance = size * Math.Max(Tolerance, Rounding * settled / period);
        for (int periods = 1; periods <= MostPeriods; periods *= 2)
        {
            for (int points = 16; points <= 64; points *= 2)
            {
                double[] series = Series(time => Sum(transitions, answers, period, settled, time, periods), period, points);
                double rest = 0;
                for (int k = points - 4; k < points; k++)
                    rest += Math.Abs(series[k]);
                if (rest <= tolerance)
                    return new SlowTail(series, period, periods);
            }
        }
        return null;
    }

    /// <summary>The value at a time, 0 s to the period.</summary>
    internal double Value(double time)
    {
        double x = 2 * time / _period - 1, next = 0, last = 0;
        for (int k = _series.Length - 1; k > 0; k--)
            (next, last) = (_series[k] + 2 * x * next - last, next);
        return _series[0] + x * next - last;
    }

    private static double Sum(Transition[] transitions, EdgeAnswer[] answers, double period, double settled, double time, int periods)
    {
        double sum = 0;
        int number = periods + 1, last = periods + OneByOne;
        for (; number <= last; number++)
        {
            double ago = time + number * period;
            if (ago - transitions[transitions.Length - 1].Time > settled)
                return sum;
            for (int i = 0; i < transitions.Length; i++)
                sum += transitions[i].Change * (answers[i].Value(ago - transitions[i].Time) - answers[i].Final);
        }
        // The sum from number on is the integral from number - 1/2 on, and 1/24 of the slope there.
        double from = time + (number - 0.5) * period, far = from + 2 * settled, integral = 0, rate = 0;
        for (int i = 0; i < transitions.Length; i++)
        {
            integral += transitions[i].Change * (answers[i].ExcessIntegral(far) - answers[i].ExcessIntegral(from - transitions[i].Time));
            answers[i].Value(from - transitions[i].Time, out double slope);
            rate += transitions[i].Change * slope;
        }
        return sum + integral / period + rate * period / 24;
    }

    private static double[] Series(Func<double, double> function, double period, int points)
    {
        var values = new double[points];
        for (int i = 0; i < points; i++)
            values[i] = function(0.5 * period * (1 + Math.Cos(Math.PI * (i + 0.5) / points)));
        var series = new double[points];
        for (int k = 0; k < points; k++)
        {
            for (int i = 0; i < points; i++)
                series[k] += (k == 0 ? 1.0 : 2.0) / points * values[i] * Math.Cos(Math.PI * k * (i + 0.5) / points);
        }
        return series;
    }
}
