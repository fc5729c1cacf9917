using System;
using System.Collections.Generic;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Responses;

/// <summary>The responses in the formula language: each function calls the method of the same meaning on <see cref="Response"/>.</summary>
internal static class ResponseFunctions
{
    private static readonly ValueKind Model = ValueKind.Model<Response>("response");
    private static readonly ValueKind SignalModel = ValueKind.Model<Signal>("signal");

    /// <summary>The names that <see cref="Models"/> declares.</summary>
    internal const string ModelNames =
        "single_pole equal_poles gaussian butterworth bessel chebyshev second_order brick_wall skin_effect high_pass ideal_delay attenuator amplifier cascade parallel";

    /// <summary>The names that <see cref="InFrequency"/> declares.</summary>
    internal const string FrequencyNames = "gain amplitude_ratio phase group_delay bandwidth noise_bandwidth amplitude_error frequency_for_amplitude_error";

    /// <summary>The names that <see cref="InTime"/> declares.</summary>
    internal const string TimeNames = "rise_time edge_rise_time overshoot settling_time step_at after";

    internal static IEnumerable<FunctionDefinition> Models()
    {
        yield return FunctionDefinition.Named("single_pole", "A response with one real pole, of this half-power bandwidth.", "handbook 2.2")
            .Takes("bandwidth", QuantityKind.Frequency)
            .ReturnsObject(Model, a => Response.SinglePole(Hertz(a, 0)))
            .Example("bandwidth(single_pole(100 MHz))", "100 MHz");
        yield return FunctionDefinition.Named("equal_poles", "A response with so many equal real poles, of this bandwidth together.", "handbook 2.2")
            .Takes("count", ValueKind.Number).Takes("bandwidth", QuantityKind.Frequency)
            .ReturnsObject(Model, a => Response.PolesEqual(Whole(a, 0, "count"), Hertz(a, 1)))
            .Example("rise_time(equal_poles(3, 100 MHz))", "3.42436 ns");
        yield return FunctionDefinition.Named("gaussian", "A Gaussian response of this half-power bandwidth.", "handbook 2.2")
            .Takes("bandwidth", QuantityKind.Frequency)
            .ReturnsObject(Model, a => Response.Gaussian(Hertz(a, 0)))
            .Example("rise_time(gaussian(100 MHz))", "3.39624 ns");
        yield return FunctionDefinition.Named("butterworth", "A Butterworth response of this order and half-power bandwidth.", "handbook 2.2")
            .Takes("order", ValueKind.Number).Takes("bandwidth", QuantityKind.Frequency)
            .ReturnsObject(Model, a => Response.Butterworth(Whole(a, 0, "order"), Hertz(a, 1)))
            .Example("rise_time(butterworth(4, 100 MHz))", "3.87130 ns");
        yield return FunctionDefinition.Named("bessel", "A Bessel (Thomson) response of this order and half-power bandwidth.", "handbook 2.2")
            .Takes("order", ValueKind.Number).Takes("bandwidth", QuantityKind.Frequency)
            .ReturnsObject(Model, a => Response.Bessel(Whole(a, 0, "order"), Hertz(a, 1)))
            .Example("rise_time(bessel(4, 100 MHz))", "3.50130 ns");
        yield return FunctionDefinition.Named("chebyshev", "A Chebyshev response of type I: odd order, ripple in the band, half-power bandwidth.", "handbook 2.2")
            .Takes("order", ValueKind.Number).Takes("ripple", QuantityKind.DecibelRatio).Takes("bandwidth", QuantityKind.Frequency)
            .ReturnsObject(Model, a => Response.Chebyshev(Whole(a, 0, "order"), DecibelRatio.FromSi(a.SiValue(1), "ripple"), Hertz(a, 2)))
            .Example("rise_time(chebyshev(3, 0.5 dB, 100 MHz))", "3.98617 ns");
        yield return FunctionDefinition.Named("second_order", "A second-order low-pass of this natural frequency and damping ratio.", "handbook 2.3")
            .Takes("natural_frequency", QuantityKind.Frequency).Takes("damping", ValueKind.Number)
            .ReturnsObject(Model, a => Response.SecondOrder(Hertz(a, 0), Fraction(a, 1)))
            .Example("overshoot(second_order(100 MHz, 0.5))", "16.3034 %");
        yield return FunctionDefinition.Named("brick_wall", "Everything below an edge and nothing above it, without delay.", "handbook 2.2")
            .Takes("bandwidth", QuantityKind.Frequency)
            .ReturnsObject(Model, a => Response.BrickWall(Hertz(a, 0)))
            .Example("overshoot(brick_wall(100 MHz))", "8.9490 %");
        yield return FunctionDefinition.Named("skin_effect", "A line whose loss is the skin effect alone, of this half-power bandwidth.", "handbook 7.9")
            .Takes("bandwidth", QuantityKind.Frequency)
            .ReturnsObject(Model, a => Response.SkinEffect(Hertz(a, 0)))
            .Example("rise_time(skin_effect(1 GHz))", "1.20355 ns");
        yield return FunctionDefinition.Named("high_pass", "One RC high-pass, as of AC coupling, with its half-power corner.", "handbook 1.2")
            .Takes("corner", QuantityKind.Frequency)
            .ReturnsObject(Model, a => Response.HighPass(Hertz(a, 0)))
            .Example("gain(high_pass(10 Hz), 10 Hz)", "-3.0103 dB");
        yield return FunctionDefinition.Named("ideal_delay", "Nothing but later.", "handbook 7.6")
            .Takes("delay", QuantityKind.Duration)
            .ReturnsObject(Model, a => Response.Delay(Duration.FromSi(a.SiValue(0), "delay")))
            .Example("phase(ideal_delay(1 ns), 250 MHz) in deg", "-90 deg");
        yield return FunctionDefinition.Named("attenuator", "The same loss at every frequency.", "handbook 1.1")
            .Takes("attenuation", QuantityKind.DecibelRatio)
            .ReturnsObject(Model, a => Response.Attenuator(DecibelRatio.FromSi(a.SiValue(0), "attenuation")))
            .Example("gain(attenuator(20 dB), 1 MHz)", "-20 dB");
        yield return FunctionDefinition.Named("amplifier", "The same gain at every frequency.", "handbook 1.1")
            .Takes("gain", QuantityKind.DecibelRatio)
            .ReturnsObject(Model, a => Response.Amplifier(DecibelRatio.FromSi(a.SiValue(0), "gain")))
            .Example("gain(amplifier(6 dB), 1 MHz)", "6 dB");
        yield return FunctionDefinition.Named("cascade", "Responses one after the other; their gains multiply.", "handbook 1.4, 3.1")
            .TakesMany("stage", Model)
            .ReturnsObject(Model, a => Response.Cascade(Gather(a)))
            .Example("bandwidth(cascade(gaussian(500 MHz), butterworth(4, 1 GHz)))", "498.623 MHz");
        yield return FunctionDefinition.Named("parallel", "Responses side by side with one input; their outputs add.", "handbook 1.4")
            .TakesMany("branch", Model)
            .ReturnsObject(Model, a => Response.Parallel(Gather(a)))
            .Example("gain(parallel(attenuator(0 dB), attenuator(0 dB)), 1 MHz)", "6.0206 dB");
    }

