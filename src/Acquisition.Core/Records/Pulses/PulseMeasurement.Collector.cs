using System;
using System.Collections.Generic;
using Acquisition.Core.Records;

namespace Acquisition.Core;

public sealed partial class PulseMeasurement
{
    /// <summary>Goes through the transitions once and keeps what statistics need, not the transitions themselves.</summary>
    private sealed class Collector
    {
        /// <summary>Below this part of the period, its scatter is less than what time bases are commonly off.</summary>
        private const double LeastTimebaseError = 50e-6;

        private const int TransitionsAtOnce = 64;

        private readonly PulseMeasurement _result;
        private readonly EdgeScan _scan;
        private readonly Record _record;
        private readonly int _leastOnEdge;

        private readonly EdgeStatistics _statistics;
        private UnresolvedEdges _unresolvedRises, _unresolvedFalls;
        private long _transitions, _notMonotone, _regionsCut;

        internal Collector(PulseMeasurement result, EdgeScan scan)
        {
            _result = result;
            _scan = scan;
            _record = result.Record;
            _statistics = new EdgeStatistics(_record, scan, result.SwingSi);
            _leastOnEdge = result.Settings.LeastSamplesOnEdge;
        }

        internal void Run(LongCall? call)
        {
            _scan.Call = call;
            _scan.OnRunt = AddRunt;
            var batch = new EdgeBatch(TransitionsAtOnce);
            for (bool more = true; more;)
            {
                more = _scan.Fill(batch);
                _result._transitions.Add(batch, EdgeBatch.Carried);
                _transitions += batch.Count - EdgeBatch.Carried;
                // The last one waits for the next, which ends the state that it reaches.
                int first = EdgeBatch.Carried - 1, to = more ? batch.Count - 1 : batch.Count;
                _scan.Surround(batch, first, to);
                _regionsCut += batch.RegionsCut;
                Count(batch, first, to);
                _statistics.Add(batch, first, to);
                batch.CarryOver();
            }
            // The scan stays with the list of transitions; the collector does not.
            _scan.Call = null;
            _scan.OnRunt = null;
            Finish();
        }

        /// <summary>Counts what is special among transitions of a batch, from one to before another. Those that are not resolved have no duration.</summary>
        private void Count(EdgeBatch batch, int first, int to)
        {
            var narrowest = new FourNumbers(int.MaxValue, int.MaxValue, int.MaxValue, int.MaxValue);
            for (int k = first; k < to; k += 4)
                narrowest = (FourNumbers.Load(batch.First, k) - FourNumbers.Load(batch.Last, k)).AtMost(narrowest);
            // Mostly nothing is: to ask once for all is faster than each.
            if (narrowest.Least() > _leastOnEdge && Array.IndexOf(batch.IsMonotone, false, first, to - first) < 0)
                return;
            for (int k = first; k < to; k++)
            {
                if (!batch.IsMonotone[k])
                    _notMonotone++;
                if (batch.SamplesOnEdge(k) >= _leastOnEdge || !batch.IsComplete[k])
                    continue;
                ref UnresolvedEdges unresolved = ref batch.IsRising(k) ? ref _unresolvedRises : ref _unresolvedFalls;
                unresolved.Count++;
                unresolved.Widest = Math.Max(unresolved.Widest, batch.Widest(k));
                batch.Duration[k] = double.NaN;
            }
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
            _result.RisingDuration = Edges(true, _unresolvedRises, _statistics.Rises[0]);
            _result.FallingDuration = Edges(false, _unresolvedFalls, _statistics.Falls[0]);
            _result.RisingSlewRate = Slew(_result.RisingDuration, _statistics.Rises[1]);
            _result.FallingSlewRate = Slew(_result.FallingDuration, _statistics.Falls[1]);
            _result.PositivePulseDuration = _statistics.Falls[2].As(Seconds, PulseFindings.NotEnough("the duration of a positive pulse", "a rising and the next falling transition"));
            _result.NegativePulseDuration = _statistics.Rises[2].As(Seconds, PulseFindings.NotEnough("the duration of a negative pulse", "a falling and the next rising transition"));
            RunningMoments period = _statistics.Rises[3].Count > 0 ? _statistics.Rises[3] : _statistics.Falls[3];
            Finding noPeriod = PulseFindings.NotEnough("a period", "two transitions of the same direction");
            _result.Period = period.As(Seconds, noPeriod);
            _result.Frequency = period.Count > 0 ? new(Core.Frequency.FromSi(1 / period.Mean, "frequency")) : new(noPeriod);
            _result.DutyFactor = _statistics.Ratios[0].As(Ratio.FromFraction, PulseFindings.NotEnough("a duty factor", "a whole period from a rising transition"));
            Finding noRegion = PulseFindings.NotEnough("an aberration", "a complete transition with samples around it");
            _result.Overshoot = _statistics.Ratios[1].As(Ratio.FromFraction, noRegion);
            _result.Undershoot = _statistics.Ratios[2].As(Ratio.FromFraction, noRegion);
            _result.Preshoot = _statistics.Ratios[3].As(Ratio.FromFraction, noRegion);
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
            if (Ringing.Find(_result) is { } ringing)
                findings.Add(ringing);
            findings.AddRange(new StateMotion(_result).Findings());
        }

