using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Numerics;
using Acquisition.Core.Chain;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using MathNet.Numerics;
using Xunit;

namespace Acquisition.Core.Tests.Chain;

/// <summary>
/// Long lines that match at neither end, driven by a ramp: without loss against ngspice, with loss against closed forms and a numerical inverse Laplace transform of the whole network.
/// The two tables beside this file were made by tests/scripts/lines.py.
/// </summary>
public sealed class LongLineTests
{
    private static readonly Response Wire = Response.Cascade();

    private static Cable Line(double ohms, double nanoseconds) => new(Resistance.FromOhms(ohms), Length.FromMeters(nanoseconds * 0.299792458), 1);

    private static CableLoss Skin(double decibels) => CableLoss.FromPoint(1.GHz(), DecibelRatio.FromDecibels(decibels));

    private static IEnumerable<string[]> Rows(string file) =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Chain", file)).Skip(2).Select(line => line.Split(','));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    /// <summary>The same numbers as in the script: ends, delay, load, ramp from end to end.</summary>
    private static (MeasurementChain Chain, double Delay, double Ramp) Lossless(string name) => name switch
    {
        "open-end" => (MeasurementChain.From(25.Ohm()).Cable(Line(50, 20)).Into(FrontEnd.HighImpedance(1.MOhm(), 0.pF(), Wire)), 20e-9, 2e-9),
        "low-source" => (MeasurementChain.From(20.Ohm()).Cable(Line(50, 50)).Into(FrontEnd.HighImpedance(150.Ohm(), 0.pF(), Wire)), 50e-9, 5e-9),
        "capacitive-end" => (MeasurementChain.From(30.Ohm()).Cable(Line(75, 20)).Into(FrontEnd.HighImpedance(1.MOhm(), 15.pF(), Wire)), 20e-9, 2e-9),
        _ => throw new InvalidOperationException(name),
    };

    [Theory, InlineData("open-end"), InlineData("low-source"), InlineData("capacitive-end")]
    public void WaveformBehindALosslessLine_IsThatOfACircuitSimulator(string name)
    {
        (MeasurementChain chain, double delay, double ramp) = Lossless(name);
        Signal seen = chain.Response.Apply(Signal.Step(1.Vpp(), Duration.FromSeconds(0.8 * ramp)));
        foreach (string[] row in Rows("lines-lossless.csv").Where(row => row[0] == name))
        {
            double time = Number(row[1]), sinceArrival = (time - delay) % (2 * delay);
            // The simulator rounds the corners of a ramp over one of its steps, ramp/200, and integrates a capacitor to second order.
            bool isSmooth = sinceArrival > 1.1 * ramp && name != "capacitive-end";
            Assert.Equal(Number(row[2]), seen.ValueAt(Duration.FromSeconds(time - ramp / 2)).Volts, isSmooth ? 1e-8 : 2.5e-3);
        }
    }

    private static IReadOnlyList<Way> Ways(Response response) => ((GeneralResponse)response).OwnWays;

