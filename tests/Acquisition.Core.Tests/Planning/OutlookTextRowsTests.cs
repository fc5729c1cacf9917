using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>An outlook in words, line by line up to its findings: what is there is told, with its unit and its rule, and nothing else.</summary>
public sealed class OutlookTextRowsTests
{
    private static readonly Digitizer Sampler = new Digitizer(100.MSaPerS(), 1.kpts(), 8.bit()).WithName("sampler");

    private static string[] Lines(Outlook outlook) => outlook.ToString().Split('\n').Select(line => line.TrimEnd()).TakeWhile(line => line != "Findings").ToArray();

    // By hand. Pole: gain 1/√1.01 at a tenth of its frequency, rise ln 9/(2π f) = 34.97 ns. 1 kpts over 20 µs: 50 MSa/s. Straight lines between 50 points: 1 - cos(π/50) = 0.1973 %.
    // 2.56 V / 256 = 10 mV, /√12 = 2.887 mV; jitter 2π 1 MHz x 0.995 V x 20 ps / √2 = 88.42 µV; with 10 mV in all 10.41 mV, of 2.56 V/√12 ld(71.0) = 6.15 bit; ld(2/2.56) = -0.356.
    // A pulse of 5 ns: 1 - exp(-5/15.92) = 26.96 %; 5 ns of 20 ns; 1 kHz x 20 µs = 2 %; ln 0.01 / ln(1 - 0.005) = 918.7; 4.605/(10 Hz x 0.005) = 92.1 s (handbook 2.2, 5.11, 6.3, 6.7).
    [Fact]
    public void AnOutlookOfASine_IsToldRowByRow()
    {
        Outlook outlook = Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.SinglePole(10.MHz())).SampledBy(Sampler).WithInterpolation(Reconstruction.Linear)
            .WithFullScale(2.56.Vpp()).WithNoise(10.mVrms()).WithJitter(20.ps()).WatchingFor(5.ns(), 10.Hz()).WithRecordRate(1.kHz()).Over(20.us());
        Assert.Equal(
        [
            "Signal   sine, 1 MHz",
            "Chain    single pole, 10 MHz",
            "Sampler  sampler, 100 MSa/s, 1 kpts, 8 bit",
            "",
            "Chain",
            "  bandwidth             10 MHz",
            "                          half power of the whole chain (handbook 3.1)",
            "                          rule of thumb 0.35 / rise time: 10.01 MHz (+0.1 %)",
            "  rise time             34.97 ns",
            "                          10 % to 90 % of the step response (handbook 2.6)",
            "                          rule of thumb 0.35 / bandwidth: 35 ns (+0.1 %)",
            "Display",
            "  amplitude             1.99 Vpp",
            "                          gain of the chain at 1 MHz (handbook 4.6)",
            "  amplitude error       -0.4963 %",
            "Sampling",
            "  sample rate           50 MSa/s",
            "                          memory / window (handbook 5.4)",
            "                          rule of thumb 5 x bandwidth of the chain: 50 MSa/s (0 %)",
            "  window                20 µs",
            "  record length         1 kpts",
            "  Nyquist frequency     25 MHz",
            "  Nyquist margin        25 x",
            "  points per period     50",
            "  interpolation error   up to 0.1973 % of the amplitude (straight lines)",
            "  folded content        0 % of the rms of the waveform",
            "Vertical",
            "  range                 2.56 Vpp",
            "  one code              10 mV",
            "  noise                 10 mVrms",
            "  noise of jitter       88.42 µVrms",
            "  effective bits        6.15 bit",
            "                          quantisation, noise, jitter, of this signal, against a sine that fills the range (handbook 6.3, 6.8)",
            "  bits of the signal    5.794 bit: it fills 78.13 % of the range",
            "  smallest detail       20.82 mV",
            "Pulse of 5 ns",
            "  height shown          26.96 %",
            "  chance of a sample    25 %",
            "  time observed         2 %",
            "  pulses for 99 %       919",
            "  time for 99 %         92.1 s, where they come at random",
            "Weakest link",
            "  single pole, 10 MHz   takes 0.4963 % of the amplitude",
        ],
        Lines(outlook));
    }

    // By hand. Gaussian steps add as root-sum-square (handbook 2.5): √(20² + 6.792²) = 21.12 ns, 5.61 % more; 50 MSa/s x 21.12 ns = 1.056; lines 1, 3 ... below 25 MHz are kept, 23 is the last.
    // Lines 2/(π n) exp(-(2π n f s)²/2) 2^(-(n f/50 MHz)²/2) with s = 20 ns/2.5631, summed apart from this library: 2.632 % of the rms from 25 MHz on, 11.02 mV, 8.874 mV and 7.11 mV the first.
    // Edge timing: √(2.887² + 10²) mV over 0.8 V/21.12 ns = 274.8 ps.
    [Fact]
    public void AnOutlookOfASquare_TellsItsEdgesAndWhatFolds()
    {
        Outlook outlook = Signal.Square(1.MHz(), 1.Vpp(), 20.ns(), EdgeShape.Gaussian).Through(Response.Gaussian(50.MHz())).SampledBy(Sampler).WithFullScale(2.56.Vpp()).WithNoise(10.mVrms()).Over(20.us());
        string[] lines = Lines(outlook);
        foreach (string line in new[]
        {
            "  edge                  21.12 ns",
            "                          rule of thumb √(edge² + chain²): 21.12 ns (0 %)",
            "  edge error            +5.61 %",
            "  harmonics kept        23",
            "  points per edge       1.056",
            "  folded content        2.632 % of the rms of the waveform",
            "                          harmonic 25, 25 MHz, folds to 25 MHz with 11.02 mVpk",
            "                          harmonic 27, 27 MHz, folds to 23 MHz with 8.874 mVpk",
            "                          harmonic 29, 29 MHz, folds to 21 MHz with 7.11 mVpk",
            "  edge timing           274.8 ps (one standard deviation)",
            "  sampling              puts 1.056 intervals on the edge",
        })
        {
            Assert.Contains(line, lines);
        }
        Assert.DoesNotContain(lines, line => line.Contains("harmonic 31,", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, line => line.StartsWith("  one edge alone", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, line => line.StartsWith("Pulse", StringComparison.Ordinal));
    }

    // The converter looks at 100 MSa/s: a crest of 1 MHz lies at most half an interval away, 1 - cos(π/100) = 0.04934 % (handbook 5.10).
    [Fact]
    public void PeakDetection_TellsTheBandAndTheCrest_AndNoErrorOfDrawing()
    {
        string[] lines = Lines(Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.SinglePole(10.MHz())).SampledBy(Sampler).WithFullScale(2.56.Vpp()).WithPeakDetect().Over(20.us()));
        Assert.Contains("  between the samples   the band of lowest and highest; nothing is drawn through it, and what is above half the rate widens it", lines);
        Assert.Contains("  crest kept too low    by up to 0.04934 % of the amplitude; the converter looks at 100 MSa/s", lines);
        foreach (string absent in new[] { "interpolation error", "folded content", "effective bits", "bits of the signal", "smallest detail", "noise of jitter" })
            Assert.DoesNotContain(lines, line => line.StartsWith("  " + absent, StringComparison.Ordinal));
    }

    // What fills more than the range fills it whole.
    [Fact]
    public void ASignalBeyondItsRange_FillsAllOfIt() => Assert.Contains("  bits of the signal    8 bit: it fills 100 % of the range",
        Lines(Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.Cascade()).SampledBy(Sampler).WithFullScale(1.28.Vpp()).Over(5.us())));

    // Two levels that never rest: 20 ns of edge behind 5 MHz, 100 ns apart.
    [Fact]
    public void LevelsThatDoNotSettle_AreToldWithTheEdgeAlone()
    {
        Outlook outlook = Signal.Square(5.MHz(), 1.Vpp(), 20.ns()).Through(Response.Gaussian(5.MHz())).SampledBy(Sampler).Over(5.us());
        Assert.Contains(Lines(outlook), line => line.StartsWith("  one edge alone        ", StringComparison.Ordinal) && line.EndsWith(outlook.SingleEdge!.Value.InWords(), StringComparison.Ordinal));
    }

    [Fact]
    public void WithoutARange_NothingIsToldOfTheVertical() => Assert.DoesNotContain("Vertical",
        Lines(Signal.Sine(1.MHz(), 10.Vpk()).Through(Response.Cascade()).SampledBy(Sampler.WithFullScaleRanges(1.Vpp(), 2.Vpp())).Over(5.us())));

    public static TheoryData<int, bool, string> Rates => new() { { 0, false, "highest rate of the digitizer" }, { 0, true, "memory / window" }, { 4, false, "highest rate / 4 samples per stored point" }, { 4, true, "memory / window" } };

    // 100 MSa/s and 1 kpts: 10 µs at the highest rate; 80 µs leave 12.5 MSa/s, less than a quarter of it.
    [Theory, MemberData(nameof(Rates))]
    public void TheSampleRate_SaysWhatDecidesIt(int combined, bool longWindow, string method)
    {
        SampledSignal setup = Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.SinglePole(10.MHz())).SampledBy(Sampler);
        Outlook outlook = (combined > 0 ? setup.WithHighResolution(combined) : setup).Over(longWindow ? 80.us() : 5.us());
        Assert.Equal(method, outlook.SampleRate.Method);
        Assert.Equal(longWindow ? 12.5e6 : combined > 0 ? 25e6 : 100e6, outlook.SampleRate.Value.SamplesPerSecond, 1e-3);
        Assert.Equal(50e6, Assert.Single(outlook.SampleRate.Rules).Value.SamplesPerSecond, 1);
        IReadOnlyList<KeyValuePair<string, string>> from = outlook.SampleRate.Inputs;
        Assert.Equal(["memory 1 kpts", longWindow ? "window 80 µs" : "window 5 µs"], from.Select(pair => pair.Key + " " + pair.Value));
    }
}
