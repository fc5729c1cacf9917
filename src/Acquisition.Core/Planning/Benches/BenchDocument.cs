using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Explanations.Json;

namespace Acquisition.Core.Planning;

/// <summary>The form of a bench file in JSON; docs/bench.schema.json says the same to editors and other programs.</summary>
internal static class BenchDocument
{
    // What takes a setting, to ask whether it would be taken.
    private static readonly SampledSignal Trial = Signal.Sine(Frequency.FromHertz(1), PeakVoltage.FromVolts(1)).Through(Response.Gaussian(Frequency.FromHertz(1)))
        .SampledBy(new Digitizer(SampleRate.FromSamplesPerSecond(1), PointCount.FromPoints(2), BitDepth.FromBits(8)));

    /// <summary>The member by which a probe, a cable or an instrument is named in the catalogue.</summary>
    internal const string Reference = "fromCatalogue";

    internal static Bench? Read(JsonValue root, Catalogue? catalogue, List<DocumentProblem> problems)
    {
        var document = new DocumentObject(root, "", problems);
        string name = document.Text("name");
        Signal? signal = document.Object("signal") is { } shape ? SignalDocument.Read(shape) : null;
        SourceImpedance? source = ChainDocument.Source(document.OptionalObject("source"), out Voltage? commonMode);
        DocumentObject? probeDocument = document.OptionalObject("probe");
        CatalogueProbe? entry = probeDocument is not null && probeDocument.Has(Reference) ? probeDocument.Entry(Reference, "probe", catalogue?.Probes, known => known.Name) : null;
        Probe? probe = probeDocument is null ? null : probeDocument.Has(Reference) ? ChainDocument.Probe(probeDocument, entry, source ?? SourceImpedance.None) : ChainDocument.Probe(probeDocument);
        IReadOnlyList<ChainElement> path = PathDocument.Read(document, catalogue);
        InstrumentDocument? instrument = document.OptionalObject("instrument") is { } named ? InstrumentDocument.Read(named, catalogue, entry) : null;
        FrontEnd? input = null;
        Digitizer? digitizer = instrument?.Digitizer;
        if (document.Has("instrument"))
        {
            foreach (string other in new[] { "input", "digitizer" })
            {
                document.Known(other);
                if (document.Has(other))
                    document.Report(other, "instrument is given too, which has an input and a digitizer of its own; give one of them");
            }
        }
        else
        {
            input = document.Object("input") is { } front ? ChainDocument.Input(front) : null;
            digitizer = document.Object("digitizer") is { } sampler ? ChainDocument.Digitizer(sampler) : null;
        }
        double attenuation = path.Aggregate(probe?.NominalFactor ?? 1, (factor, element) => factor * element.NominalFactor);
        Func<SampledSignal, SampledSignal>? settings = null;
        Duration? window = null;
        if (document.Object("capture") is { } capture)
        {
            (settings, window) = Capture(capture, digitizer, instrument);
            if (instrument is not null && signal is not null && problems.Count == 0)
                instrument.Choose(signal, attenuation, capture);
        }
        Func<Signal, Requirement>? wanted = document.OptionalObject("wanted") is { } demands ? Wanted(demands) : null;
        document.RefuseOthers();
        if (probe is not null && source is not null && RingsForever(probe, source))
        {
            string[] members = document.Has("source") ? ["source.resistance", "probe.capacitance", "probe.leadInductance", "probe.leadLength", "probe.damping"] : ["probe.capacitance", "probe.leadInductance", "probe.leadLength", "probe.damping"];
            document.Report(document.Has("source") ? "source" : "probe", "the lead of the probe on this source rings for more than a thousand cycles; give the source its real resistance, or the probe its damping" + document.PlacesOf(members));
        }
        input ??= instrument?.Input;
        if (problems.Count > 0 || signal is null || source is null || input is null || digitizer is null || settings is null || window is null)
            return null;
        return document.Build(() =>
        {
            UnterminatedChain begin = MeasurementChain.From(source);
            begin = probe is null ? begin : begin.Probe(probe);
            MeasurementChain chain = path.Aggregate(begin, (before, element) => before.Through(element)).Into(input);
            Requirement? requirement = wanted?.Invoke(signal);
            AppliedSignal applied = signal.Through(chain);
            if (commonMode is { } floats)
                (applied, requirement) = (applied.WithCommonMode(floats), requirement?.WithCommonMode(floats));
            SampledSignal setup = applied.SampledBy(digitizer);
            return new Bench(name, settings(instrument is null ? setup : instrument.Set(setup, attenuation)), window.Value, requirement is not null && source.Resistance.SiValue > 0 ? requirement.WithSourceResistance(source.Resistance) : requirement);
        }, "capture");
    }

