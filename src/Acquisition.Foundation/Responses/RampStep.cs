using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>What comes out when a straight ramp from 0 to 1, centred on t = 0, goes in: the mean of the step response over the ramp.</summary>
internal sealed class RampStep : StepResponse
{
    private readonly StepResponse _step;
    private readonly double _ramp;

    internal RampStep(StepResponse step, double ramp)
    {
        _step = step;
        _ramp = ramp;
    }

    internal override double Final => _step.Final;

    internal override double Value(double seconds, out double slope)
    {
        double early = seconds - 0.5 * _ramp, late = seconds + 0.5 * _ramp;
        // Before its scan begins the step is nothing, as its integral has it.
        double first = _step.Times[0];
        slope = ((late < first ? 0 : _step.Value(late)) - (early < first ? 0 : _step.Value(early))) / _ramp;
        return _step.Between(early, late) / _ramp;
    }

    /// <summary>Long after the step the mean over the ramp of the step's own integral, which is smooth there.</summary>
    internal override double Integral(double seconds)
    {
        if (!IsLong(_step.Integral(seconds - 0.5 * _ramp), _ramp))
            return base.Integral(seconds);
        double sum = 0;
        for (int i = 0; i < GaussLegendre.Nodes.Length; i++)
            sum += 0.5 * GaussLegendre.Weights[i] * _step.Integral(seconds + 0.5 * _ramp * GaussLegendre.Nodes[i]);
        return sum;
    }

    private protected override StepScan Scan()
    {
        var times = new SortedSet<double>();
        foreach (double time in _step.Times)
        {
            if (time >= _step.FarFrom)
                break;
            times.Add(time - 0.5 * _ramp);
            times.Add(time + 0.5 * _ramp);
        }
        var scan = new StepScan();
        foreach (double time in times)
        {
            double value = Value(time, out double slope);
            scan.Add(time, value, slope);
        }
        foreach (double time in _step.Times)
        {
            if (time >= _step.FarFrom && (scan.Count == 0 || time > scan.Times[scan.Count - 1]))
                scan.AddFar(time, Value(time, out _));
        }
        return scan;
    }
}
