using System;
using System.Linq;
using Acquisition.Core.Literals;

using FsCheck.Xunit;

namespace Acquisition.Core.Tests.Digitizing;

/// <summary>What must hold for any numbers.</summary>
public sealed class DigitizingLawTests
{
    private static double Between(double low, double high, int seed) => low * Math.Pow(high / low, Math.Abs((long)seed % 100_003) / 100_003.0);

    [Property]
    public bool Folding_LandsWithinHalfTheRate(int a, int b)
    {
        Frequency f = Frequency.FromHertz(Between(1, 1e11, a));
        SampleRate fs = SampleRate.FromSamplesPerSecond(Between(1e3, 1e10, b));
        return Aliasing.Fold(f, fs) <= fs.NyquistFrequency && Aliasing.Fold(f, fs).Hertz >= 0;
    }

    [Property]
    public bool Folding_Twice_ChangesNothing(int a, int b)
    {
        Frequency f = Frequency.FromHertz(Between(1, 1e11, a));
        SampleRate fs = SampleRate.FromSamplesPerSecond(Between(1e3, 1e10, b));
        Frequency once = Aliasing.Fold(f, fs);
        return Aliasing.Fold(once, fs) == once;
    }

    [Property]
    public bool MoreMemory_NeverLowersTheRate(int a, int b, int c, byte steps)
    {
        RateSteps offered = new[] { RateSteps.Continuous, RateSteps.OneTwoFive, RateSteps.OneTwoAndAHalfFive, RateSteps.WholeDivisors, RateSteps.Halving }[steps % 5];
        Duration window = Duration.FromSeconds(Between(1e-7, 10, a));
        long points = (long)Between(100, 1e8, b), more = points + (long)Between(1, 1e8, c);
        SampleRate Rate(long memory) => new Digitizer(2.GSaPerS(), PointCount.FromPoints(memory), 8.bit()).WithRateSteps(offered).TimebaseFor(window).Rate;
        return Rate(more) >= Rate(points);
    }

    [Property]
    public bool ARecord_NeverOutgrowsTheMemory(int a, int b, byte steps)
    {
        RateSteps offered = new[] { RateSteps.Continuous, RateSteps.OneTwoFive, RateSteps.WholeDivisors, RateSteps.Halving }[steps % 4];
        PointCount memory = PointCount.FromPoints((long)Between(100, 1e9, b));
        Timebase timebase = new Digitizer(2.GSaPerS(), memory, 8.bit()).WithRateSteps(offered).TimebaseFor(Duration.FromSeconds(Between(1e-7, 100, a)));
        return timebase.RecordLength <= memory && timebase.Rate <= 2.GSaPerS();
    }

    [Property]
    public bool EveryBandPassRange_FoldsItsBandWithoutOverlap(int a, int b, int c)
    {
        double low = Between(1e6, 1e9, a), high = low + Between(low / 20, low, b);
        var ranges = Aliasing.BandPassRates(Frequency.FromHertz(low), Frequency.FromHertz(high));
        BandPassSampling range = ranges[Math.Abs(c % ranges.Count)];
        double rate = range.HighestRate is { } top ? 0.5 * (range.LowestRate.SamplesPerSecond + top.SamplesPerSecond) : 1.1 * range.LowestRate.SamplesPerSecond;
        SampleRate fs = SampleRate.FromSamplesPerSecond(rate);
        int zoneLow = Aliasing.NyquistZone(Frequency.FromHertz(low * (1 + 1e-9)), fs), zoneHigh = Aliasing.NyquistZone(Frequency.FromHertz(high * (1 - 1e-9)), fs);
        return zoneLow == zoneHigh && zoneLow == range.Zone;
    }

    [Property]
    public bool MoreTime_NeverLowersTheChanceOfCapture(int a, int b)
    {
        Duration time = Duration.FromSeconds(Between(1e-3, 1e5, a)), longer = time * (1 + Between(1e-3, 10, b));
        Ratio Chance(Duration t) => DeadTime.ChanceOfCapture(10.Hz(), 1.kHz(), 100.ns(), t);
        return Chance(longer) >= Chance(time) && Chance(longer).Fraction <= 1;
    }

    [Property]
    public bool TheTimeForAConfidence_GivesThatConfidence(int a)
    {
        Ratio confidence = Ratio.FromFraction(Between(1e-6, 0.999999, a));
        Duration time = DeadTime.TimeFor(confidence, 10.Hz(), 1.kHz(), 100.ns());
        return Math.Abs(DeadTime.ChanceOfCapture(10.Hz(), 1.kHz(), 100.ns(), time).Fraction / confidence.Fraction - 1) < 1e-9;
    }

