using System;

namespace Acquisition.Core.Planning;

/// <summary>One line of the signal on its way through chain and sampler.</summary>
public sealed class HarmonicOutlook
{
    internal HarmonicOutlook(SpectralLine line, double amplitudeRatio, double nyquist, SampleRate rate)
    {
        Number = line.Number;
        Frequency = line.Frequency;
        Applied = line.Peak;
        AmplitudeRatio = Ratio.FromSi(amplitudeRatio, "gain");
        Displayed = PeakVoltage.FromSi(line.PeakVolts * amplitudeRatio, "gain");
        IsAliased = line.Frequency.SiValue >= nyquist;
        ShownAt = IsAliased ? Aliasing.Fold(line.Frequency, rate) : line.Frequency;
    }

    /// <summary>The number of the harmonic; 1 is the fundamental, -1 a tone that is no harmonic.</summary>
    public int Number { get; }

    /// <summary>Its frequency.</summary>
    public Frequency Frequency { get; }

    /// <summary>Its peak amplitude at the source.</summary>
    public PeakVoltage Applied { get; }

    /// <summary>What the chain leaves of it.</summary>
    public Ratio AmplitudeRatio { get; }

    /// <summary>Its peak amplitude on the display, re the source.</summary>
    public PeakVoltage Displayed { get; }

    /// <summary>Whether it lies at or above half the sample rate, so that it shows at a frequency it does not have.</summary>
    public bool IsAliased { get; }

    /// <summary>The frequency at which it shows.</summary>
    public Frequency ShownAt { get; }

    /// <summary>The line in words.</summary>
    public override string ToString() => IsAliased
        ? $"{Named}, folds to {ShownAt.InWords()} with {Displayed.InWords()}"
        : $"{Named}: {Displayed.InWords()}";

    /// <summary>Number and frequency, or the frequency alone.</summary>
    internal string Named => (Number > 0 ? FormattableString.Invariant($"harmonic {Number}, ") : "") + Frequency.InWords();
}
