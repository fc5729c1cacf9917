using System;
using System.Linq;
using System.Numerics;
using Acquisition.Core.Literals;
using FsCheck.Xunit;
using MathNet.Numerics.LinearAlgebra;
using Xunit;

namespace Acquisition.Core.Tests.Chain;

/// <summary>What must hold for any network.</summary>
public sealed class ChainLawTests
{
    private static readonly Response Wire = Response.Cascade();

    private static double Between(double low, double high, int seed) => low * Math.Pow(high / low, Math.Abs((long)seed % 100_003) / 100_003.0);

    [Property]
    public bool AMatchedPad_LosesItsDecibels_AndShowsItsImpedance(int a, int b, bool isPi)
    {
        DecibelRatio loss = DecibelRatio.FromDecibels(Between(0.01, 80, a));
        Resistance z = Resistance.FromOhms(Between(10, 1000, b));
        AttenuatorPad pad = isPi ? AttenuatorPad.Pi(loss, z) : AttenuatorPad.Tee(loss, z);
        MeasurementChain chain = MeasurementChain.From(z).Pad(pad).Into(FrontEnd.HighImpedance(z, default, Wire));
        // The display multiplies the pad back: what is left is the half of a matched source.
        return Math.Abs(pad.Loss.Decibels / loss.Decibels - 1) < 1e-9
            && Math.Abs(chain.InputOhmsAt(1.MHz()).Real / z.Ohms - 1) < 1e-9
            && Math.Abs(chain.Response.AmplitudeRatio(1.MHz()).Fraction - 0.5) < 1e-12
            && Math.Abs(chain.NominalAttenuationFactor / loss.ToAmplitudeRatio().Fraction - 1) < 1e-9;
    }

    [Property]
    public bool AMinimumLossPad_MatchesBothSides(int a, int b)
    {
        Resistance zs = Resistance.FromOhms(Between(10, 1000, a)), zl = Resistance.FromOhms(Between(11, 990, b));
        if (Math.Abs(zs.Ohms / zl.Ohms - 1) < 1e-3)
            return true;
        double Input(Resistance from, Resistance to) => MeasurementChain.From(from).Pad(AttenuatorPad.MinimumLoss(from, to)).Into(FrontEnd.HighImpedance(to, default, Wire)).InputOhmsAt(1.MHz()).Real;
        return Math.Abs(Input(zs, zl) / zs.Ohms - 1) < 1e-6 && Math.Abs(Input(zl, zs) / zl.Ohms - 1) < 1e-6;
    }

    [Property]
    public bool AMatchedCable_LosesItsLoss_AndNothingElse(int a, int b, int c)
    {
        CableLoss loss = CableLoss.FromPoints(100.MHz(), 1.dB(), 1.GHz(), DecibelRatio.FromDecibels(3.2 + Between(0.01, 5, a)));
        var cable = new Cable(50.Ohm(), Length.FromMeters(Between(0.1, 20, b)), 0.66).WithLoss(loss);
        Frequency f = Frequency.FromHertz(Between(1e5, 3e9, c));
        Response response = MeasurementChain.From(50.Ohm()).Cable(cable).Into(FrontEnd.FiftyOhm(Wire)).Response;
        return Math.Abs((response.Gain(f) - response.ReferenceGain + loss.At(f)).Decibels) < 1e-9;
    }

