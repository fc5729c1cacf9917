using System;
using Acquisition.Core.Responses;

namespace Acquisition.Core.Planning;

/// <summary>An edge after it has passed a response: the step response averaged over the slope of the edge, not a root-sum-square of two numbers.</summary>
internal static class EdgeThrough
{
    private static readonly double Ln2 = Math.Log(2);

    /// <summary>The 10 % to 90 % duration of the edge behind the response, s; NaN where it never rises through the levels.</summary>
    internal static double RiseTime(Edge edge, Response response)
    {
        if (edge.Scale == 0)
            return Duration(response);
        switch (edge.Shape)
        {
            case EdgeShape.Gaussian:
                return Duration(Response.Gaussian(Frequency.FromSi(Math.Sqrt(Ln2) / (2 * Math.PI * edge.Scale), "edge")).Then(response));
            case EdgeShape.Exponential:
                return Duration(Response.SinglePole(Frequency.FromSi(1 / (2 * Math.PI * edge.Scale), "edge")).Then(response));
            default:
                return RampRiseTime(edge.Scale, response);
        }
    }

    /// <summary>The root-sum-square rule (handbook 2.5): exact for Gaussian steps only.</summary>
    internal static double RootSumSquare(double signal, double system) => Math.Sqrt((signal * signal) + (system * system));

    /// <summary>The rise time that a system may have so that an edge is shown no more than the fraction slower, by the root-sum-square rule (handbook 12.1).</summary>
    internal static double SystemRiseTime(double signal, double error) => signal * Math.Sqrt(((1 + error) * (1 + error)) - 1);

    /// <summary>The largest value that a pulse with straight edges reaches behind the response, relative to its gain for a long one; NaN where the response does not rise.</summary>
    internal static double PulsePeak(Duration width, Duration riseTime, Response response)
    {
        if (riseTime.SiValue == 0)
            return PulsePeak(width.SiValue, response);
        double reference = response.StepReference;
        Signal shown = response.Apply(Signal.SinglePulse(PeakToPeakVoltage.FromSi(1, "pulse"), width, riseTime, riseTime));
        return (reference < 0 ? -shown.Lowest : shown.Highest) / Math.Abs(reference);
    }

    /// <summary>The pulse with straight edges behind the response, relative to the gain for a long one; the middle of its first edge, or its first ideal edge, is at 0 s.</summary>
    internal static Func<double, double> Pulse(Duration width, Duration riseTime, Response response)
    {
        double reference = response.StepReference;
        if (riseTime.SiValue == 0)
        {
            StepResponse step = response.StepResponse;
            return time => (step.Value(time) - step.Value(time - width.SiValue)) / reference;
        }
        Signal shown = response.Apply(Signal.SinglePulse(PeakToPeakVoltage.FromSi(1, "pulse"), width, riseTime, riseTime));
        return time => shown.Value(time) / reference;
    }

    /// <summary>The largest value that a rectangular pulse of height 1 and a width in seconds reaches behind the response, relative to its gain for a long one.</summary>
    internal static double PulsePeak(double width, Response response)
    {
        StepResponse step = response.StepResponse;
        double reference = response.StepReference, rise = Duration(response);
        if (double.IsNaN(rise) || !step.FirstReach(0.5 * reference, out double middle))
            return double.NaN;
        if (rise <= 1e-9 * width)
            return 1;
        double best = 0, from = middle - rise, to = middle + width + rise, spacing = (to - from) / 64;
        double Height(double time) => (step.Value(time) - step.Value(time - width)) / reference;
        double at = from;
        for (double time = from; time <= to; time += spacing)
        {
            double height = Height(time);
            if (height > best)
            {
                best = height;
                at = time;
            }
        }
        // Golden section around the best of the scan.
        double low = at - spacing, high = at + spacing;
        const double golden = 0.6180339887498949;
        for (int i = 0; i < 40; i++)
        {
            double a = high - (golden * (high - low)), b = low + (golden * (high - low));
            if (Height(a) > Height(b))
                high = b;
            else
                low = a;
        }
        return Math.Max(best, Height(0.5 * (low + high)));
    }

    private static double Duration(Response response)
    {
        try
        {
            return response.RiseTime.SiValue;
        }
        catch (InvalidOperationException)
        {
            return double.NaN;
        }
    }

    private static double RampRiseTime(double ramp, Response response)
    {
        double rise = Duration(response);
        // A response without any rise time of its own (an ideal attenuator, a wire) leaves the ramp as it is.
        if (rise <= 1e-9 * ramp)
            return 0.8 * ramp;
        // A ramp so short is a step: what it adds is of second order.
        return ramp <= 1e-8 * rise || double.IsNaN(rise) ? rise : new RampResponse(response, rise).RiseTime(ramp);
    }
}
