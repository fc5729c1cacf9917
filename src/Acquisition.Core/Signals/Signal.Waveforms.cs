using System;
using Acquisition.Core.Signals;

namespace Acquisition.Core;

// The waveforms of the trade. Swings lie evenly about 0 V unless the description says otherwise; WithOffset moves them.
public abstract partial class Signal
{
    /// <summary>A sine, rising through 0 V at t = 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or the amplitude is not above 0.</exception>
    public static Signal Sine(Frequency frequency, PeakVoltage amplitude) =>
        new SineSignal(Above(frequency, nameof(frequency)), Above(amplitude, nameof(amplitude)), 0);

    /// <summary>A square wave about 0 V; the 50 % point of its rising edge passes at t = 0.</summary>
    /// <param name="frequency">How often it repeats.</param>
    /// <param name="swing">From low to high.</param>
    /// <param name="riseTime">10 % to 90 % of both edges; 0 s for ideal jumps.</param>
    /// <param name="shape">The shape of the edges.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or the swing is not above 0, or the edges do not fit into the period.</exception>
    public static Signal Square(Frequency frequency, PeakToPeakVoltage swing, Duration riseTime = default, EdgeShape shape = EdgeShape.Linear) =>
        Square(frequency, swing, Ratio.FromFraction(0.5), riseTime, shape);

    /// <summary>A square wave about 0 V with a duty factor; the 50 % point of its rising edge passes at t = 0.</summary>
    /// <param name="frequency">How often it repeats.</param>
    /// <param name="swing">From low to high.</param>
    /// <param name="duty">The share of the period spent high, between the 50 % points.</param>
    /// <param name="riseTime">10 % to 90 % of both edges; 0 s for ideal jumps.</param>
    /// <param name="shape">The shape of the edges.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or the swing is not above 0, the duty factor is not between 0 and 1, or the edges do not fit.</exception>
    public static Signal Square(Frequency frequency, PeakToPeakVoltage swing, Ratio duty, Duration riseTime = default, EdgeShape shape = EdgeShape.Linear)
    {
        double period = 1 / Above(frequency, nameof(frequency)), volts = Above(swing, nameof(swing));
        if (!(duty.SiValue > 0 && duty.SiValue < 1))
            throw Refuse.OutOfRange(duty.SiValue, Ratio.Kind, nameof(duty), "above 0 and below 1");
        var edge = new Edge(riseTime, shape);
        return TwoLevels($"square, {frequency}", period, duty.SiValue * period, -volts / 2, volts, edge, edge, nameof(riseTime));
    }

    /// <summary>The same signal, moved by a constant voltage.</summary>
    public Signal WithOffset(Voltage offset) => Offset(offset.SiValue);

    private protected abstract Signal Offset(double volts);

    private static LevelSignal TwoLevels(string name, double period, double width, double low, double swing, Edge rise, Edge fall, string argument)
    {
        // Edges may touch but not overlap: otherwise the levels that the caller named are never reached.
        Fit(rise.After + fall.Before, width, rise, argument);
        Fit(fall.After + rise.Before, period - width, fall, argument);
        return new LevelSignal(name, period, low, new[] { new Transition(0, swing, rise), new Transition(width, -swing, fall) });
    }

    private static void Fit(double needed, double available, Edge edge, string argument)
    {
        if (needed <= available * (1 + 1e-12))
            return;
        throw Refuse.OutOfRange(
            edge.RiseTime.SiValue,
            Duration.Kind,
            argument,
            $"short enough for the edges to end within {Duration.FromSi(available, argument)}, the time between two of them",
            edge.Shape == EdgeShape.Linear ? "a slower signal is a triangle, or a sine through a response" : "model a slower edge as a jump through a response");
    }

    private static double Above(Frequency value, string argument) => Refuse.UnlessAboveZero(value.SiValue, Frequency.Kind, argument);

    private static double Above(PeakVoltage value, string argument) => Refuse.UnlessAboveZero(value.SiValue, PeakVoltage.Kind, argument);

    private static double Above(PeakToPeakVoltage value, string argument) => Refuse.UnlessAboveZero(value.SiValue, PeakToPeakVoltage.Kind, argument);

    private static double Above(Duration value, string argument) => Refuse.UnlessAboveZero(value.SiValue, Duration.Kind, argument);
}
