using System;
using System.Collections.Generic;
using System.Globalization;

namespace Acquisition.Core.Records;

/// <summary>When a sine fit is refused, and what qualifies one that is not (handbook 9.1, 9.2, 9.9).</summary>
internal static class SineChecks
{
    /// <summary>A line that noise alone shows as large more often than this is none.</summary>
    private const double Chance = 1e-3;

    private const string Standard = "IEEE 1057/1241; handbook 9.1, 9.2";

    internal static Finding? Samples(SampleStore x, int least, LongCall? call, out double low, out double high)
    {
        low = high = 0;
        if (x.Length < least)
            return new Finding("sine-fit-too-few-samples", Severity.Failure, $"the record has {x.Length} samples; the fit needs at least {least}", "capture a longer record", Standard);
        x.Extremes(call, out low, out high);
        if (x.FirstUnusable(low, high) is { } i)
        {
            return new Finding("record-not-finite", Severity.Failure,
                $"sample {i} is {x[i].ToString(CultureInfo.InvariantCulture)}: a fit needs finite samples (below 1E150)", "cut the record before it, or repair the reading");
        }
        if (high - low <= 1e-14 * Math.Max(Math.Abs(low), Math.Abs(high)))
            return new Finding("sine-fit-no-signal", Severity.Failure, $"all samples are {FewDigits.Volts(high)}: there is no sine in the record", "check the trigger, the coupling and the probe");
        return null;
    }

    internal static Finding Inseparable(double? cycles, int count, double rate)
    {
        string at = cycles is { } c ? $"{FewDigits.Hertz(c * rate)} sampled at {FewDigits.Of(rate, QuantityKind.SampleRate)}" : "the record";
        return new Finding("sine-fit-singular", Severity.Failure,
            $"{at} shows too few different phases in {count} samples (a multiple of half the sample rate, or a tiny part of a period): amplitude, phase and offset cannot be told apart",
            "change frequency or sample rate", Standard);
    }

    internal static Finding NotConverged(SineSolution fit, double? start, int count, double rate) =>
        new("sine-fit-not-converged", Severity.Failure,
            $"the four-parameter fit does not settle ({fit.Iterations} iterations, at {FewDigits.Hertz(fit.Model.Cycles * rate)})",
            start is null
                ? "is there a sine in the record? if its frequency is known, fit three parameters"
                : $"start within half a bin, {FewDigits.Hertz(rate / count / 2)}, of the frequency; if it is known, fit three parameters",
            Standard);

    internal static Finding Clipped(ClippedSamples clipped, int count)
    {
        string limits = double.IsInfinity(clipped.Low) ? $"at {FewDigits.Volts(clipped.High)}"
            : double.IsInfinity(clipped.High) ? $"at {FewDigits.Volts(clipped.Low)}"
            : $"at {FewDigits.Volts(clipped.Low)} and {FewDigits.Volts(clipped.High)}";
        return new Finding("samples-clipped", Severity.Warning,
            $"{clipped.Count} of {count} samples are clipped {limits}; they are left out of the fit, which then says nothing of SINAD and ENOB",
            "choose a larger vertical range: -0.5 to -1 dB of full scale suits a sine test", "handbook 9.9");
    }

    /// <summary>A free frequency that the record cannot carry: less than one period of it, or of its beat with half the sample rate; or a line that noise alone would show.</summary>
    internal static Finding? Unresolved(SineSolution fit, int count, double rate, bool searched)
    {
        double cycles = Math.Abs(fit.Model.Cycles - Math.Floor(fit.Model.Cycles + 0.5));
        if (cycles * count < 1)
        {
            return new Finding("sine-fit-under-one-period", Severity.Failure,
                $"the record holds {FewDigits.Number(cycles * count, 3)} periods of {FewDigits.Hertz(cycles * rate, 3)}: with less than one, frequency, amplitude and offset are not separable",
                $"capture at least {FewDigits.Seconds(5 / (cycles * rate), 3)} (five periods), or give the frequency and fit three parameters", Standard);
        }
        if ((0.5 - cycles) * count < 1)
        {
            return new Finding("sine-fit-at-nyquist", Severity.Failure,
                $"the frequency is {FewDigits.Hertz((0.5 - cycles) * rate, 3)} from half the sample rate: less than one period of the beat is in the record, so amplitude and phase are not separable",
                "sample faster, or capture a longer record", Standard);
        }
        double power = fit.Model.Amplitude * fit.Model.Amplitude * fit.Count / 4, noise = fit.ResidualDeviation * fit.ResidualDeviation;
        // The periodogram of white noise is exponential; a search looks at half as many bins as there are samples, a given start at about two.
        double byChance = (searched ? count / 2.0 : 2) * Math.Exp(-power / noise);
        if (noise > 0 && byChance > Chance)
        {
            return new Finding("sine-fit-not-significant", Severity.Failure,
                $"the largest line, {FewDigits.Volts(fit.Model.Amplitude, 3)} at {FewDigits.Hertz(fit.Model.Cycles * rate)}, does not stand out of {FewDigits.Volts(fit.ResidualDeviation, 3)} rms: noise alone shows one as large with a chance of {FewDigits.Number(Math.Min(1, byChance), 2)}",
                "capture a longer record or average; if the frequency is known, fit three parameters");
        }
        return null;
    }

