using System;
using System.Numerics;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>Steps that are held as polynomials: their integrals are those of the polynomials, so that a ramp behind them costs little.</summary>
public sealed class HeldStepTests
{
    // The integral of a decaying oscillation by hand: exp(-t) cos 9t has the primitive exp(-t) (9 sin 9t - cos 9t)/82.
    [Property(MaxTest = 200)]
    public Property IntegralOfPieces_IsThatOfTheFunction() =>
        Prop.ForAll(Gen.Choose(0, 8000).SelectMany(_ => Gen.Choose(0, 8000), (one, other) => (From: one / 1000d, To: other / 1000d)).ToArbitrary(), drawn =>
        {
            var pieces = new PiecewisePolynomial(t => Math.Exp(-t) * Math.Cos(9 * t), new[] { 0.0, 1, 8 }, 1e-13);
            double from = Math.Min(drawn.From, drawn.To), to = Math.Max(drawn.From, drawn.To);
            static double Primitive(double t) => Math.Exp(-t) * ((9 * Math.Sin(9 * t)) - Math.Cos(9 * t)) / 82;
            Assert.True(pieces.Pieces > 2);
            Assert.Equal(Primitive(to) - Primitive(from), pieces.Between(from, to), 1e-12);
        });

    // Two ways to one answer: the poles' own integral, and the pieces that hold a step which is known by its gain at each frequency only.
    [Fact]
    public void ARampBehindAGivenGain_RisesAndOvershootsAsBehindThePolesItWasTakenFrom()
    {
        Response poles = Response.SecondOrder(100.MHz(), 40.Percent());
        Response given = Response.FromFunction("a resonance by its gain", 100.MHz(), hertz => 1 / (1 - (hertz / 1e8 * (hertz / 1e8)) + new Complex(0, 0.8 * hertz / 1e8)));
        foreach (double nanoseconds in new[] { 0.2, 1, 5, 40 })
        {
            var edge = new Edge(Duration.FromSeconds(nanoseconds * 1e-9));
            double rise = poles.RiseTimeOf(edge).Value.Seconds;
            Assert.Equal(rise, given.RiseTimeOf(edge).Value.Seconds, 1e-6 * rise);
            Assert.Equal(poles.OvershootOf(edge).Fraction, given.OvershootOf(edge).Fraction, 1e-7);
        }
    }
}
