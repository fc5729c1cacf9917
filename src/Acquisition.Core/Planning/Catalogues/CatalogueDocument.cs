using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Explanations.Json;

namespace Acquisition.Core.Planning;

/// <summary>The form of a catalogue in JSON; docs/catalogue.schema.json says the same to editors and other programs.</summary>
internal static class CatalogueDocument
{
    internal static readonly IReadOnlyDictionary<string, AcquisitionMode> Modes = new Dictionary<string, AcquisitionMode>
    {
        ["sample"] = AcquisitionMode.Sample,
        ["peak detect"] = AcquisitionMode.PeakDetect,
        ["high resolution"] = AcquisitionMode.HighResolution,
        ["average"] = AcquisitionMode.Average,
        ["envelope"] = AcquisitionMode.Envelope,
    };

    internal static readonly IReadOnlyDictionary<string, Reconstruction> Interpolations = new Dictionary<string, Reconstruction>
    {
        ["linear"] = Reconstruction.Linear,
        ["sinc"] = Reconstruction.Sinc,
    };

    internal static Catalogue? Read(JsonValue root, List<DocumentProblem> problems)
    {
        var document = new DocumentObject(root, "", problems);
        document.OptionalText("name");
        document.OptionalText("priceUnit");
        var instruments = document.Objects("instruments").Select(Instrument).Where(entry => entry is not null).ToList();
        var probes = document.Objects("probes").Select(Probe).Where(entry => entry is not null).ToList();
        var cables = document.Objects("cables").Select(Cable).Where(entry => entry is not null).ToList();
        document.RefuseOthers();
        return document.Build(() => new Catalogue(instruments!, probes!, cables!));
    }

    private static CatalogueCable? Cable(DocumentObject document)
    {
        string name = document.Text("name");
        Resistance impedance = document.Quantity("impedance", Resistance.Parse);
        double velocity = document.Number("velocityFactor", 0.01, 1);
        bool lossy = document.Has("loss");
        (CableLoss Loss, Length? Per)? loss = document.OptionalObject("loss") is { } stated ? PathDocument.Loss(stated, perLength: true) : null;
        document.RefuseOthers();
        return lossy && loss is null ? null : document.Build(() => loss is { Per: { } length } known ? new CatalogueCable(name, impedance, velocity, known.Loss, length) : new CatalogueCable(name, impedance, velocity));
    }

    internal static CatalogueInstrument? Instrument(DocumentObject document)
    {
        string name = document.Text("name");
        Stated<Frequency>? bandwidth = Stated(document, "bandwidth", Frequency.Parse, required: true);
        ResponseShape shape = Shape(document, "response");
        BitDepth bits = document.Quantity("bits", BitDepth.Parse);
        IReadOnlyList<ChannelMode> modes = Each(document, "channels", true, entry => new ChannelMode(
            entry.OptionalInteger("inUse", 1, 1024) ?? 1, entry.Quantity("rate", SampleRate.Parse), entry.Quantity("memory", PointCount.Parse)));
        IReadOnlyList<InputRange> ranges = Each(document, "ranges", true, entry => new InputRange(
            entry.Quantity("fullScale", PeakToPeakVoltage.Parse), Stated(entry, "noise", RmsVoltage.Parse), entry.OptionalQuantity("maximumOffset", Voltage.Parse)));
        IReadOnlyList<InputTermination> terminations = Each(document, "inputs", true, entry => new InputTermination(
            entry.Quantity("resistance", Resistance.Parse), entry.Quantity("capacitance", Capacitance.Parse), entry.OptionalQuantity("maximumVoltage", Voltage.Parse),
            entry.OptionalQuantity("maximumToEarth", Voltage.Parse)));
        CatalogueInstrument? instrument = bandwidth is null ? null : document.Build(() => new CatalogueInstrument(name, bandwidth, shape, bits, modes, ranges, terminations));
        instrument = WithOptions(document, instrument);
        document.RefuseOthers();
        return instrument;
    }

    private static CatalogueInstrument? WithOptions(DocumentObject document, CatalogueInstrument? instrument)
    {
        IReadOnlyList<Frequency> limits = document.Quantities("bandwidthLimits", Frequency.Parse);
        IReadOnlyList<EffectiveBitsPoint> effective = Each(document, "effectiveBits", false, entry => new EffectiveBitsPoint(entry.Quantity("at", Frequency.Parse), entry.Quantity("bits", BitDepth.Parse)));
        IReadOnlyList<AcquisitionMode> modes = document.Choices("modes", Modes);
        IReadOnlyList<Reconstruction> interpolations = document.Choices("interpolations", Interpolations);
        ScreenDivisions? divisions = document.OptionalObject("divisions") is { } screen ? Divisions(screen) : null;
        int segments = document.OptionalInteger("segments", 1, 10_000_000) ?? 1;
        Frequency? records = document.OptionalQuantity("recordRate", Frequency.Parse);
        Stated<Ratio>? timebase = Stated(document, "timebaseAccuracy", Ratio.Parse), gain = Stated(document, "gainAccuracy", Ratio.Parse);
        Stated<Duration>? jitter = Stated(document, "jitter", Duration.Parse);
        bool isolated = document.Truth("isolatedInputs", otherwise: false);
        string? rating = document.OptionalText("rating");
        double? price = document.OptionalNumber("price", 0, 1e12);
        return instrument is null ? null : document.Build(() =>
        {
            CatalogueInstrument made = instrument.WithBandwidthLimits(limits).WithEffectiveBits(effective).WithModes(modes).WithInterpolations(interpolations)
                .WithSegments(segments).WithRating(rating, isolated);
            made = divisions is null ? made : made.WithDivisions(divisions);
            made = records is null ? made : made.WithRecordRate(records.Value);
            made = timebase is null ? made : made.WithTimebaseAccuracy(timebase);
            made = gain is null ? made : made.WithGainAccuracy(gain);
            made = jitter is null ? made : made.WithJitter(jitter);
            return price is null ? made : made.WithPrice(price.Value);
        });
    }

