using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>The step response of parallel branches: the sum of theirs, each with its own delay.</summary>
internal sealed class SumStep : StepResponse
{
    private readonly StepResponse[] _branches;
    private readonly double[] _delays;
    private readonly Lazy<Window> _window;

    internal SumStep(StepResponse[] branches, double[] delays)
    {
        // By delay, so that those which move at a time are neighbours.
        _branches = (StepResponse[])branches.Clone();
        _delays = (double[])delays.Clone();
        Array.Sort(_delays, _branches);
        _window = new Lazy<Window>(() => new Window(_branches, _delays));
        foreach (StepResponse branch in branches)
            Final += branch.Final;
        Ringing = FindRinging();
    }

    internal override Ringing? Ringing { get; }

    internal override double Final { get; }

    internal override double Value(double seconds, out double slope)
    {
        Window window = _window.Value;
        int first = window.FirstMoving(seconds), end = window.EndOfBegun(seconds);
        double value = window.FinalBefore(first);
        slope = 0;
        for (int i = first; i < end; i++)
        {
            value += _branches[i].Value(seconds - _delays[i], out double rate);
            slope += rate;
        }
        return value;
    }

    internal override double Integral(double seconds)
    {
        Window window = _window.Value;
        int first = window.FirstMoving(seconds), end = window.EndOfBegun(seconds);
        double sum = window.IntegralBefore(first, seconds);
        for (int i = first; i < end; i++)
            sum += _branches[i].Integral(seconds - _delays[i]);
        return sum;
    }

    /// <summary>One branch may ring on alone once the scans of the others have ended; several together do not.</summary>
    private Ringing? FindRinging()
    {
        Ringing? found = null;
        int ringing = 0;
        for (int i = 0; i < _branches.Length; i++)
        {
            if (_branches[i].Ringing is { } own)
            {
                ringing++;
                found = own.Later(_delays[i]);
            }
        }
        if (found is null)
            return null;
        double alone = ringing > 1 ? double.PositiveInfinity : found.Alone;
        for (int i = 0; i < _branches.Length && ringing == 1; i++)
        {
            if (_branches[i].Ringing is null)
                alone = Math.Max(alone, _branches[i].Times[_branches[i].Times.Count - 1] + _delays[i]);
        }
        return new Ringing(found.Omega, found.Decay, found.Until, alone);
    }

    private protected override StepScan Scan()
    {
        // Where any branch wants to be looked at, and just before each of them begins: a late branch starts with a corner or a jump.
        var times = new SortedSet<double>();
        for (int i = 0; i < _branches.Length; i++)
        {
            List<double> own = _branches[i].Times;
            times.Add(own[0] + _delays[i] - 1e-9 * Math.Max(own[own.Count - 1] - own[0], _delays[i]));
            foreach (double time in own)
                times.Add(time + _delays[i]);
        }
        var scan = new StepScan();
        foreach (double time in times)
        {
            double value = Value(time, out double slope);
            scan.Add(time, value, slope);
        }
        return scan;
    }

    /// <summary>Which branches move at a time: those before them have settled, those behind have not begun. Of many echoes that is a few.</summary>
    private sealed class Window
    {
        private const double Settled = 1e-14;

        private readonly double[] _delays, _finals, _offsets;
        private readonly double _begin = double.PositiveInfinity, _length;

        internal Window(StepResponse[] branches, double[] delays)
        {
            _delays = delays;
            _finals = new double[branches.Length + 1];
            _offsets = new double[branches.Length + 1];
            for (int i = 0; i < branches.Length; i++)
            {
                StepResponse branch = branches[i];
                double last = branch.Times[branch.Times.Count - 1];
                _begin = Math.Min(_begin, branch.Times[0]);
                bool rests = branch.Ringing is null && double.IsInfinity(branch.FarFrom) && Math.Abs(branch.Value(last) - branch.Final) <= Settled * Math.Abs(branch.Final);
                _length = Math.Max(_length, rests ? last : double.PositiveInfinity);
                _finals[i + 1] = _finals[i] + branch.Final;
                // The integral of a branch at rest grows by its final value from here on.
                _offsets[i + 1] = _offsets[i] + branch.Integral(last) - branch.Final * (delays[i] + last);
            }
        }

        internal int FirstMoving(double seconds) => double.IsInfinity(_length) ? 0 : CountBelow(seconds - _length);

        internal int EndOfBegun(double seconds) => CountBelow(seconds - _begin);

        internal double FinalBefore(int branch) => _finals[branch];

        internal double IntegralBefore(int branch, double seconds) => _offsets[branch] + _finals[branch] * seconds;

        // Those whose delay is at most so long.
        private int CountBelow(double delay)
        {
            int low = 0, high = _delays.Length;
            while (low < high)
            {
                int middle = (low + high) / 2;
                if (_delays[middle] <= delay)
                    low = middle + 1;
                else
                    high = middle;
            }
            return low;
        }
    }
}