    [Property]
    public bool ACascade_IsWhatTheNodeEquationsSay(int a, int b, int c, int d, int e, int g)
    {
        double rs = Between(1, 1e4, a), l = Between(1e-9, 1e-6, b), c1 = Between(1e-13, 1e-10, c), r2 = Between(10, 1e6, d), cl = Between(1e-13, 1e-10, e), rl = Between(50, 1e6, a);
        Frequency f = Frequency.FromHertz(Between(1e3, 1e9, g));
        Probe probe = Probe.Active(1, Resistance.FromOhms(r2), Capacitance.FromFarads(c1), Wire).WithGroundLead(Inductance.FromHenries(l));
        MeasurementChain chain = MeasurementChain.From(Resistance.FromOhms(rs))
            .Load(new NodeLoad(Resistance.FromOhms(rl), Capacitance.FromFarads(cl)))
            .Probe(probe)
            .Into(FrontEnd.FiftyOhm(Wire));

        // Nodes: 1 behind the source, 2 behind the lead. Currents into each sum to zero.
        Complex s = new(0, 2 * Math.PI * f.Hertz), ys = 1 / rs, yl = 1 / (s * l), y1 = 1 / rl + s * cl, y2 = 1 / r2 + s * c1;
        Matrix<Complex> y = Matrix<Complex>.Build.DenseOfArray(new[,] { { ys + y1 + yl, -yl }, { -yl, yl + y2 } });
        Complex expected = y.Solve(MathNet.Numerics.LinearAlgebra.Vector<Complex>.Build.Dense([ys, Complex.Zero]))[1];
        return Complex.Abs(chain.Response.ComplexGain(f) - expected) < 1e-8 * Math.Max(Complex.Abs(expected), 1e-3);
    }

    [Property]
    public bool APassiveNetwork_IsReciprocal(int a, int b, int c, int g)
    {
        // Turned round, source and load exchanged, a passive network transmits the same: H/RL there is H/Rs here.
        Resistance rs = Resistance.FromOhms(Between(10, 1000, a)), rl = Resistance.FromOhms(Between(10, 1000, b));
        Cable cable = new Cable(75.Ohm(), 1.m(), 0.66).WithLoss(CableLoss.FromPoint(1.GHz(), 1.dB()));
        var stray = new NodeLoad(1.MOhm(), Capacitance.FromFarads(Between(1e-13, 1e-11, c)));
        AttenuatorPad pad = AttenuatorPad.Pi(3.dB(), 50.Ohm());
        Frequency f = Frequency.FromHertz(Between(1e5, 1e9, g));
        Complex there = MeasurementChain.From(rs).Load(stray).Cable(cable).Pad(pad).Into(FrontEnd.HighImpedance(rl, default, Wire)).Response.ComplexGain(f);
        Complex back = MeasurementChain.From(rl).Pad(pad).Cable(cable).Load(stray).Into(FrontEnd.HighImpedance(rs, default, Wire)).Response.ComplexGain(f);
        return Complex.Abs(there / rl.Ohms - back / rs.Ohms) < 1e-10 * Complex.Abs(there / rl.Ohms);
    }

    [Property]
    public bool MoreCapacitanceAtTheTip_NeverLoadsLess(int a, int b, int c)
    {
        Resistance rs = Resistance.FromOhms(Between(1, 1e4, a));
        double farads = Between(1e-13, 1e-11, b), more = farads * 1.5;
        Frequency f = Frequency.FromHertz(Between(1e3, 1e9, c));
        Ratio Loaded(double cIn) => MeasurementChain.From(rs).Probe(Probe.Active(10, 1.MOhm(), Capacitance.FromFarads(cIn), Wire)).Into(FrontEnd.FiftyOhm(Wire)).Loading.AmplitudeRatio(f);
        return Loaded(more) <= Loaded(farads);
    }

    [Property]
    public bool AnImpedanceLevel_DoesNotMatter(int a, int b, int c)
    {
        // All resistances times k, all capacitances over k: the same response.
        double rs = Between(1, 1e3, a), k = Between(0.1, 10, b);
        Frequency f = Frequency.FromHertz(Between(1e3, 1e9, c));
        Complex At(double level) => MeasurementChain.From(Resistance.FromOhms(rs * level))
            .Into(FrontEnd.HighImpedance(Resistance.FromOhms(1e6 * level), Capacitance.FromFarads(15e-12 / level), Wire)).Response.ComplexGain(f);
        return Complex.Abs(At(1) - At(k)) < 1e-12;
    }