    internal static CatalogueProbe? Probe(DocumentObject document)
    {
        string name = document.Text("name");
        double attenuation = document.Number("attenuation", 1e-3, 1e6);
        Stated<Frequency>? bandwidth = Stated(document, "bandwidth", Frequency.Parse, required: true);
        ResponseShape shape = Shape(document, "response");
        Resistance resistance = document.Quantity("resistance", Resistance.Parse);
        Capacitance capacitance = document.Quantity("capacitance", Capacitance.Parse);
        Resistance into = document.Quantity("into", Resistance.Parse);
        Inductance? lead = document.OptionalQuantity("leadInductance", Inductance.Parse);
        Voltage? maximum = document.OptionalQuantity("maximumVoltage", Voltage.Parse);
        Voltage? toEarth = document.OptionalQuantity("maximumToEarth", Voltage.Parse);
        Stated<RmsVoltage>? noise = Stated(document, "noise", RmsVoltage.Parse);
        Stated<Ratio>? gain = Stated(document, "gainAccuracy", Ratio.Parse);
        bool differential = document.Truth("differential", otherwise: false);
        DecibelRatio? rejection = document.OptionalQuantity("commonModeRejection", DecibelRatio.Parse);
        string? rating = document.OptionalText("rating");
        double? price = document.OptionalNumber("price", 0, 1e12);
        document.RefuseOthers();
        return bandwidth is null ? null : document.Build(() =>
        {
            CatalogueProbe made = new CatalogueProbe(name, attenuation, bandwidth, shape, resistance, capacitance, into).WithRating(rating, differential);
            made = lead is null ? made : made.WithLeadInductance(lead.Value);
            made = maximum is null ? made : made.WithMaximumVoltage(maximum.Value);
            made = toEarth is null ? made : made.WithMaximumToEarth(toEarth.Value);
            made = rejection is null ? made : made.WithCommonModeRejection(rejection.Value);
            made = noise is null ? made : made.WithNoise(noise);
            made = gain is null ? made : made.WithGainAccuracy(gain);
            return price is null ? made : made.WithPrice(price.Value);
        });
    }

    /// <summary>A shape by its name; Gaussian where it is wrong, which is reported.</summary>
    internal static ResponseShape Shape(DocumentObject document, string name)
    {
        string text = document.Text(name);
        if (ResponseShape.TryParse(text, out ResponseShape? shape))
            return shape!;
        if (text.Length > 0)
            document.Report(name, $"found \"{text}\", expected single pole, Gaussian, Butterworth 1 to 10, or Bessel 1 to 10");
        return ResponseShape.Gaussian;
    }

    /// <summary>A text is a claimed value; an object tells claimed, typical and guaranteed ones apart.</summary>
    internal static Stated<T>? Stated<T>(DocumentObject document, string name, Func<string, T> parse, bool required = false)
        where T : struct, IQuantity
    {
        if (!document.IsObject(name))
        {
            T? plain = required ? document.Quantity(name, parse) : document.OptionalQuantity(name, parse);
            return plain is { } value && document.Has(name) ? Planning.Stated.Claimed(value) : null;
        }
        DocumentObject stated = document.OptionalObject(name)!;
        T? claimed = stated.OptionalQuantity("claimed", parse), typical = stated.OptionalQuantity("typical", parse), guaranteed = stated.OptionalQuantity("guaranteed", parse);
        stated.RefuseOthers();
        return stated.Build(() => new Stated<T>(claimed, typical, guaranteed));
    }

    internal static ScreenDivisions Divisions(DocumentObject screen)
    {
        int across = screen.OptionalInteger("across", 1, 100) ?? 10, up = screen.OptionalInteger("up", 1, 100) ?? 8;
        screen.RefuseOthers();
        return new ScreenDivisions(across, up);
    }

    private static List<T> Each<T>(DocumentObject document, string name, bool atLeastOne, Func<DocumentObject, T> make)
        where T : class
    {
        var read = new List<T>();
        foreach (DocumentObject entry in document.Objects(name, atLeastOne))
        {
            if (entry.Build(() => make(entry)) is { } made)
                read.Add(made);
            entry.RefuseOthers();
        }
        return read;
    }
}
