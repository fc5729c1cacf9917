using System;
using System.Linq;
using System.Numerics;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>Many frequencies at once give what one at a time gives.</summary>
public class BulkTests
{
    private static readonly double[] Hertz = Enumerable.Range(0, 1003).Select(i => i == 0 ? 0 : 10 * Math.Pow(10, i / 70.0)).ToArray();

    [Theory]
    [InlineData("all poles")]
    [InlineData("single poles")]
    [InlineData("Gaussian")]
    [InlineData("zeros and delay")]
    [InlineData("overflow")]
    [InlineData("skin effect")]
    public void Bulk_GivesWhatOneAtATimeGives(string name)
    {
        Response response = name switch
        {
            "all poles" => Response.Butterworth(5, 30.MHz()),
            "single poles" => Response.SinglePole(30.MHz()).Then(Response.SinglePole(70.MHz())),
            "Gaussian" => Response.Gaussian(20.MHz()).Then(Response.Bessel(3, 50.MHz())),
            "zeros and delay" => Response.HighPass(1.kHz()).Then(Response.SinglePole(30.MHz())).Then(Response.Delay(4.ns())),
            "overflow" => Response.Cascade(Enumerable.Repeat(Response.Butterworth(10, 100.Hz()), 5).ToArray()),
            _ => Response.SkinEffect(30.MHz()),
        };
        var gains = new Complex[Hertz.Length];
        response.ComplexGains(Hertz, gains);
        for (int i = 0; i < Hertz.Length; i++)
        {
            Complex one = response.ComplexGain(Hertz[i].Hz());
            Assert.True(Complex.Abs(gains[i] - one) <= 5e-15 * Complex.Abs(one) + 1e-300, $"{Hertz[i]} Hz: {gains[i]} against {one}");
        }
    }

    [Fact]
    public void BadFrequencies_AreRefused_BeforeAnythingIsComputed()
    {
        Response response = Response.SinglePole(1.Hz());
        Assert.Throws<ArgumentOutOfRangeException>(() => response.ComplexGains(new[] { 1, double.NaN }, new Complex[2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => response.ComplexGains(new[] { -1.0 }, new Complex[1]));
        Assert.Throws<ArgumentException>(() => response.ComplexGains(new[] { 1.0 }, new Complex[2]));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void BadFrequency_IsRefused_WhereverItStands(double bad)
    {
        Response response = Response.SinglePole(1.Hz());
        for (int place = 0; place < 19; place++)
        {
            double[] hertz = Enumerable.Range(0, 19).Select(i => i == place ? bad : i).ToArray();
            Assert.Throws<ArgumentOutOfRangeException>(() => response.ComplexGains(hertz, new Complex[19]));
        }
    }
}
