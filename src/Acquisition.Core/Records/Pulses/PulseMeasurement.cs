using System;
using System.Collections.Generic;
using System.Threading;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>
/// All pulses of a record by IEEE Std 181-2011 (from memory; handbook 8): states, transitions, durations, periods, aberrations, with statistics over the record. What the
/// record does not hold is absent, with the finding that says why.
/// </summary>
/// <remarks>
/// Immutable. Codes are passed twice (once for the states, once for the transitions), numbers three times; no copy is made but by the shorth methods on numbers, which sort one.
/// Instants are linearly interpolated: at few samples on an edge the duration reads long (handbook 8.4).
/// </remarks>
public sealed class PulseMeasurement
{
    /// <summary>So many instants of one direction are kept for jitter: 8 MB.</summary>
    private const int MostInstants = 1_000_000;

    private readonly TransitionList _transitions;
    private readonly List<Runt> _runts = new();
    private readonly List<Finding> _findings = new();

    private PulseMeasurement(Record record, PulseSettings settings, LongCall? call)
    {
        Record = record;
        Settings = settings;
        _transitions = new TransitionList(this);
        StateLevels? states = StateFinder.Find(record, settings, call?.Part(0, 0.5), out AmplitudeDistribution? distribution, out Finding? reason);
        if (states is null)
        {
            _findings.Add(reason!);
            States = new(reason!);
            var absent = new Measured<Statistics<Duration>>(reason!);
            RisingDuration = FallingDuration = Period = PositivePulseDuration = NegativePulseDuration = absent;
            RisingSlewRate = FallingSlewRate = new(reason!);
            DutyFactor = Overshoot = Undershoot = Preshoot = new(reason!);
            Jitter = new(reason!);
            Frequency = new(reason!);
            return;
        }
        States = new(states);
        FindClipped(distribution!);
        new Collector(this, states).Run(call?.Part(0.5, 1));
    }

    /// <summary>What was measured.</summary>
    public Record Record { get; }

    /// <summary>What the measurement refers to.</summary>
    public PulseSettings Settings { get; }

    /// <summary>The two states.</summary>
    public Measured<StateLevels> States { get; }

    /// <summary>The transitions in order of time, up to the limit of the settings.</summary>
    public IReadOnlyList<PulseTransition> Transitions => _transitions;

    /// <summary>How many transitions the record holds.</summary>
    public long TransitionCount { get; private set; }

    /// <summary>Pulses that do not reach the other state, up to the limit of the settings.</summary>
    public IReadOnlyList<Runt> Runts => _runts;

    /// <summary>How many runts the record holds.</summary>
    public long RuntCount { get; private set; }

    /// <summary>How many pulses are missing from a regular train; 0 for irregular ones, whose gaps mean nothing.</summary>
    public long MissingPulseCount { get; private set; }

    /// <summary>The 10 % to 90 % (or what the settings say) duration of rising transitions; absent where most are not resolved.</summary>
    public Measured<Statistics<Duration>> RisingDuration { get; private set; }

    /// <summary>The 90 % to 10 % (or what the settings say) duration of falling transitions; absent where most are not resolved.</summary>
    public Measured<Statistics<Duration>> FallingDuration { get; private set; }

    /// <summary>The mean slope of rising transitions between the reference levels.</summary>
    public Measured<Statistics<SlewRate>> RisingSlewRate { get; private set; }

    /// <summary>The mean slope of falling transitions between the reference levels, negative.</summary>
    public Measured<Statistics<SlewRate>> FallingSlewRate { get; private set; }

    /// <summary>From a rising transition to the next falling one, at the middle level: the pulse duration ("width") of positive pulses, the separation of negative ones.</summary>
    public Measured<Statistics<Duration>> PositivePulseDuration { get; private set; }

    /// <summary>From a falling transition to the next rising one, at the middle level: the pulse duration of negative pulses, the separation of positive ones.</summary>
    public Measured<Statistics<Duration>> NegativePulseDuration { get; private set; }