    // A lossless resonator has no rise time, and nearly lossless ones take forever to answer; nothing on a bench is like that.
    private static bool RingsForever(Probe probe, SourceImpedance source) => probe.LeadInductance.SiValue > 0 && probe.InputCapacitance.SiValue > 0
        && Math.Sqrt(probe.LeadInductance.SiValue / probe.InputCapacitance.SiValue) > 1000 * (source.Resistance.SiValue + probe.Damping.SiValue);

    private static (Func<SampledSignal, SampledSignal>? Settings, Duration? Window) Capture(DocumentObject capture, Digitizer? digitizer, InstrumentDocument? instrument)
    {
        Duration? window = capture.OptionalQuantity("window", Duration.Parse), perDivision = capture.OptionalQuantity("timePerDivision", Duration.Parse);
        if (capture.Has("window") == capture.Has("timePerDivision"))
            capture.Report(capture.Has("window") ? "timePerDivision" : "window", "give either window or timePerDivision, and one of them only");
        int channels = capture.OptionalInteger("channelsInUse", 1, 64) ?? 1;
        PeakToPeakVoltage? range = capture.OptionalQuantity("range", PeakToPeakVoltage.Parse);
        Voltage? offset = capture.OptionalQuantity("maximumOffset", Voltage.Parse);
        if (offset is { } shift)
            capture.Build(() => Trial.WithMaximumOffset(shift), "maximumOffset");
        AcquisitionMode mode = capture.Choice("mode", CatalogueDocument.Modes, AcquisitionMode.Sample);
        int? combined = capture.OptionalInteger("combined", 2, 1_000_000);
        if (mode is AcquisitionMode.HighResolution or AcquisitionMode.Average or AcquisitionMode.Envelope && !capture.Has("combined"))
            capture.Integer("combined", 2, 1_000_000);
        Reconstruction? interpolation = capture.Has("interpolation") ? capture.Choice("interpolation", CatalogueDocument.Interpolations, Reconstruction.Sinc) : null;
        capture.Known("interpolation");
        instrument?.Refuse(capture, channels, mode);
        Duration? jitter = capture.OptionalQuantity("jitter", Duration.Parse);
        Frequency? records = capture.OptionalQuantity("recordRate", Frequency.Parse);
        Ratio? timebase = capture.OptionalQuantity("timebaseAccuracy", Ratio.Parse), gain = capture.OptionalQuantity("gainAccuracy", Ratio.Parse);
        Duration? pulse = null;
        Frequency? pulseRate = null;
        Duration pulseEdge = default;
        if (capture.OptionalObject("watchFor") is { } watch)
        {
            Duration width = watch.Quantity("width", Duration.Parse);
            pulse = width;
            pulseRate = watch.OptionalQuantity("rate", Frequency.Parse);
            pulseEdge = watch.OptionalQuantity("riseTime", Duration.Parse) ?? default;
            watch.RefuseOthers();
            watch.Build(() => Trial.WatchingFor(width, pulseRate, pulseEdge), null, null, ["width", "riseTime"]);
        }
        capture.RefuseOthers();
        if (window is null && perDivision is { } division && digitizer is not null)
            window = digitizer.Across(division);
        if (window is { } whole && digitizer is not null)
            capture.Build(() => digitizer.TimebaseFor(whole, channels), capture.Has("window") ? "window" : "timePerDivision");
        return (setup =>
        {
            SampledSignal made = Combine((interpolation is null ? setup : setup.WithInterpolation(interpolation)).WithChannelsInUse(channels).WithAccuracy(timebase ?? setup.TimebaseAccuracy, gain ?? setup.GainAccuracy), mode, combined ?? 2);
            made = range is { } fullScale && instrument is null ? made.WithFullScale(fullScale) : made;
            made = offset is { } volts ? made.WithMaximumOffset(volts) : made;
            made = jitter is { } seconds ? made.WithJitter(seconds) : made;
            made = records is { } rate ? made.WithRecordRate(rate) : made;
            return pulse is { } width ? made.WatchingFor(width, pulseRate, pulseEdge) : made;
        }, window);
    }

