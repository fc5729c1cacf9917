using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.Json;
using Acquisition.Core.Literals;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records.Sine;

/// <summary>Sine fits, spectra and sweep fits against SciPy, against NIST's certified data and against measured records; and the laws any fit obeys.</summary>
public sealed class SineFitOutsideTests
{
    [Fact]
    public void FourParameterFit_AndItsUncertainties_AreThoseOfSciPysCurveFit()
    {
        foreach (JsonElement c in SciPyCases.All.GetProperty("fits").EnumerateArray())
        {
            double[] x = SciPyCases.Record((int)c.Number("n"), c.Number("cycles"), c.Number("amplitude"), c.Number("phase"), c.Number("offset"), c.Number("sigma"), (long)c.Number("seed"));
            FittedSine sine = SineFit.FourParameter(x, 1.SaPerS()).Sine!;
            double[] fit = c.Numbers("fit"), u = c.Numbers("u");

            // SciPy's own numerical Jacobian is good to about 1e-5 of an uncertainty.
            Assert.Equal(fit[0], sine.Amplitude.Volts, 1e-4 * u[0]);
            Assert.Equal(fit[1], sine.Frequency.Hertz, 1e-4 * u[1]);
            Assert.Equal(0, Math.IEEERemainder(fit[2] - sine.Phase.Radians, 2 * Math.PI), 1e-4 * u[2]);
            Assert.Equal(fit[3], sine.Offset.Volts, 1e-4 * u[3]);
            Assert.Equal(c.Number("rms"), sine.NoiseAndDistortion.Volts, 1e-9 * c.Number("rms"));
            Assert.Equal(u[0], sine.AmplitudeUncertainty.Volts, 2e-3 * u[0]);
            Assert.Equal(u[1], sine.FrequencyUncertainty.Hertz, 2e-3 * u[1]);
            Assert.Equal(u[2], sine.PhaseUncertainty.Radians, 2e-3 * u[2]);
            Assert.Equal(u[3], sine.OffsetUncertainty.Volts, 2e-3 * u[3]);
        }
    }

    [Fact]
    public void DensityAndMeanSquare_AreThoseOfSciPysPeriodogram_AndWelch()
    {
        foreach (JsonElement c in SciPyCases.All.GetProperty("spectra").EnumerateArray())
        {
            double[] x = SciPyCases.Record((int)c.Number("n"), 0.123, 1, 0.4, 0.2, 0.1, (long)c.Number("seed"));
            var spectrum = Spectrum.Of(x, SampleRate.FromSamplesPerSecond(c.Number("rate")), SpectralWindow.All.Single(w => w.Name == c.GetProperty("window").GetString()));
            double[] density = spectrum.DensitiesInVoltsPerRootHertz(), rms = spectrum.RmsAmplitudesInVolts(), expected = c.Numbers("density"), squares = c.Numbers("spectrum");
            double[] bins = c.Numbers("bins");
            for (int i = 0; i < bins.Length; i++)
            {
                Assert.Equal(expected[i], density[(int)bins[i]] * density[(int)bins[i]], 1e-9 * expected.Max());
                Assert.Equal(squares[i], rms[(int)bins[i]] * rms[(int)bins[i]], 1e-9 * squares.Max());
            }
        }
        JsonElement welch = SciPyCases.All.GetProperty("welch");
        double[] averaged = Spectrum.Averaged(SciPyCases.Record(4000, 0.123, 1, 0.4, 0.2, 0.1, 15), 1.MSaPerS(), SpectralWindow.Hann, 500.pts(), Ratio.FromFraction(0.5)).DensitiesInVoltsPerRootHertz();
        foreach ((double bin, double value) in welch.Numbers("bins").Zip(welch.Numbers("density")))
            Assert.Equal(value, averaged[(int)bin] * averaged[(int)bin], 1e-9 * value);
    }

    [Fact]
    public void FittedBandwidth_AndItsUncertainty_AreThoseOfSciPysCurveFit()
    {
        foreach (JsonElement c in SciPyCases.All.GetProperty("sweeps").EnumerateArray())
        {
            Func<Frequency, Response> model = c.GetProperty("model").GetString() switch
            {
                "single pole" => Response.SinglePole,
                "gaussian" => Response.Gaussian,
                _ => f => Response.Butterworth(4, f),
            };
            Response truth = model(230.MHz());
            double[] hertz = Enumerable.Range(1, 40).Select(i => i * 1e7).ToArray(), noise = SciPyCases.Noise((long)c.Number("seed"), 40);
            SweepFit fit = Sweep.OfDecibels(hertz, hertz.Select((f, i) => -0.7 + truth.Gain(Frequency.FromHertz(f)).Decibels + 0.05 * noise[i]).ToArray(), hertz.Select(_ => 0.05).ToArray()).FitTo(model);

            Assert.Equal(c.Number("bandwidth"), fit.Bandwidth!.Value.Hertz, 1e-4 * c.Number("u_bandwidth"));
            Assert.Equal(c.Number("gain"), fit.Gain!.Value.Decibels, 1e-4 * c.Number("u_gain"));
            Assert.Equal(c.Number("u_bandwidth"), fit.BandwidthUncertainty!.Value.Hertz, 1e-3 * c.Number("u_bandwidth"));
            Assert.Equal(c.Number("u_gain"), fit.GainUncertainty!.Value.Decibels, 1e-3 * c.Number("u_gain"));
        }
    }

