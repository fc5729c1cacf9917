using System;
using System.Collections.Generic;
using System.Linq;
using System.Numerics;

namespace Acquisition.Core.Planning;

/// <summary>Works out the settings one after the other: each may count on those before it.</summary>
internal sealed class SetupAdviser
{
    private readonly Requirement _wanted;
    private readonly CatalogueInstrument _instrument;
    private readonly CatalogueProbe _probe;
    private readonly InputTermination _termination;
    private readonly ChannelMode _mode;
    private readonly Screen _screen;
    private readonly Signal _signal;
    private readonly List<Advice> _settings = [];

    internal SetupAdviser(Requirement wanted, CatalogueInstrument instrument, CatalogueProbe probe)
    {
        _wanted = wanted;
        _instrument = instrument;
        _probe = probe;
        _termination = instrument.Terminations.FirstOrDefault(offered => Math.Abs((offered.Resistance.SiValue / probe.Into.SiValue) - 1) <= 0.05)
            ?? throw new ArgumentException($"{instrument.Name} has no input of {probe.Into}, which {probe.Name} needs", nameof(instrument));
        _mode = instrument.ModeFor(wanted.Channels) ?? throw new ArgumentException(FormattableString.Invariant($"{instrument.Name} has {instrument.Channels} channels; {wanted.Channels} are needed"), nameof(instrument));
        _screen = new Screen(wanted);
        _signal = wanted.Signals[0];
    }

    internal SetupAdvice Advise()
    {
        double needed = Math.Max(_screen.NeededRate, _signal.Fundamental is { } fundamental ? 2.5 * fundamental.SiValue : 0);
        Duration window = Window(needed);
        double rate = Math.Min(_mode.MaximumRate.SiValue, _mode.Memory.SiValue / window.SiValue);
        Rate(rate, needed, window);
        InputRange range = Range();
        Frequency? limit = Limit(range);
        SampledSignal setup = CatalogueChain.Setup(_signal, _screen.Source, _instrument, _probe, _termination, limit, range, _wanted.Channels);
        if (_wanted.NarrowestPulse is { } pulse)
            setup = setup.WatchingFor(pulse);
        setup = Mode(setup, rate, needed, window);
        setup = Interpolation(setup, setup.Over(window));
        return new SetupAdvice(_settings, setup, window);
    }

    private void Add(string setting, string value, string reason, string? loses = null) => _settings.Add(new Advice(setting, value, reason, loses));

    private Duration Window(double needed)
    {
        double fits = needed > 0 ? _mode.Memory.SiValue / needed : double.PositiveInfinity;
        if (_wanted.Window is { } wanted)
        {
            string? loses = wanted.SiValue > fits ? $"the {FewDigits.Of(needed, Core.SampleRate.Kind)} that are needed fit the memory for {FewDigits.Of(fits, Duration.Kind)} only" : null;
            Add("window", wanted.InWords(), "the requirement asks for it", loses);
            if (loses is not null && _instrument.MaximumSegments > 1)
            {
                double segment = fits / Math.Min(_instrument.MaximumSegments, Math.Ceiling(wanted.SiValue / fits));
                Add("segments", FormattableString.Invariant($"up to {_instrument.MaximumSegments}, each of {FewDigits.Of(segment, Duration.Kind)} or less"),
                    "events with pauses between them then keep the full rate over the whole time", "what happens between the segments");
            }
            return wanted;
        }
        // Ten periods show the signal and its regularity; a signal that does not repeat is shown over fifty of its edges.
        double shown = _signal.Period is { } period ? 10 * period.SiValue : 50 * _signal.RiseTime.SiValue;
        if (shown <= 0)
            shown = Math.Min(fits, 1000 / _mode.MaximumRate.SiValue);
        double chosen = Math.Min(shown, fits);
        Add("window", FewDigits.Of(chosen, Duration.Kind), shown <= fits ? "it shows ten periods, or a transition with its surroundings" : "more would not fit the memory at the rate that is needed",
            shown > fits ? "the wider view" : null);
        return Duration.FromSi(chosen, "window");
    }

    private void Rate(double rate, double needed, Duration window)
    {
        bool capped = rate < _mode.MaximumRate.SiValue;
        Add("sample rate", FewDigits.Of(rate, Core.SampleRate.Kind), capped ? $"the memory of {_mode.Memory.InWords()} allows no more over {window.InWords()}" : "it is the highest, and the memory holds the window",
            rate < needed ? $"{FewDigits.Of(needed, Core.SampleRate.Kind)} would be needed" : null);
    }

    private InputRange Range()
    {
        double swing = _screen.Swing, attenuation = _probe.AttenuationFactor;
        InputRange range = _instrument.Ranges.FirstOrDefault(offered => offered.FullScale.SiValue * attenuation >= swing) ?? _instrument.Ranges[_instrument.Ranges.Count - 1];
        double full = range.FullScale.SiValue * attenuation;
        Add("range", FewDigits.Of(full, PeakToPeakVoltage.Kind), full >= swing ? $"it is the smallest that holds {FewDigits.Of(swing, PeakToPeakVoltage.Kind)}" : "it is the largest there is",
            full < swing ? "the signal is clipped: use a probe that divides more" : full > 2 * swing ? $"{FewDigits.Number(Math.Log(full / swing) / Math.Log(2))} bits, for the signal fills only {FewDigits.Of(swing / full, Ratio.Kind)}" : null);
        return range;
    }

