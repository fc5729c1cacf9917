using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Quantities;

public sealed class QuantityArithmeticTests
{
    [Fact]
    public void RateTimesTime_IsAPointCount() => Assert.Equal(200.Mpts(), 2.GSaPerS() * 100.ms());

    [Fact]
    public void ProductThatFallsShortByTheLastBits_IsStillTheWholeCount() => Assert.Equal(14.kpts(), 140.ms() * 100.kSaPerS());

    [Theory]
    [HandbookData("DB-001")]
    public void AmplitudeRatio_InDecibels(string id)
    {
        CheckValue value = CheckValue.All[id];
        value.Confirm(DecibelRatio.FromAmplitudeRatio(Ratio.FromFraction(value.Number("field_ratio"))).Decibels);
    }
}
