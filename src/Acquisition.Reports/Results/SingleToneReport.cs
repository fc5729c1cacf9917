using System;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Records;

namespace Acquisition.Reports;

/// <summary>A <see cref="SingleToneTest"/> as a report: the levels of a spectrum of one tone, its harmonics, spur and noise.</summary>
public static class SingleToneReport
{
    /// <summary>The report of a test with one tone.</summary>
    /// <param name="test">The test.</param>
    /// <param name="title">The title of the report.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Report ToReport(this SingleToneTest test, string title = "Spectrum of one tone")
    {
        if (test is null) throw new ArgumentNullException(nameof(test));
        return new Report(title)
            .WithFindings(test.Findings)
            .WithValues(Levels(test))
            .WithTable(new ReportTable("harmonics", "Harmonics", "order", "frequency", "level", "rms", "note").WithRows(test.Harmonics.Select(x => new[]
            {
                ReportCell.Count(x.Order), ReportCell.Of(x.Frequency), ReportCell.OfAny(x.Level), ReportCell.OfAny(x.Rms), x.Collision ?? (x.IsInNoise ? "in the noise" : ""),
            })))
            .WithTable(SineFitReport.Parameters(test.Sine))
            .WithValues(Spectrum(test.Spectrum));
    }

    private static ReportValues Levels(SingleToneTest test) => new ReportValues("levels", "Levels")
        .With("fundamental", ReportCell.Of(test.Fundamental))
        .With("signal to noise", ReportCell.OfAny(test.SignalToNoise))
        .With("signal to noise and distortion", ReportCell.OfAny(test.Sinad))
        .With("total harmonic distortion", ReportCell.OfAny(test.TotalHarmonicDistortion), test.DistortionIsUpperBound ? "at most: harmonics lie in the noise" : null)
        .With("highest harmonic counted", ReportCell.Count(test.HighestHarmonic))
        .With("spurious-free dynamic range", ReportCell.OfAny(test.SpuriousFreeDynamicRange))
        .With("frequency of the largest spur", ReportCell.Of(test.SpurFrequency))
        .With("effective bits", ReportCell.OfAny(test.EffectiveBits), "as if the tone filled the range")
        .With("effective bits, uncorrected", ReportCell.OfAny(test.EffectiveBitsUncorrected), "at the amplitude there was")
        .With("noise", ReportCell.Of(test.Noise))
        .With("noise floor", ReportCell.Of(test.NoiseFloor));

    private static ReportValues Spectrum(Spectrum spectrum) => new ReportValues("spectrum", "Spectrum")
        .With("window", spectrum.Window.Name)
        .With("points", ReportCell.Of(spectrum.Points))
        .With("sample rate", ReportCell.Of(spectrum.Rate))
        .With("bin width", ReportCell.Of(spectrum.BinWidth))
        .With("noise bandwidth of a bin", ReportCell.Of(spectrum.NoiseBandwidth))
        .With("spectra averaged", ReportCell.Count(spectrum.Averages));
}
