using System;
using System.Globalization;
using System.Linq;
using System.Text.RegularExpressions;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Remedies go by the cause, and a remedy that holds a number does what it says: applied, the finding is gone.</summary>
public sealed class DisplayRemedyTests
{
    private static readonly Digitizer Bench = new(5.GSaPerS(), 10.Mpts(), 8.bit());

    private static FrontEnd Input(int megahertz = 500) => FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(megahertz.MHz()));

    private static FrontEnd Fifty => FrontEnd.FiftyOhm(Response.Gaussian(500.MHz()));

    private static Probe Tip(int megahertz = 500) => Probe.Passive(10, 10.MOhm(), 10.pF(), megahertz.MHz());

    private static Outlook Seen(Signal signal, MeasurementChain chain) => signal.Through(chain).SampledBy(Bench).Over(20.us());

    private static Outlook Seen(Signal signal, Response response) => signal.Through(response).SampledBy(Bench).Over(20.us());

    private static Finding? Of(Outlook outlook, string code) => outlook.Findings.SingleOrDefault(finding => finding.Code == code);

    /// <summary>The quantity that the pattern finds in a text.</summary>
    private static Quantity Number(string? text, string pattern) => Quantity.Parse(Regex.Match(text ?? "", pattern + @"([0-9.E+-]+ ?\S+?)[,;)]?(?=\s|$)").Groups[1].Value);

    // 120 MHz lies near the resonance of 150 nH with 10 pF, 129.9 MHz (handbook 7.4).
    [Fact]
    public void ALeadThatRings_ShowsTooMuch_AndAShorterOneOrAResistorCures()
    {
        Signal signal = Signal.Sine(120.MHz(), 0.5.Vpk());
        Outlook With(Probe probe) => Seen(signal, MeasurementChain.From(50.Ohm()).Probe(probe).Into(Input()));
        Finding high = Of(With(Tip().WithGroundLead(150.mm())), "amplitude-high")!;
        Assert.Equal(Severity.Failure, high.Severity);
        Assert.Contains("too much", high.Message, StringComparison.Ordinal);
        double henries = Number(high.Remedy, "a ground lead of at most ").SiValue;
        Assert.InRange(henries, 3e-9, 150e-9);
        Assert.Null(Of(With(Tip().WithGroundLead(Inductance.FromHenries(henries))), "amplitude-high"));
        double ohms = Number(high.Remedy, "a resistor of ").SiValue;
        Assert.Null(Of(With(Tip().WithGroundLead(150.mm()).WithDamping(Resistance.FromOhms(ohms))), "amplitude-high"));
    }

    // By hand: R1 = 9 MΩ, C1 = 1.2 x 11.11 pF, R2 = 1 MΩ, C2 = 100 pF (handbook 7.3): 10 x 13.33/113.33 - 1 = 17.65 %.
    [Fact]
    public void AProbeOutOfTrim_HasAFindingOfItsOwn_AndItsRemedyIsTheTrimmer()
    {
        MeasurementChain chain = MeasurementChain.From(50.Ohm()).Probe(Tip().WithCompensation(120.Percent())).Into(Input());
        Outlook outlook = Seen(Signal.Sine(1.MHz(), 0.5.Vpk()), chain);
        Finding trim = Assert.Single(chain.Findings, finding => finding.Code == "probe-not-compensated");
        Assert.Contains("17.65 %", trim.Message, StringComparison.Ordinal);
        Assert.Contains("overcompensated", trim.Message, StringComparison.Ordinal);
        Assert.Contains("compensation", Of(outlook, "amplitude-high")!.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain(MeasurementChain.From(50.Ohm()).Probe(Tip()).Into(Input()).Findings, finding => finding.Code == "probe-not-compensated");
    }

    // Moved from an input of 14 pF to one of 24 pF the far end holds 110 pF instead of 100 pF: 10 x 11.11/121.11 - 1 = -8.26 %.
    [Fact]
    public void AProbeCompensatedOnAnotherInput_IsUndercompensatedOnALargerOne()
    {
        MeasurementChain chain = MeasurementChain.From(50.Ohm()).Probe(Tip().WithCompensationOn(14.pF())).Into(Input().WithInputCapacitance(24.pF()));
        Finding trim = Assert.Single(chain.Findings, finding => finding.Code == "probe-not-compensated");
        Assert.Contains("undercompensated", trim.Message, StringComparison.Ordinal);
        Assert.Contains("8.26 %", trim.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(80, "edge-slowed")]
    [InlineData(120, "chain-overshoots")]
    public void ASlowSquareBehindAProbeOutOfTrim_IsNotCuredByAnotherChain(int percent, string code)
    {
        Finding finding = Of(Signal.Square(1.kHz(), 1.Vpp(), 10.ns()).Through(MeasurementChain.From(50.Ohm()).Probe(Tip().WithCompensation(percent.Percent())).Into(Input())).SampledBy(Bench).Over(1.ms()), code)!;
        Assert.Contains("adjust the compensation", finding.Remedy, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\d{4,} %", finding.Message);
    }

    [Fact]
    public void ACableThatEndsOpen_IsTerminated()
    {
        MeasurementChain open = MeasurementChain.From(10.Ohm()).Cable(new Cable(50.Ohm(), 1.m(), 0.66)).Into(Input());
        Finding high = Of(Seen(Signal.Square(10.MHz(), 1.Vpp(), 2.ns()), open), "amplitude-high")!;
        Assert.Contains("terminate", high.Remedy, StringComparison.Ordinal);
        Assert.Contains("50 Ω", high.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void AProbeOnAnInputItIsNotMadeFor_NeedsThatInput_NotMoreBandwidth()
    {
        Outlook outlook = Seen(Signal.Square(1.MHz(), 1.Vpp(), 5.ns()), MeasurementChain.From(50.Ohm()).Probe(Tip()).Into(Fifty));
        foreach (Finding finding in outlook.Findings.Where(finding => finding.Code is "amplitude-short" or "amplitude-high" or "chain-overshoots" or "edge-slowed"))
        {
            Assert.Contains("1 MΩ", finding.Remedy, StringComparison.Ordinal);
            Assert.DoesNotMatch(@"\d{4,} %", finding.Message);
        }
        Outlook doubled = Seen(Signal.Sine(1.MHz(), 0.1.Vpk()), MeasurementChain.From(50.Ohm()).Probe(Probe.Active(10, 1.MOhm(), 1.pF(), Response.Gaussian(1.GHz()))).Into(Input()));
        Assert.Contains("50 Ω", Of(doubled, "amplitude-high")!.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain(doubled.Findings, finding => (finding.Remedy ?? "").Contains("a higher input resistance", StringComparison.Ordinal));
    }

    [Fact]
    public void AnErrorAtDc_IsSaidOnce_AndCuredByLessLoad()
    {
        Outlook outlook = Seen(Signal.Sine(1.MHz(), 0.5.Vpk()), MeasurementChain.From(50.Ohm()).Into(Fifty));
        string remedy = Of(outlook, "amplitude-short")!.Remedy!;
        Assert.Contains("less load", remedy, StringComparison.Ordinal);
        Assert.Contains("factor 2", remedy, StringComparison.Ordinal);
        Assert.Null(Of(outlook, "dc-error"));
    }

    // |sin(πN f/fs) / (N sin(π f/fs))| = 0.98 at N = 552.997 for 1 MHz and 5 GSa/s (handbook 5.5, by bisection in Python).
    [Fact]
    public void AMeanOfTooManySamples_IsCuredByFewer()
    {
        SampledSignal setup = Signal.Sine(1.MHz(), 25.mVpk()).Through(Response.Gaussian(350.MHz())).SampledBy(Bench);
        Outlook outlook = setup.WithHighResolution(1000).Over(20.us()), whole = setup.WithHighResolution(5000).WithFullScale(80.mVpp()).Over(20.us());
        Finding shortened = Of(outlook, "amplitude-short")!;
        int most = int.Parse(Regex.Match(shortened.Remedy!, @"at most (\d+) samples").Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.Equal(552, most);
        Assert.Null(Of(setup.WithHighResolution(most).Over(20.us()), "amplitude-short"));
        Assert.DoesNotContain("Infinity", whole.ToString(), StringComparison.Ordinal);
        Assert.Null(Of(whole, "range-mostly-empty"));
    }

    [Fact]
    public void AnEdgeSlowedByTheMean_IsNotBlamedOnTheChain()
    {
        SampledSignal setup = Signal.Square(1.MHz(), 1.Vpp(), 5.ns()).Through(Response.Gaussian(500.MHz())).SampledBy(Bench);
        string remedy = Of(setup.WithHighResolution(32).Over(20.us()), "edge-slowed")!.Remedy!;
        int most = int.Parse(Regex.Match(remedy, @"at most (\d+) samples").Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.Null(Of(setup.WithHighResolution(most).Over(20.us()), "edge-slowed"));
    }

    // A ramp of 3.5 ns behind a Gaussian of deviation σ is (σ/T) [G(t/σ) - G((t - T)/σ)] with G(x) = x Φ(x) + φ(x); its 10 % to 90 % is 5 % and 10 % longer than 2.8 ns at 300.989 MHz and 229.932 MHz
    // (math.erf of Python and bisection).
    [Theory]
    [InlineData(5, EdgeNumbers.FivePercent)]
    [InlineData(10, EdgeNumbers.TenPercent)]
    public void TheRemedyOfASlowedEdge_IsWhatTheSpecificationAsksFor(int percent, double megahertz)
    {
        Signal clock = Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns());
        Requirement wanted = new Requirement(clock).WithEdgeTolerance(percent.Percent()).WithWindow(1.us());
        double specified = wanted.Specify().Bandwidth!.Value.Hertz;
        Outlook outlook = new(clock.Through(Response.Gaussian(150.MHz())).SampledBy(Bench), Bench.TimebaseFor(1.us()), wanted);
        double cured = Number(Of(outlook, "edge-slowed")!.Remedy, "a chain of at least ").SiValue;
        Assert.Equal(1e6 * megahertz, specified, 1e-4 * specified);
        Assert.InRange(cured, specified, 1.001 * specified);
    }

    private static class EdgeNumbers
    {
        public const double FivePercent = 300.989;
        public const double TenPercent = 229.932;
    }

    // 800 ps of a clock: three times its knee would take a lead of 721 pH, which nobody can make.
    [Fact]
    public void WhereNoLeadIsShortEnough_AnotherProbeIsNamed()
    {
        Signal clock = Signal.Square(100.MHz(), 1.Vpp(), 0.8.ns());
        Outlook With(Probe probe) => Seen(clock, MeasurementChain.From(50.Ohm()).Probe(probe).Into(Input()));
        string remedy = Of(With(Tip().WithGroundLead(20.mm())), "lead-resonance-low")!.Remedy!;
        Assert.DoesNotContain("of lead, keeps", remedy, StringComparison.Ordinal);
        double farads = Number(remedy, "a probe of at most ").SiValue, henries = Number(remedy, "with a lead of ").SiValue;
        Probe small = Probe.Active(10, 1.MOhm(), Capacitance.FromFarads(0.99 * farads), Response.Gaussian(2.GHz())).WithGroundLead(Inductance.FromHenries(henries));
        Assert.Null(Of(Seen(clock, MeasurementChain.From(50.Ohm()).Probe(small).Into(Fifty)), "lead-resonance-low"));
    }

    [Fact]
    public void ADcLevelFarBeyondTheRange_NeedsAnOffset_AndThatIsSaid()
    {
        SampledSignal setup = Signal.Sine(1.kHz(), 10.mVpk()).WithOffset(12.V()).Through(Response.Gaussian(500.MHz())).SampledBy(Bench.WithFullScaleRanges(40.mVpp(), 8.Vpp(), 40.Vpp()));
        Finding offset = Of(setup.Over(2.ms()), "offset-needed")!;
        Assert.Equal(Severity.Note, offset.Severity);
        Assert.Contains("12 V", offset.Message, StringComparison.Ordinal);
        PeakToPeakVoltage range = PeakToPeakVoltage.FromVolts(Number(offset.Remedy, "a range of at least ").SiValue);
        Assert.Equal(24.02, range.Volts, 1e-9);
        Assert.Null(Of(setup.WithFullScale(range).Over(2.ms()), "offset-needed"));
        Assert.Null(Of(Signal.Sine(1.kHz(), 10.mVpk()).WithOffset(12.V()).Through(Response.HighPass(1.Hz())).SampledBy(Bench).Over(2.ms()), "offset-needed"));
        Assert.Null(Of(Seen(Signal.Square(1.MHz(), 3.3.Vpp(), 5.ns()).WithOffset(1.65.V()), Response.Gaussian(500.MHz())), "offset-needed"));
    }

    [Property(MaxTest = 40)]
    public Property AChainOfTheNamedBandwidth_ShowsTheEdge() => Prop.ForAll(Gen.Choose(2, 60).ToArbitrary(), Gen.Choose(100, 3000).ToArbitrary(), (megahertz, picoseconds) =>
    {
        Signal clock = Signal.Square(megahertz.MHz(), 1.Vpp(), picoseconds.ps());
        Finding? slowed = Of(Seen(clock, Response.Gaussian(100.MHz())), "edge-slowed");
        return slowed is null || Of(Seen(clock, Response.Gaussian(Frequency.FromHertz(Number(slowed.Remedy, "a chain of at least ").SiValue))), "edge-slowed") is null;
    });

    [Property(MaxTest = 40)]
    public Property AChainOfTheNamedBandwidth_ShowsTheAmplitudeOfASine() => Prop.ForAll(Gen.Choose(1, 900).ToArbitrary(), megahertz =>
    {
        Signal sine = Signal.Sine(megahertz.MHz(), 1.Vpk());
        Finding? shortened = Of(Seen(sine, Response.SinglePole(150.MHz())), "amplitude-short");
        return shortened is null || Of(Seen(sine, Response.Gaussian(Frequency.FromHertz(Number(shortened.Remedy, "a chain of at least ").SiValue))), "amplitude-short") is null;
    });

    [Property(MaxTest = 30)]
    public Property ALeadOfTheNamedInductance_NoLongerRings() => Prop.ForAll(Gen.Choose(20, 200).ToArbitrary(), Gen.Choose(10, 200).ToArbitrary(), (millimetres, megahertz) =>
    {
        Signal sine = Signal.Sine(megahertz.MHz(), 1.Vpk());
        Outlook With(Inductance lead) => Seen(sine, MeasurementChain.From(50.Ohm()).Probe(Tip().WithGroundLead(lead)).Into(Input()));
        string? remedy = Of(With(GroundLead.InductanceOf(millimetres.mm())), "lead-resonance-low")?.Remedy;
        // Three printed digits: half a unit of the last one is spared.
        return remedy is null || !remedy.StartsWith("at most", StringComparison.Ordinal) || Of(With(Inductance.FromHenries(0.995 * Number(remedy, "at most ").SiValue)), "lead-resonance-low") is null;
    });
}
