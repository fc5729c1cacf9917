using System;
using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Explanations;

/// <summary>Few digits are rounded from the fifteen that every runtime writes alike, halves away from zero, as a person rounds.</summary>
public sealed class RoundedAlikeTests
{
    // 2/2.56 = 0.78125 by hand, whose double times 100 is a little less; 1.0005 has no double of its own either.
    [Theory]
    [InlineData(100 * (2 / 2.56), 4, 78.13)]
    [InlineData(1.0005, 4, 1.001)]
    [InlineData(-1.0005, 4, -1.001)]
    [InlineData(2.5, 1, 3)]
    [InlineData(9.9995, 4, 10)]
    [InlineData(1.23449999999999999, 4, 1.235)]
    [InlineData(1.2344999999999, 4, 1.234)]
    [InlineData(0, 4, 0)]
    [InlineData(5e-324, 3, 4.94e-324)]
    public void HalvesAreRoundedAway(double value, int digits, double expected) => Assert.Equal(expected, FewDigits.Round(value, digits));

    // Decimal arithmetic of the framework is another way to the same: exact for numbers of fifteen digits.
    [Property(MaxTest = 500)]
    public Property RoundingIsThatOfDecimals() => Prop.ForAll(Gen.Choose(1, int.MaxValue).SelectMany(_ => Gen.Choose(1, 9), (whole, digits) => (Whole: whole, Digits: digits)).ToArbitrary(), drawn =>
    {
        double value = drawn.Whole / 1e4;
        int before = ((long)value).ToString(CultureInfo.InvariantCulture).Length, decimals = drawn.Digits - before;
        if (value < 1 || decimals < 0)
            return true;
        return FewDigits.Round(value, drawn.Digits) == (double)Math.Round(drawn.Whole / 10_000m, decimals, MidpointRounding.AwayFromZero);
    });
}
