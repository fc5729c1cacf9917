using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core;

/// <summary>
/// What is applied to an instrument: a voltage over time, known exactly, with its spectrum. Periodic signals have a fundamental and harmonics;
/// a single pulse has neither, but a spectrum at every frequency (<see cref="SpectrumAt"/>).
/// </summary>
/// <remarks>Immutable and thread-safe. Rise times are 10 % to 90 % everywhere. Rms and mean are over a whole period.</remarks>
public abstract partial class Signal
{
    private protected Signal(string name) => Name = name;

    /// <summary>What the signal is, in a few words: <c>square, 24 MHz</c>.</summary>
    public string Name { get; }

    /// <summary>The fundamental frequency; null for a signal that does not repeat (a single pulse, random data, incommensurate tones).</summary>
    public abstract Frequency? Fundamental { get; }

    /// <summary>The period; null for a signal that does not repeat.</summary>
    public virtual Duration? Period => Fundamental?.Period;

    /// <summary>What must be shown for the signal to be seen at all, Hz: the frequency of a sine, of the higher of two tones, of the carrier of a burst, else the fundamental; 0 for what has no such frequency.</summary>
    internal virtual double Tone => Fundamental?.SiValue ?? 0;

    /// <summary>Which harmonic is the fastest alternation that the signal holds: the fundamental; of a pattern of bits, which repeats much more slowly than it changes, that of the bits 0101...</summary>
    internal virtual int Alternation => 1;

    /// <summary>The mean; 0 V for a single pulse, whose mean over all time is.</summary>
    public Voltage Dc => Voltage.FromSi(Mean, "dc");

    /// <summary>The value at a time.</summary>
    /// <exception cref="NotSupportedException">The signal is random: it has a spectrum but no value at a time.</exception>
    public Voltage ValueAt(Duration time) => Voltage.FromSi(Value(time.SiValue), nameof(time));

    /// <summary>The root mean square of the whole signal, mean included: √(dc² + ac²) (handbook 1.5); 0 V for a single pulse, over all time.</summary>
    public RmsVoltage Rms => RmsVoltage.FromSi(Math.Sqrt(Mean * Mean + AcPower), "rms");

    /// <summary>The root mean square about the mean: what an AC-coupled meter reads.</summary>
    public RmsVoltage AcRms => RmsVoltage.FromSi(Math.Sqrt(AcPower), "rms");

    /// <summary>The highest value.</summary>
    public Voltage Maximum => Voltage.FromSi(Highest, "maximum");

    /// <summary>The lowest value.</summary>
    public Voltage Minimum => Voltage.FromSi(Lowest, "minimum");

    /// <summary>From the lowest to the highest value.</summary>
    public PeakToPeakVoltage PeakToPeak => PeakToPeakVoltage.FromSi(Highest - Lowest, "swing");

    /// <summary>The largest magnitude, counted from 0 V: what ratings and the crest factor are about.</summary>
    public PeakVoltage Peak => PeakVoltage.FromSi(Math.Max(Math.Abs(Highest), Math.Abs(Lowest)), "peak");

    /// <summary>Peak over rms (handbook 1.5).</summary>
    /// <exception cref="InvalidOperationException">The rms is 0 V (a single pulse, over all time).</exception>
    public Ratio CrestFactor => Rms.SiValue > 0 ? Ratio.FromSi(Peak.SiValue / Rms.SiValue, "crest factor") : throw NoRms();

    /// <summary>Rms over the mean of the magnitude (handbook 1.5).</summary>
    /// <exception cref="InvalidOperationException">The rms is 0 V (a single pulse, over all time).</exception>
    public Ratio FormFactor => Rms.SiValue > 0 ? Ratio.FromSi(Rms.SiValue / MeanMagnitude, "form factor") : throw NoRms();

    /// <summary>By how much a meter that averages the magnitude and is calibrated for sines reads wrong on this signal: +11.07 % on a square wave (handbook 1.5).</summary>
    /// <exception cref="InvalidOperationException">The rms is 0 V (a single pulse, over all time).</exception>
    public Ratio AverageRespondingMeterError =>
        Rms.SiValue > 0 ? Ratio.FromSi(MeanMagnitude * Math.PI / (2 * Math.Sqrt(2)) / Rms.SiValue - 1, "error") : throw NoRms();

    /// <summary>The steepest transition between two levels; null where the signal has none (a sine).</summary>
    public virtual Edge? SteepestEdge => null;

    /// <summary>The 10 % to 90 % duration of the steepest transition: of an edge where the signal has one, else of the steepest swing (a sine: 0.2952 of its period, handbook 2.4).</summary>
    public abstract Duration RiseTime { get; }

    internal abstract double Mean { get; }

    /// <summary>The mean square about the mean, V².</summary>
    internal abstract double AcPower { get; }

    internal abstract double Highest { get; }

    internal abstract double Lowest { get; }

    /// <summary>The mean of the magnitude, V.</summary>
    internal abstract double MeanMagnitude { get; }

    /// <summary>The value at a time, V, s.</summary>
    internal abstract double Value(double seconds);

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private InvalidOperationException NoRms() => new($"{Name} does not repeat: over all time its rms is 0 V");
}
