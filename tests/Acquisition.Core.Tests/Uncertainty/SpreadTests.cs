using System;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Acquisition.Core.Uncertainty;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

public sealed class SpreadTests
{
    [Theory]
    [HandbookData("TB-")]
    public void StandardUncertainty_OfAStatement(string id)
    {
        CheckValue value = CheckValue.All[id];
        Ratio n(string name) => Ratio.FromFraction(value.Number(name));
        if (value.Has("rel_uncertainty_of_u"))
        {
            value.Confirm(Spread.DegreesOfFreedomFrom(n("rel_uncertainty_of_u")));
            return;
        }
        if (value.Has("s"))
        {
            value.Confirm(Around(Spread.Standard(n("s"), value.Number("nu"))).StandardDeviation);
            return;
        }
        Spread spread = value.Has("U") ? Spread.Expanded(n("U"), value.Number("k"))
            : value.Has("bound") ? Spread.WithProbability(n("bound"), n("confidence"))
            : value.Has("display_digit") ? Spread.Resolution(n("display_digit"))
            : value.Text("distribution") switch
            {
                "rectangular" => Spread.Bound(n("a")),
                "triangular" => Spread.Triangular(n("a")),
                "trapezoidal" => Spread.Trapezoidal(n("a"), n("beta")),
                "curvilinear trapezoid" => Spread.CurvilinearTrapezoid(n("a"), n("d")),
                _ => Spread.Arcsine(n("a")),
            };

        value.Confirm(Around(spread).StandardUncertainty);
    }

    [Fact]
    public void SpreadInPercent_IsOfTheMagnitudeOfTheValue() =>
        Assert.Equal(5e6 / Math.Sqrt(3), Uncertain.Of(100.MHz(), Spread.Bound(5.Percent())).StandardUncertainty.SiValue, 1e-6);

    [Fact]
    public void SpreadInPercent_OfANegativeVoltage_IsPositive() =>
        Assert.Equal(0.1 / Math.Sqrt(3), Uncertain.Of(-10.V(), Spread.Bound(1.Percent())).StandardUncertainty.SiValue, 1e-15);

    [Fact]
    public void SpreadOfALevel_IsInDecibels() => Assert.Equal(QuantityKind.DecibelRatio, Uncertain.Of((-10).dBm(), Spread.Bound(0.5.dB())).StandardUncertainty.Kind);

    [Fact]
    public void SpreadInPercent_OfALevel_IsRefusedWithTheRemedy()
    {
        var exception = Assert.Throws<ArgumentException>(() => Uncertain.Of((-10).dBm(), Spread.Bound(5.Percent())));

        Assert.Contains("has no meaning; state it in dB", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void SpreadInAnotherUnit_IsRefusedWithBothKinds()
    {
        var exception = Assert.Throws<ArgumentException>(() => Uncertain.Of(100.MHz(), Spread.Bound(5.V())));

        Assert.Contains("for a frequency, expected one in Hz or in percent", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NegativeHalfWidth_IsRefused()
    {
        var exception = Assert.Throws<ArgumentOutOfRangeException>(() => Spread.Bound(-1.V()));

        Assert.StartsWith("halfWidth must be at least 0; was -1 V", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Statement_IsReadable() => Assert.Equal("± 5 % (limits, rectangular)", Spread.Bound(5.Percent()).ToString());

    [Theory]
    [InlineData("5 %", 0.05 * 0.57735026918962573)]
    [InlineData("± 5 % (k=2)", 0.025)]
    [InlineData("+- 5 % (k = 2.5)", 0.02)]
    [InlineData("5 % (p=95 %)", 0.05 / 1.9599639845400545)]
    [InlineData("5 % (standard)", 0.05)]
    [InlineData("60 mV (triangular)", 0.06 * 0.40824829046386302)]
    [InlineData("60 mV (arcsine)", 0.06 * 0.70710678118654757)]
    public void StatementAsText_IsRead(string text, double expected) =>
        Assert.Equal(expected, Uncertain.Of(1.V(), Spread.Parse(text)).StandardUncertainty.SiValue, 1e-15);

    [Theory]
    [InlineData("")]
    [InlineData("five percent")]
    [InlineData("-5 %")]
    [InlineData("5 % (k=0)")]
    [InlineData("5 % (k=two)")]
    [InlineData("5 % (p=100 %)")]
    [InlineData("5 % (about)")]
    [InlineData(null)]
    public void TextThatIsNoStatement_IsRefused(string? text)
    {
        Assert.False(Spread.TryParse(text, out Spread? spread));
        Assert.Null(spread);
        Assert.Throws<QuantityFormatException>(() => Spread.Parse(text!));
    }

    [Property]
    public bool AnyText_IsReadOrRefused(string? text)
    {
        Spread.TryParse(text, out _);
        return true;
    }

    [Property]
    public bool Quantile_IsTheInverseOfTheDistributionFunction(PositiveInt width, byte shape, ushort place)
    {
        Distribution distribution = Shape(shape, width.Get);
        double p = (place + 0.5) / 65536;
        return Math.Abs(distribution.Cumulative(distribution.Quantile(p)) - p) < 1e-9;
    }

    /// <summary>The second moment by the quantile function: the integral of Q(p)² over p, which knows nothing of the formulas for u.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void StandardDeviation_IsTheSecondMomentOfTheQuantiles(byte shape)
    {
        Distribution distribution = Shape(shape, 3);
        const int Steps = 200_000;
        double sum = 0;
        for (int i = 0; i < Steps; i++)
        {
            double q = distribution.Quantile((i + 0.5) / Steps);
            sum += q * q;
        }

        Assert.Equal(distribution.StandardDeviation, Math.Sqrt(sum / Steps), 2e-3 * distribution.StandardDeviation);
    }

    internal static Distribution Shape(byte shape, double width) => (shape % 6) switch
    {
        0 => new NormalDistribution(width),
        1 => new RectangularDistribution(width),
        2 => new TrapezoidalDistribution(width, 0.4),
        3 => new ArcsineDistribution(width),
        4 => new CurvilinearTrapezoidDistribution(width, width * 0.3),
        _ => new StudentTDistribution(width, 7),
    };

    private static Distribution Around(Spread spread) => spread.Around(new Quantity(1, QuantityKind.Ratio));
}
