using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Xunit;

namespace Acquisition.Reports.Tests;

/// <summary>
/// The plots of docs/explanation, one for each rule of thumb, drawn by the library from its own models; <c>ACQUISITION_WRITE_DOCS=1 dotnet test</c> draws them anew.
/// </summary>
public sealed class ExplanationPlotsTests
{
    private static readonly Frequency OneHundredMegahertz = 100.MHz();

    private static readonly Dictionary<string, Func<Plot>> Plots = new()
    {
        ["rise-time"] = Steps,
        ["cascade"] = RootSumSquareError,
        ["alias"] = Folded,
        ["interpolation"] = Interpolation,
        ["harmonics"] = EdgeAgainstBandwidth,
        ["probe"] = TipImpedance,
        ["bits"] = SignalToNoise,
        ["averaging"] = NoiseOfMeans,
    };

    public static TheoryData<string> Names() => new(Plots.Keys);

    [Theory]
    [MemberData(nameof(Names))]
    public void ExplanationPlot_IsTheOneInTheDocuments(string name)
    {
        string svg = Plots[name]().ToSvg();
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Acquisition.Core.sln"))) folder = Path.GetDirectoryName(folder)!;
        string path = Path.Combine(folder, "docs", "explanation", "plots", name + ".svg");
        if (Environment.GetEnvironmentVariable("ACQUISITION_WRITE_DOCS") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, svg);
        }