    internal static IEnumerable<FunctionDefinition> InFrequency()
    {
        yield return FunctionDefinition.Named("gain", "The gain of a response at a frequency.", "handbook 1.1")
            .Takes("response", Model).Takes("frequency", QuantityKind.Frequency)
            .Returns(QuantityKind.DecibelRatio, (Response response, double f) => response.Gain(Frequency.FromSi(f, "frequency")).SiValue)
            .Example("gain(cascade(gaussian(100 MHz), single_pole(500 MHz)), 60 MHz)", "-1.14580 dB");
        yield return FunctionDefinition.Named("amplitude_ratio", "The magnitude of the gain of a response at a frequency.", "handbook 1.1")
            .Takes("response", Model).Takes("frequency", QuantityKind.Frequency)
            .Returns(QuantityKind.Ratio, (Response response, double f) => response.AmplitudeRatio(Frequency.FromSi(f, "frequency")).SiValue)
            .Example("amplitude_ratio(single_pole(100 MHz), 100 MHz)", "0.707107");
        yield return FunctionDefinition.Named("phase", "The phase of a response at a frequency; lagging is negative, and whole turns are kept.", "handbook 7.6")
            .Takes("response", Model).Takes("frequency", QuantityKind.Frequency)
            .Returns(QuantityKind.Angle, (Response response, double f) => response.Phase(Frequency.FromSi(f, "frequency")).SiValue)
            .Example("phase(single_pole(100 MHz), 100 MHz) in deg", "-45 deg");
        yield return FunctionDefinition.Named("group_delay", "The group delay of a response at a frequency.", "handbook 7.6")
            .Takes("response", Model).Takes("frequency", QuantityKind.Frequency)
            .Returns(QuantityKind.Duration, (Response response, double f) => response.GroupDelay(Frequency.FromSi(f, "frequency")).SiValue)
            .Example("group_delay(single_pole(100 MHz), 0 Hz)", "1.59155 ns");
        yield return FunctionDefinition.Named("bandwidth", "The first frequency above the reference at which the gain has fallen by half the power, or by another drop.", "handbook 1.2, 3.1")
            .Takes("response", Model).TakesOptional("drop", QuantityKind.DecibelRatio, DecibelRatio.HalfPower.SiValue)
            .ReturnsFromAll(QuantityKind.Frequency, a => a.SiValue(1) == DecibelRatio.HalfPower.SiValue
                ? a.Model<Response>(0).Bandwidth.SiValue
                : a.Model<Response>(0).BandwidthAt(DecibelRatio.FromSi(a.SiValue(1), "drop")).SiValue)
            .Example("bandwidth(single_pole(100 MHz), -1 dB)", "50.8847 MHz");
        yield return FunctionDefinition.Named("noise_bandwidth", "The brick wall that passes as much white noise.", "handbook 6.6")
            .Takes("response", Model)
            .Returns(QuantityKind.Frequency, (Response response) => response.NoiseBandwidth.SiValue)
            .Example("noise_bandwidth(single_pole(100 MHz))", "157.080 MHz");
        yield return FunctionDefinition.Named("amplitude_error", "The relative amplitude error at a frequency, re the gain at DC (or the largest, where DC is blocked).", "handbook 4.6")
            .Takes("response", Model).Takes("frequency", QuantityKind.Frequency)
            .Returns(QuantityKind.Ratio, (Response response, double f) => response.AmplitudeError(Frequency.FromSi(f, "frequency")).SiValue)
            .Example("amplitude_error(single_pole(100 MHz), 20 MHz)", "-1.94193 %");
        yield return FunctionDefinition.Named("frequency_for_amplitude_error", "The frequency at which the amplitude has fallen by an error.", "handbook 4.6")
            .Takes("response", Model).Takes("error", ValueKind.Number)
            .Returns(QuantityKind.Frequency, (Response response, double error) => response.FrequencyForAmplitudeError(Ratio.FromSi(error, "error")).SiValue)
            .Example("frequency_for_amplitude_error(gaussian(100 MHz), 2 %)", "24.1439 MHz");
    }

