using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

public sealed class DecibelUncertaintyTests
{
    [Theory]
    [HandbookData("DU-")]
    public void UncertaintyInDecibels_AndAsARatio(string id)
    {
        CheckValue value = CheckValue.All[id];
        if (value.Has("u_rel"))
        {
            Uncertain<Ratio> ratio = Uncertain.Of(Ratio.FromFraction(1), Spread.Standard(Ratio.FromFraction(value.Number("u_rel"))));
            value.Confirm((value.Text("kind") == "power" ? Uncertain.ToDecibelsAsPowers(ratio) : Uncertain.ToDecibelsAsAmplitudes(ratio)).StandardUncertainty.SiValue);
        }
        else if (value.Has("limits_dB"))
        {
            value.Confirm(Uncertain.Of(0.dB(), Spread.Bound(DecibelRatio.FromDecibels(value.Number("limits_dB")))).StandardUncertainty.SiValue);
        }
        else if (value.Has("L_dB"))
        {
            value.Confirm(DecibelRatio.FromDecibels(value.Number("L_dB")).ToAmplitudeRatio().Fraction - 1);
        }
        else if (value.Has("quantity"))
        {
            // The mean of the log-normal distribution by trials: 3 dB of standard deviation make u/√M = 0.4 parts in a thousand.
            Uncertain<DecibelRatio> gain = Uncertain.Of(DecibelRatio.FromDecibels(value.Number("L")), Spread.Standard(DecibelRatio.FromDecibels(value.Number("u_dB"))));
            MonteCarloResult result = MonteCarlo.Run(gain, x => x.ToAmplitudeRatio());
            Assert.Equal(value.Expected, result.Estimate.SiValue, 5 * result.StandardUncertainty.SiValue / Math.Sqrt(result.Trials));
        }
        else
        {
            Uncertain<DecibelRatio> gain = Uncertain.Of(0.dB(), Spread.Standard(DecibelRatio.FromDecibels(value.Number("u_dB"))));
            value.Confirm(Uncertain.ToAmplitudeRatio(gain).RelativeStandardUncertainty.Fraction);
        }
    }

    [Fact]
    public void LargeUncertaintyInDecibels_IsFlagged()
    {
        UncertaintyBudget budget = (Uncertain.Of((-20).dBm(), Spread.Standard(1.5.dB()), "reading") + Uncertain.Of(6.dB(), Spread.Bound(0.2.dB()), "pad")).Budget();

        Assert.Contains(budget.Findings, finding => finding.Code == "decibels-not-linear" && finding.Remedy!.Contains("Monte Carlo", StringComparison.Ordinal));
        Assert.Equal(-14, budget.Value.SiValue);
    }

    [Fact]
    public void DecibelsBecomingARatio_AreFlagged()
    {
        UncertaintyBudget budget = Uncertain.ToPowerRatio(Uncertain.Of(3.dB(), Spread.Standard(2.dB()), "gain")).Budget();

        Assert.Contains(budget.Findings, finding => finding.Code == "decibels-not-linear" && finding.Message.StartsWith("gain is uncertain by 2 dB", StringComparison.Ordinal));
    }

    [Fact]
    public void SmallUncertaintyInDecibels_IsNotFlagged() =>
        Assert.DoesNotContain("decibels-not-linear", Uncertain.Of(3.dB(), Spread.Standard(0.2.dB())).Budget().Findings.Select(finding => finding.Code));

    [Fact]
    public void DifferenceOfTwoLevels_IsInDecibels()
    {
        Uncertain<PowerLevel> level = Uncertain.Of((-10).dBm(), Spread.Standard(0.3.dB()));

        Uncertain<DecibelRatio> difference = Uncertain.Difference(level, level);

        Assert.Equal(0, difference.Value.Decibels);
        Assert.Equal(0, difference.StandardUncertainty.SiValue);
    }

    [Fact]
    public void AddingTwoLevels_IsRefusedWithTheRemedy()
    {
        Uncertain<PowerLevel> level = Uncertain.Of((-10).dBm(), Spread.Standard(0.3.dB()));

        var exception = Assert.Throws<InvalidOperationException>(() => level + level);

        Assert.Contains("use Uncertain.Difference", exception.Message, StringComparison.Ordinal);
    }
}