    [Property(MaxTest = 60)]
    public void AmplitudeScale_TimeScale_OffsetAndPhase_MoveOnlyTheirOwnParameter(int seed)
    {
        var random = new Random(seed);
        double k = Math.Pow(10, 6 * random.NextDouble() - 3), shift = 20 * random.NextDouble() - 10, rate = Math.Pow(10, 9 * random.NextDouble()), cycles = 0.02 + 0.45 * random.NextDouble(), turn = 6 * random.NextDouble() - 3;
        double[] x = SineFitTests.Make(600, cycles, 1, 0.2, 0, 0.05, seed);
        FittedSine one = SineFit.FourParameter(x, 1.SaPerS()).Sine!;
        FittedSine moved = SineFit.FourParameter(x.Select(v => k * (v + shift)).ToArray(), SampleRate.FromSamplesPerSecond(rate)).Sine!;

        Assert.Equal(k * one.Amplitude.Volts, moved.Amplitude.Volts, 1e-8 * k);
        Assert.Equal(rate * one.Frequency.Hertz, moved.Frequency.Hertz, 1e-10 * rate);
        Assert.Equal(one.Phase.Radians, moved.Phase.Radians, 1e-7);
        Assert.Equal(k * (one.Offset.Volts + shift), moved.Offset.Volts, 1e-8 * k);
        Assert.Equal(one.Sinad!.Value.Decibels, moved.Sinad!.Value.Decibels, 1e-6);

        double[] turned = SineFitTests.Make(600, cycles, 1, 0.2 + turn, 0, 0, seed);
        Assert.Equal(0, Math.IEEERemainder(SineFit.FourParameter(turned, 1.SaPerS()).Sine!.Phase.Radians - 0.2 - turn, 2 * Math.PI), 1e-7);
    }

    [Property(MaxTest = 40)]
    public void ReversedTime_KeepsAmplitudeAndFrequency_AndMirrorsThePhaseAtTheCentre(int seed)
    {
        double[] x = SineFitTests.Make(501, 0.0777, 1, 0.9, 0.1, 0.1, seed);
        FittedSine one = SineFit.FourParameter(x, 1.SaPerS()).Sine!, other = SineFit.FourParameter(x.Reverse().ToArray(), 1.SaPerS()).Sine!;
        Assert.Equal(one.Amplitude.Volts, other.Amplitude.Volts, 1e-9);
        Assert.Equal(one.Frequency.Hertz, other.Frequency.Hertz, 1e-11);
        Assert.Equal(0, Math.IEEERemainder(one.PhaseAtCenter.Radians + other.PhaseAtCenter.Radians, 2 * Math.PI), 1e-7);
    }

