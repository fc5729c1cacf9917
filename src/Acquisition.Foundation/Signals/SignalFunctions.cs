using System;
using System.Collections.Generic;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Signals;

/// <summary>The signals in the formula language: each function calls the method of the same meaning on <see cref="Signal"/>.</summary>
internal static class SignalFunctions
{
    private static readonly ValueKind Model = ValueKind.Model<Signal>("signal");
    private static readonly ValueKind ShapeChoice = ValueKind.Choice("edge shape", "linear", "gaussian", "exponential");

    /// <summary>The names that <see cref="Waveforms"/> declares.</summary>
    internal const string WaveformNames =
        "sine square trapezoid triangle sawtooth pulse_train half_wave_rectified full_wave_rectified two_tone burst random_bits pseudo_random_bits with_offset";

    /// <summary>The names that <see cref="Amplitudes"/> declares.</summary>
    internal const string AmplitudeNames = "rms ac_rms dc peak_to_peak peak crest_factor form_factor rise_time fundamental value_at";

    /// <summary>The names that <see cref="Spectrum"/> declares.</summary>
    internal const string SpectrumNames =
        "harmonic harmonic_level power_up_to_harmonic rms_error_beyond_harmonic power_within knee_frequency width_corner edge_corner";

    internal static IEnumerable<FunctionDefinition> Waveforms()
    {
        yield return FunctionDefinition.Named("sine", "A sine.", "handbook 1.5")
            .Takes("frequency", QuantityKind.Frequency).Takes("amplitude", QuantityKind.PeakVoltage)
            .ReturnsObject(Model, a => Signal.Sine(Hertz(a, 0), Peak(a, 1)))
            .Example("rms(sine(1 MHz, 1 Vpk))", "0.707107 Vrms");
        yield return FunctionDefinition.Named("square", "A square wave about 0 V, with the 10 % to 90 % rise time and shape of its edges and its duty factor.", "handbook 4.1")
            .Takes("frequency", QuantityKind.Frequency).Takes("swing", QuantityKind.PeakToPeakVoltage)
            .TakesOptional("rise_time", QuantityKind.Duration, 0).TakesOptional("duty", QuantityKind.Ratio, 0.5).TakesOptional("shape", ShapeChoice, "linear")
            .ReturnsObject(Model, a => Signal.Square(Hertz(a, 0), Swing(a, 1), Ratio.FromSi(a.SiValue(3), "duty"), Time(a, 2), Shape(a.Text(4))))
            .Example("harmonic(square(24 MHz, 2 Vpp), 3)", "0.424413 Vpk");
        yield return FunctionDefinition.Named("trapezoid", "A trapezoid about 0 V with a 50 % width (duty factor) and 10 % to 90 % rise and fall times of its own.", "handbook 4.1")
            .Takes("frequency", QuantityKind.Frequency).Takes("swing", QuantityKind.PeakToPeakVoltage).Takes("duty", ValueKind.Number)
            .Takes("rise_time", QuantityKind.Duration).Takes("fall_time", QuantityKind.Duration)
            .ReturnsObject(Model, a => Signal.Trapezoid(Hertz(a, 0), Swing(a, 1), Ratio.FromSi(a.SiValue(2), "duty"), Time(a, 3), Time(a, 4)))
            .Example("harmonic(trapezoid(1 MHz, 1 Vpp, 30 %, 40 ns, 80 ns), 1)", "0.509769 Vpk");
        yield return FunctionDefinition.Named("triangle", "A triangle about 0 V.", "handbook 4.1")
            .Takes("frequency", QuantityKind.Frequency).Takes("swing", QuantityKind.PeakToPeakVoltage)
            .ReturnsObject(Model, a => Signal.Triangle(Hertz(a, 0), Swing(a, 1)))
            .Example("crest_factor(triangle(1 kHz, 2 Vpp))", "1.73205");
        yield return FunctionDefinition.Named("sawtooth", "A sawtooth about 0 V: a ramp up and a jump back.", "handbook 4.1")
            .Takes("frequency", QuantityKind.Frequency).Takes("swing", QuantityKind.PeakToPeakVoltage)
            .ReturnsObject(Model, a => Signal.Sawtooth(Hertz(a, 0), Swing(a, 1)))
            .Example("harmonic(sawtooth(1 kHz, 2 Vpp), 2)", "0.318310 Vpk");
        yield return FunctionDefinition.Named("pulse_train", "Pulses from 0 V up to a level, repeated; 50 % width, 10 % to 90 % rise time, the falling edge as long.", "handbook 4.1")
            .Takes("frequency", QuantityKind.Frequency).Takes("amplitude", QuantityKind.PeakToPeakVoltage).Takes("width", QuantityKind.Duration)
            .TakesOptional("rise_time", QuantityKind.Duration, 0)
            .ReturnsObject(Model, a => Signal.PulseTrain(Hertz(a, 0), Swing(a, 1), Time(a, 2), Time(a, 3)))
            .Example("harmonic(pulse_train(1 kHz, 1 Vpp, 100 us), 5)", "0.127324 Vpk");
        yield return FunctionDefinition.Named("pulse_train", "Pulses whose falling edge has a duration of its own.", "handbook 4.1")
            .Takes("frequency", QuantityKind.Frequency).Takes("amplitude", QuantityKind.PeakToPeakVoltage).Takes("width", QuantityKind.Duration)
            .Takes("rise_time", QuantityKind.Duration).Takes("fall_time", QuantityKind.Duration)
            .ReturnsObject(Model, a => Signal.PulseTrain(Hertz(a, 0), Swing(a, 1), Time(a, 2), Time(a, 3), Time(a, 4)))
            .Example("dc(pulse_train(1 kHz, 1 Vpp, 100 us, 10 us, 20 us))", "0.1 V");
        yield return FunctionDefinition.Named("half_wave_rectified", "A half-wave rectified sine, from its frequency and peak before rectification.", "handbook 4.1")
            .Takes("frequency", QuantityKind.Frequency).Takes("amplitude", QuantityKind.PeakVoltage)
            .ReturnsObject(Model, a => Signal.HalfWaveRectified(Hertz(a, 0), Peak(a, 1)))
            .Example("dc(half_wave_rectified(50 Hz, 10 Vpk))", "3.18310 V");
        yield return FunctionDefinition.Named("full_wave_rectified", "A full-wave rectified sine, from its frequency and peak before rectification.", "handbook 4.1")
            .Takes("frequency", QuantityKind.Frequency).Takes("amplitude", QuantityKind.PeakVoltage)
            .ReturnsObject(Model, a => Signal.FullWaveRectified(Hertz(a, 0), Peak(a, 1)))
            .Example("dc(full_wave_rectified(50 Hz, 10 Vpk))", "6.36620 V");
        yield return FunctionDefinition.Named("two_tone", "Two sines at once.", "handbook 1.4")
            .Takes("first", QuantityKind.Frequency).Takes("first_amplitude", QuantityKind.PeakVoltage)
            .Takes("second", QuantityKind.Frequency).Takes("second_amplitude", QuantityKind.PeakVoltage)
            .ReturnsObject(Model, a => Signal.TwoTone(Hertz(a, 0), Peak(a, 1), Hertz(a, 2), Peak(a, 3)))
            .Example("rms(two_tone(1 MHz, 1 Vpk, 1.1 MHz, 1 Vpk))", "1 Vrms");
        yield return FunctionDefinition.Named("burst", "Whole cycles of a sine, repeated after a time.", "derived; handbook 4.1")
            .Takes("carrier", QuantityKind.Frequency).Takes("amplitude", QuantityKind.PeakVoltage).Takes("cycles", ValueKind.Number).Takes("repetition", QuantityKind.Duration)
            .ReturnsObject(Model, a => Signal.Burst(Hertz(a, 0), Peak(a, 1), Whole(a, 2, "cycles"), Time(a, 3)))
            .Example("rms(burst(1 MHz, 1 Vpk, 10, 100 us))", "0.223607 Vrms");
        yield return FunctionDefinition.Named("random_bits", "Random NRZ data about 0 V.", "handbook 4.2")
            .Takes("rate", QuantityKind.BitRate).Takes("swing", QuantityKind.PeakToPeakVoltage).TakesOptional("rise_time", QuantityKind.Duration, 0)
            .ReturnsObject(Model, a => Signal.RandomBits(BitRate.FromSi(a.SiValue(0), "rate"), Swing(a, 1), Time(a, 2)))
            .Example("power_within(random_bits(1 Gbit/s, 1 Vpp), 0 Hz, 1 GHz)", "90.2823 %");
        yield return FunctionDefinition.Named("pseudo_random_bits", "A pseudo-random bit sequence of 2^order - 1 bits about 0 V.", "handbook 4.2")
            .Takes("order", ValueKind.Number).Takes("rate", QuantityKind.BitRate).Takes("swing", QuantityKind.PeakToPeakVoltage).TakesOptional("rise_time", QuantityKind.Duration, 0)
            .ReturnsObject(Model, a => Signal.PseudoRandomBits(Whole(a, 0, "order"), BitRate.FromSi(a.SiValue(1), "rate"), Swing(a, 2), Time(a, 3)))
            .Example("fundamental(pseudo_random_bits(7, 1 Gbit/s, 1 Vpp))", "7.87402 MHz");
        yield return FunctionDefinition.Named("with_offset", "A signal moved by a constant voltage.", "handbook 1.5")
            .Takes("signal", Model).Takes("offset", QuantityKind.Voltage)
            .ReturnsObject(Model, a => a.Model<Signal>(0).WithOffset(Voltage.FromSi(a.SiValue(1), "offset")))
            .Example("rms(with_offset(sine(1 kHz, 5.656854 Vpk), 3 V))", "5 Vrms");
    }

