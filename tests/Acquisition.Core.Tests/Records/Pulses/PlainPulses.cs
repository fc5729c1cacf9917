using System;
using System.Collections.Generic;

namespace Acquisition.Core.Tests.Records;

/// <summary>
/// The procedure of handbook 8.3 and 8.7 written down sample by sample, as plainly as it can be: what the fast kernels must agree with to the last bit.
/// </summary>
internal sealed class PlainPulses
{
    private readonly double[] _x;
    private readonly double _low, _high, _noise, _step, _factor;
    private readonly double _middle, _proximal, _distal, _hysteresis;

    public PlainPulses(Record record, PulseSettings settings, StateLevels states)
    {
        _x = record.ToSiValues();
        (_low, _high, _noise) = (states.Low.SiValue, states.High.SiValue, states.NoiseSi);
        _step = record.ResolutionSi ?? 0;
        _factor = settings.RegionFactor;
        (_middle, _proximal, _distal, _hysteresis) = (settings.Middle.Fraction, settings.Proximal.Fraction, settings.Distal.Fraction, settings.Hysteresis.Fraction);
        Find();
        Surround();
    }

    public List<Edge> Edges { get; } = [];

    public List<(double Start, double End, double Extreme, bool Positive)> Runts { get; } = [];

    public long Rejected { get; private set; }

    private double At(double fraction) => _low + fraction * (_high - _low);

    private void Find()
    {
        double arm = Math.Max(_hysteresis * (_high - _low), 3 * _noise), middle = At(_middle), armLow = middle - arm, armHigh = middle + arm;
        int i = 0, lastCrossing = 0;
        while (i < _x.Length && !(_x[i] < armLow || _x[i] >= armHigh))
            i++;
        if (i == _x.Length)
            return;
        bool high = _x[i] >= armHigh;
        while (true)
        {
            bool rising = !high;
            while (i < _x.Length && (rising ? _x[i] < middle : _x[i] >= middle))
                i++;
            int crossing = i, again = 0;
            bool beyond = true;
            double extreme = i < _x.Length ? _x[i] : 0;
            while (i < _x.Length && !(_x[i] < armLow || _x[i] >= armHigh))
            {
                extreme = rising ? Math.Max(extreme, _x[i]) : Math.Min(extreme, _x[i]);
                bool now = rising ? _x[i] >= middle : _x[i] < middle;
                again += now != beyond ? 1 : 0;
                beyond = now;
                i++;
            }
            if (i == _x.Length)
                return;
            Rejected += again;
            if (_x[i] >= armHigh == rising)
            {
                Edges.Add(Measure(crossing, lastCrossing, rising, again > 0, armLow, armHigh));
                lastCrossing = crossing;
                high = rising;
                continue;
            }
            int back = i;
            while (rising ? _x[back - 1] < middle : _x[back - 1] >= middle)
                back--;
            Runts.Add((Place(crossing, middle), Place(back, middle), extreme, rising));
        }
    }

    private Edge Measure(int crossing, int lastCrossing, bool rising, bool turnedBack, double armLow, double armHigh)
    {
        double proximal = At(rising ? _proximal : 1 - _proximal), distal = At(rising ? _distal : 1 - _distal);
        int before = crossing - 1;
        while (before >= lastCrossing && (rising ? _x[before] >= proximal : _x[before] < proximal))
            before--;
        int after = crossing;
        bool turned = false;
        while (after < _x.Length && (rising ? _x[after] < distal : _x[after] >= distal))
        {
            after++;
            turned = after < _x.Length && (rising ? _x[after] < armLow : _x[after] >= armHigh);
            if (turned)
                break;
        }
        var edge = new Edge { Rising = rising, Crossing = crossing, Middle = Place(crossing, At(_middle)), Monotone = !turnedBack, Proximal = double.NaN, Distal = double.NaN };
        edge.SamplesOnEdge = Math.Max(0, after - before - 1);
        if (before < lastCrossing || turned || after == _x.Length)
            return edge;
        double tolerance = Math.Max(Math.Max(4.5 * _noise, 1.01 * _step), 1e-9 * (_high - _low)), furthest = _x[before];
        for (int i = before + 1; i <= after; i++)
        {
            double further = rising ? _x[i] - furthest : furthest - _x[i];
            if (-further > tolerance)
                edge.Monotone = false;
            furthest = further > 0 ? _x[i] : furthest;
        }
        edge.Proximal = Place(before + 1, proximal);
        edge.Distal = Place(after, distal);
        edge.Widest = after - before;
        return edge;
    }

    private double Place(int index, double level) => index - 1 + (level - _x[index - 1]) / (_x[index] - _x[index - 1]);

    private void Surround()
    {
        for (int k = 0; k < Edges.Count; k++)
        {
            Edge edge = Edges[k];
            edge.Overshoot = edge.Undershoot = edge.Preshoot = double.NaN;
            if (double.IsNaN(edge.Proximal))
                continue;
            int previous = k == 0 ? 0 : double.IsNaN(Edges[k - 1].Distal) ? Edges[k - 1].Crossing : (int)Math.Ceiling(Edges[k - 1].Distal);
            int next = k + 1 == Edges.Count ? _x.Length : double.IsNaN(Edges[k + 1].Proximal) ? Edges[k + 1].Crossing : (int)Math.Ceiling(Edges[k + 1].Proximal);
            double length = Math.Max(3, _factor * Math.Max(edge.Distal - edge.Proximal, 1));
            double left = edge.Rising ? _low : _high, reached = edge.Rising ? _high : _low;
            for (int i = (int)Math.Max(previous, Math.Ceiling(edge.Proximal - length)); i <= (int)Math.Floor(edge.Proximal); i++)
                edge.Preshoot = Most(edge.Preshoot, edge.Rising ? left - _x[i] : _x[i] - left);
            bool arrived = false;
            for (int i = (int)Math.Ceiling(edge.Distal); i < (int)Math.Min(next, Math.Floor(edge.Distal + length) + 1); i++)
            {
                edge.Overshoot = Most(edge.Overshoot, edge.Rising ? _x[i] - reached : reached - _x[i]);
                edge.Undershoot = Most(edge.Undershoot, 0);
                arrived |= edge.Rising ? _x[i] >= reached : _x[i] < reached;
                if (arrived)
                    edge.Undershoot = Most(edge.Undershoot, edge.Rising ? reached - _x[i] : _x[i] - reached);
            }
            edge.RegionsCut = (edge.Proximal - length < previous ? 1 : 0) + (edge.Distal + length > next ? 1 : 0);
        }
    }

    private double Most(double soFar, double excess) => Math.Max(double.IsNaN(soFar) ? 0 : soFar, excess / (_high - _low));

    internal sealed class Edge
    {
        public bool Rising, Monotone;
        public int Crossing, SamplesOnEdge, Widest, RegionsCut;
        public double Proximal, Middle, Distal, Overshoot, Undershoot, Preshoot;
    }
}
