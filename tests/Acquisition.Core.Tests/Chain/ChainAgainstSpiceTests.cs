using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Numerics;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Chain;

/// <summary>Loaded networks against ngspice: its gains and steps are kept in the two tables beside this file, made by tests/scripts/chain_networks.py.</summary>
public sealed class ChainAgainstSpiceTests
{
    private static readonly Response Wire = Response.Cascade();

    private static readonly Probe TenToOne = Probe.Passive(10, 10.MOhm(), 10.pF(), Wire);

    private static FrontEnd Scope(Response own) => FrontEnd.HighImpedance(1.MOhm(), 15.pF(), own);

    /// <summary>A lossless line of a delay.</summary>
    private static Cable Line(double ohms, double nanoseconds) => new(Resistance.FromOhms(ohms), Length.FromMeters(nanoseconds * 0.299792458), 1);

    private static MeasurementChain Network(string name, Response own) => name switch
    {
        "ground-lead" => MeasurementChain.From(50.Ohm()).Probe(TenToOne.WithGroundLead(150.nH())).Into(Scope(own)),
        "damped-lead" => MeasurementChain.From(50.Ohm()).Probe(TenToOne.WithGroundLead(150.nH()).WithDamping(120.Ohm())).Into(Scope(own)),
        "overcompensated" => MeasurementChain.From(1.kOhm()).Probe(TenToOne.WithCompensation(Ratio.FromFraction(1.1))).Into(Scope(own)),
        "undercompensated" => MeasurementChain.From(1.kOhm()).Probe(TenToOne.WithCompensation(Ratio.FromFraction(0.9))).Into(Scope(own)),
        "feed-through" => MeasurementChain.From(50.Ohm()).Cable(Line(50, 5)).FeedThrough(50.Ohm()).Into(Scope(own)),
        "mismatched-line" => MeasurementChain.From(25.Ohm()).Cable(Line(75, 5)).Into(FrontEnd.FiftyOhm(own).WithInputCapacitance(3.pF())),
        "pi-pad" => MeasurementChain.From(50.Ohm()).Pad(AttenuatorPad.Pi(6.dB(), 50.Ohm())).Into(FrontEnd.FiftyOhm(own).WithInputCapacitance(5.pF())),
        "low-impedance" => MeasurementChain.From(25.Ohm()).Probe(Probe.LowImpedance(10, 0.5.pF(), Wire)).Cable(Line(50, 6)).Into(FrontEnd.FiftyOhm(own)),
        "node-with-capacitance" => MeasurementChain.From(SourceImpedance.ResistiveCapacitive(200.Ohm(), 20.pF())).Probe(TenToOne).Into(Scope(own)),
        _ => throw new InvalidOperationException(name),
    };

    private static IEnumerable<string[]> Rows(string file) =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Chain", file)).Skip(1).Select(line => line.Split(','));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    public static TheoryData<string> GainNames => new(Rows("ngspice-gains.csv").Select(row => row[0]).Distinct());

    public static TheoryData<string> StepNames => new(Rows("ngspice-steps.csv").Select(row => row[0]).Distinct());

    [Theory, MemberData(nameof(GainNames))]
    public void GainAndPhase_AgreeWithACircuitSimulator(string name)
    {
        Response response = Network(name, Wire).Response;
        foreach (string[] row in Rows("ngspice-gains.csv").Where(row => row[0] == name))
        {
            Complex gain = response.ComplexGain(Frequency.FromHertz(Number(row[1])));
            Assert.True(Complex.Abs(gain - new Complex(Number(row[2]), Number(row[3]))) < 2e-7, $"{name} at {row[1]} Hz: {gain} against {row[2]}, {row[3]}");
        }
    }

    [Theory, MemberData(nameof(StepNames))]
    public void Step_AgreesWithACircuitSimulator(string name)
    {
        // The simulator's own error in time, with steps of a few picoseconds and second-order integration, is about 1e-3.
        Response response = Network(name, Response.SinglePole(500.MHz())).Response;
        double worst = 0;
        foreach (string[] row in Rows("ngspice-steps.csv").Where(row => row[0] == name))
            worst = Math.Max(worst, Math.Abs(response.StepAt(Duration.FromSeconds(Number(row[1]))).Fraction - Number(row[2])));
        Assert.InRange(worst, 0, 2e-3);
    }
}
