using System;
using Acquisition.Core.Literals;
using Acquisition.Core.Signals;
using Acquisition.Core.Tests.Conventions;
using Xunit;

namespace Acquisition.Core.Tests.Signals;

/// <summary>Where each waveform ends: what cannot be is refused by name, what lies on the edge is made.</summary>
public sealed class SignalLimitsTests
{
    private static readonly BitRate Rate = BitRate.FromMegabitsPerSecond(100);

    public static TheoryData<Refusal> Refusals => new(
        new("sine of no frequency", () => Signal.Sine(default, 1.Vpk()), "frequency", "0 Hz"),
        new("sine of no amplitude", () => Signal.Sine(1.MHz(), default), "amplitude", "0 V"),
        new("square of no swing", () => Signal.Square(1.MHz(), default), "swing", "0 V"),
        new("never high", () => Signal.Square(1.MHz(), 1.Vpp(), default(Ratio)), "duty", "above 0"),
        new("always high", () => Signal.Trapezoid(1.MHz(), 1.Vpp(), 100.Percent(), 1.ns(), 1.ns()), "duty", "below 1"),
        new("ramps longer than the top", () => Signal.Square(1.MHz(), 1.Vpp(), 10.Percent(), 81.ns()), "riseTime", "100 ns"),
        new("ramps longer than the bottom", () => Signal.Square(1.MHz(), 1.Vpp(), 90.Percent(), 81.ns()), "riseTime", "100 ns"),
        new("fall longer than the bottom", () => Signal.Trapezoid(1.MHz(), 1.Vpp(), 90.Percent(), 1.ns(), 160.ns()), "riseTime", "a triangle"),
        new("Gaussian edges too slow", () => Signal.Square(1.MHz(), 1.Vpp(), 150.ns(), EdgeShape.Gaussian), "riseTime", "a jump through a response"),
        new("pulse as long as its period", () => Signal.PulseTrain(1.MHz(), 1.Vpp(), 1.us()), "width", "1 µs"),
        new("pulse of no width", () => Signal.PulseTrain(1.MHz(), 1.Vpp(), default), "width", "0 s"),
        new("single pulse of edges alone", () => Signal.SinglePulse(1.Vpp(), 10.ns(), 9.ns()), "riseTime", "10 ns"),
        new("tones in unison", () => Signal.TwoTone(1.MHz(), 1.Vpk(), 1.MHz(), 2.Vpk()), "second", "another frequency"),
        new("second tone of no frequency", () => Signal.TwoTone(1.MHz(), 1.Vpk(), default, 2.Vpk()), "second", "0 Hz"),
        new("first tone of no frequency", () => Signal.TwoTone(default, 1.Vpk(), 1.MHz(), 2.Vpk()), "first", "0 Hz"),
        new("burst of no cycle", () => Signal.Burst(1.MHz(), 1.Vpk(), 0, 1.ms()), "cycles", "was 0"),
        new("burst longer than its period", () => Signal.Burst(1.MHz(), 1.Vpk(), 11, 10.us()), "repetition", "11 µs"),
        new("random bits of edges alone", () => Signal.RandomBits(Rate, 1.Vpp(), 8.1.ns()), "riseTime", "10 ns"),
        new("pattern of edges alone", () => Signal.BitPattern(new[] { true, false }, Rate, 1.Vpp(), 8.1.ns()), "riseTime", "10 ns"),
        new("register of one", () => Signal.PseudoRandomBits(1, Rate, 1.Vpp()), "order", "was 1"),
        new("register of 17", () => Signal.PseudoRandomBits(17, Rate, 1.Vpp()), "order", "was 17"),
        new("ones only", () => Signal.BitPattern(new[] { true, true }, Rate, 1.Vpp()), "bits", "at least one 0"),
        new("zeros only", () => Signal.BitPattern(new[] { false, false }, Rate, 1.Vpp()), "bits", "at least one 0"),
        new("no bits", () => Signal.BitPattern(null!, Rate, 1.Vpp()), "bits", "bits"),
        new("edge before its cause", () => _ = new Edge(-(1.ps())), "riseTime", "at least 0 s"),
        new("edge of an unknown shape", () => _ = new Edge(1.ns(), (EdgeShape)3), "shape", "was 3"),
        new("corner of no width", () => EnvelopeCorners.OfWidth(default), "width", "0 s"),
        new("noise never inside", () => GaussianNoise.BandFor(1.mVrms(), default), "share", "above 0"),
        new("noise always inside", () => GaussianNoise.BandFor(1.mVrms(), 100.Percent()), "share", "below 1"),
        new("no noise outside", () => GaussianNoise.ShareOutside(default, 1.mVpp()), "rms", "0 V"),
        new("spread of one sample", () => GaussianNoise.ExpectedPeakToPeak(1.mVrms(), 1.pts()), "samples", "at least 2"),
        new("harmonic below DC", () => Signal.Sine(1.MHz(), 1.Vpk()).Harmonic(-1), "number", "was -1"),
        new("no harmonics", () => Signal.Sine(1.MHz(), 1.Vpk()).Harmonics(0), "count", "was 0"),
        new("power of no harmonic", () => Signal.Sine(1.MHz(), 1.Vpk()).PowerUpToHarmonic(0), "number", "was 0"),
        new("band from below DC", () => Signal.Sine(1.MHz(), 1.Vpk()).PowerWithin(-(1.Hz()), 1.MHz()), "from", "at least 0 Hz"),
        new("band upside down", () => Signal.Sine(1.MHz(), 1.Vpk()).PowerWithin(2.MHz(), 1.MHz()), "to", "at least 2 MHz"),
        new("density below DC", () => Signal.SinglePulse(1.Vpp(), 1.ns()).SpectrumAt(-(1.Hz())), "frequency", "at least 0 Hz"));