    internal static IEnumerable<FunctionDefinition> Amplitudes()
    {
        yield return Question("rms", "The root mean square of a signal, its mean included.", "handbook 1.5", QuantityKind.RmsVoltage, signal => signal.Rms.SiValue)
            .Example("rms(square(1 kHz, 2 Vpp))", "1 Vrms");
        yield return Question("ac_rms", "The root mean square of a signal about its mean.", "handbook 1.5", QuantityKind.RmsVoltage, signal => signal.AcRms.SiValue)
            .Example("ac_rms(pulse_train(1 kHz, 1 Vpp, 250 us))", "0.433013 Vrms");
        yield return Question("dc", "The mean of a signal.", "handbook 1.5", QuantityKind.Voltage, signal => signal.Dc.SiValue)
            .Example("dc(pulse_train(1 kHz, 1 Vpp, 250 us))", "0.25 V");
        yield return Question("peak_to_peak", "From the lowest to the highest value of a signal.", "handbook 1.5", QuantityKind.PeakToPeakVoltage, signal => signal.PeakToPeak.SiValue)
            .Example("peak_to_peak(sine(1 kHz, 1 Vpk))", "2 Vpp");
        yield return Question("peak", "The largest magnitude of a signal, from 0 V.", "handbook 1.5", QuantityKind.PeakVoltage, signal => signal.Peak.SiValue)
            .Example("peak(square(1 kHz, 2 Vpp))", "1 Vpk");
        yield return Question("crest_factor", "Peak over rms of a signal.", "handbook 1.5", QuantityKind.Ratio, signal => signal.CrestFactor.SiValue)
            .Example("crest_factor(sine(1 kHz, 1 Vpk))", "1.41421");
        yield return Question("form_factor", "Rms over mean magnitude of a signal.", "handbook 1.5", QuantityKind.Ratio, signal => signal.FormFactor.SiValue)
            .Example("form_factor(sine(1 kHz, 1 Vpk))", "1.11072");
        yield return Question("rise_time", "The 10 % to 90 % duration of a signal's steepest transition.", "handbook 2.4", QuantityKind.Duration, signal => signal.RiseTime.SiValue)
            .Example("rise_time(sine(100 MHz, 1 Vpk))", "2.95167 ns");
        yield return Question("fundamental", "The frequency at which a signal repeats.", "handbook 4.1", QuantityKind.Frequency, signal =>
                signal.Fundamental is { } fundamental ? fundamental.SiValue : throw new ArgumentException($"{signal.Name} does not repeat: it has no fundamental"))
            .Example("fundamental(square(24 MHz, 1 Vpp))", "24 MHz");
        yield return FunctionDefinition.Named("value_at", "The value of a signal at a time.", "handbook 1.5")
            .Takes("signal", Model).Takes("time", QuantityKind.Duration)
            .Returns(QuantityKind.Voltage, (Signal signal, double time) => signal.ValueAt(Duration.FromSi(time, "time")).SiValue)
            .Example("value_at(sine(1 MHz, 1 Vpk), 0.25 us)", "1 V");
    }

