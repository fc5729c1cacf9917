using System;
using System.Collections.Generic;

namespace Acquisition.Core.Planning;

/// <summary>The lines of a periodic signal behind the chain, and what the sampler makes of them (handbook 4.1, 5.2).</summary>
internal sealed class DisplayedLines
{
    private const int MostListed = 200;
    private const int CountedOneByOne = 2000;

    internal DisplayedLines(Signal signal, Response response, SampleRate rate, Func<double, double> boxcar)
    {
        var listed = new List<HarmonicOutlook>();
        Listed = listed;
        if (signal.Fundamental is not { } fundamental)
            return;
        double f0 = fundamental.SiValue, nyquist = rate.SiValue / 2, kept = Math.Sqrt(0.5) * response.ReferenceMagnitude * (1 - 1e-9);
        double reach = response.TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth) ? 20 * bandwidth.SiValue : 1000 * f0;
        double carrier = 0, floor = 0;
        bool unbroken = true;
        for (int number = 1; number <= CountedOneByOne && number * f0 <= Math.Max(reach, f0); number++)
        {
            SpectralLine line = signal.Harmonic(number);
            double gain = response.Magnitude(number * f0), shown = line.PeakVolts * gain * boxcar(number * f0);
            SlopePower += SquareOfSlope(number * f0, shown);
            if (number == 1)
            {
                carrier = shown;
                floor = 1e-6 * line.PeakVolts;
            }
            // A line that the signal does not have can be neither kept nor lost.
            if (line.PeakVolts <= floor)
                continue;
            unbroken &= gain >= kept && number * f0 < nyquist;
            if (unbroken)
                HighestKept = number;
            if (number * f0 >= nyquist)
                AliasPower += shown * shown / 2;
            if (listed.Count < MostListed && (number == 1 || shown > 1e-4 * carrier))
                listed.Add(new HarmonicOutlook(line, gain * boxcar(number * f0), nyquist, rate));
        }
        CarrierVolts = carrier;
        if ((CountedOneByOne + 1) * f0 < reach)
            AddBlocks(signal, response, f0, nyquist, reach, boxcar);
    }

    internal IReadOnlyList<HarmonicOutlook> Listed { get; }

    /// <summary>The highest harmonic up to which all are shown at half power or better and below half the sample rate; 0 where not even the fundamental is.</summary>
    internal int HighestKept { get; private set; }

    /// <summary>The fundamental on the display, V peak.</summary>
    internal double CarrierVolts { get; }

    /// <summary>The mean square of the slope of the displayed waveform, (V/s)².</summary>
    internal double SlopePower { get; private set; }

    /// <summary>The mean square of what folds, V².</summary>
    internal double AliasPower { get; private set; }

    private static double SquareOfSlope(double hertz, double peak) => 2 * Math.PI * Math.PI * hertz * hertz * peak * peak;

    // A slow signal behind a fast chain has millions of lines: from here on they are counted in blocks, a few of each standing for all.
    private void AddBlocks(Signal signal, Response response, double f0, double nyquist, double reach, Func<double, double> boxcar)
    {
        const int samples = 17;
        double number = CountedOneByOne + 1;
        while (number * f0 < reach && number < int.MaxValue / 2.0)
        {
            double next = Math.Floor(number * 1.1) + 1, power = 0, slope = 0;
            for (int i = 0; i < samples; i++)
            {
                // Odd and even harmonics alike, in steps that share no factor with a duty factor's nulls.
                int at = (int)(number + Math.Floor((next - number) * ((i * 0.6180339887498949) % 1)));
                double shown = signal.Harmonic(at).PeakVolts * response.Magnitude(at * f0) * boxcar(at * f0);
                slope += SquareOfSlope(at * f0, shown);
                power += at * f0 < nyquist ? 0 : shown * shown / 2;
            }
            SlopePower += slope / samples * (next - number);
            AliasPower += power / samples * (next - number);
            number = next;
        }
    }
}
