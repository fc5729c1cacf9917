using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Quantities;

public sealed class QuantityArithmeticTests
{
    [Fact]
    public void RateTimesTime_IsAPointCount() => Assert.Equal(200.Mpts(), 2.GSaPerS() * 100.ms());

    [Fact]
    public void ProductThatFallsShortByTheLastBits_IsStillTheWholeCount() => Assert.Equal(14.kpts(), 140.ms() * 100.kSaPerS());
}
