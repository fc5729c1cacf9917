using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;
using static Acquisition.Core.Tests.Records.Sine.SineFitTests;

namespace Acquisition.Core.Tests.Records.Sine;

/// <summary>Which channel has a vote on the common frequency, who leads, and what is said of those without.</summary>
public sealed class VotesOfChannelsTests
{
    private const double Bin = 1e8 / 1000;

    private static double Own(double[] x) => SineFit.FourParameter(x, Rate).Sine!.Frequency.Hertz;

    // A quarter of a bin is what two lines of one signal may differ by.
    [Theory]
    [InlineData(0.2, true)]
    [InlineData(0.3, false)]
    public void AChannelWithinAQuarterOfABin_HasAVote(double bins, bool votes)
    {
        double[] leader = Make(1000, 0.1, 1, 0.3, 0, 1e-3, 1), other = Make(1000, 0.1 + bins / 1000, 0.5, 0.3, 0, 1e-3, 2);
        CommonSineFit common = CommonSineFit.Of(Rate, leader, other);
        double moved = common.Frequency!.Value.Hertz - Own(leader);
        // Weights go with the squares of amplitude over noise, four to one: a fifth of the difference.
        Assert.Equal(votes ? bins * Bin / 5 : 0, moved, votes ? 0.1 * bins * Bin / 5 : 1e-3);
        Assert.Equal(!votes, common.Findings.Any(finding => finding.Code == "channels-differ-in-frequency"));
        Assert.Equal(votes ? 0 : 1, common.Findings.Count);
    }

    // The line that stands out most leads, not the largest: 0.5 V in 1 mV before 1 V in 100 mV, in whichever order.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void TheClearestLine_Leads(bool first)
    {
        double[] clear = Make(1000, 0.1, 0.5, 0.3, 0, 1e-3, 1), loud = Make(1000, 0.13, 1, 0.3, 0, 0.1, 2);
        CommonSineFit common = first ? CommonSineFit.Of(Rate, clear, loud) : CommonSineFit.Of(Rate, loud, clear);
        Assert.Equal(Own(clear), common.Frequency!.Value.Hertz, 1e-3);
        Finding differs = Assert.Single(common.Findings);
        Assert.Equal(("channels-differ-in-frequency", Severity.Warning), (differs.Code, differs.Severity));
        Assert.StartsWith($"the largest line of channel {(first ? 2 : 1)} is at ", differs.Message, StringComparison.Ordinal);
        // Noise moves 10 MHz in its last two of eight digits.
        Assert.Matches(@"not at the common (10\.00000|9\.99999)", differs.Message);
    }

    // In noise as large as the sine the frequency of 100 samples is known to about a tenth of a bin: a channel is then believed as far as five uncertainties of both.
    [Fact]
    public void ANoisyChannel_VotesAsFarAsItsUncertaintyReaches()
    {
        double[] leader = Make(100, 0.2, 1, 0.3, 0, 0.3, 1);
        int beyond = 0;
        for (int seed = 10; seed < 400 && beyond < 3; seed++)
        {
            double[] noisy = Make(100, 0.2, 1, 0.3, 0, 1.2, seed);
            if (SineFit.FourParameter(noisy, Rate).Sine is not { } own || SineFit.FourParameter(leader, Rate).Sine is not { } lead)
                continue;
            double off = Math.Abs(own.Frequency.Hertz - lead.Frequency.Hertz), reach = 5 * (own.FrequencyUncertainty.Hertz + lead.FrequencyUncertainty.Hertz);
            if (off < 0.26e6 || off > 0.9 * reach)
                continue;
            beyond++;
            double[] weights = new[] { lead, own }.Select(sine => Math.Pow(sine.FrequencyUncertainty.Hertz, -2)).ToArray();
            CommonSineFit common = CommonSineFit.Of(Rate, leader, noisy);
            Assert.Equal((weights[0] * lead.Frequency.Hertz + weights[1] * own.Frequency.Hertz) / weights.Sum(), common.Frequency!.Value.Hertz, 1);
            Assert.Equal(1 / Math.Sqrt(weights.Sum()), common.FrequencyUncertainty!.Value.Hertz, 1);
            Assert.DoesNotContain(common.Findings, finding => finding.Code == "channels-differ-in-frequency");
        }
        Assert.True(beyond > 0);
    }

    [Fact]
    public void AChannelWithoutALineOfItsOwn_IsNamed_AndFittedAtTheCommonFrequency()
    {
        double[] strong = Make(1000, 0.1, 1, noise: 1e-3), weak = Make(1000, 0.1, 1e-3, noise: 0.01, seed: 4);
        CommonSineFit common = CommonSineFit.Of(Rate, strong, weak);
        Assert.StartsWith("channel 2 takes the frequency from the others: ", Assert.Single(common.Findings).Message, StringComparison.Ordinal);
        Assert.Equal(Own(strong), common.Frequency!.Value.Hertz, 1e-3);
        Assert.Equal(common.Frequency.Value.Hertz, common.Compare(0, 1)!.Frequency.Hertz, 1e-6);
        Assert.Equal(common.Frequency.Value.Hertz, common.Channels[1].Sine!.Frequency.Hertz, 1e-3);
    }

    // 0.1 of 1 GSa/s is a period of 10 ns: a quarter of a turn ahead is 2.5 ns early. Beyond half a turn the other way round is nearer: 6 rad ahead is 0.28319 rad behind, 0.45070 ns late.
    [Theory]
    [InlineData(0, Math.PI / 2, 90, -2.5)]
    [InlineData(Math.PI / 2, 0, -90, 2.5)]
    [InlineData(-3, 3, -16.225323, 0.450703)]
    [InlineData(3, -3, 16.225323, -0.450703)]
    public void ThePhaseBetweenChannels_IsThatOfTheNearerWay(double first, double second, double degrees, double nanoseconds)
    {
        ChannelComparison compared = CommonSineFit.Of(1.GSaPerS(), Make(1000, 0.1, 1, first), Make(1000, 0.1, 2, second)).Compare(0, 1)!;
        Assert.Equal(degrees, compared.Phase.Degrees, 1e-5);
        Assert.Equal(nanoseconds * 1e-9, compared.Delay.Seconds, 1e-15);
        Assert.Equal(2, compared.AmplitudeRatio.Fraction, 1e-9);
        Assert.Equal(100e6, compared.Frequency.Hertz, 1e-3);
        Assert.Equal(6.0206, compared.Gain.Decibels, 1e-5);
    }
}
