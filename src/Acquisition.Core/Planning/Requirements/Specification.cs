using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Acquisition.Core.Planning;

namespace Acquisition.Core;

/// <summary>What the equipment needs so that a <see cref="Requirement"/> is met: each value with its reason, its source and the rule of thumb beside it. Null where no demand leads to it.</summary>
/// <remarks>Made by <see cref="Requirement.Specify()"/>. Immutable. Probe and input together must reach the values.</remarks>
public sealed class Specification
{
    internal Specification(Requirement requirement, ResponseShape shape)
    {
        Requirement = requirement;
        Shape = shape;
    }

    /// <summary>What was demanded.</summary>
    public Requirement Requirement { get; }

    /// <summary>The shape of the chain that was assumed.</summary>
    public ResponseShape Shape { get; }

    /// <summary>The least half-power bandwidth of the whole chain.</summary>
    public Explained<Frequency>? Bandwidth { get; internal set; }

    /// <summary>The longest rise time of the whole chain, 10 % to 90 %.</summary>
    public Explained<Duration>? RiseTime { get; internal set; }

    /// <summary>The lowest sample rate.</summary>
    public Explained<SampleRate>? SampleRate { get; internal set; }

    /// <summary>The fewest points of one record.</summary>
    public Explained<PointCount>? RecordLength { get; internal set; }

    /// <summary>The fewest effective bits, with the signal filling the range.</summary>
    public Explained<BitDepth>? EffectiveBits { get; internal set; }

    /// <summary>The largest noise re the source, rms.</summary>
    public Explained<RmsVoltage>? Noise { get; internal set; }

    /// <summary>The largest jitter of the sample clock, rms.</summary>
    public Explained<Duration>? Jitter { get; internal set; }

    /// <summary>The least accuracy of the time base, relative.</summary>
    public Explained<Ratio>? TimebaseAccuracy { get; internal set; }

    /// <summary>The largest capacitance at the probe tip.</summary>
    public Explained<Capacitance>? ProbeCapacitance { get; internal set; }

    /// <summary>The least resistance at the probe tip.</summary>
    public Explained<Resistance>? ProbeResistance { get; internal set; }

    /// <summary>The largest voltage of either measured point against earth, DC plus peak AC, that a differential probe or an isolated input must stand; null where the signals do not float.</summary>
    public Explained<Voltage>? VoltageToEarth { get; internal set; }

    /// <summary>How many channels are needed at once.</summary>
    public int Channels => Requirement.Channels;

    /// <summary>What to know about the demands themselves.</summary>
    public IReadOnlyList<Finding> Findings { get; internal set; } = [];

    /// <summary>Each needed value beside the one that a set-up has, where both are known; and each tolerance of the demands beside the error that the set-up makes.</summary>
    /// <param name="outlook">The outlook of the set-up.</param>
    /// <exception cref="ArgumentNullException"><paramref name="outlook"/> is null.</exception>
    public IReadOnlyList<NeedCheck> Check(Outlook outlook)
    {
        _ = outlook ?? throw new ArgumentNullException(nameof(outlook));
        var checks = new List<NeedCheck>();
        Probe? probe = outlook.Setup.Applied.Chain?.Elements.OfType<Probe>().FirstOrDefault();
        AtLeast(checks, "bandwidth", Bandwidth, outlook.ChainBandwidth?.Value);
        AtMost(checks, "rise time", RiseTime, outlook.ChainRiseTime?.Value);
        AtLeast(checks, "sample rate", SampleRate, outlook.StoredRate);
        AtLeast(checks, "record length", RecordLength, outlook.RecordLength);
        AtLeast(checks, "effective bits", EffectiveBits, outlook.EffectiveBits?.Value);
        AtMost(checks, "noise", Noise, outlook.Noise);
        AtMost(checks, "clock jitter", Jitter, outlook.Setup.Jitter);
        AtMost(checks, "time base", TimebaseAccuracy, outlook.Setup.TimebaseAccuracy, "within");
        AtMost(checks, "probe capacitance", ProbeCapacitance, probe?.InputCapacitance);
        AtLeast(checks, "probe resistance", ProbeResistance, probe?.InputResistance);
        AddDemands(checks, outlook);
        return checks;
    }