        private Measured<Statistics<Duration>> Edges(bool rising, in UnresolvedEdges unresolved, RunningMoments durations)
        {
            long complete = durations.Count + unresolved.Count;
            if (complete == 0)
                return new(PulseFindings.NoTransition(rising));
            if (unresolved.Count == 0)
                return durations.As(Seconds, PulseFindings.NoTransition(rising));
            Finding finding = PulseFindings.NotResolved(unresolved.Count, complete, rising, _record.Span(unresolved.Widest), _leastOnEdge, _record.IntervalSeconds);
            _result._findings.Add(finding);
            return 2 * unresolved.Count > complete ? new(finding) : durations.As(Seconds, finding);
        }

        private Measured<Statistics<SlewRate>> Slew(Measured<Statistics<Duration>> durations, RunningMoments slews) =>
            !ReferenceEquals(_record.Kind, QuantityKind.Voltage) ? new(PulseFindings.NoSlew(_record.Kind))
            : durations.HasValue ? slews.As(x => SlewRate.FromSi(x, "slew rate"), PulseFindings.NoTransition(null))
            : new(durations.Reason!);

        private void FindJitter(List<Finding> findings)
        {
            long rises = _statistics.Rises[3].Count + 1;
            if (rises > TransitionList.MostInstants)
                findings.Add(new Finding("jitter-of-first-edges", Severity.Note, FormattableString.Invariant($"jitter and missing pulses are those of the first {TransitionList.MostInstants} rising edges")));
            if (PulseTrain.MayMiss(_statistics.Rises[3]))
            {
                _result.MissingPulseCount = PulseTrain.Missing(_result._transitions.RisingInstants(), out double period);
                if (_result.MissingPulseCount > 0)
                    findings.Add(_result._noJitter = PulseFindings.Missing(_result.MissingPulseCount, period));
            }
            if (rises < 4)
                _result._noJitter = PulseFindings.NotEnough("jitter", "at least 4 rising edges");
            if (_result._noJitter is null && _result.NoiseInJitter(_statistics.Rises[3]) is { } noise)
                findings.Add(noise);
            if (!_result.Settings.StatesTimebase && _statistics.Rises[3] is { Count: > 1 } periods && periods.StandardDeviation / Math.Sqrt(periods.Count) is var scatter && scatter < LeastTimebaseError * periods.Mean)
                findings.Add(PulseFindings.TimebaseNotStated(scatter / periods.Mean));
        }

        private static Duration Seconds(double seconds) => Duration.FromSi(seconds, "duration");
    }

    /// <summary>How many complete transitions of one direction hold too few samples, and over how many intervals the widest of them may extend.</summary>
    private struct UnresolvedEdges
    {
        internal long Count;
        internal int Widest;
    }
}
