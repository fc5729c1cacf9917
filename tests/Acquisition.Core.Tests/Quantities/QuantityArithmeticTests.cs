using System;
using System.Collections.Generic;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Quantities;

public sealed class QuantityArithmeticTests
{
    [Fact]
    public void RateTimesTime_IsAPointCount() => Assert.Equal(200.Mpts(), 2.GSaPerS() * 100.ms());

    [Fact]
    public void ProductThatFallsShortByTheLastBits_IsStillTheWholeCount() => Assert.Equal(14.kpts(), 140.ms() * 100.kSaPerS());

    /// <summary>Operands that are fine by themselves: the refusal speaks of the result and names the operand that can be chosen otherwise.</summary>
    private static readonly Dictionary<string, (Action Act, string Operand, string Message)> Refused = new()
    {
        ["zero by zero"] = (() => _ = 0.Hz() / 0.Hz(), "divisor", "the result must be a finite ratio; was NaN"),
        ["period of DC"] = (() => _ = 0.Hz().Period, "frequency", "the result must be a finite duration; was Infinity s"),
        ["product too large"] = (() => _ = 1e300.Hz() * 1e10, "factor", "the result must be a finite frequency; was Infinity Hz"),
        ["difference below zero"] = (() => _ = 5.MSaPerS() - 7.MSaPerS(), "right", "the result must be a finite sample rate of at least 0 Sa/s; was -2 MSa/s"),
        ["points below zero"] = (() => _ = 5.pts() - 7.pts(), "right", "the result must be from 0 pts to 9007199254740992 pts; was -2 pts"),
        ["points beyond the limit"] = (() => _ = PointCount.MaxValue + 1.pts(), "right", "the result must be from 0 pts to 9007199254740992 pts; was 9.007199254740992 Ppts"),
        ["records beyond the limit"] = (() => _ = PointCount.MaxValue * int.MaxValue, "factor", "the result must be from 0 pts to 9007199254740992 pts; was 19.34281310"),
        ["time beyond counting"] = (() => _ = 2.GSaPerS() * 1e20.s(), "duration", "the result must be from 0 pts to 9007199254740992 pts; was 200 Rpts"),
    };

    public static TheoryData<string> RefusedNames => new(Refused.Keys);

    [Theory, MemberData(nameof(RefusedNames))]
    public void ResultThatIsNoQuantity_IsRefusedAsResult(string name)
    {
        (Action act, string operand, string message) = Refused[name];
        ArgumentOutOfRangeException refusal = Assert.Throws<ArgumentOutOfRangeException>(act);
        Assert.Equal(operand, refusal.ParamName);
        Assert.StartsWith(message, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void PointCountsNearTheLimit_AreExact()
    {
        Assert.Equal(PointCount.MaxValue, (PointCount.MaxValue - 1.pts()) + 1.pts());
        Assert.Equal(PointCount.FromPoints(9007199254740990), PointCount.FromPoints(3002399751580330) * 3);
    }
}
