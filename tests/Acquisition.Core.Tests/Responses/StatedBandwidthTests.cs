using System;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>What a response states as its bandwidth is what the search for half power finds, and the other way round.</summary>
public sealed class StatedBandwidthTests
{
    public static TheoryData<string> Models => new()
    {
        "single pole", "equal poles", "Gaussian", "Butterworth", "Bessel", "Chebyshev", "second order", "brick wall", "skin effect", "high-pass", "delay", "attenuator", "amplifier", "rational",
        "function", "measured to the end", "measured and held", "parallel", "cascade", "cascade with a brick wall", "band-pass that ends", "chain",
    };

    private static readonly FrequencyPoint[] Points =
    {
        new(1.MHz(), 0.dB(), Angle.FromDegrees(0)), new(10.MHz(), (-0.1).dB(), Angle.FromDegrees(-5)), new(100.MHz(), (-1).dB(), Angle.FromDegrees(-50)),
    };

    private static Response Make(string name) => name switch
    {
        "single pole" => Response.SinglePole(100.MHz()),
        "equal poles" => Response.PolesEqual(4, 100.MHz()),
        "Gaussian" => Response.Gaussian(100.MHz()),
        "Butterworth" => Response.Butterworth(5, 100.MHz()),
        "Bessel" => Response.Bessel(4, 100.MHz()),
        "Chebyshev" => Response.Chebyshev(5, 0.5.dB(), 100.MHz()),
        "second order" => Response.SecondOrder(100.MHz(), Ratio.FromFraction(0.1)),
        "brick wall" => Response.BrickWall(100.MHz()),
        "skin effect" => Response.SkinEffect(100.MHz()),
        "high-pass" => Response.HighPass(1.kHz()),
        "delay" => Response.Delay(5.ns()),
        "attenuator" => Response.Attenuator(6.dB()),
        "amplifier" => Response.Amplifier(6.dB()),
        "rational" => Response.Rational("rational", new[] { 1, 1e-10 }, new[] { 1, 2e-9, 1e-18 }),
        "function" => Response.FromFunction("function", 100.MHz(), hertz => 1 / (1 + (hertz / 1e8 * System.Numerics.Complex.ImaginaryOne))),
        "measured to the end" => Response.Measured("measured", Points, above: OutsideBand.Zero),
        "measured and held" => Response.Measured("measured", Points, above: OutsideBand.Hold),
        "parallel" => Response.Parallel(Response.BrickWall(100.MHz()), Response.BrickWall(200.MHz())),
        "cascade" => Response.Gaussian(100.MHz()).Then(Response.SinglePole(50.MHz())),
        "cascade with a brick wall" => Response.Gaussian(500.MHz()).Then(Response.BrickWall(100.MHz())),
        "band-pass that ends" => Response.HighPass(1.MHz()).Then(Response.BrickWall(100.MHz())),
        _ => MeasurementChain.From(50.Ohm()).Into(FrontEnd.HighImpedance(1.MOhm(), 15.pF(), Response.BrickWall(100.MHz()))).Response,
    };

    [Theory, MemberData(nameof(Models))]
    public void Bandwidth_IsWhereTheSearchFindsHalfPower(string name)
    {
        Response response = Make(name);
        bool falls = response.TryBandwidth(DecibelRatio.HalfPower, out Frequency found);
        if (!falls)
        {
            Assert.Throws<InvalidOperationException>(() => response.Bandwidth);
            Assert.Null(response.PassBand(DecibelRatio.HalfPower).Upper);
            return;
        }
        Assert.Equal(1, (response.Bandwidth / found).Fraction, 1e-12);
        Assert.Equal(1, (response.PassBand(DecibelRatio.HalfPower).Upper!.Value / found).Fraction, 1e-12);
    }

    /// <summary>The gain is 1 up to the edge and nothing above: it falls through every level there.</summary>
    [Theory, InlineData(-0.1), InlineData(-3), InlineData(-60)]
    public void ABrickWall_FallsToEveryLevelAtItsEdge(double decibels)
    {
        Response wall = Response.BrickWall(100.MHz());

        Assert.Equal(100.MHz(), wall.BandwidthAt(DecibelRatio.FromDecibels(decibels)));
        Crossing crossing = Assert.Single(wall.Crossings(DecibelRatio.FromDecibels(decibels)));
        Assert.True(crossing.IsFalling);
        Assert.DoesNotContain(wall.PassBand(DecibelRatio.FromDecibels(decibels)).Findings, finding => finding.Code == "never-falls");
    }

    /// <summary>Data that refuse what lies above say nothing about where the gain falls.</summary>
    [Fact]
    public void DataThatEndAboveHalfPower_HaveNoBandwidth() =>
        Assert.False(Response.Measured("measured", Points).TryBandwidth(DecibelRatio.HalfPower, out _));
}
