using System;
using System.Collections.Generic;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>A sine in one channel against the same sine in another: a point of a frequency response (handbook 9.10).</summary>
public sealed class ChannelComparison
{
    internal ChannelComparison(FittedSine first, FittedSine second, double hertz)
    {
        double a1 = first.Fit.Model.Amplitude, a2 = second.Fit.Model.Amplitude;
        List<Finding> findings = [.. first.Findings];
        findings.AddNew(second.Findings);
        Findings = findings;
        Frequency = Frequency.FromSi(hertz, "frequency");
        AmplitudeRatio = Ratio.FromSi(a2 / a1, "ratio");
        AmplitudeRatioUncertainty = Ratio.FromSi(a2 / a1 * Math.Sqrt(Square(first.Fit.AmplitudeUncertainty / a1) + Square(second.Fit.AmplitudeUncertainty / a2)), "uncertainty");
        double phase = Math.IEEERemainder(second.Fit.PhaseAtCenter - first.Fit.PhaseAtCenter, 2 * Math.PI);
        if (phase <= -Math.PI)
            phase += 2 * Math.PI;
        Phase = Angle.FromSi(phase, "phase");
        double deviation = Math.Sqrt(Square(first.Fit.PhaseAtCenterUncertainty) + Square(second.Fit.PhaseAtCenterUncertainty));
        PhaseUncertainty = Angle.FromSi(deviation, "uncertainty");
        Delay = Duration.FromSi(-phase / (2 * Math.PI * hertz), "delay");
        DelayUncertainty = Duration.FromSi(deviation / (2 * Math.PI * hertz), "uncertainty");
    }

    /// <summary>Those of both fits, for a sweep of many comparisons.</summary>
    internal IReadOnlyList<Finding> Findings { get; }

    /// <summary>The common frequency.</summary>
    public Frequency Frequency { get; }

    /// <summary>Amplitude of the second channel over that of the first.</summary>
    public Ratio AmplitudeRatio { get; }

    /// <summary>Its standard uncertainty.</summary>
    public Ratio AmplitudeRatioUncertainty { get; }

    /// <summary>The gain from the first channel to the second, in decibels.</summary>
    public DecibelRatio Gain => DecibelRatio.FromAmplitudeRatio(AmplitudeRatio);

    /// <summary>Its standard uncertainty.</summary>
    public DecibelRatio GainUncertainty => DecibelRatio.FromDecibels(DecibelRatio.DecibelsPerNeper * AmplitudeRatioUncertainty.Fraction / AmplitudeRatio.Fraction);

    /// <summary>Phase of the second channel less that of the first, above -180 and up to 180 degrees; lagging is negative.</summary>
    public Angle Phase { get; }

    /// <summary>Its standard uncertainty.</summary>
    public Angle PhaseUncertainty { get; }

    /// <summary>How late the second channel is: -phase / (360 f), known but for whole periods (<see cref="DelayPeriod"/>).</summary>
    public Duration Delay { get; }

    /// <summary>Its standard uncertainty. The skew of the channels themselves comes on top: exchange them and average.</summary>
    public Duration DelayUncertainty { get; }

    /// <summary>What may be added to the delay any number of times: one period.</summary>
    public Duration DelayPeriod => Frequency.Period;

    private static double Square(double x) => x * x;

    /// <summary>Gain, phase and delay in one line.</summary>
    public override string ToString() => $"{Gain.InWords()}, {Phase.InWords()}, delay {Delay.InWords()} at {Frequency.InWords(7)}";
}
