using System;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>A slow train of fast edges has very many harmonics: it is drawn right or refused, never cut short in silence.</summary>
public sealed class RareFastPulsesTests
{
    [Fact]
    public void PulseTrainOf20Kilohertz_PeaksLikeThePulseAlone()
    {
        Response response = Response.Gaussian(156.MHz());
        Signal alone = response.Apply(Signal.SinglePulse(1.Vpp(), 3.ns(), 0.2.ns(), 0.2.ns()));
        Signal train = response.Apply(Signal.PulseTrain(20.kHz(), 1.Vpp(), 3.ns(), 0.2.ns(), 0.2.ns()));

        Assert.Equal(alone.PeakToPeak.Volts, train.PeakToPeak.Volts, 2e-3);
    }

    [Fact]
    public void SquareOf1Kilohertz_WithEdgesOfNanoseconds_IsRefusedWithTheRemedy()
    {
        var refusal = Assert.Throws<NotSupportedException>(() => Response.Gaussian(200.MHz()).Apply(Signal.Square(1.kHz(), 1.Vpp(), 2.ns())));

        Assert.Contains("harmonics that matter", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("take one pulse or step of it alone", refusal.Message, StringComparison.Ordinal);
    }
}
