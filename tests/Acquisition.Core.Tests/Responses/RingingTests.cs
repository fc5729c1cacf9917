using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>Resonances that hardly decay. A second-order step is in every textbook of control: overshoot exp(-πζ/√(1-ζ²)), envelope exp(-ζω0t)/√(1-ζ²).</summary>
public sealed class RingingTests
{
    private static readonly Frequency Natural = 100.MHz();

    private static Response Resonator(double quality, Frequency natural) =>
        new FactoredResponse("resonator", new Factors(1, [Section.Poles(1 / (quality * 2 * Math.PI * natural.Hertz), Math.Pow(2 * Math.PI * natural.Hertz, -2))], 0, 0));

    /// <summary>∫|H|² df of a second-order low-pass is π/2 · f0 · Q (communications handbooks; from memory).</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(3e3)]
    [InlineData(3e6)]
    public void NoiseBandwidthOfASharpResonance_IsHalfPiTimesQ(double quality) =>
        Assert.Equal(1, Resonator(quality, Natural).NoiseBandwidth.Hertz / (Math.PI / 2 * quality * Natural.Hertz), 1e-8);

    [Theory]
    [InlineData(30)]
    [InlineData(300)]
    [InlineData(3e4)]
    [InlineData(3e6)]
    public void StepOfASharpResonance_OvershootsAsTheTextbookSays(double quality)
    {
        double damping = 0.5 / quality;

        Assert.Equal(Math.Exp(-Math.PI * damping / Math.Sqrt(1 - damping * damping)), Resonator(quality, Natural).Overshoot.Fraction, 1e-9);
    }

    [Theory]
    [InlineData(30, 0.01)]
    [InlineData(150, 1e-4)]
    [InlineData(300, 1e-6)]
    [InlineData(3e4, 0.01)]
    [InlineData(3e5, 0.5)]
    [InlineData(3e6, 1e-6)]
    public void StepOfASharpResonance_SettlesAsItsEnvelopeSays(double quality, double band)
    {
        double damping = 0.5 / quality, omega = 2 * Math.PI * Natural.Hertz;
        double envelope = Math.Log(1 / (band * Math.Sqrt(1 - damping * damping))) / (damping * omega);

        double settling = Resonator(quality, Natural).SettlingTime(Ratio.FromFraction(band)).Seconds;

        // The last crossing lies within the last half period before the envelope's, or one more where the slow decay just clears a peak.
        Assert.InRange(settling, envelope - 1.01 * Math.PI / omega, envelope);
        Assert.True(Math.Abs(Resonator(quality, Natural).StepAt(Duration.FromSeconds(settling)).Fraction - 1) - band < 1e-7);
    }

    [Fact]
    public void SharpResonanceBehindAGaussian_SettlesToo_AndAsLateAsItsAmplitudeSays()
    {
        double quality = 3e4, omega = 2 * Math.PI * Natural.Hertz, decay = omega / (2 * quality);
        Response gaussian = Response.Gaussian(200.MHz());
        double amplitude = gaussian.AmplitudeRatio(Natural).Fraction;

        double settling = Resonator(quality, Natural).Then(gaussian).SettlingTime(1.Percent()).Seconds;

        Assert.InRange(settling, Math.Log(amplitude / 0.01) / decay - 2 * Math.PI / omega, Math.Log(amplitude / 0.01) / decay + 2 * Math.PI / omega);
    }

    [Fact]
    public void TwoSharpResonances_AreRefused_WithTheReasonAndTheRemedy()
    {
        Response both = Resonator(1e5, Natural).Then(Resonator(2e5, 130.MHz()));

        var refusal = Assert.Throws<InvalidOperationException>(() => both.SettlingTime(1.Percent()));

        Assert.Contains("Q = 2E+05 at 130 MHz", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("add damping", refusal.Message, StringComparison.Ordinal);
    }

    /// <summary>A scan that follows every period of a resonance for Q times ten of them took minutes: it is looked at for 500 periods behind a Gaussian, some 13 times in each, and no more.</summary>
    [Fact]
    public void ProbeOnAnIdealSource_IsAnsweredFromABoundedScan()
    {
        Probe probe = Probe.Passive(10, 10.MOhm(), 16.pF(), 200.MHz()).WithGroundLead(15.mm());
        MeasurementChain chain = MeasurementChain.From(0.Ohm()).Probe(probe).Into(FrontEnd.HighImpedance(1.MOhm(), 16.pF(), Response.Gaussian(200.MHz())));

        Assert.True(chain.Response.RiseTime > 0.1.ns());
        Assert.True(chain.Response.Overshoot > 5.Percent());
        Assert.True(chain.Response.SettlingTime(1.Percent()) > 10.us());
        Assert.True(chain.Response.NoiseBandwidth > 100.MHz());
        Assert.Contains("rings-on", chain.Findings.Select(finding => finding.Code));
        Assert.InRange(chain.Response.StepResponse.Times.Count, 500, 20_000);
    }
}
