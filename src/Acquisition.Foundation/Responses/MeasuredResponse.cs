using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>
/// A response given by points: gain interpolated in dB over the logarithm of frequency, phase unwrapped and interpolated linearly in frequency, both exactly through the points.
/// </summary>
internal sealed class MeasuredResponse : GeneralResponse
{
    private const double Turn = 2 * Math.PI;

    private readonly double[] _hertz, _nepers, _phase;
    private readonly OutsideBand _below, _above;
    private readonly double _lowSlope, _highSlope, _lowDelay, _highDelay;
    private readonly List<Finding> _findings = new();

    internal MeasuredResponse(string name, IReadOnlyList<FrequencyPoint> points, OutsideBand below, OutsideBand above)
        : base(name)
    {
        int count = points.Count;
        _hertz = new double[count];
        _nepers = new double[count];
        _phase = new double[count];
        (_below, _above) = (below, above);
        for (int i = 0; i < count; i++)
        {
            _hertz[i] = points[i].Frequency.SiValue;
            _nepers[i] = points[i].Gain.SiValue * Math.Log(10) / 20;
            _phase[i] = points[i].Phase.SiValue;
        }
        Unwrap();
        int first = _hertz[0] == 0 ? 1 : 0;
        (_lowSlope, _lowDelay) = Ends(first, OctaveFrom(first, 1));
        // The phase goes through 0 at DC: of the curves a whole turn apart it is the one whose end points there.
        double turns = Turn * Math.Round((_phase[first] + Turn * _hertz[first] * _lowDelay) / Turn);
        for (int i = 0; i < count; i++)
            _phase[i] -= turns;
        (_highSlope, _highDelay) = Ends(OctaveFrom(count - 1, -1), count - 1);
        // An amplifier's data that rise towards an end would grow without bound: there the magnitude is held.
        _lowSlope = Math.Max(0, _lowSlope);
        _highSlope = Math.Min(0, _highSlope);
        FrequencyScale = Math.Sqrt(_hertz[first] * _hertz[count - 1]);
    }

    internal override double FrequencyScale { get; }

    internal override double LowestFrequency => _below == OutsideBand.Refuse ? _hertz[0] : 0;

    internal override double HighestFrequency => _above is OutsideBand.Refuse or OutsideBand.Zero ? _hertz[_hertz.Length - 1] : double.PositiveInfinity;

    internal override double? FarDelay => _above is OutsideBand.Hold or OutsideBand.ExtendSlope ? _highDelay : null;

    internal override bool EndsInRefusal => _above == OutsideBand.Refuse;

    internal override IReadOnlyList<double> Breaks => _hertz;

    public override IReadOnlyList<Finding> Findings => _findings.AsReadOnly();

    private protected override int GridDensity => 12;

    internal override Complex ComplexGain(double hertz)
    {
        Look(hertz, out double nepers, out double phase);
        return Complex.FromPolarCoordinates(Math.Exp(nepers), phase);
    }

    internal override double PowerGain(double hertz)
    {
        Look(hertz, out double nepers, out _);
        return Math.Exp(2 * nepers);
    }

    internal override double PhaseRadians(double hertz)
    {
        Look(hertz, out _, out double phase);
        return phase;
    }

    internal override double GroupDelaySeconds(double hertz)
    {
        int last = _hertz.Length - 1;
        if (hertz < _hertz[0] || hertz > _hertz[last])
        {
            Look(hertz, out _, out _);
            return hertz < _hertz[0] ? _lowDelay : _highDelay;
        }
        int index = Math.Min(Interval(hertz), last - 1);
        return -(_phase[index + 1] - _phase[index]) / (Turn * (_hertz[index + 1] - _hertz[index]));
    }

