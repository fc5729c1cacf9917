using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>
/// The step response of poles and zeros, by the state of the cascade of sections: x' = A x, propagated by matrix exponentials of steps h, 2h, 4h ... so that any
/// time is reached by a few products. What is kept of each exponential is how far it is from 1: a mode a billion times slower than the fastest would else lose its digits. Repeated and nearly repeated poles, where partial fractions lose their digits, are nothing special here (handbook 2.7).
/// </summary>
internal sealed class RationalStep : StepResponse
{
    private const int TaylorTerms = 14;

    private readonly Factors _factors;
    private readonly Section[] _sections;

    /// <summary>1/√D2 of each section.</summary>
    private readonly double[] _omegas;
    private readonly TimeScales _scales;
    private readonly int _order;
    private readonly int[] _last;
    private readonly double _step;
    private readonly List<double[]> _propagators = new();
    private readonly double[] _initial;

    internal RationalStep(Factors factors)
    {
        _factors = factors;
        _sections = new List<Section>(factors.Sections).ToArray();
        _omegas = Array.ConvertAll(_sections, section => 1 / Math.Sqrt(section.D2));
        _scales = new TimeScales(factors);
        _order = factors.Order;
        Final = factors.DcGain;
        _initial = new double[_order];
        _last = new int[_order];
        double input = 1, fastest = 0;
        int state = 0;
        foreach (Section section in _sections)
        {
            if (section.Order > 0)
            {
                _initial[state] = -input;
                fastest = Math.Max(fastest, section.Order == 1 ? 1 / section.D1 : (1 + section.D1 / Math.Sqrt(section.D2)) / Math.Sqrt(section.D2));
                int last = state + section.Order - 1;
                for (; state <= last; state++)
                    _last[state] = last;
            }
            input *= section.C0;
        }
        if (_order == 0)
            return;
        _step = 0.5 / fastest;
        Build();
    }

    internal override double Final { get; }

    internal override Ringing? Ringing => _scales.Ringing;

    internal override double Value(double seconds, out double slope)
    {
        if (seconds < 0)
        {
            slope = 0;
            return 0;
        }
        if (seconds >= _scales.End)
        {
            slope = 0;
            return Final;
        }
        double[] state = ChangeAt(seconds);
        for (int i = 0; i < _order; i++)
            state[i] += _initial[i];
        return Final + Output(state, state, out slope);
    }

    /// <summary>In closed form: the integral of exp(At) is A⁻¹ (exp(At) - 1).</summary>
    internal override double Integral(double seconds)
    {
        if (seconds <= 0)
            return 0;
        return Final * seconds + (seconds >= _scales.End ? -Undo(_initial) : Undo(ChangeAt(seconds)));
    }

    private protected override StepScan Scan()
    {
        var scan = new StepScan();
        var state = (double[])_initial.Clone();
        var spare = new double[_order];
        // Steps are powers of two of the finest one and start at multiples of themselves, so that each is one product.
        long at = 0;
        double threshold = 1e-14 * Math.Max(Math.Abs(Final), 1e-300);
        while (true)
        {
            double time = at * _step, value = Output(state, spare, out double slope);
            scan.Add(time, Final + value, slope);
            if (time >= _scales.ScanEnd)
                return scan;
            double wanted = Math.Max(_step, Math.Min(_scales.StepAt(time), 0.25 * Math.Max(time, _step)));
            int level = 0;
            while (level + 1 < _propagators.Count && 2 * (1L << level) * _step <= wanted * 1.001 && (at & ((2L << level) - 1)) == 0)
                level++;
            Multiply(_propagators[level], state, spare);
            (state, spare) = (spare, state);
            at += 1L << level;
            if (Quiet(state, threshold))
            {
                scan.Add(at * _step, Final, 0);
                return scan;
            }
        }
    }

    /// <summary>By how much the state has changed since the step: to its own digits, however little that is.</summary>
    private double[] ChangeAt(double seconds)
    {
        var change = new double[_order];
        var state = (double[])_initial.Clone();
        double steps = Math.Floor(seconds / _step);
        long whole = (long)steps;
        for (int level = 0; whole != 0; level++, whole >>= 1)
        {
            if ((whole & 1) == 0)
                continue;
            AddProduct(_propagators[level], state, change);
            for (int i = 0; i < _order; i++)
                state[i] = _initial[i] + change[i];
        }
        Advance(state, Math.Max(0, seconds - steps * _step), change);
        return change;
    }

