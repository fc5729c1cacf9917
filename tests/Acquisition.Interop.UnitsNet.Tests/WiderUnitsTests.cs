using System;
using Acquisition.Core;
using Xunit;

namespace Acquisition.Interop.Tests;

public sealed class WiderUnitsTests
{
    /// <summary>Values by definition: the foot is 0.3048 m (international yard and pound agreement, 1959, from memory), the pound-force per square inch follows (NIST SP 811, from memory).</summary>
    [Theory]
    [InlineData("1 ft", 0.3048)]
    [InlineData("3 yd", 2.7432)]
    [InlineData("1 psi", 6894.757293168361)]
    [InlineData("2 bar", 2e5)]
    [InlineData("1 lb", 0.45359237)]
    [InlineData("1 lbf", 4.4482216152605)]
    [InlineData("1 kgf", 9.80665)]
    [InlineData("1 nmi", 1852)]
    [InlineData("1 BTU", 1055.05585262)]
    [InlineData("10 G", 1e-3)]
    [InlineData("2 Ah", 7200)]
    [InlineData("68 °F", 293.15)]
    public void UnitOutsideTheTable_IsReadThroughUnitsNet(string text, double si)
    {
        Assert.False(Quantity.TryParse(text, out _));
        Assert.Equal(si, WiderUnits.Parse(text).SiValue, 1e-6 * si);
    }

    [Theory]
    [InlineData("24 MHz")]
    [InlineData("2 GS/s")]
    [InlineData("1 in")]
    [InlineData("5 %")]
    [InlineData("20 dBm")]
    [InlineData("0.35")]
    public void UnitOfTheTable_MeansWhatItMeansThere(string text) => Assert.Equal(Quantity.Parse(text), WiderUnits.Parse(text));

    [Theory]
    [InlineData("")]
    [InlineData("ft")]
    [InlineData("1 lantern")]
    [InlineData("5 mol")]
    [InlineData("1e400 ft")]
    [InlineData("1,5 ft")]
    public void TextThatIsNoQuantityAnywhere_IsRefusedAsTheLibraryRefusesIt(string text)
    {
        Assert.False(WiderUnits.TryParse(text, out _));
        Assert.Equal(Assert.Throws<QuantityFormatException>(() => Quantity.Parse(text)).Message, Assert.Throws<QuantityFormatException>(() => WiderUnits.Parse(text)).Message);
    }

    [Fact]
    public void Null_IsRefused()
    {
        Assert.False(WiderUnits.TryParse(null, out _));
        Assert.Throws<ArgumentNullException>(() => WiderUnits.Parse(null!));
    }

    /// <summary>By definition: torr is 101325/760 Pa, the mechanical horsepower 550 ft·lbf/s (NIST SP 811, from memory). The README of the package states both deviations.</summary>
    [Theory]
    [InlineData("1 torr", 101325.0 / 760, 2.2e-6)]
    [InlineData("1 hp(I)", 550 * 0.3048 * 4.4482216152605, -1.3e-5)]
    [InlineData("1 mmHg", 133.322387415, 1.9e-8)]
    public void RoundedConstantOfUnitsNet_IsAsFarOffAsTheReadmeSays(string text, double exact, double deviation) =>
        Assert.Equal(deviation, WiderUnits.Parse(text).SiValue / exact - 1, Math.Abs(deviation) * 0.05);

    /// <summary>A revolution or a decay has the dimension of a frequency and a torque that of an energy; reading them as such would mix what is kept apart.</summary>
    [Theory]
    [InlineData("60 rpm")]
    [InlineData("5 Bq")]
    [InlineData("3 lbf·ft")]
    public void UnitThatSharesItsDimensionWithAnotherKind_IsRefused(string text) => Assert.False(WiderUnits.TryParse(text, out _));

    [Fact]
    public void Formula_UsesTheUnitsItAskedFor()
    {
        FormulaContext context = FormulaContext.Standard.WithWiderUnits("ft", "psi");
        Assert.Equal(0.3048 * 30, context.Build("30 ft").Evaluate().Quantity.SiValue, 12);
        Assert.Equal(30 * 6894.757293168361, context.Build("30 psi").Evaluate().Quantity.SiValue, 1e-9);
        Assert.Equal(1.5, context.Build("18 in / 1 ft").Evaluate().Quantity.SiValue, 12);
        Assert.False(FormulaContext.Standard.TryBuild("30 psi", out _, out _));
        Assert.False(context.TryBuild("30 yd", out _, out _));
    }

    [Fact]
    public void Formula_UsesAllUnitsOfOneQuantity()
    {
        FormulaContext context = FormulaContext.Standard.WithWiderUnits(UnitsNet.Force.Info).WithWiderUnits(UnitsNet.Length.Info);
        Assert.Equal(2 * 4.4482216152605 * 3 * 0.3048, context.Build("2 lbf * 3 ft").Evaluate().Quantity.SiValue, 1e-12);
        Assert.Equal(1852, context.Build("1 nmi").Evaluate().Quantity.SiValue, 1e-9);
        Assert.Equal(1e6, context.Build("1 MHz").Evaluate().Quantity.SiValue);
    }

    [Theory]
    [InlineData("in")]
    [InlineData("°F")]
    [InlineData("ft²")]
    [InlineData("MHz")]
    public void UnitThatIsTakenOrNoName_IsRefused(string abbreviation) => Assert.Throws<ArgumentException>(() => FormulaContext.Standard.WithWiderUnits(abbreviation));

    [Fact]
    public void UnknownUnit_IsRefusedAsTextIs() => Assert.Throws<QuantityFormatException>(() => FormulaContext.Standard.WithWiderUnits("lantern"));

    [Fact]
    public void UnitWhoseAbbreviationIsNoName_IsDeclaredByHand() =>
        Assert.Equal(0.09290304 * 2, FormulaContext.Standard.WithUnit("sqft", WiderUnits.Parse("1 ft²").ToString()).Build("2 sqft").Evaluate().Quantity.SiValue, 1e-15);
}
