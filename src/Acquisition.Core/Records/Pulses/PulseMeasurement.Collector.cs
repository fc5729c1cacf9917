using System;
using System.Collections.Generic;
using Acquisition.Core.Records;

namespace Acquisition.Core;

public sealed partial class PulseMeasurement
{
    /// <summary>Goes through the transitions once and keeps what statistics need, not the transitions themselves.</summary>
    private sealed class Collector
    {
        private readonly PulseMeasurement _result;
        private readonly EdgeScan _scan;
        private readonly Record _record;
        private readonly double _swing;
        private readonly int _leastOnEdge;

        /// <summary>Of rising transitions: duration, slew rate, negative pulse and period that they end. Of falling ones: the same, with the positive pulse.</summary>
        private FourMoments _rises = new(), _falls = new();

        /// <summary>Duty factor, overshoot, undershoot, preshoot.</summary>
        private FourMoments _ratios = new();
        private EdgeCounts _riseCounts, _fallCounts;
        private long _transitions, _notMonotone, _regionsCut;
        private double _lastRise = double.NaN, _lastFall = double.NaN;

        internal Collector(PulseMeasurement result, EdgeScan scan)
        {
            _result = result;
            _scan = scan;
            _record = result.Record;
            _swing = result.SwingSi;
            _leastOnEdge = result.Settings.LeastSamplesOnEdge;
        }

        internal void Run(LongCall? call)
        {
            _scan.Call = call;
            _scan.OnRunt = AddRunt;
            TransitionPlaces current = new(), next = new();
            bool some = _scan.Next(current);
            int previous = 0;
            while (some)
            {
                some = _scan.Next(next);
                Aberrations aberrations = _scan.Around(current, previous, some ? next.FirstOf : _record.Length, out int cut);
                _regionsCut += cut;
                Add(current, aberrations);
                previous = current.FirstBeyond;
                (current, next) = (next, current);
            }
            // The scan stays with the list of transitions; the collector does not.
            _scan.Call = null;
            _scan.OnRunt = null;
            Finish();
        }

        private void Add(TransitionPlaces t, in Aberrations aberrations)
        {
            _transitions++;
            _result._transitions.Add(t);
            if (!t.IsMonotone)
                _notMonotone++;
            bool resolved = t.SamplesOnEdge >= _leastOnEdge;
            bool rising = t.IsRising;
            double since = rising ? _lastRise : _lastFall, sinceOther = rising ? _lastFall : _lastRise, duty = double.NaN;
            FourNumbers seconds = _record.Span(new FourNumbers(resolved ? t.Duration : double.NaN, 0, t.Middle - sinceOther, t.Middle - since));
            if (rising)
            {
                _riseCounts.Add(t, resolved);
                duty = (_lastFall - _lastRise) / (t.Middle - _lastRise);
                _rises.Add(new FourNumbers(seconds.First, _swing / seconds.First, seconds.Third, seconds.Fourth));
                _lastRise = t.Middle;
            }
            else
            {
                _fallCounts.Add(t, resolved);
                _falls.Add(new FourNumbers(seconds.First, -_swing / seconds.First, seconds.Third, seconds.Fourth));
                _lastFall = t.Middle;
            }
            _ratios.Add(aberrations.After(duty));
        }

        private void AddRunt(double start, double end, double extreme, bool positive)
        {
            _result.RuntCount++;
            if (_result._runts.Count < _result.Settings.MostListed)
                _result._runts.Add(new Runt(Duration.FromSi(_record.TimeSi(start), "start"), Duration.FromSi(_record.TimeSi(end), "end"), new Quantity(extreme, _record.Kind), positive));
        }