    /// <summary>From a rising transition to the next rising one; of falling ones where the record holds a single rising one.</summary>
    public Measured<Statistics<Duration>> Period { get; private set; }

    /// <summary>One over the mean period (not the mean of one over the periods).</summary>
    public Measured<Frequency> Frequency { get; private set; }

    /// <summary>Positive pulse duration over the period of the same cycle.</summary>
    public Measured<Statistics<Ratio>> DutyFactor { get; private set; }

    /// <summary>Overshoot of all transitions.</summary>
    public Measured<Statistics<Ratio>> Overshoot { get; private set; }

    /// <summary>Undershoot of all transitions.</summary>
    public Measured<Statistics<Ratio>> Undershoot { get; private set; }

    /// <summary>Preshoot of all transitions.</summary>
    public Measured<Statistics<Ratio>> Preshoot { get; private set; }

    /// <summary>Jitter of the rising edges; absent for fewer than 4, and where pulses are missing.</summary>
    public Measured<EdgeJitter> Jitter { get; private set; }

    /// <summary>What to know about the measurement.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Measures a record with the default settings.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    public static PulseMeasurement Of(Record record) => Of(record, PulseSettings.Default);

    /// <summary>Measures a record.</summary>
    /// <remarks>The shorth methods sort the samples of a record of numbers in one go: that part cannot be cancelled.</remarks>
    /// <param name="record">The record.</param>
    /// <param name="settings">What the measurement refers to.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException">The record or the settings are null.</exception>
    /// <exception cref="ArgumentException">Given state levels are of another kind than the record.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static PulseMeasurement Of(Record record, PulseSettings settings, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        _ = record ?? throw new ArgumentNullException(nameof(record));
        _ = settings ?? throw new ArgumentNullException(nameof(settings));
        LongCall? call = LongCall.Of(progress, cancellation);
        var measurement = new PulseMeasurement(record, settings, call);
        call?.Completed();
        return measurement;
    }

    /// <summary>States, counts and period in one line.</summary>
    public override string ToString() => States.HasValue ? FormattableString.Invariant($"{TransitionCount} transitions between {States.Value}") : States.ToString();

    internal double SlewSi(bool rising, double seconds) =>
        (rising ? 1 : -1) * (Settings.Distal.SiValue - Settings.Proximal.SiValue) * States.Value.AmplitudeSi / seconds;

    private void FindClipped(AmplitudeDistribution distribution)
    {
        if (Record.LowLimitSi is { } low && distribution.Minimum <= low)
            _findings.Add(PulseFindings.Clipped(distribution.CountBetween(double.NegativeInfinity, low), "low", low, Record.Kind));
        if (Record.HighLimitSi is { } high && distribution.Maximum >= high)
            _findings.Add(PulseFindings.Clipped(distribution.CountBetween(high, double.PositiveInfinity), "high", high, Record.Kind));
    }

    /// <summary>Goes through the transitions once and keeps what statistics need, not the transitions themselves.</summary>
    private sealed class Collector
    {
        private readonly PulseMeasurement _result;
        private readonly StateLevels _states;
        private readonly Record _record;
        private readonly GrowingArray<double> _rising = new();
        private RunningMoments _riseTime, _fallTime, _riseSlew, _fallSlew, _positive, _negative, _period, _fallingPeriod, _duty, _over, _under, _pre;
        private long _rises, _falls, _risesUnresolved, _fallsUnresolved, _notMonotone, _regionsCut;
        private double _riseAtMost, _fallAtMost, _lastRise = double.NaN, _lastFall = double.NaN;
        private bool _instantsCut;

        internal Collector(PulseMeasurement result, StateLevels states)
        {
            _result = result;
            _states = states;
            _record = result.Record;
        }

        internal void Run(LongCall? call)
        {
            var scan = new TransitionScan(_record.Samples, _states, _result.Settings, _record.ResolutionSi ?? 0, call) { OnRunt = AddRunt };
            bool some = scan.Next(out TransitionPlaces current);
            int previous = 0;
            while (some)
            {
                some = scan.Next(out TransitionPlaces next);
                int end = some ? (int)(double.IsNaN(next.Proximal) ? next.Crossing : Math.Ceiling(next.Proximal)) : _record.Length;
                Add(current, previous, end);
                previous = double.IsNaN(current.Distal) ? current.Crossing : (int)Math.Ceiling(current.Distal);
                current = next;
            }
            Finish(scan.Rejected);
        }

        private void Add(in TransitionPlaces t, int previous, int next)
        {
            _result.TransitionCount++;
            Aberrations aberrations = AberrationScan.Of(_record.Samples, _states, _result.Settings.RegionFactor, t, previous, next);
            _regionsCut += aberrations.RegionsCut;
            if (!double.IsNaN(aberrations.Overshoot))
            {
                _over.Add(aberrations.Overshoot);
                _under.Add(aberrations.Undershoot);
            }
            if (!double.IsNaN(aberrations.Preshoot))
                _pre.Add(aberrations.Preshoot);
            if (!t.IsMonotone)
                _notMonotone++;
            if (t.IsRising)
                AddEdge(t, ref _rises, ref _risesUnresolved, ref _riseAtMost, ref _riseTime, ref _riseSlew);
            else
                AddEdge(t, ref _falls, ref _fallsUnresolved, ref _fallAtMost, ref _fallTime, ref _fallSlew);
            AddCycle(t);
            if (_result._transitions.Count < _result.Settings.MostListed)
                _result._transitions.Add(new MeasuredTransition(t, aberrations, next));
        }

        private void AddEdge(in TransitionPlaces t, ref long count, ref long unresolved, ref double atMost, ref RunningMoments durations, ref RunningMoments slews)
        {
            if (double.IsNaN(t.Duration))
                return;
            count++;
            if (t.SamplesOnEdge < _result.Settings.LeastSamplesOnEdge)
            {
                unresolved++;
                atMost = Math.Max(atMost, t.Widest);
                return;
            }
            double seconds = _record.Span(t.Duration);
            durations.Add(seconds);
            slews.Add(_result.SlewSi(t.IsRising, seconds));
        }

        private void AddCycle(in TransitionPlaces t)
        {
            if (t.IsRising)
            {
                if (_lastFall > _lastRise)
                    _duty.Add((_lastFall - _lastRise) / (t.Middle - _lastRise));
                if (!double.IsNaN(_lastFall))
                    _negative.Add(_record.Span(t.Middle - _lastFall));
                if (!double.IsNaN(_lastRise))
                    _period.Add(_record.Span(t.Middle - _lastRise));
                _lastRise = t.Middle;
                if (_rising.Count < MostInstants)
                    _rising.Add(_record.Span(t.Middle));
                else
                    _instantsCut = true;
                return;
            }
            if (!double.IsNaN(_lastRise))
                _positive.Add(_record.Span(t.Middle - _lastRise));
            if (!double.IsNaN(_lastFall))
                _fallingPeriod.Add(_record.Span(t.Middle - _lastFall));
            _lastFall = t.Middle;
        }

        private void AddRunt(double start, double end, double extreme, bool positive)
        {
            _result.RuntCount++;
            if (_result._runts.Count < _result.Settings.MostListed)
                _result._runts.Add(new Runt(Duration.FromSi(_record.TimeSi(start), "start"), Duration.FromSi(_record.TimeSi(end), "end"), new Quantity(extreme, _record.Kind), positive));
        }

        private void Finish(long rejected)
        {
            List<Finding> findings = _result._findings;
            if (_result.TransitionCount == 0)
                findings.Add(PulseFindings.NoTransition(null));
            _result.RisingDuration = Edges(true, _rises, _risesUnresolved, _riseAtMost, _riseTime);
            _result.FallingDuration = Edges(false, _falls, _fallsUnresolved, _fallAtMost, _fallTime);
            _result.RisingSlewRate = Slew(_result.RisingDuration, _riseSlew);
            _result.FallingSlewRate = Slew(_result.FallingDuration, _fallSlew);
            _result.PositivePulseDuration = _positive.As(Seconds, PulseFindings.NotEnough("the duration of a positive pulse", "a rising and the next falling transition"));
            _result.NegativePulseDuration = _negative.As(Seconds, PulseFindings.NotEnough("the duration of a negative pulse", "a falling and the next rising transition"));
            RunningMoments period = _period.Count > 0 ? _period : _fallingPeriod;
            Finding noPeriod = PulseFindings.NotEnough("a period", "two transitions of the same direction");
            _result.Period = period.As(Seconds, noPeriod);
            _result.Frequency = period.Count > 0 ? new(Core.Frequency.FromSi(1 / period.Mean, "frequency")) : new(noPeriod);
            _result.DutyFactor = _duty.As(Ratio.FromFraction, PulseFindings.NotEnough("a duty factor", "a whole period from a rising transition"));
            Finding noRegion = PulseFindings.NotEnough("an aberration", "a complete transition with samples around it");
            _result.Overshoot = _over.As(Ratio.FromFraction, noRegion);
            _result.Undershoot = _under.As(Ratio.FromFraction, noRegion);
            _result.Preshoot = _pre.As(Ratio.FromFraction, noRegion);
            if (_notMonotone > 0)
                findings.Add(PulseFindings.NotMonotone(_notMonotone));
            if (rejected > 0)
                findings.Add(PulseFindings.Rejected(rejected));
            if (_result.RuntCount > 0)
                findings.Add(PulseFindings.Runts(_result.RuntCount));
            if (_regionsCut > 0)
                findings.Add(PulseFindings.RegionsCut(_regionsCut));
            if (_result.TransitionCount > _result._transitions.Count)
                findings.Add(PulseFindings.ListCut(_result.TransitionCount, _result._transitions.Count));
            FindJitter(findings);
        }

        private Measured<Statistics<Duration>> Edges(bool rising, long count, long unresolved, double atMost, RunningMoments durations)
        {
            if (count == 0)
                return new(PulseFindings.NoTransition(rising));
            if (unresolved == 0)
                return durations.As(Seconds, PulseFindings.NoTransition(rising));
            Finding finding = PulseFindings.NotResolved(unresolved, count, rising, _record.Span(atMost), _result.Settings.LeastSamplesOnEdge, _record.IntervalSeconds);
            _result._findings.Add(finding);
            return 2 * unresolved > count ? new(finding) : durations.As(Seconds, finding);
        }

        private Measured<Statistics<SlewRate>> Slew(Measured<Statistics<Duration>> durations, RunningMoments slews) =>
            !ReferenceEquals(_record.Kind, QuantityKind.Voltage) ? new(PulseFindings.NoSlew(_record.Kind))
            : durations.HasValue ? slews.As(x => SlewRate.FromSi(x, "slew rate"), PulseFindings.NoTransition(null))
            : new(durations.Reason!);

        private void FindJitter(List<Finding> findings)
        {
            var instants = new double[_rising.Count];
            Array.Copy(_rising.Items, instants, instants.Length);
            if (_instantsCut)
                findings.Add(new Finding("jitter-of-first-edges", Severity.Note, FormattableString.Invariant($"jitter and missing pulses are those of the first {MostInstants} rising edges")));
            _result.MissingPulseCount = PulseTrain.Missing(instants, out double period);
            if (_result.MissingPulseCount > 0)
            {
                Finding missing = PulseFindings.Missing(_result.MissingPulseCount, period);
                findings.Add(missing);
                _result.Jitter = new(missing);
                return;
            }
            _result.Jitter = instants.Length >= 4 ? new(EdgeJitter.OfSeconds(instants)) : new(PulseFindings.NotEnough("jitter", "at least 4 rising edges"));
        }

        private static Duration Seconds(double seconds) => Duration.FromSi(seconds, "duration");
    }
}
