using System;
using System.Collections.Generic;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Planning;

/// <summary>The lines of a periodic signal behind the chain, and what the sampler makes of them (handbook 4.1, 5.2).</summary>
internal sealed class DisplayedLines
{
    private const int MostListed = 200;
    private const int CountedOneByOne = 2000;

    private readonly List<(double Hertz, double Volts)> _drawn = [];

    internal DisplayedLines(Signal signal, Response response, SampleRate rate, Func<double, double> boxcar)
    {
        var listed = new List<HarmonicOutlook>();
        Listed = listed.AsReadOnly();
        if (signal.Fundamental is not { } fundamental)
        {
            foreach (SpectralLine line in signal.Lines(signal.Tone))
                Tone(line, response, rate, boxcar, listed);
            return;
        }
        double f0 = fundamental.SiValue, nyquist = rate.SiValue / 2, kept = Math.Sqrt(0.5) * response.ReferenceMagnitude * (1 - 1e-9);
        double reach = response.TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth) ? 20 * bandwidth.SiValue : 1000 * f0;
        double carrier = 0, floor = 0;
        bool unbroken = true;
        for (int number = 1; number <= CountedOneByOne && number * f0 <= Math.Max(reach, f0); number++)
        {
            SpectralLine line = signal.Harmonic(number);
            double gain = response.Magnitude(number * f0), shown = line.PeakVolts * gain * boxcar(number * f0);
            SlopePower += SquareOfSlope(number * f0, shown);
            Power += shown * shown / 2;
            if (number * f0 < nyquist)
                _drawn.Add((number * f0, shown));
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
        if (signal is BurstSignal)
        {
            // What is looked at is the burst, not the pauses: its carrier stands for all of its lines.
            Power = SlopePower = AliasPower = 0;
            _drawn.Clear();
            double hertz = signal.Tone;
            Add(hertz, signal.PeakToPeak.SiValue / 2 * response.Magnitude(hertz) * boxcar(hertz), nyquist);
            return;
        }
        if ((CountedOneByOne + 1) * f0 >= reach)
            return;
        AddBlocks(signal, response, f0, nyquist, reach, boxcar);
        if (unbroken)
            HighestKept = HighestBelow(Math.Min(bandwidth.SiValue, nyquist * (1 - 1e-12)) / f0, signal, floor);
    }

    internal IReadOnlyList<HarmonicOutlook> Listed { get; }

    /// <summary>The highest harmonic up to which all are shown at half power or better and below half the sample rate; 0 where not even the fundamental is.</summary>
    internal int HighestKept { get; private set; }

    /// <summary>The mean square of the displayed waveform about its mean, V².</summary>
    internal double Power { get; private set; }

    /// <summary>The mean square of the slope of the displayed waveform, (V/s)².</summary>
    internal double SlopePower { get; private set; }

    /// <summary>The mean square of what folds, V².</summary>
    internal double AliasPower { get; private set; }

    /// <summary>By how much the trace may be off between the samples, V: each line below half the rate at its worst.</summary>
    internal double DrawnWrong(ErrorOfDrawing error)
    {
        double volts = 0;
        foreach ((double hertz, double shown) in _drawn)
            volts += shown * error.At(hertz);
        return volts;
    }

    private void Tone(SpectralLine line, Response response, SampleRate rate, Func<double, double> boxcar, List<HarmonicOutlook> listed)
    {
        double hertz = line.Frequency.SiValue, gain = response.Magnitude(hertz) * boxcar(hertz);
        Add(hertz, line.PeakVolts * gain, rate.SiValue / 2);
        listed.Add(new HarmonicOutlook(line, gain, rate.SiValue / 2, rate));
    }

    private void Add(double hertz, double shown, double nyquist)
    {
        SlopePower += SquareOfSlope(hertz, shown);
        Power += shown * shown / 2;
        AliasPower += hertz < nyquist ? 0 : shown * shown / 2;
        if (hertz < nyquist)
            _drawn.Add((hertz, shown));
    }

    private static double SquareOfSlope(double hertz, double peak) => 2 * Math.PI * Math.PI * hertz * hertz * peak * peak;

    // The pass band ends at the bandwidth: below it the last line that the signal has is the highest that is kept.
    private static int HighestBelow(double number, Signal signal, double floor)
    {
        int highest = (int)Math.Min(number * (1 + 1e-12), int.MaxValue - 1);
        for (int lower = highest; lower > highest - CountedOneByOne; lower--)
        {
            if (Math.Abs(signal.Harmonic(lower).PeakVolts) > floor / lower)
                return lower;
        }
        return highest;
    }

    private void AddBlocks(Signal signal, Response response, double f0, double nyquist, double reach, Func<double, double> boxcar)
    {
        foreach (HarmonicBlock block in HarmonicBlock.From(CountedOneByOne + 1, reach / f0))
        {
            double power = 0, folded = 0, slope = 0;
            foreach (int at in block.Representatives())
            {
                double shown = signal.Harmonic(at).PeakVolts * response.Magnitude(at * f0) * boxcar(at * f0);
                slope += SquareOfSlope(at * f0, shown);
                power += shown * shown / 2;
                folded += at * f0 < nyquist ? 0 : shown * shown / 2;
                if (at * f0 < nyquist)
                    _drawn.Add((at * f0, shown * block.Weight));
            }
            SlopePower += slope * block.Weight;
            Power += power * block.Weight;
            AliasPower += folded * block.Weight;
        }
    }
}