    private void Look(double hertz, out double nepers, out double phase)
    {
        int last = _hertz.Length - 1;
        if (hertz < _hertz[0])
        {
            Outside(hertz, _below, 0, _lowSlope, _lowDelay, out nepers, out phase);
            return;
        }
        if (hertz > _hertz[last])
        {
            Outside(hertz, _above, last, _highSlope, _highDelay, out nepers, out phase);
            return;
        }
        int index = Interval(hertz);
        if (hertz == _hertz[index])
        {
            (nepers, phase) = (_nepers[index], _phase[index]);
            return;
        }
        double low = _hertz[index], high = _hertz[index + 1], linear = (hertz - low) / (high - low);
        // From a point at DC there is no logarithm: linear in frequency.
        double share = low == 0 ? linear : Math.Log(hertz / low) / Math.Log(high / low);
        nepers = _nepers[index] + share * (_nepers[index + 1] - _nepers[index]);
        phase = _phase[index] + linear * (_phase[index + 1] - _phase[index]);
    }

    private void Outside(double hertz, OutsideBand policy, int end, double slope, double delay, out double nepers, out double phase)
    {
        double edge = _hertz[end];
        if (policy == OutsideBand.Refuse)
        {
            throw Refuse.OutOfRange(
                hertz,
                Acquisition.Core.Frequency.Kind,
                "frequency",
                $"within the data of {Name}, {Acquisition.Core.Frequency.FromSi(_hertz[0], "low")} to {Acquisition.Core.Frequency.FromSi(_hertz[_hertz.Length - 1], "high")}",
                "choose what holds outside: Hold, ExtendSlope or Zero");
        }
        if (policy == OutsideBand.Zero && end > 0)
        {
            (nepers, phase) = (double.NegativeInfinity, 0);
            return;
        }
        nepers = _nepers[end];
        if (policy == OutsideBand.ExtendSlope && hertz > 0 && edge > 0)
            nepers += slope * Math.Log(hertz / edge);
        // A response that passes DC has a phase of 0 or of half a turn there: below the data the phase is drawn to it.
        phase = end == 0 ? _phase[0] * (edge > 0 ? hertz / edge : 1) : _phase[end] - Turn * (hertz - edge) * delay;
        if (policy == OutsideBand.ExtendSlope && end == 0 && slope > 0)
        {
            phase = _phase[0];
            if (hertz == 0)
                nepers = double.NegativeInfinity;
        }
    }

    private int Interval(double hertz)
    {
        int index = Array.BinarySearch(_hertz, hertz);
        return index >= 0 ? index : ~index - 1;
    }

    /// <summary>Takes whole turns out of the steps between points, and says so where a step is too large to know which way the phase went.</summary>
    private void Unwrap()
    {
        double largest = 0;
        int at = 0;
        for (int i = 1; i < _phase.Length; i++)
        {
            double step = _phase[i] - _phase[i - 1];
            _phase[i] -= Turn * Math.Round(step / Turn);
            double left = Math.Abs(_phase[i] - _phase[i - 1]);
            if (left > largest)
                (largest, at) = (left, i);
        }
        if (largest > 0.75 * Math.PI)
        {
            double low = _hertz[at - 1], high = _hertz[at];
            _findings.Add(new Finding(
                "phase-step-too-coarse",
                Severity.Warning,
                $"{Name}: the phase turns by {Angle.FromSi(largest, "phase")} between {Acquisition.Core.Frequency.FromSi(low, "low")} and {Acquisition.Core.Frequency.FromSi(high, "high")}, so close to half a turn that a turn may have been missed",
                $"measure in steps of {Acquisition.Core.Frequency.FromSi((high - low) / 2, "step")} or finer, or take out the delay before",
                "handbook 2.6"));
        }
    }

    private int OctaveFrom(int index, int direction)
    {
        int other = index;
        while (other + direction >= 0 && other + direction < _hertz.Length && _hertz[other + direction] > 0)
        {
            other += direction;
            double ratio = _hertz[other] / _hertz[index];
            if (ratio >= 2 || ratio <= 0.5)
                break;
        }
        return other;
    }

    /// <summary>Slope of the gain in nepers per e-fold, and group delay, between two points.</summary>
    private (double Slope, double Delay) Ends(int low, int high)
    {
        if (low >= high || _hertz[low] <= 0)
            return (0, 0);
        return ((_nepers[high] - _nepers[low]) / Math.Log(_hertz[high] / _hertz[low]), -(_phase[high] - _phase[low]) / (Turn * (_hertz[high] - _hertz[low])));
    }
}
