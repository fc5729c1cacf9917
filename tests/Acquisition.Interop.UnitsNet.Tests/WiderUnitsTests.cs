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
}
