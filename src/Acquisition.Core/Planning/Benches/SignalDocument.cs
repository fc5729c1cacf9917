using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Explanations.Json;

namespace Acquisition.Core.Planning;

/// <summary>The form of a signal in JSON: a shape, and the members that the shape has.</summary>
internal static class SignalDocument
{
    private const int MostBits = 65_536;

    private static readonly IReadOnlyDictionary<string, Func<DocumentObject, Func<Signal>>> Shapes = new Dictionary<string, Func<DocumentObject, Func<Signal>>>
    {
        ["sine"] = Sine,
        ["square"] = Square,
        ["trapezoid"] = Trapezoid,
        ["triangle"] = signal => Plain(signal, Signal.Triangle),
        ["sawtooth"] = signal => Plain(signal, Signal.Sawtooth),
        ["pulse train"] = PulseTrain,
        ["single pulse"] = SinglePulse,
        ["half-wave rectified sine"] = signal => Rectified(signal, Signal.HalfWaveRectified),
        ["full-wave rectified sine"] = signal => Rectified(signal, Signal.FullWaveRectified),
        ["two tones"] = TwoTones,
        ["burst"] = Burst,
        ["random bits"] = RandomBits,
        ["pseudo-random bits"] = PseudoRandomBits,
        ["bit pattern"] = BitPattern,
    };

    private static readonly IReadOnlyDictionary<string, EdgeShape> EdgeShapes = new Dictionary<string, EdgeShape>
    {
        ["linear"] = EdgeShape.Linear,
        ["Gaussian"] = EdgeShape.Gaussian,
        ["exponential"] = EdgeShape.Exponential,
    };

    private static readonly IReadOnlyDictionary<string, string> Members = new Dictionary<string, string>
    {
        ["rate"] = "bitRate",
        ["first"] = "frequency",
        ["firstAmplitude"] = "amplitude",
        ["second"] = "secondFrequency",
        ["carrier"] = "frequency",
    };

    // Edges, widths and periods must fit into one another.
    private static readonly string[] Related = ["frequency", "secondFrequency", "bitRate", "duty", "width", "riseTime", "fallTime", "cycles", "repetition"];

    internal static Signal? Read(DocumentObject signal)
    {
        Func<DocumentObject, Func<Signal>>? shape = signal.RequiredChoice<Func<DocumentObject, Func<Signal>>?>("shape", Shapes!, null);
        Func<Signal>? make = shape?.Invoke(signal);
        Voltage? offset = signal.OptionalQuantity("offset", Voltage.Parse);
        if (shape is not null)
            signal.RefuseOthers();
        return make is null ? null : signal.Build(() => offset is { } volts ? make().WithOffset(volts) : make(), null, Members, Related);
    }

    private static Func<Signal> Sine(DocumentObject signal)
    {
        Frequency frequency = Frequency(signal);
        PeakVoltage amplitude = Amplitude(signal);
        return () => Signal.Sine(frequency, amplitude);
    }

    private static Func<Signal> Square(DocumentObject signal)
    {
        Frequency frequency = Frequency(signal);
        PeakToPeakVoltage swing = Swing(signal);
        Ratio? duty = signal.OptionalQuantity("duty", Ratio.Parse);
        (Duration rise, EdgeShape edge) = Edge(signal);
        return () => duty is { } share ? Signal.Square(frequency, swing, share, rise, edge) : Signal.Square(frequency, swing, rise, edge);
    }

    private static Func<Signal> Trapezoid(DocumentObject signal)
    {
        Frequency frequency = Frequency(signal);
        PeakToPeakVoltage swing = Swing(signal);
        Ratio duty = signal.OptionalQuantity("duty", Ratio.Parse) ?? Ratio.FromFraction(0.5);
        Duration rise = signal.Quantity("riseTime", Duration.Parse), fall = signal.Quantity("fallTime", Duration.Parse);
        return () => Signal.Trapezoid(frequency, swing, duty, rise, fall);
    }

    private static Func<Signal> Plain(DocumentObject signal, Func<Frequency, PeakToPeakVoltage, Signal> make)
    {
        Frequency frequency = Frequency(signal);
        PeakToPeakVoltage swing = Swing(signal);
        return () => make(frequency, swing);
    }

    private static Func<Signal> Rectified(DocumentObject signal, Func<Frequency, PeakVoltage, Signal> make)
    {
        Frequency frequency = Frequency(signal);
        PeakVoltage amplitude = Amplitude(signal);
        return () => make(frequency, amplitude);
    }

