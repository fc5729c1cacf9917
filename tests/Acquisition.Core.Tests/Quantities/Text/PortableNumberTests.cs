using System;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Quantities.Text;

/// <summary>Plain numbers of file formats: the nearest double on every runtime. Expected values are literals, which the compiler has read.</summary>
public sealed class PortableNumberTests
{
    [Theory]
    [InlineData("4.866860860544167", 4.866860860544167)]
    [InlineData("9007199254740993", 9007199254740992.0)]
    [InlineData("9007199254740993.0000000000000000000000000000001", 9007199254740994.0)]
    [InlineData("-2.2250738585072011e-308", -2.2250738585072011e-308)]
    [InlineData("4.9e-324", double.Epsilon)]
    [InlineData("1e-400", 0.0)]
    [InlineData("+.5E+01", 5.0)]
    [InlineData("1e999999999999", double.PositiveInfinity)]
    public void Number_IsTheNearestDouble(string text, double expected)
    {
        Assert.True(PortableNumber.TryParse(text, out double value));
        Assert.Equal(expected, value);
    }

    [Theory]
    [InlineData("")]
    [InlineData("-")]
    [InlineData(".")]
    [InlineData("1.2.3")]
    [InlineData("1e")]
    [InlineData("1e+")]
    [InlineData("12x")]
    public void TextThatIsNoNumber_IsNotRead(string text) => Assert.False(PortableNumber.TryParse(text, out _));

    [Property(MaxTest = 5000)]
    public bool WrittenNumber_IsReadBackToTheSameBits(NormalFloat number) =>
        PortableNumber.TryParse(new Quantity(number.Get, QuantityKind.Ratio).ToString(), out double value) && BitConverter.DoubleToInt64Bits(value) == BitConverter.DoubleToInt64Bits(number.Get);
}
