using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>The step response of parallel branches: the sum of theirs, each with its own delay.</summary>
internal sealed class SumStep : StepResponse
{
    private readonly StepResponse[] _branches;
    private readonly double[] _delays;

    internal SumStep(StepResponse[] branches, double[] delays)
    {
        _branches = branches;
        _delays = delays;
        foreach (StepResponse branch in branches)
            Final += branch.Final;
        Ringing = FindRinging();
    }

    internal override Ringing? Ringing { get; }

    internal override double Final { get; }

    internal override double Value(double seconds, out double slope)
    {
        double value = 0;
        slope = 0;
        for (int i = 0; i < _branches.Length; i++)
        {
            value += _branches[i].Value(seconds - _delays[i], out double rate);
            slope += rate;
        }
        return value;
    }

    internal override double Integral(double seconds)
    {
        double sum = 0;
        for (int i = 0; i < _branches.Length; i++)
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
}