    [Theory, MemberData(nameof(Refusals))]
    public void WhatCannotBe_IsRefusedByName(Refusal refusal) => refusal.Confirm();

    /// <summary>Edges may touch: the whole ramp of 400 ns between 10 % and 90 % is 500 ns, half a period of 1 MHz.</summary>
    [Fact]
    public void WhatJustFits_IsMade()
    {
        Signal touching = Signal.Square(1.MHz(), 2.Vpp(), 400.ns()), triangle = Signal.Triangle(1.MHz(), 2.Vpp());
        Assert.Equal(triangle.ValueAt(70.ns()).Volts, touching.ValueAt(70.ns()).Volts, 1e-12);
        Assert.Equal(400, touching.RiseTime.Nanoseconds, 1e-9);
        Assert.Equal(8, Signal.SinglePulse(1.Vpp(), 10.ns(), 8.ns()).RiseTime.Nanoseconds, 1e-9);
        Assert.Equal(8, Signal.RandomBits(Rate, 1.Vpp(), 8.ns()).RiseTime.Nanoseconds, 1e-9);
        // Bursts without a pause are a sine.
        Assert.Equal(Math.Sqrt(0.5), Signal.Burst(1.MHz(), 1.Vpk(), 10, 10.us()).Rms.Volts, 1e-12);
        Assert.Equal(3, Signal.PseudoRandomBits(2, 3.bitPerS(), 1.Vpp()).Period!.Value.Seconds * 3, 1e-12);
        Assert.Equal(1 / 65535.0, Signal.PseudoRandomBits(16, 1.bitPerS(), 1.Vpp()).Fundamental!.Value.Hertz, 1e-12);
        Assert.Equal(2047, Signal.PseudoRandomBits(11, 1.bitPerS(), 1.Vpp()).Period!.Value.Seconds, 1e-6);
    }

    [Fact]
    public void WhatHappensOnce_HasNoHarmonicsAndNoRms()
    {
        Signal pulse = Signal.SinglePulse(1.Vpp(), 10.ns());
        Assert.Throws<InvalidOperationException>(() => pulse.Harmonic(1));
        Assert.Throws<InvalidOperationException>(() => pulse.PowerUpToHarmonic(1));
        Assert.Throws<InvalidOperationException>(() => pulse.CrestFactor);
        Assert.Throws<InvalidOperationException>(() => pulse.FormFactor);
        Assert.Throws<InvalidOperationException>(() => pulse.AverageRespondingMeterError);
        Assert.Throws<InvalidOperationException>(() => pulse.WithOffset(1.mV()).SpectrumAt(1.MHz()));
        Assert.Throws<InvalidOperationException>(() => Signal.Step(1.Vpp()).WithOffset(1.mV()).SpectrumAt(1.MHz()));
        Assert.Throws<InvalidOperationException>(() => Signal.Sine(1.MHz(), 1.Vpk()).SpectrumAt(1.MHz()));
        Assert.Throws<NotSupportedException>(() => Signal.RandomBits(Rate, 1.Vpp()).ValueAt(default));
        Assert.Throws<InvalidOperationException>(() => Signal.RandomBits(Rate, 1.Vpp()).Harmonic(1));
    }
}