    private static SampledSignal Combine(SampledSignal setup, AcquisitionMode mode, int combined) => mode switch
    {
        AcquisitionMode.PeakDetect => setup.WithPeakDetect(),
        AcquisitionMode.HighResolution => setup.WithHighResolution(combined),
        AcquisitionMode.Average => setup.WithAveraging(combined),
        AcquisitionMode.Envelope => setup.WithEnvelope(combined),
        _ => setup,
    };

    private static Func<Signal, Requirement> Wanted(DocumentObject demands)
    {
        Ratio? amplitude = demands.OptionalQuantity("amplitudeWithin", Ratio.Parse), edge = demands.OptionalQuantity("edgeWithin", Ratio.Parse), power = demands.OptionalQuantity("powerShare", Ratio.Parse);
        int? harmonics = demands.OptionalInteger("harmonics", 1, 10_000), channels = demands.OptionalInteger("channels", 1, 1024);
        Duration? pulse = demands.OptionalQuantity("narrowestPulse", Duration.Parse), window = demands.OptionalQuantity("window", Duration.Parse), timing = demands.OptionalQuantity("timingWithin", Duration.Parse);
        Voltage? detail = demands.OptionalQuantity("smallestDetail", Voltage.Parse);
        demands.RefuseOthers();
        // Each demand is tried by itself, so that a refusal names its place.
        var trial = new Requirement(Signal.Sine(Frequency.FromHertz(1), PeakVoltage.FromVolts(1)));
        Try(demands, "amplitudeWithin", amplitude, trial.WithAmplitudeTolerance);
        Try(demands, "edgeWithin", edge, trial.WithEdgeTolerance);
        Try(demands, "powerShare", power, trial.WithPowerShare);
        Try(demands, "narrowestPulse", pulse, trial.WithNarrowestPulse);
        Try(demands, "window", window, trial.WithWindow);
        Try(demands, "timingWithin", timing, trial.WithTimingTolerance);
        Try(demands, "smallestDetail", detail, trial.WithSmallestDetail);
        return signal =>
        {
            var made = new Requirement(signal);
            made = amplitude is null ? made : made.WithAmplitudeTolerance(amplitude.Value);
            made = edge is null ? made : made.WithEdgeTolerance(edge.Value);
            made = power is null ? made : made.WithPowerShare(power.Value);
            made = harmonics is null ? made : made.WithHarmonics(harmonics.Value);
            made = channels is null ? made : made.WithChannels(channels.Value);
            made = pulse is null ? made : made.WithNarrowestPulse(pulse.Value);
            made = window is null ? made : made.WithWindow(window.Value);
            made = timing is null ? made : made.WithTimingTolerance(timing.Value);
            return detail is null ? made : made.WithSmallestDetail(detail.Value);
        };
    }

    private static void Try<T>(DocumentObject demands, string name, T? value, Func<T, Requirement> demand)
        where T : struct
    {
        if (value is { } given)
            demands.Build(() => demand(given), name, new Dictionary<string, string> { ["tolerance"] = name, ["share"] = name, ["width"] = name, ["detail"] = name });
    }
}