    /// <summary>The first column after the last line that begins with Data.</summary>
    private static double[] NistReadings(string file)
    {
        string[] lines = File.ReadAllLines(OpenData.Path(file));
        int head = Array.FindLastIndex(lines, line => line.StartsWith("Data:", StringComparison.Ordinal));
        return lines.Skip(head + 1).Select(line => line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Where(row => row.Length > 0 && !row[0].StartsWith("---", StringComparison.Ordinal))
            .Select(row => double.Parse(row[0], CultureInfo.InvariantCulture)).ToArray();
    }

    /// <summary>
    /// NIST StRD Lew (beam deflection, 200 readings): certified mean -177.435, standard deviation 277.332168044316. A real sine in noise; the fit C -178.768, A 343.289,
    /// f 0.3018070 cycles per sample, residual 134.066 (n - 4) was found by an independent scan with NumPy.
    /// </summary>
    [OpenDataFact("reference/nist-strd/Lew.dat")]
    public void BeamDeflectionOfNist_HasItsCertifiedStatistics_AndTheSineThatAnIndependentScanFound()
    {
        double[] x = NistReadings("reference/nist-strd/Lew.dat");
        Assert.Equal(200, x.Length);
        Assert.Equal(-177.435, x.Average(), 1e-10);
        Assert.Equal(277.332168044316, Math.Sqrt(x.Sum(v => Math.Pow(v - x.Average(), 2)) / 199), 1e-9);

        FittedSine sine = SineFit.FourParameter(x, 1.SaPerS()).Sine!;
        Assert.Equal(-178.768, sine.Offset.Volts, 6e-4);
        Assert.Equal(343.289, sine.Amplitude.Volts, 6e-4);
        Assert.Equal(0.3018070, sine.Frequency.Hertz, 6e-8);
        Assert.Equal(134.066, sine.ResidualDeviation.Volts, 6e-4);
    }

    /// <summary>
    /// NIST StRD ENSO (monthly pressure differences, 168 readings): three sines about a mean, two of their periods free, certified by least squares. No fit here finds three at once; but
    /// at the joint optimum each sine is the best one given the other two. So what is left when two certified sines are taken away must give back the third, the mean, and the certified
    /// residual sum of squares. Standard deviations are certified for the joint fit and do not compare.
    /// </summary>
    [OpenDataFact("reference/nist-strd/ENSO.dat")]
    public void EachSineOfTheSouthernOscillation_IsTheCertifiedOne_GivenTheOtherTwo()
    {
        double[] y = NistReadings("reference/nist-strd/ENSO.dat");
        Assert.Equal(168, y.Length);
        (double Period, double Cosine, double Sine)[] certified =
            [(12, 3.0762128085, 5.3280138227e-1), (4.4311088700e1, -1.6231428586, 5.2554493756e-1), (2.6887614440e1, 2.1232288488e-1, 1.4966870418)];

        foreach ((double Period, double Cosine, double Sine) sought in certified)
        {
            // Months count from 1.
            double[] left = y.Select((v, n) => v - certified.Where(one => one != sought)
                .Sum(one => one.Cosine * Math.Cos(2 * Math.PI * (n + 1) / one.Period) + one.Sine * Math.Sin(2 * Math.PI * (n + 1) / one.Period))).ToArray();
            SineFit fit = sought.Period == 12
                ? SineFit.ThreeParameter(left, 1.SaPerS(), Frequency.FromHertz(1.0 / 12))
                : SineFit.FourParameter(left, 1.SaPerS(), Frequency.FromHertz(1 / Math.Round(sought.Period)));
            Assert.True(fit.Sine is not null, fit.ToString());
            FittedSine sine = fit.Sine;
            double phase = sine.PhaseAt(-1.s()).Radians;
            Assert.Equal(sought.Period, 1 / sine.Frequency.Hertz, 2e-8);
            Assert.Equal(sought.Cosine, sine.Amplitude.Volts * Math.Cos(phase), 1e-8);
            Assert.Equal(sought.Sine, -sine.Amplitude.Volts * Math.Sin(phase), 1e-8);
            Assert.Equal(1.0510749193e1, sine.Offset.Volts, 1e-8);
            Assert.Equal(7.8853978668e2, 168 * Math.Pow(sine.NoiseAndDistortion.Volts, 2), 1e-7);
        }
    }

    /// <summary>An operational amplifier driven with 1 kHz (open data): the four-parameter fits of input and output by an independent SciPy run.</summary>
    [OpenDataFact("records/opamp-sine-1khz.csv")]
    public void MeasuredSine_FitsAsAnIndependentRunFound_InBothChannels()
    {
        double[][] rows = File.ReadLines(OpenData.Path("records/opamp-sine-1khz.csv")).Where(l => l.Length > 0 && (char.IsDigit(l[0]) || l[0] == '-'))
            .Select(l => l.Split(',').Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        Record input = Record.FromVolts(rows.Select(r => r[1]).ToArray(), 1.MSaPerS()), output = Record.FromVolts(rows.Select(r => r[2]).ToArray(), 1.MSaPerS());

        FittedSine sine = SineFit.FourParameter(input).Sine!;
        Assert.Equal(1000.00267, sine.Frequency.Hertz, 2e-5);
        Assert.Equal(0.935228, sine.Amplitude.Volts, 1e-6);
        Assert.Equal(-2.0904, sine.Offset.Millivolts, 2e-4);
        Assert.Equal(-90.1675, sine.PhaseAt(4.ms()).Degrees, 2e-4);
        Assert.Equal(1.3607, sine.NoiseAndDistortion.Millivolts, 5e-4);
        Assert.Equal(53.73, sine.Sinad!.Value.Decibels, 6e-3);

        ChannelComparison gain = CommonSineFit.Of(input, output).Compare(0, 1)!;
        Assert.Equal(-0.0052, gain.Gain.Decibels, 1e-4);
        Assert.InRange(gain.GainUncertainty.Decibels, 1e-4, 1e-3);
        Assert.Equal(-0.031, gain.Phase.Degrees, 0.02);

        // "Second harmonic -72 dBc" of the input, by the same run.
        Assert.Equal(-72, SingleToneTest.Of(input).Harmonics[0].Level!.Value.Decibels, 1.0);
    }
}
