using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Acquisition.Core.Planning;

namespace Acquisition.Core;

/// <summary>What the equipment needs so that a <see cref="Requirement"/> is met: each value with its reason, its source and the rule of thumb beside it. Null where no demand leads to it.</summary>
/// <remarks>Made by <see cref="Requirement.Specify()"/>. Immutable. Probe and input together must reach the values.</remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public sealed partial class Specification
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

    /// <summary>The fewest effective bits, with the signal filling the range; <see cref="Check"/> counts those that are left where it does not.</summary>
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
}
