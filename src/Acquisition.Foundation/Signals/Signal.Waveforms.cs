using System;
using System.Collections.Generic;
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
        RequireDuty(duty);
        var edge = new Edge(riseTime, shape);
        return TwoLevels($"square, {frequency}", period, duty.SiValue * period, -volts / 2, volts, edge, edge, nameof(riseTime));
    }

    /// <summary>A trapezoid about 0 V with straight edges of their own durations; the 50 % point of its rising edge passes at t = 0.</summary>
    /// <param name="frequency">How often it repeats.</param>
    /// <param name="swing">From low to high.</param>
    /// <param name="duty">The share of the period spent high, between the 50 % points.</param>
    /// <param name="riseTime">10 % to 90 % of the rising edge; 0.8 of the whole ramp.</param>
    /// <param name="fallTime">90 % to 10 % of the falling edge.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or the swing is not above 0, the duty factor is not between 0 and 1, or the edges do not fit.</exception>
    public static Signal Trapezoid(Frequency frequency, PeakToPeakVoltage swing, Ratio duty, Duration riseTime, Duration fallTime)
    {
        double period = 1 / Above(frequency, nameof(frequency)), volts = Above(swing, nameof(swing));
        RequireDuty(duty);
        return TwoLevels($"trapezoid, {frequency}", period, duty.SiValue * period, -volts / 2, volts, new Edge(riseTime), new Edge(fallTime), nameof(riseTime));
    }

    /// <summary>A triangle about 0 V, rising through it at t = 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or the swing is not above 0.</exception>
    public static Signal Triangle(Frequency frequency, PeakToPeakVoltage swing)
    {
        double period = 1 / Above(frequency, nameof(frequency)), volts = Above(swing, nameof(swing));
        var edge = new Edge(Duration.FromSi(0.4 * period, nameof(frequency)));
        return TwoLevels($"triangle, {frequency}", period, period / 2, -volts / 2, volts, edge, edge, nameof(frequency));
    }

    /// <summary>A sawtooth about 0 V: a ramp over the whole period, rising through 0 V at t = 0, and a jump back.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or the swing is not above 0.</exception>
    public static Signal Sawtooth(Frequency frequency, PeakToPeakVoltage swing)
    {
        double period = 1 / Above(frequency, nameof(frequency)), volts = Above(swing, nameof(swing));
        var ramp = new Edge(Duration.FromSi(0.8 * period, nameof(frequency)));
        return TwoLevels($"sawtooth, {frequency}", period, period / 2, -volts / 2, volts, ramp, new Edge(default), nameof(frequency));
    }

    /// <summary>Pulses from 0 V up to a level, repeated; the 50 % point of a rising edge passes at t = 0.</summary>
    /// <param name="frequency">How often a pulse comes.</param>
    /// <param name="amplitude">From 0 V to the top.</param>
    /// <param name="width">Between the 50 % points.</param>
    /// <param name="riseTime">10 % to 90 % of the rising edge; 0 s for an ideal jump.</param>
    /// <param name="fallTime">90 % to 10 % of the falling edge; that of the rising edge when left out.</param>
    /// <param name="shape">The shape of the edges.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above 0, or the pulse does not fit into the period, or the edges do not fit into it.</exception>
    public static Signal PulseTrain(Frequency frequency, PeakToPeakVoltage amplitude, Duration width, Duration riseTime = default, Duration? fallTime = null, EdgeShape shape = EdgeShape.Linear)
    {
        double period = 1 / Above(frequency, nameof(frequency)), volts = Above(amplitude, nameof(amplitude)), seconds = Above(width, nameof(width));
        if (!(seconds < period))
            throw Refuse.OutOfRange(seconds, Duration.Kind, nameof(width), $"shorter than the period, {frequency.Period:G4}");
        return TwoLevels($"pulses, {frequency}, {width}", period, seconds, 0, volts, new Edge(riseTime, shape), new Edge(fallTime ?? riseTime, shape), nameof(riseTime));
    }

    /// <summary>One pulse from 0 V up to a level; the 50 % point of its rising edge passes at t = 0. It has a spectrum at every frequency (<see cref="SpectrumAt"/>), not harmonics.</summary>
    /// <param name="amplitude">From 0 V to the top.</param>
    /// <param name="width">Between the 50 % points.</param>
    /// <param name="riseTime">10 % to 90 % of the rising edge; 0 s for an ideal jump.</param>
    /// <param name="fallTime">90 % to 10 % of the falling edge; that of the rising edge when left out.</param>
    /// <param name="shape">The shape of the edges.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above 0, or the edges do not fit.</exception>
    public static Signal SinglePulse(PeakToPeakVoltage amplitude, Duration width, Duration riseTime = default, Duration? fallTime = null, EdgeShape shape = EdgeShape.Linear)
    {
        double volts = Above(amplitude, nameof(amplitude)), seconds = Above(width, nameof(width));
        Edge rise = new(riseTime, shape), fall = new(fallTime ?? riseTime, shape);
        Fit(rise.After + fall.Before, seconds, rise, nameof(riseTime));
        return new PulseSignal($"single pulse, {width}", 0, volts, seconds, rise, fall);
    }

    /// <summary>One step from 0 V up to a level, with an edge; its 50 % point passes at t = 0.</summary>
    /// <param name="amplitude">From 0 V to the top.</param>
    /// <param name="riseTime">10 % to 90 %; 0 s for an ideal jump.</param>
    /// <param name="shape">The shape of the edge.</param>
    /// <exception cref="ArgumentOutOfRangeException">The amplitude is not above 0, or the rise time is negative.</exception>
    public static Signal Step(PeakToPeakVoltage amplitude, Duration riseTime = default, EdgeShape shape = EdgeShape.Linear) =>
        new StepSignal(0, Above(amplitude, nameof(amplitude)), new Edge(riseTime, shape));

    /// <summary>A half-wave rectified sine: the positive half-waves of a sine that starts at t = 0. Its fundamental is the line frequency.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or the amplitude is not above 0.</exception>
    public static Signal HalfWaveRectified(Frequency frequency, PeakVoltage amplitude) =>
        new RectifiedSineSignal(Above(frequency, nameof(frequency)), Above(amplitude, nameof(amplitude)), false, 0);

    /// <summary>A full-wave rectified sine, both half-waves upwards. Its fundamental is twice the frequency of the sine.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or the amplitude is not above 0.</exception>
    public static Signal FullWaveRectified(Frequency frequency, PeakVoltage amplitude) =>
        new RectifiedSineSignal(Above(frequency, nameof(frequency)), Above(amplitude, nameof(amplitude)), true, 0);

    /// <summary>Two sines at once, each rising through 0 V at t = 0. Where one frequency is not a multiple of the other there is no common fundamental to rely on: it has two lines, no harmonics.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A frequency or an amplitude is not above 0, or the frequencies are equal.</exception>
    public static Signal TwoTone(Frequency first, PeakVoltage firstAmplitude, Frequency second, PeakVoltage secondAmplitude)
    {
        Above(first, nameof(first));
        Above(second, nameof(second));
        if (first == second)
            throw Refuse.OutOfRange(second.SiValue, Frequency.Kind, nameof(second), $"another frequency than the first, {first}");
        return new TwoToneSignal(first.SiValue, Above(firstAmplitude, nameof(firstAmplitude)), second.SiValue, Above(secondAmplitude, nameof(secondAmplitude)), 0);
    }

    /// <summary>Bursts of whole cycles of a sine, repeated; a burst starts at t = 0, rising through 0 V.</summary>
    /// <param name="carrier">The frequency within the burst.</param>
    /// <param name="amplitude">The peak amplitude.</param>
    /// <param name="cycles">Whole cycles per burst, at least 1.</param>
    /// <param name="repetition">The time from burst to burst.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above 0, or the burst is longer than the repetition time.</exception>
    public static Signal Burst(Frequency carrier, PeakVoltage amplitude, int cycles, Duration repetition)
    {
        double hertz = Above(carrier, nameof(carrier)), volts = Above(amplitude, nameof(amplitude)), period = Above(repetition, nameof(repetition));
        if (cycles < 1)
            throw new ArgumentOutOfRangeException(nameof(cycles), $"cycles must be at least 1; was {cycles}");
        if (cycles / hertz > period * (1 + 1e-12))
            throw Refuse.OutOfRange(period, Duration.Kind, nameof(repetition), $"at least the {Duration.FromSi(cycles / hertz, nameof(cycles)):G4} of the burst");
        return new BurstSignal(hertz, volts, cycles, period, 0);
    }

    /// <summary>Random non-return-to-zero data about 0 V, both bits equally likely: it has a spectrum, but neither lines nor a value at a time (handbook 4.2).</summary>
    /// <param name="rate">The bit rate.</param>
    /// <param name="swing">From the level of a 0 to that of a 1.</param>
    /// <param name="riseTime">10 % to 90 % of the edges; 0 s for ideal jumps.</param>
    /// <param name="shape">The shape of the edges.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate or the swing is not above 0, or the edges do not fit into a bit.</exception>
    public static Signal RandomBits(BitRate rate, PeakToPeakVoltage swing, Duration riseTime = default, EdgeShape shape = EdgeShape.Linear)
    {
        double bit = 1 / Above(rate, nameof(rate));
        var edge = new Edge(riseTime, shape);
        Fit(edge.Before + edge.After, bit, edge, nameof(riseTime));
        return new RandomBitsSignal($"random bits, {rate}", bit, Above(swing, nameof(swing)), edge, 0);
    }

    /// <summary>A pseudo-random bit sequence of 2^order - 1 bits about 0 V, repeated: lines every rate/(2^order - 1) (handbook 4.2). The first bit begins at t = 0.</summary>
    /// <param name="order">The length of the shift register, 2 to 16. Feedback: the primitive polynomials of ITU-T O.150 for 7, 9, 11 and 15, others as commonly tabulated.</param>
    /// <param name="rate">The bit rate.</param>
    /// <param name="swing">From the level of a 0 to that of a 1.</param>
    /// <param name="riseTime">10 % to 90 % of the edges; 0 s for ideal jumps.</param>
    /// <param name="shape">The shape of the edges.</param>
    /// <exception cref="ArgumentOutOfRangeException">The order is not 2 to 16, the rate or the swing is not above 0, or the edges do not fit into a bit.</exception>
    public static Signal PseudoRandomBits(int order, BitRate rate, PeakToPeakVoltage swing, Duration riseTime = default, EdgeShape shape = EdgeShape.Linear)
    {
        if (order < PseudoRandomSequence.Lowest || order > PseudoRandomSequence.Highest)
            throw new ArgumentOutOfRangeException(nameof(order), $"order must be {PseudoRandomSequence.Lowest} to {PseudoRandomSequence.Highest}; was {order}");
        return Pattern($"pseudo-random bits 2^{order}-1, {rate}", PseudoRandomSequence.Bits(order), rate, swing, new Edge(riseTime, shape), nameof(riseTime));
    }

    /// <summary>A pattern of bits about 0 V, repeated; the first bit begins at t = 0.</summary>
    /// <param name="bits">The bits, at least one 0 and one 1.</param>
    /// <param name="rate">The bit rate.</param>
    /// <param name="swing">From the level of a 0 to that of a 1.</param>
    /// <param name="riseTime">10 % to 90 % of the edges; 0 s for ideal jumps.</param>
    /// <param name="shape">The shape of the edges.</param>
    /// <exception cref="ArgumentNullException"><paramref name="bits"/> is null.</exception>
    /// <exception cref="ArgumentException">All bits are alike.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rate or the swing is not above 0, or the edges do not fit into a bit.</exception>
    public static Signal BitPattern(bool[] bits, BitRate rate, PeakToPeakVoltage swing, Duration riseTime = default, EdgeShape shape = EdgeShape.Linear)
    {
        _ = bits ?? throw new ArgumentNullException(nameof(bits));
        if (Array.IndexOf(bits, true) < 0 || Array.IndexOf(bits, false) < 0)
            throw new ArgumentException("bits must hold at least one 0 and one 1: otherwise it is a constant", nameof(bits));
        return Pattern($"pattern of {bits.Length} bits, {rate}", (bool[])bits.Clone(), rate, swing, new Edge(riseTime, shape), nameof(riseTime));
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

    private static LevelSignal Pattern(string name, bool[] bits, BitRate rate, PeakToPeakVoltage swing, Edge edge, string argument)
    {
        double bit = 1 / Above(rate, nameof(rate)), volts = Above(swing, nameof(swing));
        Fit(edge.Before + edge.After, bit, edge, argument);
        var transitions = new List<Transition>();
        bool last = bits[bits.Length - 1];
        for (int i = 0; i < bits.Length; i++)
        {
            if (bits[i] != last)
                transitions.Add(new Transition(i * bit, bits[i] ? volts : -volts, edge));
            last = bits[i];
        }
        return new LevelSignal(name, bits.Length * bit, last ? volts / 2 : -volts / 2, transitions.ToArray(), bits.Length);
    }

    private static void RequireDuty(Ratio duty)
    {
        if (!(duty.SiValue > 0 && duty.SiValue < 1))
            throw Refuse.OutOfRange(duty.SiValue, Ratio.Kind, nameof(duty), "above 0 and below 1");
    }

    private static void Fit(double needed, double available, Edge edge, string argument)
    {
        if (needed <= available * (1 + 1e-12))
            return;
        throw Refuse.OutOfRange(
            edge.RiseTime.SiValue,
            Duration.Kind,
            argument,
            $"short enough for the edges to end within {Duration.FromSi(available, argument):G4}, the time between two of them",
            edge.Shape == EdgeShape.Linear ? "a slower signal is a triangle, or a sine through a response" : "model a slower edge as a jump through a response");
    }

    private static double Above(Frequency value, string argument) => Refuse.UnlessAboveZero(value.SiValue, Frequency.Kind, argument);

    private static double Above(PeakVoltage value, string argument) => Refuse.UnlessAboveZero(value.SiValue, PeakVoltage.Kind, argument);

    private static double Above(PeakToPeakVoltage value, string argument) => Refuse.UnlessAboveZero(value.SiValue, PeakToPeakVoltage.Kind, argument);

    private static double Above(BitRate value, string argument) => Refuse.UnlessAboveZero(value.SiValue, BitRate.Kind, argument);

    private static double Above(Duration value, string argument) => Refuse.UnlessAboveZero(value.SiValue, Duration.Kind, argument);
}
