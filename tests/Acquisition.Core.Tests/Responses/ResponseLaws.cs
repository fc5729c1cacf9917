using System;
using System.Linq;
using System.Numerics;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>What holds for every response, whatever its model: drawn at random, from 1 kHz to 10 GHz.</summary>
[Properties(Arbitrary = new[] { typeof(AnyResponse) }, MaxTest = 60)]
public class ResponseLaws
{
    [Property]
    public void ALowPass_HasGain1AtDc(LowPass low) => Close(1, low.Response.AmplitudeRatio(0.Hz()).Fraction, 1e-12);

    [Property]
    public void AtItsBandwidth_HalfThePowerPasses(LowPass low) => Close(-3.010299956639812, low.Response.Gain(low.Response.Bandwidth).Decibels, 1e-8);

    [Property]
    public void ScalingFrequency_ScalesTimeInversely(LowPass low)
    {
        Response doubled = low.At(2 * low.Bandwidth);
        Close(low.Response.RiseTime.Seconds / 2, doubled.RiseTime.Seconds, 1e-9 * doubled.RiseTime.Seconds);
        Close(low.Response.Overshoot.Fraction, doubled.Overshoot.Fraction, 1e-9);
        Close(2 * low.Response.NoiseBandwidth.Hertz, doubled.NoiseBandwidth.Hertz, 1e-9 * doubled.NoiseBandwidth.Hertz);
    }

    [Property]
    public void ACausalStep_IsZeroBeforeIt(LowPass low) => Close(0, low.IsGaussian ? 0 : low.Response.StepAt(-1.ps()).Fraction, 0);

    [Property]
    public void TheStep_EndsAtTheGainAtDc(LowPass low) => Close(1, low.Response.StepAt(Duration.FromSeconds(100 / low.Bandwidth)).Fraction, 1e-9);

    [Property]
    public void ACascade_DoesNotDependOnTheOrder(LowPass first, LowPass second)
    {
        Response one = first.Response.Then(second.Response), other = second.Response.Then(first.Response);
        Close(one.Bandwidth.Hertz, other.Bandwidth.Hertz, 1e-10 * one.Bandwidth.Hertz);
        Close(one.RiseTime.Seconds, other.RiseTime.Seconds, 1e-7 * one.RiseTime.Seconds);
        Close(one.Overshoot.Fraction, other.Overshoot.Fraction, 1e-7);
    }

    [Property]
    public void ACascade_AddsDecibelsPhaseAndGroupDelay(LowPass first, LowPass second)
    {
        Response cascade = first.Response.Then(second.Response);
        Frequency f = Frequency.Min(first.Response.Bandwidth, second.Response.Bandwidth) * 0.7;
        Close((first.Response.Gain(f) + second.Response.Gain(f)).Decibels, cascade.Gain(f).Decibels, 1e-9);
        Close((first.Response.Phase(f) + second.Response.Phase(f)).Radians, cascade.Phase(f).Radians, 1e-9);
        Close((first.Response.GroupDelay(f) + second.Response.GroupDelay(f)).Seconds * f.Hertz, cascade.GroupDelay(f).Seconds * f.Hertz, 1e-9);
    }

    [Property]
    public void ACascadeOfMonotonicStages_IsNeverWiderThanItsNarrowest(LowPass first, LowPass second)
    {
        if (first.IsMonotonic && second.IsMonotonic)
            Holds(first.Response.Then(second.Response).Bandwidth.Hertz <= Math.Min(first.Bandwidth, second.Bandwidth) * (1 + 1e-9));
    }

    [Property]
    public void NoiseBandwidth_OfAMonotonicResponse_IsAtLeastItsBandwidthTimesHalfThePower(LowPass low)
    {
        // |H|² is at least 1/2 up to the bandwidth; equality is never reached, and the models here all pass the bandwidth itself.
        if (low.IsMonotonic)
            Holds(low.Response.NoiseBandwidth >= low.Response.Bandwidth * 0.999999999);
    }

    [Property]
    public void GroupDelay_IsTheSlopeOfThePhase(LowPass low)
    {
        double f = 0.6 * low.Bandwidth, h = 1e-4 * f;
        double slope = -(low.Response.PhaseRadians(f + h) - low.Response.PhaseRadians(f - h)) / (4 * Math.PI * h);
        Close(slope * f, low.Response.GroupDelaySeconds(f) * f, 1e-6);
    }

