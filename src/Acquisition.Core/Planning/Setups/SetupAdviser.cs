using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Planning;

/// <summary>Works out the settings one after the other, each for the signal that asks most of it: each may count on those before it.</summary>
internal sealed partial class SetupAdviser
{
    private readonly Requirement _wanted;
    private readonly CatalogueInstrument _instrument;
    private readonly CatalogueProbe _probe;
    private readonly InputTermination _termination;
    private readonly ChannelMode _mode;
    private readonly AdvisedSignal[] _signals;
    private readonly AdvisedSignal _fastest, _largest;
    private readonly List<Advice> _settings = [];
    private readonly List<Finding> _findings = [];

    internal SetupAdviser(Requirement wanted, CatalogueInstrument instrument, CatalogueProbe probe)
    {
        _wanted = wanted;
        _instrument = instrument;
        _probe = probe;
        _termination = instrument.Terminations.FirstOrDefault(offered => Math.Abs((offered.Resistance.SiValue / probe.Into.SiValue) - 1) <= 0.05)
            ?? throw new ArgumentException($"{instrument.Name} has no input of {probe.Into}, which {probe.Name} needs", nameof(instrument));
        _mode = instrument.ModeFor(wanted.Channels) ?? throw new ArgumentException(FormattableString.Invariant($"{instrument.Name} has {instrument.Channels} channels; {wanted.Channels} are needed"), nameof(instrument));
        _signals = wanted.Signals.Select(signal => new AdvisedSignal(wanted, signal)).ToArray();
        _fastest = Most(signal => signal.NeededRate);
        _largest = Most(signal => signal.Swing);
    }

    internal SetupAdvice Advise()
    {
        Duration window = Window();
        double rate = Math.Min(_mode.MaximumRate.SiValue, _mode.Memory.SiValue / window.SiValue);
        Rate(rate, window);
        InputRange range = Range();
        Frequency? limit = Limit(range);
        SampledSignal[] setups = _signals.Select(signal => Setup(signal, limit, range)).ToArray();
        setups = Mode(setups, rate, window);
        _findings.AddRange(SafetyFindings.Of(setups.Select(setup => setup.Applied)));
        return new SetupAdvice(_settings, _findings, Interpolation(setups, window), window);
    }

    private AdvisedSignal Most(Func<AdvisedSignal, double> asks) => _signals.OrderByDescending(asks).First();

    private void Add(string setting, string value, string reason, string? loses, AdvisedSignal? decidedBy) => _settings.Add(new Advice(setting, value, reason, loses, decidedBy?.Signal));

    private SampledSignal Setup(AdvisedSignal signal, Frequency? limit, InputRange range) => CatalogueChain.Setup(signal.Screen, signal.Signal, _instrument, _probe, _termination, limit, range);

    private Duration Window()
    {
        double needed = _fastest.NeededRate, fits = needed > 0 ? _mode.Memory.SiValue / needed : double.PositiveInfinity;
        AdvisedSignal widest = Most(signal => signal.View);
        double view = _wanted.Window?.SiValue ?? widest.View;
        // Where nothing tells how long to look, a thousand samples at the highest rate are a view.
        view = view > 0 ? view : 1000 / _mode.MaximumRate.SiValue;
        // The memory is counted in whole points: the last bits of a quotient are no conflict.
        bool both = view <= fits * (1 + 1e-9);
        if (_wanted.Window is { } wanted)
        {
            Add("window", wanted.InWords(), "the requirement asks for it", both ? null : $"the {FewDigits.Of(needed, Core.SampleRate.Kind)} that are needed fit the memory for {FewDigits.Of(fits, Duration.Kind)} only", null);
        }
        else
        {
            Add("window", FewDigits.Of(Math.Min(view, fits), Duration.Kind), both ? "it shows ten periods, or a transition with its surroundings" : "more would not fit the memory at the rate that is needed",
                both ? null : $"the wider view of {FewDigits.Of(view, Duration.Kind)}", both ? widest : _fastest);
        }
        if (!both)
            WindowAgainstRate(view, fits, widest);
        return _wanted.Window ?? Duration.FromSi(Math.Min(view, fits), "window");
    }

    private void WindowAgainstRate(double view, double fits, AdvisedSignal widest)
    {
        string length = FewDigits.Of(view, Duration.Kind), zone = FewDigits.Of(fits, Duration.Kind), needed = FewDigits.Of(_fastest.NeededRate, Core.SampleRate.Kind);
        var remedies = new List<string>();
        if (_instrument.MaximumSegments > 1)
        {
            // The segments share the memory: as many as are needed to fill it, each as long as its share.
            int count = (int)Math.Min(_instrument.MaximumSegments, Math.Ceiling(view / fits));
            string segment = FewDigits.Of(fits / count, Duration.Kind);
            Add("segments", FormattableString.Invariant($"{count} of {segment} or less each, all at {needed}"), "events with pauses between them then keep the full rate over the whole time", "what happens between the segments", _fastest);
            remedies.Add(FormattableString.Invariant($"{count} segments of {segment}, if pauses lie between the events"));
        }
        remedies.Add($"a zone of {zone} about what is fast, placed by the trigger and its delay");
        remedies.Add($"two captures, {zone} at {needed} for {_fastest.Signal} and {length} at {FewDigits.Of(Math.Min(_mode.MaximumRate.SiValue, _mode.Memory.SiValue / view), Core.SampleRate.Kind)} for " + (_wanted.Window is null ? widest.Signal.Name : "the course"));
        string asks = _wanted.Window is null ? $"{widest.Signal} is shown over {length}" : $"the window is to be {length}";
        _findings.Add(new Finding("window-against-rate", Severity.Warning,
            $"{asks}, {_fastest.Signal} needs {needed}; the memory of {_mode.Memory.InWords()} holds {zone} at that rate", string.Join("; or ", remedies), "handbook 5.4, 5.6"));
    }

    private void Rate(double rate, Duration window)
    {
        double needed = _fastest.NeededRate;
        bool capped = rate < _mode.MaximumRate.SiValue;
        Add("sample rate", FewDigits.Of(rate, Core.SampleRate.Kind), capped ? $"the memory of {_mode.Memory.InWords()} allows no more over {window.InWords()}" : "it is the highest, and the memory holds the window",
            rate < needed * (1 - 1e-9) ? $"{FewDigits.Of(needed, Core.SampleRate.Kind)} would be needed" : null, needed > 0 ? _fastest : null);
    }

    private bool Has(AcquisitionMode mode) => _instrument.Modes.Contains(mode);
}