    internal static IEnumerable<FunctionDefinition> Spectrum()
    {
        yield return FunctionDefinition.Named("harmonic", "The peak amplitude of a harmonic of a signal; 1 is the fundamental.", "handbook 4.1")
            .Takes("signal", Model).Takes("number", ValueKind.Number)
            .ReturnsFromAll(QuantityKind.PeakVoltage, a => a.Model<Signal>(0).Harmonic(Whole(a, 1, "number")).PeakVolts)
            .Example("harmonic(square(24 MHz, 2 Vpp), 1)", "1.27324 Vpk");
        yield return FunctionDefinition.Named("harmonic_level", "The level of a harmonic of a signal relative to the fundamental.", "handbook 4.1, 1.3")
            .Takes("signal", Model).Takes("number", ValueKind.Number)
            .ReturnsFromAll(QuantityKind.CarrierRatio, a => a.Model<Signal>(0).Harmonic(Whole(a, 1, "number")).RelativeToCarrier is { } level
                ? level.SiValue
                : throw new ArgumentException($"harmonic {Whole(a, 1, "number")} of {a.Model<Signal>(0).Name} is absent: the logarithm of 0 does not exist"))
            .Example("harmonic_level(square(24 MHz, 2 Vpp), 3)", "-9.5424 dBc");
        yield return FunctionDefinition.Named("power_up_to_harmonic", "The share of a signal's AC power in its harmonics up to a number.", "handbook 4.3")
            .Takes("signal", Model).Takes("number", ValueKind.Number)
            .ReturnsFromAll(QuantityKind.Ratio, a => a.Model<Signal>(0).PowerUpToHarmonic(Whole(a, 1, "number")).SiValue)
            .Example("power_up_to_harmonic(square(24 MHz, 1 Vpp), 5)", "93.3056 %");
        yield return FunctionDefinition.Named("rms_error_beyond_harmonic", "The rms of what lies above a harmonic, relative to the AC rms.", "handbook 4.3")
            .Takes("signal", Model).Takes("number", ValueKind.Number)
            .ReturnsFromAll(QuantityKind.Ratio, a => a.Model<Signal>(0).RmsErrorBeyondHarmonic(Whole(a, 1, "number")).SiValue)
            .Example("rms_error_beyond_harmonic(square(24 MHz, 1 Vpp), 5)", "25.8736 %");
        yield return FunctionDefinition.Named("power_within", "The share of a signal's AC power between two frequencies.", "handbook 4.2, 4.3")
            .Takes("signal", Model).Takes("from", QuantityKind.Frequency).Takes("to", QuantityKind.Frequency)
            .ReturnsFromAll(QuantityKind.Ratio, a => a.Model<Signal>(0).PowerWithin(Hertz(a, 1), Hertz(a, 2)).SiValue)
            .Example("power_within(square(24 MHz, 1 Vpp), 0 Hz, 100 MHz)", "90.0633 %");
        yield return FunctionDefinition.Named("knee_frequency", "0.5 over the rise time: a label for 'most energy lies below', not a bandwidth requirement.", "Johnson and Graham 1993, from memory; handbook 4.4")
            .Takes("rise_time", QuantityKind.Duration)
            .Returns(QuantityKind.Frequency, rise => EnvelopeCorners.Knee(Duration.FromSi(rise, "rise_time")).SiValue, rise => -0.5 / (rise * rise))
            .Example("knee_frequency(1 ns)", "500 MHz");
        yield return FunctionDefinition.Named("width_corner", "1/(pi width): above it the envelope of a pulse's spectrum falls by 20 dB per decade.", "handbook 4.4")
            .Takes("width", QuantityKind.Duration)
            .Returns(QuantityKind.Frequency, width => EnvelopeCorners.OfWidth(Duration.FromSi(width, "width")).SiValue, width => -1 / (Math.PI * width * width))
            .Example("width_corner(10 ns)", "31.8310 MHz");
        yield return FunctionDefinition.Named("edge_corner", "0.2546 over the 10 % to 90 % rise time: above it the envelope of a trapezoid's spectrum falls by 40 dB per decade.", "handbook 4.4")
            .Takes("rise_time", QuantityKind.Duration)
            .Returns(QuantityKind.Frequency, rise => EnvelopeCorners.OfRiseTime(Duration.FromSi(rise, "rise_time")).SiValue, rise => -0.8 / (Math.PI * rise * rise))
            .Example("edge_corner(1 ns)", "254.648 MHz");
    }