    private static Func<Signal> PulseTrain(DocumentObject signal)
    {
        Frequency frequency = Frequency(signal);
        Func<Func<PeakToPeakVoltage, Duration, Duration, Duration?, EdgeShape, Signal>, Signal> pulse = Pulse(signal);
        return () => pulse((swing, width, rise, fall, edge) => Signal.PulseTrain(frequency, swing, width, rise, fall, edge));
    }

    private static Func<Signal> SinglePulse(DocumentObject signal)
    {
        Func<Func<PeakToPeakVoltage, Duration, Duration, Duration?, EdgeShape, Signal>, Signal> pulse = Pulse(signal);
        return () => pulse(Signal.SinglePulse);
    }

    private static Func<Func<PeakToPeakVoltage, Duration, Duration, Duration?, EdgeShape, Signal>, Signal> Pulse(DocumentObject signal)
    {
        PeakToPeakVoltage swing = Swing(signal);
        Duration width = signal.Quantity("width", Duration.Parse);
        (Duration rise, EdgeShape edge) = Edge(signal);
        Duration fall = signal.OptionalQuantity("fallTime", Duration.Parse) ?? rise;
        return make => make(swing, width, rise, fall, edge);
    }

    private static Func<Signal> TwoTones(DocumentObject signal)
    {
        Frequency first = Frequency(signal), second = signal.Quantity("secondFrequency", Core.Frequency.Parse);
        PeakVoltage amplitude = Amplitude(signal), other = signal.OptionalQuantity("secondAmplitude", PeakVoltage.Parse) ?? amplitude;
        return () => Signal.TwoTone(first, amplitude, second, other);
    }

    private static Func<Signal> Burst(DocumentObject signal)
    {
        Frequency frequency = Frequency(signal);
        PeakVoltage amplitude = Amplitude(signal);
        int cycles = signal.OptionalInteger("cycles", 1, 1_000_000) ?? 1;
        Duration repetition = signal.Quantity("repetition", Duration.Parse);
        return () => Signal.Burst(frequency, amplitude, cycles, repetition);
    }

    private static Func<Signal> RandomBits(DocumentObject signal)
    {
        BitRate rate = signal.Quantity("bitRate", BitRate.Parse);
        PeakToPeakVoltage swing = Swing(signal);
        (Duration rise, EdgeShape edge) = Edge(signal);
        return () => Signal.RandomBits(rate, swing, rise, edge);
    }

    private static Func<Signal> PseudoRandomBits(DocumentObject signal)
    {
        int order = signal.OptionalInteger("order", 2, 15) ?? 7;
        BitRate rate = signal.Quantity("bitRate", BitRate.Parse);
        PeakToPeakVoltage swing = Swing(signal);
        (Duration rise, EdgeShape edge) = Edge(signal);
        return () => Signal.PseudoRandomBits(order, rate, swing, rise, edge);
    }

    private static Func<Signal> BitPattern(DocumentObject signal)
    {
        string text = signal.Text("bits");
        BitRate rate = signal.Quantity("bitRate", BitRate.Parse);
        PeakToPeakVoltage swing = Swing(signal);
        (Duration rise, EdgeShape edge) = Edge(signal);
        int wrong = 0;
        while (wrong < text.Length && text[wrong] is ('0' or '1' or ' '))
            wrong++;
        if (wrong < text.Length)
            signal.Report("bits", FormattableString.Invariant($"found '{text[wrong]}' as character {wrong + 1}, expected 0, 1 or a space"));
        else if (text.Length > MostBits)
            signal.Report("bits", FormattableString.Invariant($"found {text.Length} characters, expected at most {MostBits}; a longer pattern is best taken as pseudo-random bits"));
        bool[] bits = text.Where(bit => bit != ' ').Select(bit => bit == '1').ToArray();
        return () => Signal.BitPattern(bits, rate, swing, rise, edge);
    }

    private static Frequency Frequency(DocumentObject signal) => signal.Quantity("frequency", Core.Frequency.Parse);

    private static PeakVoltage Amplitude(DocumentObject signal) => signal.Quantity("amplitude", PeakVoltage.Parse);

    private static PeakToPeakVoltage Swing(DocumentObject signal) => signal.Quantity("swing", PeakToPeakVoltage.Parse);

    private static (Duration Rise, EdgeShape Shape) Edge(DocumentObject signal) =>
        (signal.OptionalQuantity("riseTime", Duration.Parse) ?? default, signal.Choice("edge", EdgeShapes, EdgeShape.Linear));
}