        private void Finish()
        {
            List<Finding> findings = _result._findings;
            _result.TransitionCount = _transitions;
            if (_transitions == 0)
                findings.Add(PulseFindings.NoTransition(null));
            _result.RisingDuration = Edges(true, _riseCounts, _rises[0]);
            _result.FallingDuration = Edges(false, _fallCounts, _falls[0]);
            _result.RisingSlewRate = Slew(_result.RisingDuration, _rises[1]);
            _result.FallingSlewRate = Slew(_result.FallingDuration, _falls[1]);
            _result.PositivePulseDuration = _falls[2].As(Seconds, PulseFindings.NotEnough("the duration of a positive pulse", "a rising and the next falling transition"));
            _result.NegativePulseDuration = _rises[2].As(Seconds, PulseFindings.NotEnough("the duration of a negative pulse", "a falling and the next rising transition"));
            RunningMoments period = _rises[3].Count > 0 ? _rises[3] : _falls[3];
            Finding noPeriod = PulseFindings.NotEnough("a period", "two transitions of the same direction");
            _result.Period = period.As(Seconds, noPeriod);
            _result.Frequency = period.Count > 0 ? new(Core.Frequency.FromSi(1 / period.Mean, "frequency")) : new(noPeriod);
            _result.DutyFactor = _ratios[0].As(Ratio.FromFraction, PulseFindings.NotEnough("a duty factor", "a whole period from a rising transition"));
            Finding noRegion = PulseFindings.NotEnough("an aberration", "a complete transition with samples around it");
            _result.Overshoot = _ratios[1].As(Ratio.FromFraction, noRegion);
            _result.Undershoot = _ratios[2].As(Ratio.FromFraction, noRegion);
            _result.Preshoot = _ratios[3].As(Ratio.FromFraction, noRegion);
            if (_notMonotone > 0)
                findings.Add(PulseFindings.NotMonotone(_notMonotone));
            if (_scan.Rejected > 0)
                findings.Add(PulseFindings.Rejected(_scan.Rejected));
            if (_result.RuntCount > 0)
                findings.Add(PulseFindings.Runts(_result.RuntCount));
            if (_regionsCut > 0)
                findings.Add(PulseFindings.RegionsCut(_regionsCut));
            if (_transitions > _result._transitions.Count)
                findings.Add(PulseFindings.ListCut(_transitions, _result._transitions.Count));
            FindJitter(findings);
        }

        private Measured<Statistics<Duration>> Edges(bool rising, in EdgeCounts counts, RunningMoments durations)
        {
            if (counts.Complete == 0)
                return new(PulseFindings.NoTransition(rising));
            if (counts.Unresolved == 0)
                return durations.As(Seconds, PulseFindings.NoTransition(rising));
            Finding finding = PulseFindings.NotResolved(counts.Unresolved, counts.Complete, rising, _record.Span(counts.WidestUnresolved), _leastOnEdge, _record.IntervalSeconds);
            _result._findings.Add(finding);
            return 2 * counts.Unresolved > counts.Complete ? new(finding) : durations.As(Seconds, finding);
        }

        private Measured<Statistics<SlewRate>> Slew(Measured<Statistics<Duration>> durations, RunningMoments slews) =>
            !ReferenceEquals(_record.Kind, QuantityKind.Voltage) ? new(PulseFindings.NoSlew(_record.Kind))
            : durations.HasValue ? slews.As(x => SlewRate.FromSi(x, "slew rate"), PulseFindings.NoTransition(null))
            : new(durations.Reason!);

        private void FindJitter(List<Finding> findings)
        {
            if (_riseCounts.All > TransitionList.MostInstants)
                findings.Add(new Finding("jitter-of-first-edges", Severity.Note, FormattableString.Invariant($"jitter and missing pulses are those of the first {TransitionList.MostInstants} rising edges")));
            if (PulseTrain.MayMiss(_rises[3]))
            {
                _result.MissingPulseCount = PulseTrain.Missing(_result._transitions.RisingInstants(), out double period);
                if (_result.MissingPulseCount > 0)
                    findings.Add(_result._noJitter = PulseFindings.Missing(_result.MissingPulseCount, period));
            }
            if (_riseCounts.All < 4)
                _result._noJitter = PulseFindings.NotEnough("jitter", "at least 4 rising edges");
        }

        private static Duration Seconds(double seconds) => Duration.FromSi(seconds, "duration");
    }

    /// <summary>How many transitions of one direction there are, and how many of the complete ones hold too few samples.</summary>
    private struct EdgeCounts
    {
        internal long All, Complete, Unresolved;
        internal int WidestUnresolved;

        internal void Add(TransitionPlaces t, bool resolved)
        {
            All++;
            if (double.IsNaN(t.Duration))
                return;
            Complete++;
            if (resolved)
                return;
            Unresolved++;
            WidestUnresolved = Math.Max(WidestUnresolved, t.Widest);
        }
    }
}