    internal static void Qualify(List<Finding> findings, SamplePasses x, SineSolution fit, double? stated, double rate, bool free, Record? record, double lowest, double highest)
    {
        double cycles = Math.Abs(fit.Model.Cycles - Math.Floor(fit.Model.Cycles + 0.5));
        double periods = cycles * x.Length, beats = (0.5 - cycles) * x.Length;
        if (periods < 5)
        {
            findings.Add(new Finding("few-periods", Severity.Warning,
                $"the record holds {FewDigits.Number(periods, 3)} periods: harmonics, drift and offset pull the fit", $"capture at least {FewDigits.Seconds(5 / (cycles * rate), 3)} (five periods)", "common practice; handbook 9.1"));
        }
        else if (beats < 5)
        {
            findings.Add(new Finding("near-nyquist", Severity.Warning,
                $"the frequency is {FewDigits.Hertz((0.5 - cycles) * rate, 3)} from half the sample rate: {FewDigits.Number(beats, 3)} periods of the beat in the record", "sample faster, or capture a longer record", "handbook 9.1"));
        }
        if (stated > rate / 2)
        {
            findings.Add(new Finding("undersampled", Severity.Note,
                $"{FewDigits.Hertz(stated.Value)} is above half of {FewDigits.Of(rate, QuantityKind.SampleRate)}: its alias at {FewDigits.Hertz(cycles * rate)} is fitted, and what else folds there counts too", null, "handbook 5.2"));
        }
        double found = fit.Model.Amplitude / Math.Sqrt(2);
        if (!free && fit.NoiseAndDistortion > found)
        {
            findings.Add(new Finding("sine-fit-not-dominant", Severity.Warning,
                $"what the fit leaves, {FewDigits.Volts(fit.NoiseAndDistortion, 3)} rms, is larger than the sine it found, {FewDigits.Volts(found, 3)} rms: unless a weak line is meant, the frequency given is not that of the sine in the record",
                $"fit four parameters; a frequency that is known must be so to a small part of {FewDigits.Hertz(rate / x.Length, 3)}, one period in the record", Standard));
        }
        if (record?.FullScale() is { } fullScale && record.ResolutionSi is { } step && record.Samples is ShortCodes && fullScale >= 65535.5 * step && highest - lowest <= fullScale / 8)
        {
            findings.Add(new Finding("full-scale-assumed", Severity.Warning,
                $"the samples span {FewDigits.Volts(highest - lowest, 3)} of the {FewDigits.Volts(fullScale, 3)} that 16 bits hold, and effective bits are counted of those 16",
                "if the converter has fewer bits, state its ends with WithLimits", "handbook 9.4"));
        }
        if (FewPhases(cycles, x.Length) is { } phases)
        {
            findings.Add(new Finding("few-phases", Severity.Note,
                $"the samples meet only {phases} phases of the sine: harmonics fold onto each other and quantisation errors repeat", "choose a frequency J fs/M with J and M without common factor", "handbook 9.6"));
        }
        double correlation = Correlation(x, fit);
        if (Math.Abs(correlation) > 0.3 && Math.Abs(correlation) > 5 / Math.Sqrt(Math.Min(x.Length, Probe)) && fit.NoiseAndDistortion > 1e-12 * fit.Model.Amplitude)
        {
            findings.Add(new Finding("residual-not-white", Severity.Note,
                $"neighbouring residuals are correlated ({FewDigits.Number(correlation, 2)}): harmonics or filtered noise. The standard uncertainties hold for white noise", "look at the residual's spectrum; repeat the record and take the scatter", "handbook 9.8"));
        }
    }

    /// <summary>How many phases the samples meet, where it is at most 16.</summary>
    private static int? FewPhases(double cycles, int count)
    {
        for (int q = 3; q <= 16; q++)
        {
            double p = cycles * q;
            if (Math.Abs(p - Math.Round(p)) * count < 0.5)
                return q;
        }
        return null;
    }

    private const int Probe = 8192;

    /// <summary>Correlation of neighbouring residuals, over at most the first 8192 samples.</summary>
    private static double Correlation(SamplePasses x, SineSolution fit)
    {
        int n = Math.Min(x.Length, Probe);
        var fitted = new double[SamplePasses.BlockLength];
        double squares = 0, products = 0, last = 0;
        for (int at = 0; at < n;)
        {
            SampleBlock block = x.Next(at, n);
            fit.Values(block, fitted);
            for (; at < block.To; at++)
            {
                double r = block[at] - fitted[at - block.From];
                squares += r * r;
                products += r * last;
                last = r;
            }
        }
        return squares > 0 ? products / squares : 0;
    }
}