    internal static IEnumerable<FunctionDefinition> InTime()
    {
        yield return FunctionDefinition.Named("rise_time", "The rise time of a response's step, computed from the response; 10 % to 90 % unless said otherwise.", "handbook 2.1, 2.7")
            .Takes("response", Model).TakesOptional("low", QuantityKind.Ratio, 0.1).TakesOptional("high", QuantityKind.Ratio, 0.9)
            .ReturnsFromAll(QuantityKind.Duration, a => a.Model<Response>(0).RiseTimeBetween(Fraction(a, 1), Fraction(a, 2)).SiValue)
            .Example("rise_time(gaussian(100 MHz), 20 %, 80 %)", "2.23038 ns");
        yield return FunctionDefinition.Named("edge_rise_time", "The 10 % to 90 % rise time that an edge has after a response: convolved, not a root sum of squares.", "handbook 2.5, 2.6")
            .Takes("response", Model).Takes("rise_time", QuantityKind.Duration).TakesOptional("shape", ValueKind.Choice("edge shape", "linear", "gaussian", "exponential"), "linear")
            .ReturnsFromAll(QuantityKind.Duration, a => a.Model<Response>(0).RiseTimeOf(new Edge(Duration.FromSi(a.SiValue(1), "rise_time"), Shape(a.Text(2)))).Value.SiValue)
            .Example("edge_rise_time(gaussian(200 MHz), 2.8 ns, \"gaussian\")", "3.27469 ns");
        yield return FunctionDefinition.Named("overshoot", "By how much a response's step exceeds its final value.", "handbook 2.2")
            .Takes("response", Model)
            .Returns(QuantityKind.Ratio, (Response response) => response.Overshoot.SiValue)
            .Example("overshoot(butterworth(4, 100 MHz))", "10.8302 %");
        yield return FunctionDefinition.Named("settling_time", "How long after the step the output stays within a band around its final value for good.", "handbook 8.5")
            .Takes("response", Model).Takes("band", ValueKind.Number)
            .Returns(QuantityKind.Duration, (Response response, double band) => response.SettlingTime(Ratio.FromSi(band, "band")).SiValue)
            .Example("settling_time(single_pole(100 MHz), 1 %)", "7.32936 ns");
        yield return FunctionDefinition.Named("step_at", "The output at a time after a step of 1.", "handbook 2.2")
            .Takes("response", Model).Takes("time", QuantityKind.Duration)
            .Returns(QuantityKind.Ratio, (Response response, double time) => response.StepAt(Duration.FromSi(time, "time")).SiValue)
            .Example("step_at(single_pole(100 MHz), 1.591549 ns)", "0.63212");
        yield return FunctionDefinition.Named("after", "The signal that comes out of a response: the steady state of a periodic one, the transient of a single pulse.", "handbook 4.1")
            .Takes("signal", SignalModel).Takes("response", Model)
            .ReturnsObject(SignalModel, a => a.Model<Response>(1).Apply(a.Model<Signal>(0)))
            .Example("peak_to_peak(after(sine(100 MHz, 1 Vpk), single_pole(100 MHz)))", "1.41421 Vpp");
    }

    private static Frequency Hertz(FunctionArguments arguments, int index) => Frequency.FromSi(arguments.SiValue(index), "frequency");

    private static Ratio Fraction(FunctionArguments arguments, int index) => Ratio.FromSi(arguments.SiValue(index), "ratio");

    private static int Whole(FunctionArguments arguments, int index, string argument)
    {
        double value = arguments.SiValue(index);
        return value == Math.Floor(value) && Math.Abs(value) < 1e9
            ? (int)value
            : throw new ArgumentOutOfRangeException(argument, $"{argument} must be a whole number; was {value.ToString(System.Globalization.CultureInfo.InvariantCulture)}");
    }

    private static Response[] Gather(FunctionArguments arguments)
    {
        var responses = new Response[arguments.Count];
        for (int i = 0; i < responses.Length; i++)
            responses[i] = arguments.Model<Response>(i);
        return responses;
    }

    private static EdgeShape Shape(string text) => text == "gaussian" ? EdgeShape.Gaussian : text == "exponential" ? EdgeShape.Exponential : EdgeShape.Linear;
}