    [Property(MaxTest = 30)]
    public bool ACompensatedProbe_IsFlat_WhateverItsNumbers(int a, int b, int c)
    {
        double ratio = Between(2, 100, a), resistance = 1e6 * ratio, capacitance = Between(20e-12, 100e-12, b) / ratio;
        Frequency f = Frequency.FromHertz(Between(1, 1e9, c));
        Probe probe = Probe.Passive(ratio, Resistance.FromOhms(resistance), Capacitance.FromFarads(capacitance), Wire);
        Response response = MeasurementChain.From(SourceImpedance.None).Probe(probe).Into(FrontEnd.HighImpedance(1.MOhm(), 15.pF(), Wire)).Response;
        return Math.Abs(response.AmplitudeRatio(f).Fraction - 1) < 1e-9;
    }

    [Fact]
    public void AMovedProbe_IsOutOfTrim_AsMuchAsTheInputsDiffer()
    {
        // Trimmed on 15 pF, moved to 20 pF: C2 is 105 pF instead of 100 pF, so the step starts at 100/9/(100/9 + 105) · 10.
        Probe probe = Probe.Passive(10, 10.MOhm(), 10.pF(), Wire).WithCompensationOn(15.pF());
        Response response = MeasurementChain.From(SourceImpedance.None).Probe(probe).Into(FrontEnd.HighImpedance(1.MOhm(), 20.pF(), Wire)).Response;

        double c1 = 100.0 / 9;
        Assert.Equal(10 * c1 / (c1 + 105), response.StepAt(default).Fraction, 9);
        Assert.Equal(1, response.AmplitudeRatio(default).Fraction, 12);
    }

    [Fact]
    public void TheOrderOfMismatchedElements_Matters()
    {
        var cable = new Cable(75.Ohm(), 1.m(), 0.66);
        var stray = new NodeLoad(1.MOhm(), 10.pF());
        FrontEnd input = FrontEnd.FiftyOhm(Wire);

        Ratio before = MeasurementChain.From(25.Ohm()).Load(stray).Cable(cable).Into(input).Response.AmplitudeRatio(300.MHz());
        Ratio after = MeasurementChain.From(25.Ohm()).Cable(cable).Load(stray).Into(input).Response.AmplitudeRatio(300.MHz());

        Assert.True(Math.Abs((before - after).Fraction) > 0.01);
    }

    [Fact]
    public void AnAbsorbingLimiter_BetweenMatchedEnds_IsItsResponse()
    {
        Response filter = Response.Butterworth(4, 100.MHz());
        Response response = MeasurementChain.From(50.Ohm()).Limiter(new BandwidthLimiter(filter, 50.Ohm())).Into(FrontEnd.FiftyOhm(Wire)).Response;

        Assert.Equal(0.5, response.AmplitudeRatio(default).Fraction, 12);
        Assert.Equal(0.5 * filter.AmplitudeRatio(150.MHz()).Fraction, response.AmplitudeRatio(150.MHz()).Fraction, 12);
    }

    [Fact]
    public void PreferredResistors_KeepTheLossOfAPadWithinTheirSteps()
    {
        AttenuatorPad pad = AttenuatorPad.Pi(10.dB(), 50.Ohm()).WithNearest(PreferredValues.E24);

        Assert.Equal([100, 68, 100], new[] { pad.First.Ohms, pad.Middle.Ohms, pad.Last.Ohms }.Select(x => Math.Round(x, 6)));
        Assert.InRange(pad.Loss.Decibels, 9.5, 10.5);
    }

    [Fact]
    public void MismatchLimits_BoundTheRippleOfALine()
    {
        // 75 Ω line between 50 Ω and 60 Ω: the gain ripples between the limits of handbook 7.7.
        var cable = new Cable(75.Ohm(), 1.m(), 1);
        Response response = MeasurementChain.From(50.Ohm()).Cable(cable).Into(FrontEnd.HighImpedance(60.Ohm(), default, Wire)).Response;
        double[] gains = Enumerable.Range(1, 2000).Select(i => response.Gain(Frequency.FromMegahertz(i * 0.5)).Decibels).ToArray();
        Ratio g1 = Mismatch.Reflection(75.Ohm(), 50.Ohm()), g2 = Mismatch.Reflection(75.Ohm(), 60.Ohm());

        Assert.Equal((Mismatch.UpperLimit(g1, g2) - Mismatch.LowerLimit(g1, g2)).Decibels, gains.Max() - gains.Min(), 4);
    }
}
