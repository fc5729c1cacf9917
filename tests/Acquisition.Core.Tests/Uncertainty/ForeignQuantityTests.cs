using System;
using Acquisition.Core.Formulas;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

/// <summary>A host may implement <see cref="IQuantity"/>; what needs to make values of the type says that it cannot.</summary>
public sealed class ForeignQuantityTests
{
    private readonly struct Brightness(double candelas) : IQuantity
    {
        public Quantity ToQuantity() => new(candelas, QuantityKind.Ratio);
    }

    [Fact]
    public void QuantityTypeOfAHost_IsRefusedByAnArgumentExceptionEachTime()
    {
        Action[] doors =
        [
            () => Uncertain.Of(new Brightness(1), Spread.Bound(1.Percent())), () => Uncertain.Exact(new Brightness(1)), () => TypeA.Mean(new[] { new Brightness(1), new Brightness(2) }),
            () => _ = ToleranceLimits.AtMost(new Brightness(1)).Upper,
        ];
        foreach (Action door in doors)
        {
            ArgumentException refusal = Assert.Throws<ArgumentException>(door);
            Assert.Contains("Brightness is no quantity type of this library", refusal.Message, StringComparison.Ordinal);
            Assert.Contains("use the strong type of its kind", refusal.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void QuantityOfAnyKind_IsRefused_WithTheRemedy() =>
        Assert.Contains("use one of the strong types, such as Voltage", Assert.Throws<ArgumentException>(() => Uncertain.Exact(Quantity.Parse("1 V"))).Message, StringComparison.Ordinal);

    [Fact]
    public void QuantityTypeOfAHost_IsAValueOfFormulas() => Assert.Equal(2, FormulaValue.Of(new Brightness(2)).SiValue);
}