    private static FunctionDefinition Question(string name, string meaning, string source, QuantityKind kind, Func<Signal, double> answer) =>
        FunctionDefinition.Named(name, meaning, source).Takes("signal", Model).Returns(kind, answer);

    private static Frequency Hertz(FunctionArguments arguments, int index) => Frequency.FromSi(arguments.SiValue(index), "frequency");

    private static PeakVoltage Peak(FunctionArguments arguments, int index) => PeakVoltage.FromSi(arguments.SiValue(index), "amplitude");

    private static PeakToPeakVoltage Swing(FunctionArguments arguments, int index) => PeakToPeakVoltage.FromSi(arguments.SiValue(index), "swing");

    private static Duration Time(FunctionArguments arguments, int index) => Duration.FromSi(arguments.SiValue(index), "duration");

    private static int Whole(FunctionArguments arguments, int index, string argument)
    {
        double value = arguments.SiValue(index);
        return value == Math.Floor(value) && Math.Abs(value) < 1e9
            ? (int)value
            : throw new ArgumentOutOfRangeException(argument, $"{argument} must be a whole number; was {value.ToString(System.Globalization.CultureInfo.InvariantCulture)}");
    }

    private static EdgeShape Shape(string text) => text == "gaussian" ? EdgeShape.Gaussian : text == "exponential" ? EdgeShape.Exponential : EdgeShape.Linear;
}
