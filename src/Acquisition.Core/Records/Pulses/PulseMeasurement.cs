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
public sealed partial class PulseMeasurement
{
    private readonly TransitionList _transitions;
    private readonly List<Runt> _runts = new();
    private readonly List<Finding> _findings = new();

    /// <summary>Why there is no jitter; else it is computed when somebody asks for it.</summary>
    private Finding? _noJitter;
    private EdgeJitter? _jitter;

    private PulseMeasurement(Record record, PulseSettings settings, LongCall? call)
    {
        Record = record;
        Settings = settings;
        _findings.AddRange(record.Findings);
        StateLevels? states = StateFinder.Find(record, settings, call?.Part(0, 0.5), out AmplitudeDistribution? distribution, out Finding? reason);
        if (states is null)
        {
            _findings.Add(reason!);
            _transitions = new TransitionList(this, null);
            States = new(reason!);
            var absent = new Measured<Statistics<Duration>>(reason!);
            RisingDuration = FallingDuration = Period = PositivePulseDuration = NegativePulseDuration = absent;
            RisingSlewRate = FallingSlewRate = new(reason!);
            DutyFactor = Overshoot = Undershoot = Preshoot = new(reason!);
            _noJitter = reason;
            Frequency = new(reason!);
            return;
        }
        States = new(states);
        FindClipped(distribution!);
        if (states.SlowNoise is { } slow)
            _findings.Add(slow);
        if (settings.Method != StateLevelMethod.Given && OtherStates.Find(distribution!, states, record.Kind) is { } more)
            _findings.Add(more);
        EdgeScan scan = record.Samples.ScanEdges(states, settings, record.ResolutionSi ?? 0);
        _transitions = new TransitionList(this, scan);
        new Collector(this, scan).Run(call?.Part(0.5, 1));
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
    public IReadOnlyList<Runt> Runts => _runts.AsReadOnly();

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
    public Measured<EdgeJitter> Jitter => _noJitter is { } reason ? new(reason) : new(_jitter ??= EdgeJitter.OfSeconds(_transitions.RisingInstants()));

    /// <summary>What to know about the measurement.</summary>
    public IReadOnlyList<Finding> Findings => _findings.AsReadOnly();

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

    /// <summary>From the proximal to the distal level.</summary>
    internal double SwingSi => (Settings.Distal.SiValue - Settings.Proximal.SiValue) * States.Value.AmplitudeSi;

    private void FindClipped(AmplitudeDistribution distribution)
    {
        if (Record.LowLimitSi is { } low && distribution.Minimum <= low)
            _findings.Add(PulseFindings.Clipped(distribution.CountBetween(double.NegativeInfinity, low), "low", low, Record.Kind));
        if (Record.HighLimitSi is { } high && distribution.Maximum >= high)
            _findings.Add(PulseFindings.Clipped(distribution.CountBetween(high, double.PositiveInfinity), "high", high, Record.Kind));
    }
}