        Assert.Equal(File.ReadAllText(path).Replace("\r\n", "\n", StringComparison.Ordinal), svg);
    }

    private static Plot Steps()
    {
        double[] t = Spread(-6e-9, 12e-9, 361);
        var plot = new Plot("Steps of four models of the same bandwidth, 100 MHz", Axis.Linear("time from 50 %", "s").WithRange(-6e-9, 12e-9), Axis.Linear("level", "%").WithRange(-20, 120));
        foreach (Response model in new[]
                 {
                     Response.SinglePole(OneHundredMegahertz), Response.Gaussian(OneHundredMegahertz), Response.Butterworth(4, OneHundredMegahertz), Response.BrickWall(OneHundredMegahertz),
                 })
        {
            Duration half = model.StepCrossing(50.Percent());
            plot = plot.WithLine(model.Name.Split(',')[0], t, t.Select(x => model.StepAt(half + x.s()).Percent).ToArray());
        }
        return plot.WithHorizontalLimit("10 %", 10).WithHorizontalLimit("90 %", 90);
    }

    private static Plot RootSumSquareError()
    {
        double[] ratios = Decades(0.1, 10, 41);
        var plot = new Plot("Error of the root sum of squares, two stages of one kind", Axis.Logarithmic("bandwidth of the second stage / first", ""), Axis.Linear("rule - computed", "%"));
        foreach ((string name, Func<Frequency, Response> model) in new (string, Func<Frequency, Response>)[]
                 {
                     ("single poles", Response.SinglePole), ("Gaussian", Response.Gaussian), ("Bessel 4", f => Response.Bessel(4, f)), ("Butterworth 4", f => Response.Butterworth(4, f)),
                 })
        {
            Response first = model(OneHundredMegahertz);
            double[] errors = ratios.Select(ratio =>
            {
                Response second = model(OneHundredMegahertz * ratio);
                return 100 * ((RootSumOfSquares.Combine(first.RiseTime, second.RiseTime) / first.Then(second).RiseTime).Fraction - 1);
            }).ToArray();
            plot = plot.WithLine(name, ratios, errors);
        }
        return plot;
    }

    private static Plot Folded()
    {
        double[] rates = Decades(2.05, 20, 91);
        var plot = new Plot("What folds onto the bandwidth", Axis.Logarithmic("sample rate / bandwidth", ""), Axis.Linear("level of what folds there", "dB").WithRange(-80, 0));
        foreach (Response model in new[] { Response.SinglePole(OneHundredMegahertz), Response.Gaussian(OneHundredMegahertz), Response.Butterworth(4, OneHundredMegahertz) })
        {
            (double Rate, double Level)[] points = rates.Select(rate => (rate, model.Gain(OneHundredMegahertz * (rate - 1)).Decibels)).Where(point => point.Decibels > -120).ToArray();
            plot = plot.WithLine(model.Name.Split(',')[0], points.Select(point => point.Rate).ToArray(), points.Select(point => point.Level).ToArray());
        }
        return plot.WithVerticalLimit("2.5", 2.5).WithVerticalLimit("5", 5);
    }

    private static Plot Interpolation()
    {
        double[] samples = Decades(2.05, 40, 81);
        var plot = new Plot("Worst error of the trace between the samples of a sine", Axis.Logarithmic("samples per period", ""), Axis.Logarithmic("error / amplitude", "%").WithRange(0.001, 200));
        foreach (Reconstruction drawn in new[] { Reconstruction.Linear, Reconstruction.CubicLagrange, Reconstruction.Sinc })
            plot = plot.WithLine(drawn.Name, samples, samples.Select(n => drawn.WorstError(OneHundredMegahertz, SampleRate.FromSamplesPerSecond(n * OneHundredMegahertz.Hertz)).Percent).ToArray());
        return plot.WithVerticalLimit("2.5", 2.5);
    }

    private static Plot EdgeAgainstBandwidth()
    {
        Signal clock = Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns());
        double[] harmonics = Decades(3, 40, 41);
        var plot = new Plot("Edge of the 24 MHz clock, 2.8 ns, behind a chain", Axis.Logarithmic("bandwidth / fundamental", ""), Axis.Linear("edge on the display", "s").WithRange(2e-9, 6e-9));
        foreach ((string name, Func<Frequency, Response> model) in new (string, Func<Frequency, Response>)[] { ("Gaussian", Response.Gaussian), ("Butterworth 4", f => Response.Butterworth(4, f)) })
            plot = plot.WithLine(name, harmonics, harmonics.Select(n => model(n * 24.MHz()).RiseTimeOf(clock.SteepestEdge!).Value.Seconds).ToArray());
        return plot.WithHorizontalLimit("the edge itself", 2.8e-9).WithVerticalLimit("fifth harmonic", 5);
    }

    private static Plot TipImpedance()
    {
        double[] hertz = Decades(1e3, 1e9, 121);
        var plot = new Plot("What the node sees at the tip", Axis.Logarithmic("frequency", "Hz"), Axis.Logarithmic("impedance", "Ω"));
        foreach ((string name, Probe probe) in new[]
                 {
                     ("passive, 12 pF", Probe.Passive(10, 10.MOhm(), 12.pF(), 350.MHz())),
                     ("active, 1 pF", Probe.Active(10, 1.MOhm(), 1.pF(), Response.Gaussian(1.GHz()))),
                     ("divider, 500 Ω", Probe.LowImpedance(10, 0.5.pF(), Response.Gaussian(1.5.GHz()))),
                 })
            plot = plot.WithLine(name, hertz, hertz.Select(f => probe.InputOhmsAt(Frequency.FromHertz(f)).Magnitude).ToArray());
        return plot.WithHorizontalLimit("50 Ω", 50).WithHorizontalLimit("1 kΩ", 1e3);
    }

    private static Plot SignalToNoise()
    {
        double[] hertz = Decades(1e6, 1e10, 81);
        var plot = new Plot("Signal to noise of a full-scale sine, 8 bit and a jittering clock", Axis.Logarithmic("frequency", "Hz"), Axis.Linear("signal to noise", "dB").WithRange(0, 60));
        foreach (Duration jitter in new[] { 1.ps(), 5.ps(), 50.ps() })
        {
            double[] levels = hertz.Select(f => NoiseCombination.OfSignalToNoise(Quantization.IdealSignalToNoise(8.bit()), SamplingJitter.ExactSignalToNoise(Frequency.FromHertz(f), jitter)).Decibels).ToArray();
            plot = plot.WithLine($"jitter {jitter}", hertz, levels);
        }
        return plot.WithHorizontalLimit("8 bit alone", Quantization.IdealSignalToNoise(8.bit()).Decibels);
    }

    private static Plot NoiseOfMeans()
    {
        int[] records = [1, 2, 4, 8, 16, 32, 64, 128, 256];
        double[] counts = records.Select(n => (double)n).ToArray();
        var plot = new Plot("Noise of the mean of simulated records, in steps of the converter", Axis.Logarithmic("records", ""), Axis.Logarithmic("noise / step", ""));
        foreach (double noise in new[] { 1.0, 0.3, 0.1 })
        {
            double[] left = records.Select(n => SineFit.FourParameter(Mean(noise, n)).Sine!.NoiseAndDistortion.Millivolts / 31.25).ToArray();
            plot = plot.WithDots(FormattableString.Invariant($"noise {noise} steps"), counts, left);
        }
        return plot.WithLine("rule for 1 step", counts, counts.Select(n => Math.Sqrt((1 + (1 / 12.0)) / n)).ToArray());
    }

    private static Acquisition.Core.Record Mean(double noiseInSteps, int records) =>
        new SimulatedCapture(Signal.Sine(CoherentSampling.Near(1.MHz(), 100.MSaPerS(), 10.kpts()).Frequency, 1.Vpk()), 100.MSaPerS(), 10.kpts())
            .WithNoise((31.25 * noiseInSteps).mVrms()).WithConverter(8.bit(), 8.Vpp()).WithAveraging(records).Capture();

    private static double[] Spread(double from, double to, int points) => Enumerable.Range(0, points).Select(i => from + ((to - from) * i / (points - 1))).ToArray();

    private static double[] Decades(double from, double to, int points) => Enumerable.Range(0, points).Select(i => from * Math.Pow(to / from, i / (points - 1.0))).ToArray();
}