    // The narrowest limit that leaves every demand on amplitude, edge and pulse met: it takes noise away for nothing.
    private Frequency? Limit(InputRange range)
    {
        var probe = new ScreenedProbe(_screen, _probe);
        var workspace = new Complex[EdgeSpectrum.LineCount];
        foreach (ScreenedInput input in ScreenedInput.All(_screen, new Catalogue([_instrument], [])).Where(input => ReferenceEquals(input.Termination, _termination) && input.Limit is not null).OrderBy(input => input.Limit!.Value))
        {
            bool keeps = new[] { Demand.Amplitude, Demand.Edge, Demand.Pulse }.All(demand => !(Judgement.OfChain(_screen, probe.Gains, input.Gains, workspace, demand) < 0));
            bool asked = _screen.JudgesAmplitude || _wanted.EdgeTolerance is not null || _wanted.NarrowestPulse is not null;
            if (!keeps || !asked)
                continue;
            Add("bandwidth limit", input.Limit!.Value.InWords(), "amplitude, edge and pulse stay within their tolerances" + (range.Noise is null ? "" : FormattableString.Invariant($", and the noise falls to {FewDigits.Of(input.NoiseFactor, Ratio.Kind)}")),
                "what lies above it");
            return input.Limit;
        }
        if (_instrument.BandwidthLimits.Count > 0)
            Add("bandwidth limit", "off", "every limit it has would cost more than the requirement allows, or nothing was asked that could tell", null);
        return null;
    }

    private SampledSignal Mode(SampledSignal setup, double rate, double needed, Duration window)
    {
        if (_wanted.NarrowestPulse is { } pulse && pulse.SiValue * rate < 2 && _mode.MaximumRate.SiValue > rate && Has(AcquisitionMode.PeakDetect))
        {
            Add("acquisition mode", "peak detect", $"at {FewDigits.Of(rate, Core.SampleRate.Kind)} a pulse of {pulse.InWords()} would fall between the samples", "noise looks larger; the record is not fit for rms, spectra or effective bits");
            return setup.WithPeakDetect();
        }
        if (_wanted.SmallestDetail is { } detail && setup.Over(window).SmallestDetail is { } shown && shown > detail)
        {
            double noise = setup.Over(window).TotalNoise!.Value.SiValue, code = setup.Over(window).LeastSignificantBit!.Value.SiValue;
            // Averaging works on noise; a code that is coarser than the noise is no noise to average.
            int count = (int)Math.Min(65_536, Math.Pow(2, Math.Ceiling(Math.Log(Math.Pow(2 * noise / detail.SiValue, 2)) / Math.Log(2))));
            bool dithered = noise > 0.5 * code;
            if (dithered && count >= 2 && _signal.Fundamental is not null && Has(AcquisitionMode.Average))
            {
                Add("acquisition mode", FormattableString.Invariant($"average of {count} records"), $"one sample tells {shown.InWords()} apart, {detail.InWords()} are wanted, and the signal repeats", "what happens once, and any edge that jitters against the trigger");
                return setup.WithAveraging(count);
            }
            int surplus = needed > 0 ? (int)Math.Floor(rate / needed) : 1;
            if (dithered && surplus >= 2 && Has(AcquisitionMode.HighResolution))
            {
                Add("acquisition mode", FormattableString.Invariant($"high resolution, {surplus} samples per point"), $"one sample tells {shown.InWords()} apart, {detail.InWords()} are wanted, and the rate has room", "bandwidth, down to " + FewDigits.Of(0.443 * rate / surplus, Frequency.Kind));
                return setup.WithHighResolution(surplus);
            }
        }
        Add("acquisition mode", "sample", "nothing asks for more, and it loses nothing but what lies between samples");
        return setup;
    }

    private SampledSignal Interpolation(SampledSignal setup, Outlook outlook)
    {
        bool sinc = _instrument.Interpolations.Count == 0 || _instrument.Interpolations.Contains(Reconstruction.Sinc), linear = _instrument.Interpolations.Contains(Reconstruction.Linear);
        bool folds = outlook.AliasShare is { SiValue: > 0.01 };
        if (linear && (folds || !sinc))
        {
            Add("interpolation", "linear", folds ? "content above half the rate makes sinc draw pre- and overshoot that is not there" : "it has no other", "the course between samples: it is drawn straight");
            return setup.WithInterpolation(Reconstruction.Linear);
        }
        if (sinc)
            Add("interpolation", "sinc", "what is displayed lies below half the sample rate, so it can be rebuilt between the samples", folds ? "truth near steps: they are drawn with pre- and overshoot" : null);
        return setup.WithInterpolation(Reconstruction.Sinc);
    }

    private bool Has(AcquisitionMode mode) => _instrument.Modes.Contains(mode);
}
