using System.Collections.Generic;
using Acquisition.Core;

#region settings
/// <summary>What the service reads from its configuration; the binder converts each text by the type converter of the quantity.</summary>
internal sealed class BenchSettings
{
    public Frequency Bandwidth { get; set; }

    public SampleRate Rate { get; set; }

    public PointCount Memory { get; set; }

    public NoiseDensity Noise { get; set; }

    public Duration? Window { get; set; }

    public List<DecibelRatio> Attenuations { get; set; } = [];

    public Dictionary<string, Quantity> Limits { get; set; } = [];
}
#endregion

/// <summary>What a client asks with: quantities as text in JSON.</summary>
internal sealed record Question(Frequency Clock, Duration RiseTime, PeakToPeakVoltage Amplitude, Duration? Window);

/// <summary>What it is answered: computed values rounded for reading, set ones as they are.</summary>
internal sealed record Answer(string ChainBandwidth, string ShownRiseTime, SampleRate Rate, IReadOnlyList<string> Findings);
