using System;
using System.Linq;
using Acquisition.Core.Literals;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records.Sine;

/// <summary>Fits, spectra and statistics read codes a block at a time; a record of the same values as doubles, which is read in place, is the other way to the same figures.</summary>
public sealed class CodesStayCodesTests
{
    /// <summary>A sine in codes of 8, 12 or 16 bits, with some noise, and the same values as numbers. The length is no multiple of a block; a third of them are clipped.</summary>
    private static (Record Codes, Record Numbers) Records(int seed, int length)
    {
        var random = new Random(seed);
        int bits = 8 + 4 * random.Next(3), full = 1 << (bits - 1);
        double amplitude = random.Next(3) == 0 ? 1.2 * full : (0.3 + 0.6 * random.NextDouble()) * full, cycles = 0.01 + 0.45 * random.NextDouble(), phase = 6 * random.NextDouble();
        int[] codes = Enumerable.Range(0, length)
            .Select(n => (int)Math.Round(amplitude * Math.Cos(2 * Math.PI * cycles * n + phase) + 0.02 * full * (random.NextDouble() + random.NextDouble() - 1)))
            .Select(code => Math.Max(-full, Math.Min(full - 1, code))).ToArray();
        Voltage step = Voltage.FromVolts(Math.Pow(10, -5 * random.NextDouble())), atZero = Voltage.FromVolts(20 * random.NextDouble() - 10);
        bool signed = random.Next(2) == 0;
        Record record = bits == 8
            ? Record.FromCodes(codes.Select(code => (byte)(signed ? code : code + full)).ToArray(), 1.MSaPerS(), step, atZero, signed)
            : Record.FromCodes(codes.Select(code => (short)(signed ? code : code + full)).ToArray(), 1.MSaPerS(), step, atZero, signed);
        if (bits == 12)
        {
            int lowest = signed ? -full : 0;
            record = record.WithLimits(Voltage.FromVolts(atZero.Volts + lowest * step.Volts), Voltage.FromVolts(atZero.Volts + (lowest + 2 * full - 1) * step.Volts));
        }
        // A slice begins in the middle of the codes.
        record = record.Slice(random.Next(5), length - 5);
        Record numbers = Record.FromVolts(record.ToSiValues(), 1.MSaPerS()).WithResolution(step)
            .WithLimits(Voltage.FromVolts(record.LowLimit!.Value.SiValue), Voltage.FromVolts(record.HighLimit!.Value.SiValue));
        return (record, numbers);
    }

    private static double[] Figures(SineFit fit)
    {
        FittedSine sine = Assert.IsType<FittedSine>(fit.Sine);
        return
        [
            sine.Amplitude.Volts, sine.Frequency.Hertz, sine.Phase.Radians, sine.Offset.Volts, sine.NoiseAndDistortion.Volts, sine.AmplitudeUncertainty.Volts,
            sine.FrequencyUncertainty.Hertz, sine.PhaseUncertainty.Radians, sine.Points.Points, fit.Iterations, sine.EffectiveBits?.Bits ?? -1,
        ];
    }

    [Property(MaxTest = 60)]
    public void FourParameters_OfCodes_AreThoseOfTheirValues(int seed)
    {
        (Record codes, Record numbers) = Records(seed, 7001);
        Assert.Equal(Figures(SineFit.FourParameter(numbers)), Figures(SineFit.FourParameter(codes)));
        Assert.Equal(SineFit.FourParameter(numbers).Findings.Select(f => f.ToString()), SineFit.FourParameter(codes).Findings.Select(f => f.ToString()));
    }

    [Property(MaxTest = 60)]
    public void ThreeParameters_OfCodes_AreThoseOfTheirValues(int seed)
    {
        (Record codes, Record numbers) = Records(seed, 5000);
        Frequency frequency = SineFit.FourParameter(numbers).Sine!.Frequency;
        Assert.Equal(Figures(SineFit.ThreeParameter(numbers, frequency)), Figures(SineFit.ThreeParameter(codes, frequency)));
    }

    /// <summary>Without limits the plateau of a clipped sine is found by the fit.</summary>
    [Property(MaxTest = 30)]
    public void ClippingThatNoLimitStates_IsFoundInCodesAsInNumbers(int seed)
    {
        (Record codes, Record numbers) = Records(seed, 6000);
        SineFit ofCodes = SineFit.FourParameter(codes.WithoutLimits()), ofNumbers = SineFit.FourParameter(numbers.WithoutLimits());
        Assert.Equal(Figures(ofNumbers), Figures(ofCodes));
        Assert.Equal(ofNumbers.Findings.Select(f => f.ToString()), ofCodes.Findings.Select(f => f.ToString()));
    }

    [Property(MaxTest = 30)]
    public void SpectraOfCodes_AreThoseOfTheirValues(int seed)
    {
        (Record codes, Record numbers) = Records(seed, 4101 + (seed & 1));
        foreach (SpectralWindow window in new[] { SpectralWindow.Rectangular, SpectralWindow.Hft144D })
        {
            Assert.Equal(Spectrum.Of(numbers, window).PeakAmplitudesInVolts(), Spectrum.Of(codes, window).PeakAmplitudesInVolts());
            Assert.Equal(
                Spectrum.Averaged(numbers, window, 512.pts(), 50.Percent()).DensitiesInVoltsPerRootHertz(), Spectrum.Averaged(codes, window, 512.pts(), 50.Percent()).DensitiesInVoltsPerRootHertz());
        }
        Assert.Equal(SingleToneTest.Of(numbers).ToString(), SingleToneTest.Of(codes).ToString());
    }