    [Property]
    public bool EffectiveBits_AndSinad_AreInverse(int a)
    {
        BitDepth bits = BitDepth.FromBits(Between(0.1, 24, a));
        return Math.Abs(EffectiveResolution.FromSinad(EffectiveResolution.Sinad(bits)).Bits - bits.Bits) < 1e-12;
    }

    [Property]
    public bool LessJitter_NeverHurts(int a, int b)
    {
        Duration jitter = Duration.FromSeconds(Between(1e-15, 1e-10, a)), less = jitter * Between(0.01, 1, b);
        return SamplingJitter.ExactSignalToNoise(1.GHz(), less) >= SamplingJitter.ExactSignalToNoise(1.GHz(), jitter);
    }

    [Property]
    public bool EveryKernel_GoesThroughItsSamplesAndKeepsAConstant(double seed, byte which)
    {
        Reconstruction kernel = Kernels[which % Kernels.Length];
        double level = double.IsFinite(seed) ? Math.Sin(seed % 1000) * 3 : 1;
        double[] constant = Enumerable.Repeat(level, 50).ToArray(), ramp = Enumerable.Range(0, 50).Select(i => Math.Cos(i * 0.3 + level)).ToArray();
        double[] upsampled = kernel.Upsample(ramp, 7);
        bool through = Enumerable.Range(0, 50).All(i => Math.Abs(upsampled[7 * i] - ramp[i]) < 1e-12);
        return through && kernel.Upsample(constant, 7).All(x => Math.Abs(x - level) < 1e-12 * Math.Max(1, Math.Abs(level)));
    }

    [Property]
    public bool ASineBetweenSamples_StaysWithinTheStatedError(int a, int b, byte which)
    {
        Reconstruction kernel = Kernels[which % Kernels.Length];
        double r = Between(0.01, 0.45, a), phase = b * 0.37;
        double[] samples = Enumerable.Range(0, 200).Select(i => Math.Cos(2 * Math.PI * r * i + phase)).ToArray();
        double bound = kernel.WorstError(Frequency.FromHertz(r), SampleRate.FromSamplesPerSecond(1)).Fraction * 1.001 + 1e-12;
        double[] places = Enumerable.Range(0, 300).Select(i => 40 + i * 0.397).ToArray();
        double[] values = kernel.Values(samples, places);
        return places.Select((x, i) => Math.Abs(values[i] - Math.Cos(2 * Math.PI * r * x + phase))).All(error => error <= bound);
    }

    [Property]
    public bool Upsampling_AndSinglePlaces_AgreeToTheLastDigits(int a, byte which, byte factorSeed)
    {
        Reconstruction kernel = Kernels[which % Kernels.Length];
        int factor = 1 + factorSeed % 23;
        var random = new Random(a);
        double[] samples = Enumerable.Range(0, 60).Select(_ => random.NextDouble() - 0.5).ToArray();
        double[] all = kernel.Upsample(samples, factor);
        double[] single = kernel.Values(samples, Enumerable.Range(0, all.Length).Select(i => Math.Min(59, (double)i / factor)).ToArray());
        return all.Zip(single, (x, y) => Math.Abs(x - y)).All(d => d < 1e-12) || kernel == Reconstruction.Hold;
    }

    [Property]
    public bool ACubic_IsReproducedByLagrange_UpToTheEnds(int a)
    {
        var random = new Random(a);
        double c0 = random.NextDouble(), c1 = random.NextDouble(), c2 = random.NextDouble(), c3 = random.NextDouble() / 100;
        double Cubic(double x) => c0 + x * (c1 + x * (c2 + x * c3));
        double[] samples = Enumerable.Range(0, 12).Select(i => Cubic(i)).ToArray();
        double[] values = Reconstruction.CubicLagrange.Upsample(samples, 8);
        return Enumerable.Range(0, values.Length).All(i => Math.Abs(values[i] - Cubic(i / 8.0)) < 1e-10 * (1 + Math.Abs(values[i])));
    }

    private static readonly Reconstruction[] Kernels =
    [
        Reconstruction.Hold, Reconstruction.Linear, Reconstruction.CubicLagrange, Reconstruction.CubicConvolution, Reconstruction.Sinc, Reconstruction.WindowedSinc(8, 5),
    ];
}
