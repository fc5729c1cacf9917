using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Effective bits hold for a signal that fills the range; what the chosen range leaves of them is what counts (handbook 12.3: the loss is 20 lg(FS/App)).</summary>
public class EffectiveBitsOfTheSignalTests
{
    private static readonly Signal Tone = Signal.Sine(1.MHz(), 0.5.Vpk());

    // 20 lg 4 = 12.04 dB and 6.02 dB for each bit; 20 lg 1.6 = 4.08 dB, 0.678 bit.
    [Theory]
    [InlineData(1.0, 7.5)]
    [InlineData(1.6, 6.822)]
    [InlineData(4.0, 5.5)]
    public void RangeNotFilled_LosesBits(double range, double left)
    {
        Outlook outlook = At(range, 7.5);
        Assert.Equal(7.5, outlook.EffectiveBits!.Value.Bits, 1e-12);
        Assert.Equal(left, outlook.EffectiveBitsOfSignal!.Value.Bits, 1e-3);
    }

    // 16 mV of 1 Vpp need ld 62.5 = 5.966 bit.
    [Theory]
    [InlineData(1.0, true)]
    [InlineData(2.8, true)]
    [InlineData(3.0, false)]
    [InlineData(4.0, false)]
    public void Check_CountsWhatIsLeft(double range, bool isMet)
    {
        Specification needed = new Requirement(Tone).WithSmallestDetail(16.mV()).Specify();
        NeedCheck bits = needed.Check(At(range, 7.5)).Single(check => check.Need == "effective bits");

        Assert.Equal(5.966, needed.EffectiveBits!.Value.Bits, 1e-3);
        Assert.Equal(isMet, bits.IsMet);
        if (range > 1)
            Assert.Contains($"of 7.5 bit, the range is filled to {FewDigits.Of(1 / range, Ratio.Kind)}", bits.Present, StringComparison.Ordinal);
    }

    // NAD = FS / (2^N √12) (handbook 6.3): 4 V / (2^7.5 √12) = 6.379 mV, two of which are 12.76 mV; of 1.2 V with 4 mV of noise the noise and the codes rule, √(4² + 1.353²) mV twice.
    [Theory]
    [InlineData(4.0, true, 12.76e-3)]
    [InlineData(4.0, false, 15.625e-3)]
    [InlineData(1.2, true, 8.445e-3)]
    public void SmallestDetail_FollowsStatedBitsInTheChosenRange_InShortlistAndOutlook(double range, bool isStated, double volts)
    {
        EffectiveBitsPoint[] stated = isStated ? [new EffectiveBitsPoint(1.MHz(), 7.5.bit())] : [];
        BitDepth bits = isStated ? 12.bit() : 8.bit();
        CatalogueInstrument digitizer = new CatalogueInstrument("digitizer", Stated.Claimed(200.MHz()), ResponseShape.Gaussian, range < 2 ? 8.bit() : bits, [new ChannelMode(1, 1.GSaPerS(), 1.Mpts())],
            [new InputRange(PeakToPeakVoltage.FromVolts(range), Stated.Claimed(RmsVoltage.FromVolts(0.004)))], [new InputTermination(1.MOhm(), 14.pF(), 50.V())]).WithEffectiveBits(stated);
        var direct = new CatalogueProbe("cable", 1, Stated.Claimed(1.GHz()), ResponseShape.Gaussian, 1.MOhm(), 50.pF(), 1.MOhm());
        Requirement wanted = new Requirement(Tone).WithSmallestDetail(12.mV()).WithWindow(100.us());
        Candidate candidate = Assert.Single(Shortlist.Of(wanted, new Catalogue([digitizer], [direct])).Candidates);
        NeedCheck check = wanted.Specify().Check(candidate.Outlook!).Single(row => row.Need == "smallest detail");
        Criterion criterion = candidate.Criteria.Single(demand => demand.Code == "detail");

        Assert.Equal(volts, criterion.OfferedQuantity!.Value.SiValue, 1e-5);
        Assert.Equal(check.Margin!.Value.Fraction, criterion.Margin!.Value.Fraction, 1e-9);
        Assert.Equal(check.IsMet, criterion.Suitability == Suitability.Suitable);
    }

    private static Outlook At(double range, double bits) => Tone.Through(Response.Gaussian(1.GHz())).SampledBy(new Digitizer(1.GSaPerS(), 1.Mpts(), 8.bit()))
        .WithEffectiveBits([new EffectiveBitsPoint(1.MHz(), BitDepth.FromBits(bits))]).WithFullScale(PeakToPeakVoltage.FromVolts(range)).Over(10.us());
}
