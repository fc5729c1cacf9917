using System;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Quantities;

/// <summary>Where operands are fine and their result is not, the refusal speaks of the result.</summary>
public sealed class ResultRefusalTests
{
    [Fact]
    public void QuotientOfZeros_SaysSo()
    {
        Assert.StartsWith("the result must be a finite ratio; was NaN, as of 0 divided by 0", Refusal(() => _ = 0.Hz() / 0.Hz()), StringComparison.Ordinal);
        Assert.StartsWith("the result must be a finite voltage; was NaN V, as of 0 divided by 0", Refusal(() => _ = Uncertain.Exact(0.V()) / 0), StringComparison.Ordinal);
    }

    [Fact]
    public void NegativeDifferenceOfWhatIsNeverNegative_IsSaidOfTheDifference()
    {
        Assert.StartsWith("the result must be a finite resistance of at least 0 Ω; was -1 Ω", Refusal(() => _ = 1.Ohm() - 2.Ohm()), StringComparison.Ordinal);
        Assert.StartsWith("the result must be a finite resistance of at least 0 Ω; was -1 Ω", Refusal(() => _ = Uncertain.Exact(1.Ohm()) - Uncertain.Exact(2.Ohm())), StringComparison.Ordinal);
    }

    [Fact]
    public void ProductBeyondADouble_IsSaidOfTheProduct()
    {
        Voltage large = Voltage.FromVolts(1e300);
        Assert.StartsWith("the result must be a finite voltage", Refusal(() => _ = large * 1e300), StringComparison.Ordinal);
        Assert.StartsWith("the result must be a finite voltage", Refusal(() => _ = Uncertain.Exact(large) * 1e300), StringComparison.Ordinal);
    }

    private static string Refusal(Action operation) => Assert.Throws<ArgumentOutOfRangeException>(operation).Message;
}