    /// <summary>The output of A⁻¹ times a state: what the state is the derivative of.</summary>
    private double Undo(double[] derivative)
    {
        double input = 0;
        int i = 0;
        foreach (Section section in _sections)
        {
            if (section.D2 != 0)
            {
                double omega = 1 / Math.Sqrt(section.D2), rate = derivative[i], acceleration = derivative[i + 1] / omega;
                double x = input - section.D1 * rate - acceleration;
                input = section.C0 * x + section.C1 * rate + section.C2 / section.D2 * acceleration;
                i += 2;
            }
            else if (section.D1 != 0)
            {
                double rate = derivative[i], x = input - section.D1 * rate;
                input = section.C0 * x + section.C1 * rate;
                i++;
            }
            else
            {
                input *= section.C0;
            }
        }
        return _factors.Gain * input;
    }

    private static bool Quiet(double[] state, double threshold)
    {
        foreach (double x in state)
        {
            if (Math.Abs(x) > threshold)
                return false;
        }
        return true;
    }

    /// <summary>The derivative of a state, which may take its place, and the output that the state means (less the final value).</summary>
    private double Derive(double[] state, double[] derivative)
    {
        double input = 0;
        int i = 0;
        for (int k = 0; k < _sections.Length; k++)
        {
            Section section = _sections[k];
            if (section.D2 != 0)
            {
                double omega = _omegas[k], x = state[i], v = state[i + 1];
                double acceleration = input - x - section.D1 * omega * v;
                derivative[i] = omega * v;
                derivative[i + 1] = omega * acceleration;
                input = section.C0 * x + section.C1 * omega * v + section.C2 / section.D2 * acceleration;
                i += 2;
            }
            else if (section.D1 != 0)
            {
                double x = state[i], rate = (input - x) / section.D1;
                derivative[i] = rate;
                input = section.C0 * x + section.C1 * rate;
                i++;
            }
            else
            {
                input *= section.C0;
            }
        }
        return _factors.Gain * input;
    }

    private double Output(double[] state, double[] spare, out double slope)
    {
        double value = Derive(state, spare);
        slope = Derive(spare, spare);
        return value;
    }

    /// <summary>Adds to a target by how much a state changes in a time of at most one step, by its Taylor series, whose terms take the place of the state.</summary>
    private void Advance(double[] state, double time, double[] target)
    {
        if (time == 0)
            return;
        for (int k = 1; k <= TaylorTerms; k++)
        {
            Derive(state, state);
            double scale = time / k;
            for (int i = 0; i < _order; i++)
            {
                state[i] *= scale;
                target[i] += state[i];
            }
        }
    }

    private void Build()
    {
        var first = new double[_order * _order];
        var column = new double[_order];
        var change = new double[_order];
        for (int c = 0; c < _order; c++)
        {
            Array.Clear(column, 0, _order);
            column[c] = 1;
            Array.Clear(change, 0, _order);
            Advance(column, _step, change);
            for (int r = 0; r < _order; r++)
                first[r * _order + c] = change[r];
        }
        _propagators.Add(first);
        for (double span = _step; span < _scales.End; span *= 2)
            _propagators.Add(Square(_propagators[_propagators.Count - 1]));
    }

    /// <summary>(1 + E)² = 1 + 2 E + E².</summary>
    private double[] Square(double[] matrix)
    {
        double[] square = Array.ConvertAll(matrix, element => 2 * element);
        for (int r = 0; r < _order; r++)
        {
            int row = r * _order;
            for (int k = 0; k <= _last[r]; k++)
            {
                double factor = matrix[row + k];
                if (factor == 0)
                    continue;
                int other = k * _order;
                for (int c = 0; c <= _last[k]; c++)
                    square[row + c] += factor * matrix[other + c];
            }
        }
        return square;
    }

    private void Multiply(double[] matrix, double[] state, double[] result)
    {
        Array.Copy(state, result, _order);
        AddProduct(matrix, state, result);
    }

    private void AddProduct(double[] matrix, double[] state, double[] result)
    {
        for (int r = 0; r < _order; r++)
        {
            double sum = 0;
            int row = r * _order;
            for (int c = 0; c <= _last[r]; c++)
                sum += matrix[row + c] * state[c];
            result[r] += sum;
        }
    }
}