    [Property]
    public void Phase_IsThatOfTheComplexGain_UpToWholeTurns(LowPass low)
    {
        Complex gain = low.Response.ComplexGain(Frequency.FromHertz(1.3 * low.Bandwidth));
        Close(0, Math.IEEERemainder(low.Response.PhaseRadians(1.3 * low.Bandwidth) - gain.Phase, 2 * Math.PI), 1e-9);
    }

    [Property]
    public void TheAreaAboveTheStep_IsTheGroupDelayAtDc(LowPass low)
    {
        // Elmore's delay: the integral of 1 - step is minus the slope of the phase at DC (handbook 2.8).
        double end = 60 / low.Bandwidth;
        Close(low.Response.GroupDelay(0.Hz()).Seconds * low.Bandwidth, (end - low.Response.StepResponse.Integral(end)) * low.Bandwidth, 1e-7);
    }

    [Property]
    public void ADelay_MovesTheStepAndNothingElse(LowPass low)
    {
        Duration delay = Duration.FromSeconds(3 / low.Bandwidth), at = Duration.FromSeconds(0.7 / low.Bandwidth);
        Response late = Response.Delay(delay).Then(low.Response);
        Close(low.Response.StepAt(at).Fraction, late.StepAt(at + delay).Fraction, 1e-9);
        Close(low.Response.RiseTime.Seconds * low.Bandwidth, late.RiseTime.Seconds * low.Bandwidth, 1e-10);
    }

    [Property]
    public void ASlowEdge_GoesThroughUnchanged_AndAJumpBecomesTheStep(LowPass low)
    {
        Duration slow = Duration.FromSeconds(1000 / low.Bandwidth);
        Close(1, (low.Response.RiseTimeOf(new Edge(slow)).Value / slow).Fraction, 1e-4);
        Close(1, (low.Response.RiseTimeOf(new Edge(0.s())).Value / low.Response.RiseTime).Fraction, 1e-12);
    }

    [Property]
    public void ParallelEqualBranches_AreOneOfTwiceTheGain(LowPass low)
    {
        Response pair = Response.Parallel(low.Response, low.Response);
        Close(1, (pair.Bandwidth / low.Response.Bandwidth).Fraction, 1e-9);
        Close(1, (pair.RiseTime / low.Response.RiseTime).Fraction, 1e-9);
        Close(6.020599913279624, pair.ReferenceGain.Decibels, 1e-9);
    }

    private static void Close(double expected, double actual, double tolerance) =>
        Xunit.Assert.True(Math.Abs(actual - expected) <= tolerance, FormattableString.Invariant($"expected {expected:R}, was {actual:R}"));

    private static void Holds(bool condition) => Xunit.Assert.True(condition);
}

/// <summary>A low-pass with gain 1 at DC, and what it was made of.</summary>
public sealed record LowPass(string Model, int Order, double Damping, double Bandwidth)
{
    public bool IsGaussian => Model == "Gaussian";

    public bool IsMonotonic => Model is not ("Chebyshev" or "second order");

    public Response Response => At(Bandwidth);

    public Response At(double hertz) => Model switch
    {
        "poles" => Response.PolesEqual(Order, hertz.Hz()),
        "Gaussian" => Response.Gaussian(hertz.Hz()),
        "Butterworth" => Response.Butterworth(Order, hertz.Hz()),
        "Bessel" => Response.Bessel(Order, hertz.Hz()),
        "Chebyshev" => Response.Chebyshev(Order | 1, 0.5.dB(), hertz.Hz()),
        _ => Response.SecondOrder(hertz.Hz(), Ratio.FromFraction(Damping)),
    };

    public override string ToString() => FormattableString.Invariant($"{Model} {Order}, {Damping}, {Bandwidth} Hz");
}

public static class AnyResponse
{
    public static Arbitrary<LowPass> LowPasses() => Arb.From(
        from model in Gen.Elements("poles", "Gaussian", "Butterworth", "Bessel", "Chebyshev", "second order")
        from order in Gen.Choose(1, 9)
        from damping in Gen.Choose(20, 300)
        from exponent in Gen.Choose(3000, 10000)
        select new LowPass(model, order, damping / 100.0, Math.Pow(10, exponent / 1000.0)));
}