    private static MeasurementChain Lossy(string name)
    {
        Response own = Response.Gaussian(200.MHz());
        return name switch
        {
            "one-line" => MeasurementChain.From(25.Ohm()).Cable(Line(50, 100).WithLoss(Skin(6))).Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), own)),
            "with-dielectric" => MeasurementChain.From(75.Ohm()).Cable(Line(50, 100).WithLoss(CableLoss.FromPoints(100.MHz(), DecibelRatio.FromDecibels((6.3 * Math.Sqrt(0.1)) + 0.27), 1.GHz(), 9.dB())))
                .Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), own)),
            "two-lines" => MeasurementChain.From(40.Ohm()).Cable(Line(50, 60).WithLoss(Skin(4))).Load(new NodeLoad(Resistance.FromOhms(1e12), 10.pF())).Cable(Line(75, 25).WithLoss(Skin(1)))
                .Into(FrontEnd.FiftyOhm(own).WithInputCapacitance(5.pF())),
            _ => throw new InvalidOperationException(name),
        };
    }

    /// <summary>The oracle tells no echo from another; it is good to about 1e-12, the step of each echo to 1e-8.</summary>
    [Theory, InlineData("one-line"), InlineData("with-dielectric"), InlineData("two-lines")]
    public void WaveformBehindLossyLines_IsTheInverseLaplaceTransformOfTheWholeNetwork(string name)
    {
        Response response = Lossy(name).Response;
        Signal seen = response.Apply(Signal.Step(1.Vpp(), 1.6.ns()));

        Assert.True(Ways(response).Count > 5);
        foreach (string[] row in Rows("lines-lossy.csv").Where(row => row[0] == name))
            Assert.Equal(Number(row[2]), seen.ValueAt(Duration.FromSeconds(Number(row[1]) - 1e-9)).Volts, 3e-8);
    }

    /// <summary>
    /// Resistive ends and skin effect alone: echo k has passed the line 2k + 1 times, and exp(-n √(sτ))/s is the transform of erfc(n √(τ/t)/2) (Abramowitz and Stegun 29.3.83). From 25 Ω
    /// into 100 Ω through 50 Ω: 8/9 at first, -1/9 of the one before with each echo.
    /// </summary>
    [Fact]
    public void StepThroughASkinEffectLine_IsASumOfErrorFunctions()
    {
        Cable cable = Line(50, 200).WithLoss(Skin(8));
        Response response = MeasurementChain.From(25.Ohm()).Cable(cable).Into(FrontEnd.HighImpedance(100.Ohm(), 0.pF(), Wire)).Response;
        // 8 dB at 1 GHz are √(ωτ/2) nepers.
        double nepers = 8 * Math.Log(10) / 20, tau = nepers * nepers / (Math.PI * 1e9), delay = cable.Delay.Seconds;

        for (double time = 0.55 * delay; time < 60 * delay; time *= 1.013)
        {
            double expected = 0, height = 8.0 / 9;
            for (int passages = 1; passages * delay < time; passages += 2, height /= -9)
                expected += height * SpecialFunctions.Erfc(passages * Math.Sqrt(tau / (time - passages * delay)) / 2);
            Assert.Equal(expected, response.StepAt(Duration.FromSeconds(time)).Fraction, 2e-8);
        }
    }

    /// <summary>From 15 Ω into an open end the echoes overshoot by turns: the search sees a late one as sharply as the first.</summary>
    [Fact]
    public void SettlingOfASkinEffectLine_IsFoundAtItsLateEchoes()
    {
        Cable cable = Line(50, 100).WithLoss(Skin(1));
        Response response = MeasurementChain.From(15.Ohm()).Cable(cable).Into(FrontEnd.HighImpedance(1.MOhm(), 0.pF(), Response.Gaussian(500.MHz()))).Response;
        double band = 0.02, settled = response.SettlingTime(Ratio.FromFraction(band)).Seconds, final = response.ReferenceGain.ToAmplitudeRatio().Fraction;

        Assert.True(settled > 5 * cable.Delay.Seconds);
        Assert.Equal(band, Math.Abs(response.StepAt(Duration.FromSeconds(settled)).Fraction / final - 1), 1e-6);
        // Looked for by brute force, without the search.
        for (double time = settled * (1 + 1e-9) + 1e-12; time < 60 * cable.Delay.Seconds; time += 0.05e-9)
            Assert.True(Math.Abs(response.StepAt(Duration.FromSeconds(time)).Fraction / final - 1) <= band, $"{time} s");
    }

    public static TheoryData<string> Echoing => new() { "one-line", "with-dielectric", "two-lines", "three-lines" };

    /// <summary>Each echo with its delay, added up, is the network solved at each frequency.</summary>
    [Theory, MemberData(nameof(Echoing))]
    public void SumOfTheEchoes_IsTheNetwork(string name)
    {
        Response response = name == "three-lines"
            ? MeasurementChain.From(40.Ohm()).Cable(Line(50, 3)).Cable(Line(75, 5).WithLoss(Skin(1))).Cable(Line(50, 2)).Into(FrontEnd.FiftyOhm(Response.Gaussian(1.GHz()))).Response
            : Lossy(name).Response;
        IReadOnlyList<Way> ways = Ways(response);

        Assert.InRange(ways.Count, 6, 200);
        for (double hertz = 1; hertz < 3e9; hertz *= 1.37)
        {
            Complex sum = Complex.Zero;
            foreach (Way way in ways)
                sum += way.Response.ComplexGain(hertz) * Complex.FromPolarCoordinates(1, -2 * Math.PI * hertz * way.Seconds);
            Assert.True(Complex.Abs(sum - response.ComplexGain(hertz)) < 2e-9, $"{hertz} Hz");
        }
    }

    /// <summary>A matched cable has one way through, whatever its loss.</summary>
    [Fact]
    public void MatchedLossyLine_HasNoEchoes()
    {
        Response response = MeasurementChain.From(50.Ohm()).Cable(Line(50, 100).WithLoss(Skin(6))).Into(FrontEnd.FiftyOhm(Response.Gaussian(1.GHz()))).Response;

        Assert.Single(Ways(response));
    }

    /// <summary>From an ideal source into an open end nothing dies but by loss: that is left to one transform over all frequencies.</summary>
    [Fact]
    public void EchoesThatHardlyDie_AreNotFollowedOneByOne()
    {
        Response response = MeasurementChain.From(1.Ohm()).Cable(Line(50, 5).WithLoss(Skin(0.1))).Into(FrontEnd.HighImpedance(1.MOhm(), 0.pF(), Response.Gaussian(100.MHz()))).Response;

        Assert.Single(Ways(response));
    }
}
