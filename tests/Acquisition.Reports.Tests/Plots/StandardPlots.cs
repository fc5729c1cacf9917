using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;

namespace Acquisition.Reports.Tests;

/// <summary>One of each kind of picture, in the scenario of the lantern buoy: what the pages show, and what the laws of the layout are held to.</summary>
internal static class StandardPlots
{
    internal static readonly IReadOnlyDictionary<string, Func<PlotOptions, Plot>> All = new Dictionary<string, Func<PlotOptions, Plot>>
    {
        ["response-cascade"] = options => ResponsePlot.Of(Response.Gaussian(200.MHz()).Then(Response.Butterworth(4, 350.MHz())).Then(Response.Delay(5.ns())), options),
        ["response-chain"] = options => ResponsePlot.Of(Chain(), options),
        ["response-band"] = options => ResponsePlot.Of(Response.HighPass(10.kHz()).Then(Response.SinglePole(20.MHz())), options),
        ["step-chain"] = options => StepPlot.Of(Chain(), options),
        ["spectrum-clock"] = options => SpectrumPlot.Of(Clock().Through(Chain().Response).SampledBy(new Digitizer(500.MSaPerS(), 1.Mpts(), 8.bit())).Over(20.us()), options),
        ["spectrum-pulse"] = options => SpectrumPlot.Of(Signal.SinglePulse(5.Vpp(), 40.ns(), 4.ns()), Response.Gaussian(200.MHz()), options),
        ["trace-clock"] = options => TracePlot.Of(Capture(250.MSaPerS(), 200.pts()), options.WithTimes(200.ns(), 330.ns())),
        ["record-pulses"] = options => RecordPlot.Of(PulseMeasurement.Of(Capture(2.GSaPerS(), 20.kpts())), options.WithTimes(0.ns(), 130.ns())),
        ["record-runt"] = options => RecordPlot.Of(PulseMeasurement.Of(Lamp()), options),
        ["record-long"] = options => RecordPlot.Of(Burst(), options),
        ["sweep-fit"] = options => SweepPlot.Of(Probe(), Probe().FitTo(Response.Gaussian), options),
        ["shortlist-clock"] = options => ShortlistPlot.Of(Choice(), options),
        ["budget-lamp"] = options => BudgetPlot.Of(Lamp(UncertaintyOfCurrent()).Budget(), options),
        ["montecarlo-lamp"] = options => MonteCarloPlot.Of(Trials(), Lamp(UncertaintyOfCurrent()).Budget(), options),
        ["attribution-levels"] = options => AttributionPlot.Of(Parts(), options),
        ["attribution-shares"] = options => AttributionPlot.At(Parts(), 200.MHz(), options),
    };

    private static Signal Clock() => Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns());

    private static MeasurementChain Chain()
    {
        FrontEnd digitizer = FrontEnd.HighImpedance(1.MOhm(), 15.pF(), Response.Gaussian(200.MHz())).WithName("bench digitizer, 200 MHz");
        Acquisition.Core.Probe probe = Acquisition.Core.Probe.Passive(10, 10.MOhm(), 10.pF(), 200.MHz()).WithName("passive probe 10:1, 200 MHz").WithGroundLead(150.mm());
        return MeasurementChain.From(50.Ohm()).Probe(probe).Into(digitizer);
    }

    private static Record Capture(SampleRate rate, PointCount count) => new SimulatedCapture(Signal.Square(24.MHz(), 3.3.Vpp(), 2.5.ns()), rate, count)
        .Through(Response.Gaussian(200.MHz())).WithNoise(10.mVrms()).WithClockJitter(3.ps()).WithConverter(8.bit(), 4.Vpp()).Capture();

    private static Record Burst() => new SimulatedCapture(Signal.Burst(10.MHz(), 1.Vpk(), 40, 20.us()), 200.MSaPerS(), 20.kpts()).WithNoise(30.mVrms()).WithConverter(8.bit(), 4.Vpp()).Capture();

    /// <summary>Pulses of the lamp driver, of which the fourth does not reach its state.</summary>
    private static Record Lamp()
    {
        double[] volts = new double[900];
        for (int i = 0; i < volts.Length; i++)
        {
            double place = i % 150, height = i / 150 == 3 ? 0.62 : 1;
            double level = Math.Min(Math.Max(Math.Min((place - 40) / 12, (110 - place) / 18), 0), 1);
            volts[i] = 12 * height * level + (0.1 * Math.Sin(0.7 * i));
        }
        return Record.FromVolts(volts, 100.MSaPerS()).WithName("lamp driver");
    }

    private static Sweep Probe()
    {
        double[] hertz = Enumerable.Range(0, 31).Select(i => 1e6 * Math.Pow(10, i / 12.0)).ToArray();
        double[] decibels = hertz.Select((f, i) => (-3.0103 * Math.Pow(f / 190e6, 2)) + (0.12 * Math.Sin(2.3 * i))).ToArray();
        return Sweep.OfDecibels(hertz, decibels, hertz.Select(_ => 0.1).ToArray());
    }

    private static Shortlist Choice()
    {
        Requirement wanted = new Requirement(Clock()).WithEdgeTolerance(15.Percent()).WithAmplitudeTolerance(10.Percent()).WithHarmonics(5).WithWindow(1.ms()).WithSmallestDetail(100.mV()).WithChannels(2).WithSourceResistance(33.Ohm());
        return Shortlist.Of(wanted, Catalogue.Parse(File.ReadAllText(Path.Combine(Repository.Folder, "docs", "examples", "workshop-catalogue.json"))), ShortlistWeights.Default.WithPriceFactor(3));
    }

    private static (Uncertain<Voltage> Reading, Uncertain<Voltage> Gain, Uncertain<Resistance> Shunt) UncertaintyOfCurrent() => (
        Uncertain.Of(1.5.V(), Spread.Standard(2.mV()), "reading"), Uncertain.Of(0.V(), Spread.Bound(9.mV()), "gain of the digitizer"), Uncertain.Of(1.Ohm(), Spread.Expanded(0.005.Ohm(), 2), "shunt"));

    private static Uncertain<Current> Lamp((Uncertain<Voltage> Reading, Uncertain<Voltage> Gain, Uncertain<Resistance> Shunt) inputs) => (inputs.Reading + inputs.Gain) / inputs.Shunt;

    private static MonteCarloResult Trials()
    {
        var (reading, gain, shunt) = UncertaintyOfCurrent();
        return MonteCarlo.Run(reading, gain, shunt, (Voltage r, Voltage g, Resistance s) => (r + g) / s, MonteCarloOptions.Default.WithTrials(200_000).WithSeed(7));
    }

    private static AttributionResult Parts()
    {
        double[] hertz = Enumerable.Range(0, 13).Select(i => 10e6 * Math.Pow(10, i / 8.0)).ToArray();
        Sweep Path(double scatter, params double[] edges) => Sweep.OfDecibels(
            hertz, hertz.Select((f, i) => edges.Sum(edge => -3.0103 * Math.Pow(f / edge, 2)) + (scatter * Math.Sin(1.9 * i))).ToArray(), hertz.Select((_, i) => i == 0 ? 0 : 0.08).ToArray());
        return RollOffAttribution.OfElements("generator", "probe A", "probe B", "front end")
            .WithSweep(Path(0.05, 700e6, 400e6), "generator", "front end")
            .WithSweep(Path(-0.04, 700e6, 400e6, 260e6), "generator", "probe A", "front end")
            .WithSweep(Path(0.03, 700e6, 400e6, 500e6), "generator", "probe B", "front end")
            .Solve();
    }
}
