using System;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>The step from the complex gain alone, against the step from the poles of the same response.</summary>
public class PanelStepTests
{
    public static TheoryData<string> Models => new() { "single pole", "three poles", "Butterworth 4", "Bessel 6", "Gaussian", "second order", "mixed" };

    [Theory, MemberData(nameof(Models))]
    public void Step_FromTheGainAlone_IsThatFromThePoles(string name)
    {
        Response exact = Make(name);
        Response blind = Response.FromFunction(name, 100.MHz(), hertz => exact.ComplexGain(Frequency.FromHertz(hertz)));
        Assert.Equal(1, blind.Bandwidth.Hertz / exact.Bandwidth.Hertz, 1e-9);
        for (double t = -2; t < 12; t += 0.37)
            Assert.Equal(exact.StepAt(t.ns()).Fraction, blind.StepAt(t.ns()).Fraction, 2e-8);
        Assert.Equal(1, blind.RiseTime.Seconds / exact.RiseTime.Seconds, 1e-7);
        Assert.Equal(exact.Overshoot.Fraction, blind.Overshoot.Fraction, 1e-7);
        Assert.Equal(1, blind.NoiseBandwidth.Hertz / exact.NoiseBandwidth.Hertz, 1e-6);
        Assert.Equal(exact.SettlingTime(Ratio.FromPercent(1)).Seconds, blind.SettlingTime(Ratio.FromPercent(1)).Seconds, 1e-6 * exact.RiseTime.Seconds);
    }

    private static Response Make(string name) => name switch
    {
        "single pole" => Response.SinglePole(100.MHz()),
        "three poles" => Response.PolesEqual(3, 100.MHz()),
        "Butterworth 4" => Response.Butterworth(4, 100.MHz()),
        "Bessel 6" => Response.Bessel(6, 100.MHz()),
        "Gaussian" => Response.Gaussian(100.MHz()),
        "second order" => Response.SecondOrder(120.MHz(), Ratio.FromFraction(0.2)),
        _ => Response.Gaussian(200.MHz()).Then(Response.Bessel(3, 500.MHz())).Then(Response.SinglePole(350.MHz())).Then(Response.Delay(3.ns())),
    };
}
