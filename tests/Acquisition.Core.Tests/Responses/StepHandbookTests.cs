using System;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>The bandwidth-rise time constants of handbook 2.2 and 2.3: computed there by partial fractions and special functions, here by the state of the cascade.</summary>
public class StepHandbookTests
{
    private static readonly Frequency Hz = 1.Hz();

    [Theory, HandbookData("RT-00", "RT-010", "RT-011")]
    public void RiseTime_OfTheClassicalShapes_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        Response response = value.Text("response") switch
        {
            "single pole" => Response.SinglePole(Hz),
            "gaussian" => Response.Gaussian(Hz),
            "brick wall" => Response.BrickWall(Hz),
            _ => throw new NotSupportedException(value.Text("response")),
        };
        if (id == "RT-011")
            value.Confirm(response.Overshoot.Fraction);
        else if (id == "RT-007")
            value.Confirm(response.RiseTime.Seconds / CheckValue.All["RT-008"].Expected);
        else if (value.Unit == "tr/tau")
            value.Confirm(Between(response, value) * 2 * Math.PI);
        else if (value.Unit == "tr/sigma")
            value.Confirm(Between(response, value) / CheckValue.All["RT-007"].Expected);
        else
            value.Confirm(Between(response, value));
    }

    [Theory, HandbookData("RT-NID-")]
    public void RiseTime_OfEqualPoles_IsTheHandbooks(string id) =>
        CheckValue.All[id].Confirm(Between(Response.PolesEqual(CheckValue.All[id].Integer("n"), Hz), CheckValue.All[id]));

    [Theory, HandbookData("RT-BUT-", "RT-BES-")]
    public void Step_OfButterworthAndBessel_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        int order = value.Integer("n");
        Response response = value.Text("response") == "Butterworth" ? Response.Butterworth(order, Hz) : Response.Bessel(order, Hz);
        if (id.EndsWith("-OS", StringComparison.Ordinal))
            value.Confirm(response.Overshoot.Fraction);
        else if (id.EndsWith("-W3", StringComparison.Ordinal))
            value.Confirm(response.Bandwidth.Hertz * 2 * Math.PI * response.GroupDelay(0.Hz()).Seconds);
        else
            value.Confirm(Between(response, value));
    }

    [Theory, HandbookData("RT-CHE-")]
    public void Step_OfChebyshev_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        Response response = Response.Chebyshev(value.Integer("n"), value.Number("ripple_dB").dB(), Hz);
        value.Confirm(id.EndsWith("-OS", StringComparison.Ordinal) ? response.Overshoot.Fraction : Between(response, value));
    }

    [Theory, HandbookData("RT-2ND-")]
    public void Step_OfTheSecondOrder_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        Response response = Response.SecondOrder(Hz, Ratio.FromFraction(value.Number("zeta")));
        if (id.EndsWith("-OS", StringComparison.Ordinal))
            value.Confirm(response.Overshoot.Fraction);
        else if (id.EndsWith("-F3", StringComparison.Ordinal))
            value.Confirm(response.Bandwidth.Hertz);
        else
            value.Confirm(Between(response, value));
    }

    [Theory, HandbookData("SK-")]
    public void Step_OfTheSkinEffect_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        Response line = Response.SkinEffect(Hz);
        double tau = CheckValue.All["SK-001"].Expected;
        value.Confirm(id switch
        {
            "SK-001" => Math.Pow(line.PhaseRadians(1), 2) / Math.PI,
            "SK-002" => line.RiseTime.Seconds / tau,
            "SK-003" => line.RiseTime.Seconds,
            "SK-004" => line.StepCrossing(Ratio.FromPercent(50)).Seconds / tau,
            _ => line.RiseTimeBetween(Ratio.FromPercent(20), Ratio.FromPercent(80)).Seconds,
        });
    }

    private static double Between(Response response, CheckValue value)
    {
        double[] levels = value.Numbers("levels");
        return response.RiseTimeBetween(Ratio.FromFraction(levels[0]), Ratio.FromFraction(levels[1])).Seconds * response.Bandwidth.Hertz;
    }
}