    /// <summary>What was demanded itself, in the measure of a shortlist: a chain of enough bandwidth can still ring, load or peak.</summary>
    private void AddDemands(List<NeedCheck> checks, Outlook outlook)
    {
        double top = Specifier.HighestHarmonic(Requirement, outlook.Signal) * outlook.Signal.Tone;
        if (Requirement.LargestAmplitudeError is { } most && top > 0)
            Within("error at " + FewDigits.Of(top, Frequency.Kind), most, Math.Abs(1 - outlook.Response.AmplitudeRatio(Frequency.FromSi(top, "frequency")).Fraction));
        if (Requirement.EdgeTolerance is { } tolerance && outlook.EdgeError is { } error)
            Within("edge error", tolerance.SiValue, Math.Max(0, error.SiValue));

        void Within(string need, double atMost, double here) => checks.Add(new NeedCheck(need, "at most " + FewDigits.Of(atMost, Ratio.Kind), FewDigits.Of(here, Ratio.Kind), (atMost / here) - 1) { IsDemand = true });
    }

    /// <summary>The specification as plain text: only what was demanded.</summary>
    public override string ToString() => Write([]);

    /// <summary>The specification as plain text, with what a set-up has beside each value: met or not met.</summary>
    /// <param name="outlook">The outlook of the set-up.</param>
    /// <exception cref="ArgumentNullException"><paramref name="outlook"/> is null.</exception>
    public string ToString(Outlook outlook) => Write(Check(outlook));

    private string Write(IReadOnlyList<NeedCheck> checks)
    {
        var text = new PlainText();
        text.Line("Needed from probe and input together (" + Shape + ")");
        Row("bandwidth", "at least", Bandwidth);
        Row("rise time", "at most", RiseTime);
        Row("sample rate", "at least", SampleRate);
        Row("record length", "at least", RecordLength);
        Row("effective bits", "at least", EffectiveBits);
        Row("noise", "at most", Noise);
        Row("clock jitter", "at most", Jitter);
        Row("time base", "within", TimebaseAccuracy);
        Row("probe capacitance", "at most", ProbeCapacitance);
        Row("probe resistance", "at least", ProbeResistance);
        foreach (NeedCheck demand in checks.Where(check => check.IsDemand))
            text.Row(demand.Need, demand.Needed + "   " + demand.Verdict);
        Row("voltage to earth", "at least", VoltageToEarth);
        text.Row("channels at once", Channels.ToString(CultureInfo.InvariantCulture));
        text.Findings(Findings);
        return text.ToString();

        void Row<T>(string label, string bound, Explained<T>? value)
            where T : struct, IQuantity => text.Value(label, bound, value, checks.FirstOrDefault(check => check.Need == label)?.Verdict);
    }

    private static void AtLeast<T>(List<NeedCheck> checks, string need, Explained<T>? needed, T? present)
        where T : struct, IQuantity
    {
        if (needed is not null && present is { } have)
            checks.Add(new NeedCheck(need, "at least " + needed.Value.InWords(), have.InWords(), (have.ToQuantity().SiValue / needed.Value.ToQuantity().SiValue) - 1));
    }

    private static void AtMost<T>(List<NeedCheck> checks, string need, Explained<T>? needed, T? present, string bound = "at most")
        where T : struct, IQuantity
    {
        if (needed is not null && present is { } have)
            checks.Add(new NeedCheck(need, bound + " " + needed.Value.InWords(), have.InWords(), (needed.Value.ToQuantity().SiValue / have.ToQuantity().SiValue) - 1));
    }
}
