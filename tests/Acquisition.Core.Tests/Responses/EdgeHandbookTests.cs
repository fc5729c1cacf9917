using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>The rules of thumb for rise times and bandwidths, and how far they lie from what is computed: handbook 2.5, 3.3, 3.4, 4.7.</summary>
public class EdgeHandbookTests
{
    private static readonly Frequency Hz = 1.Hz();

    [Theory, HandbookData("RSS-NRC-", "RSS-2RC-", "RSS-2BUT-")]
    public void RootSumOfSquares_OfStages_IsAsWrongAsTheHandbookSays(string id)
    {
        CheckValue value = CheckValue.All[id];
        Response chain = value.Text("stages") switch
        {
            "n identical RC" => Response.Cascade(Enumerable.Repeat(Response.SinglePole(Hz), value.Integer("n")).ToArray()),
            "2 RC" => Response.SinglePole(Hz).Then(Response.SinglePole(Frequency.FromHertz(1 / value.Number("tau2/tau1")))),
            _ => Response.Butterworth(value.Integer("n"), Hz).Then(Response.Butterworth(value.Integer("n"), Hz)),
        };
        value.Confirm(chain.ExplainRiseTime().Rules.Single(rule => rule.Rule.StartsWith("root", StringComparison.Ordinal)).Difference.Fraction);
    }

    [Theory, HandbookData("RSS-50")]
    public void RootSumOfSquares_OfARampThroughRc_IsAsWrongAsTheHandbookSays(string id)
    {
        CheckValue value = CheckValue.All[id];
        Response rc = Response.SinglePole(Frequency.FromHertz(1 / (2 * Math.PI * value.Number("RC_tau"))));
        value.Confirm(rc.RiseTimeOf(new Edge(0.8.s())).Rules[0].Difference.Fraction);
    }

    [Theory, HandbookData("RSS-51")]
    public void RootSumOfSquares_OfAnExponentialThroughAGaussian_IsAsWrongAsTheHandbookSays(string id)
    {
        CheckValue value = CheckValue.All[id];
        Response gaussian = Response.Gaussian(Frequency.FromHertz(CheckValue.All["RT-005"].Expected));
        value.Confirm(gaussian.RiseTimeOf(new Edge(value.Number("r").s(), EdgeShape.Exponential)).Rules[0].Difference.Fraction);
    }

    [Theory, HandbookData("RSS-001")]
    public void RiseTime_OfAGaussianEdgeThroughAGaussian_IsTheRootSumOfSquares(string id)
    {
        CheckValue value = CheckValue.All[id];
        double[] times = value.Numbers("tr");
        Response gaussian = Response.Gaussian(Frequency.FromHertz(CheckValue.All["RT-005"].Expected / times[1]));
        value.Confirm(gaussian.RiseTimeOf(new Edge(times[0].s(), EdgeShape.Gaussian)).Value.Seconds);
        value.Confirm(RootSumOfSquares.Combine(times[0].s(), times[1].s()).Seconds);
    }

    [Theory, HandbookData("RSS-40")]
    public void ReadingError_OfAGaussianEdge_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        double ratio = value.Number("tr_signal/tr_system");
        Response gaussian = Response.Gaussian(Frequency.FromHertz(CheckValue.All["RT-005"].Expected));
        value.Confirm(gaussian.RiseTimeOf(new Edge(ratio.s(), EdgeShape.Gaussian)).Value.Seconds / ratio - 1);
    }

    [Theory, HandbookData("RSS-410", "RSS-411", "RSS-412")]
    public void TheRule_Inverted_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        if (id == "RSS-410")
        {
            value.Confirm(RootSumOfSquares.SignalToSystemFor(Ratio.FromFraction(value.Number("rel_error"))).Fraction);
            return;
        }
        Duration measured = value.Number("tr_meas").s(), system = value.Number("tr_sys").s();
        value.Confirm((id == "RSS-411"
            ? RootSumOfSquares.Remove(measured, system).Value
            : RootSumOfSquares.UncertaintyOfRemoved(measured, measured * value.Number("u_rel_meas"), system, system * value.Number("u_rel_sys"))).Seconds);
    }

    [Theory, HandbookData("CAS-E", "CAS-2E", "CAS-BE")]
    public void RootSumOfSquares_OfBandwidths_IsAsWrongAsTheHandbookSays(string id)
    {
        CheckValue value = CheckValue.All[id];
        Response chain = value.Text("stages") switch
        {
            "n identical single pole" => Response.Cascade(Enumerable.Repeat(Response.SinglePole(Hz), value.Integer("n")).ToArray()),
            "2 single pole" => Response.SinglePole(value.Numbers("f3")[0].Hz()).Then(Response.SinglePole(value.Numbers("f3")[1].Hz())),
            _ => Response.Butterworth(value.Integer("order"), Hz).Then(Response.Butterworth(value.Integer("order"), Hz)),
        };
        value.Confirm(chain.ExplainBandwidth().Rules.Single().Difference.Fraction);
    }

    [Theory, HandbookData("CAS-R")]
    public void RequiredStage_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        Frequency together = value.Number("system_f3").Hz(), other = value.Number("one_stage_f3").Hz();
        value.Confirm((value.Text("type") == "gaussian" ? RequiredStage.Gaussian(together, other) : RequiredStage.SinglePole(together, other)).Hertz);
    }

    [Theory, HandbookData("GB-LIM", "GB-AMP")]
    public void GibbsOvershoot_IsThatOfABrickWall(string id) =>
        CheckValue.All[id].Confirm((id == "GB-LIM" ? 1 : 2) * Response.BrickWall(Hz).Overshoot.Fraction);
}