    [Property(MaxTest = 30)]
    public void StatisticsOfCodes_AreThoseOfTheirValues(int seed)
    {
        (Record codes, Record numbers) = Records(seed, 9001);
        RecordStatistics counted = RecordStatistics.Of(codes).Value, summed = RecordStatistics.Of(numbers).Value;
        double tolerance = 1e-12 * Math.Max(1, counted.Rms.SiValue);
        Assert.Equal(summed.Mean.SiValue, counted.Mean.SiValue, tolerance);
        Assert.Equal(summed.AcRms.SiValue, counted.AcRms.SiValue, tolerance);
        Assert.Equal(summed.Minimum, counted.Minimum);
        Assert.Equal(summed.Maximum, counted.Maximum);
    }

    /// <summary>A segment is a spectrum of its own: their mean is the mean of the spectra of slices.</summary>
    [Fact]
    public void AveragedSpectrum_IsTheMeanOfTheSpectraOfItsSegments()
    {
        Record record = Records(7, 4101).Codes;
        double[] mean = Enumerable.Range(0, 7).Select(i => Spectrum.Of(record.Slice(i * 500, 1000), SpectralWindow.Hann).MeanSquaresInSquareVolts())
            .Aggregate((sum, next) => sum.Zip(next, (a, b) => a + b).ToArray()).Select(sum => sum / 7).ToArray();
        Spectrum averaged = Spectrum.Averaged(record, SpectralWindow.Hann, 1000.pts(), 50.Percent());
        Assert.Equal(7, averaged.Averages);
        Assert.All(mean.Zip(averaged.MeanSquaresInSquareVolts(), (a, b) => a - b), difference => Assert.Equal(0, difference, 1e-12 * mean.Max()));
    }

    [Fact]
    public void TimesOfATrace_AreReadAsFromTheWholeTrace()
    {
        Record record = Records(11, 3005).Codes;
        foreach (Reconstruction kernel in new[] { Reconstruction.Hold, Reconstruction.Linear, Reconstruction.CubicLagrange, Reconstruction.CubicConvolution, Reconstruction.Sinc })
        {
            double[] trace = record.Reconstruct(kernel, 8).Trace.ToSiValues();
            foreach (int[] places in new[] { new[] { 0, 1, 5 }, new[] { 8000, 8003, 8013 }, new[] { 23_985, 23_992 }, new[] { 23_984, 4, 12_001 } })
            {
                double[] read = record.ReadingsAt(kernel, places.Select(place => Duration.FromSeconds(record.Start.Seconds + place / 8e6)).ToArray());
                Assert.All(read.Zip(places, (value, place) => value - trace[place]), difference => Assert.Equal(0, difference, 1e-9));
            }
        }
        Assert.Empty(record.ReadingsAt(Reconstruction.Linear));
    }

#if NET
    /// <summary>Four million codes take 32 MB as doubles. A fit needs no more than the blocks it reads, and the spectrum of the first 4096 samples that it starts from.</summary>
    [Theory]
    [InlineData(0.9)]
    [InlineData(1.1)]
    public void FitOfManyCodes_NeedsLessThanHalfAMegabyteBesideThem(double amplitude)
    {
        byte[] codes = new byte[4_000_001];
        for (int n = 0; n < codes.Length; n++)
            codes[n] = (byte)Math.Clamp(Math.Round(128 + 127 * amplitude * Math.Cos(0.1234567 * n)), 0, 255);
        Record record = Record.FromCodes(codes, 1.GSaPerS(), 1.mV(), -128.mV(), copy: false);
        long before = GC.GetAllocatedBytesForCurrentThread();
        FittedSine four = SineFit.FourParameter(record).Sine!, three = SineFit.ThreeParameter(record, four.Frequency).Sine!;
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 1, 500_000);
        // A twentieth of a step.
        Assert.Equal(0.127 * amplitude, four.Amplitude.Volts, 5e-5);
        Assert.Equal(four.Amplitude.Volts, three.Amplitude.Volts, 1e-9);
    }

    /// <summary>Eight bytes a sample for the transform, four for the window and four for the result.</summary>
    [Fact]
    public void SpectrumOfManyCodes_NeedsSixteenBytesASample()
    {
        const int points = 1 << 20;
        byte[] codes = new byte[points];
        for (int n = 0; n < points; n++)
            codes[n] = (byte)(128 + 100 * Math.Cos(2 * Math.PI * 1001 * n / points));
        Record record = Record.FromCodes(codes, 1.GSaPerS(), 1.mV(), -128.mV(), copy: false);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Spectrum spectrum = Spectrum.Of(record, SpectralWindow.Hann);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 16L * points, 17L * points);
        Assert.Equal(0.1, spectrum.PeakAmplitudesInVolts()[1001], 1e-4);
    }
#endif
}
