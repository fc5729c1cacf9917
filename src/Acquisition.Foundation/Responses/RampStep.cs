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
        var scan = new StepScan();
        List<double> times = _step.Times;
        // Where either end of the ramp meets a time of the step, as far as all of the ramp lies where the step is followed: two rising sequences, merged.
        int early = 0, late = 0, end = 0, lateEnd = 0;
        while (end < times.Count && times[end] < _step.FarFrom)
            lateEnd += times[end++] + _ramp < _step.FarFrom ? 1 : 0;
        while (early < end || late < lateEnd)
        {
            double sooner = early < end ? times[early] - 0.5 * _ramp : double.PositiveInfinity, later = late < lateEnd ? times[late] + 0.5 * _ramp : double.PositiveInfinity, time = Math.Min(sooner, later);
            early += sooner == time ? 1 : 0;
            late += later == time ? 1 : 0;
            if (scan.Count > 0 && time <= scan.Times[scan.Count - 1])
                continue;
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
