using System;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>The bandwidth-rise time constants of handbook 2.2 and 2.3: computed there by partial fractions and special functions, here by the state of the cascade.</summary>
public class StepHandbookTests
{
    private static readonly Frequency Hz = 1.Hz();

    [Theory, HandbookData("RT-001", "RT-002", "RT-003", "RT-004", "RT-005", "RT-006", "RT-007", "RT-008")]
    public void RiseTime_OfTheClassicalShapes_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        Response response = value.Text("response") switch
        {
            "single pole" => Response.SinglePole(Hz),
            "gaussian" => Response.Gaussian(Hz),
            _ => throw new NotSupportedException(value.Text("response")),
        };
        if (id == "RT-007")
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

    private static double Between(Response response, CheckValue value)
    {
        double[] levels = value.Numbers("levels");
        return response.RiseTimeBetween(Ratio.FromFraction(levels[0]), Ratio.FromFraction(levels[1])).Seconds * response.Bandwidth.Hertz;
    }
}
