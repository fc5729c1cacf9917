using System;
using System.Linq;
using System.Numerics;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Chain;

public sealed class MeasurementChainTests
{
    private static readonly FrontEnd Input = FrontEnd.HighImpedance(1.MOhm(), 15.pF(), Response.Gaussian(200.MHz()));

    private static readonly Probe TenToOne = Probe.Passive(10, 10.MOhm(), 10.pF(), 200.MHz());

    [Fact]
    public void AnIdealSource_IsNotLoaded()
    {
        MeasurementChain chain = MeasurementChain.From(SourceImpedance.None).Probe(TenToOne).Into(Input);

        Assert.Equal(1, chain.Loading.AmplitudeRatio(100.MHz()).Fraction, 12);
        Assert.Equal(Response.Gaussian(200.MHz()).Then(Response.Gaussian(200.MHz())).AmplitudeRatio(100.MHz()).Fraction, chain.Response.AmplitudeRatio(100.MHz()).Fraction, 12);
    }

    [Fact]
    public void ACompensatedProbe_OnAThousandOhms_LoadsLikeItsResistanceAndCapacitance()
    {
        // handbook 7.1 and LD-006: 10 MΩ beside 10 pF on 1 kΩ at 10 MHz.
        MeasurementChain chain = MeasurementChain.From(1.kOhm()).Probe(TenToOne).Into(Input);

        Assert.Equal(0.846672312358618, chain.Loading.AmplitudeRatio(10.MHz()).Fraction, 11);
        Assert.Equal(-32.1393267758991, chain.Loading.Phase(10.MHz()).Degrees, 9);
    }

    [Fact]
    public void ThePartsOfAChain_MultiplyToTheWhole()
    {
        MeasurementChain chain = MeasurementChain.From(50.Ohm()).Probe(TenToOne.WithGroundLead(150.nH())).Into(Input);

        foreach (Frequency f in new[] { 1.kHz(), 1.MHz(), 30.MHz(), 100.MHz(), 300.MHz() })
        {
            Complex product = chain.Loading.ComplexGain(f) * chain.ResponseFromTip.ComplexGain(f);
            Assert.True(Complex.Abs(product - chain.Response.ComplexGain(f)) < 1e-11, f.ToString());
        }
    }
}
