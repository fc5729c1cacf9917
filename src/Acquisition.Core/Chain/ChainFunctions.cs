using System.Collections.Generic;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Chain;

/// <summary>Chains, loading, lines and pads in the formula language; each function calls the method of the same meaning.</summary>
internal static class ChainFunctions
{
    private static readonly ValueKind Chain = ValueKind.Model<MeasurementChain>("chain");
    private static readonly ValueKind ProbeModel = ValueKind.Model<Probe>("probe");
    private static readonly ValueKind Input = ValueKind.Model<FrontEnd>("front end");
    private static readonly ValueKind ResponseModel = ValueKind.Model<Response>("response");

    /// <summary>The names that <see cref="All"/> declares.</summary>
    internal const string Names =
        "passive_probe active_probe with_ground_lead front_end terminated_input chain loaded attenuation loading_bandwidth input_impedance " +
        "lead_inductance lead_resonance lead_quality thermal_noise capacitor_noise cable_delay reflection return_loss vswr mismatch_loss " +
        "mismatch_uncertainty cable_loss pad_pi_series pad_pi_shunt pad_tee_series pad_tee_shunt minimum_loss";

    internal static IEnumerable<FunctionDefinition> All()
    {
        foreach (FunctionDefinition function in Models())
            yield return function;
        foreach (FunctionDefinition function in Loading())
            yield return function;
        foreach (FunctionDefinition function in Lines())
            yield return function;
        foreach (FunctionDefinition function in Pads())
            yield return function;
    }

    private static IEnumerable<FunctionDefinition> Models()
    {
        yield return FunctionDefinition.Named("passive_probe", "A passive probe: ratio, resistance and capacitance at the tip, its own response.", "handbook 7.3")
            .Takes("ratio", QuantityKind.Ratio).Takes("resistance", QuantityKind.Resistance).Takes("capacitance", QuantityKind.Capacitance).Takes("response", ResponseModel)
            .ReturnsObject(ProbeModel, a => Probe.Passive(a.SiValue(0), Ohms(a.SiValue(1)), Farads(a.SiValue(2)), a.Model<Response>(3)))
            .Example("bandwidth(loaded(chain(25 Ω, passive_probe(10:1, 10 MΩ, 10 pF, single_pole(500 MHz)), front_end(1 MΩ, 15 pF, single_pole(500 MHz)))))", "273.558 MHz");
        yield return FunctionDefinition.Named("active_probe", "An active or differential probe that drives 50 Ω: ratio, resistance and capacitance at the tip, its own response.", "handbook 7.1")
            .Takes("ratio", QuantityKind.Ratio).Takes("resistance", QuantityKind.Resistance).Takes("capacitance", QuantityKind.Capacitance).Takes("response", ResponseModel)
            .ReturnsObject(ProbeModel, a => Probe.Active(a.SiValue(0), Ohms(a.SiValue(1)), Farads(a.SiValue(2)), a.Model<Response>(3)))
            .Example("bandwidth(loaded(chain(50 Ω, active_probe(1:1, 1 MΩ, 1 pF, gaussian(1 GHz)), terminated_input(gaussian(1 GHz)))))", "683.716 MHz");
        yield return FunctionDefinition.Named("with_ground_lead", "A probe with a ground lead of an inductance.", "handbook 7.4")
            .Takes("probe", ProbeModel).Takes("inductance", QuantityKind.Inductance)
            .ReturnsObject(ProbeModel, a => a.Model<Probe>(0).WithGroundLead(Inductance.FromSi(a.SiValue(1), "inductance")))
            .Example("gain(loaded(chain(50 Ω, with_ground_lead(passive_probe(10:1, 10 MΩ, 10 pF, gaussian(1 GHz)), 150 nH), front_end(1 MΩ, 15 pF, gaussian(1 GHz)))), 124 MHz)", "7.87248 dB");
        yield return FunctionDefinition.Named("front_end", "A high-impedance input of an instrument: resistance, capacitance, its own response.", "handbook 7.2")
            .Takes("resistance", QuantityKind.Resistance).Takes("capacitance", QuantityKind.Capacitance).Takes("response", ResponseModel)
            .ReturnsObject(Input, a => FrontEnd.HighImpedance(Ohms(a.SiValue(0)), Farads(a.SiValue(1)), a.Model<Response>(2)))
            .Example("bandwidth(loaded(chain(50 Ω, front_end(1 MΩ, 15 pF, gaussian(500 MHz)))))", "190.765 MHz");
        yield return FunctionDefinition.Named("terminated_input", "A 50 Ω input of an instrument with its own response.", "handbook 7.5")
            .Takes("response", ResponseModel)
            .ReturnsObject(Input, a => FrontEnd.FiftyOhm(a.Model<Response>(0)))
            .Example("gain(loaded(chain(50 Ω, terminated_input(gaussian(1 GHz)))), 0 Hz)", "-6.02060 dB");
        yield return FunctionDefinition.Named("chain", "A source resistance, a probe and a front end, solved as a network.", "handbook 7.1")
            .Takes("source", QuantityKind.Resistance).Takes("probe", ProbeModel).Takes("front_end", Input)
            .ReturnsObject(Chain, a => MeasurementChain.From(Ohms(a.SiValue(0))).Probe(a.Model<Probe>(1)).Into(a.Model<FrontEnd>(2)))
            .Example("attenuation(chain(1 kΩ, passive_probe(10:1, 10 MΩ, 10 pF, gaussian(1 GHz)), front_end(1 MΩ, 15 pF, gaussian(1 GHz))), 10 MHz)", "1.44543 dB");
        yield return FunctionDefinition.Named("chain", "A source resistance and a front end without a probe.", "handbook 7.1")
            .Takes("source", QuantityKind.Resistance).Takes("front_end", Input)
            .ReturnsObject(Chain, a => MeasurementChain.From(Ohms(a.SiValue(0))).Into(a.Model<FrontEnd>(1)))
            .Example("bandwidth(loaded(chain(50 Ω, front_end(1 MΩ, 15 pF, gaussian(1 GHz)))))", "205.976 MHz");
        yield return FunctionDefinition.Named("loaded", "The response of a chain from the unloaded voltage of the node to the display.", "handbook 7.1")
            .Takes("chain", Chain)
            .ReturnsObject(ResponseModel, a => a.Model<MeasurementChain>(0).Response)
            .Example("bandwidth(loaded(chain(25 Ω, terminated_input(single_pole(1 GHz)))))", "1 GHz");
        yield return FunctionDefinition.Named("attenuation", "The loss of a chain at a frequency re its gain at DC; negative where the chain peaks.", "handbook 4.6")
            .Takes("chain", Chain).Takes("frequency", QuantityKind.Frequency)
            .Returns<MeasurementChain>(QuantityKind.DecibelRatio, (chain, f) => (chain.Response.ReferenceGain - chain.Response.Gain(Frequency.FromSi(f, "frequency"))).SiValue)
            .Example("attenuation(chain(50 Ω, terminated_input(single_pole(1 GHz))), 1 GHz)", "3.01030 dB");
    }

    private static IEnumerable<FunctionDefinition> Loading()
    {
        yield return FunctionDefinition.Named("loading_bandwidth", "The bandwidth that a source resistance and an input capacitance leave.", "handbook 7.1")
            .Takes("source", QuantityKind.Resistance).Takes("capacitance", QuantityKind.Capacitance)
            .Returns(QuantityKind.Frequency, (r, c) => SourceLoading.Bandwidth(Ohms(r), Farads(c)).SiValue)
            .Example("loading_bandwidth(50 Ω, 10 pF)", "318.310 MHz");
        yield return FunctionDefinition.Named("input_impedance", "The magnitude of the impedance of a resistance beside a capacitance.", "handbook 7.2")
            .Takes("resistance", QuantityKind.Resistance).Takes("capacitance", QuantityKind.Capacitance).Takes("frequency", QuantityKind.Frequency)
            .Returns(QuantityKind.Resistance, (r, c, f) => Impedance.MagnitudeOfParallel(Ohms(r), Farads(c), Frequency.FromSi(f, "frequency")).SiValue)
            .Example("input_impedance(10 MΩ, 10 pF, 100 MHz)", "159.155 Ω");
        yield return FunctionDefinition.Named("lead_inductance", "The inductance of a ground lead at 1 nH for each millimetre.", "handbook 7.4")
            .Takes("length", QuantityKind.Length)
            .Returns(QuantityKind.Inductance, length => GroundLead.InductanceOf(Length.FromSi(length, "length")).SiValue)
            .Example("lead_inductance(150 mm)", "150 nH");
        yield return FunctionDefinition.Named("lead_resonance", "Where a ground lead rings with the input capacitance.", "handbook 7.4")
            .Takes("inductance", QuantityKind.Inductance).Takes("capacitance", QuantityKind.Capacitance)
            .Returns(QuantityKind.Frequency, (l, c) => GroundLead.Resonance(Henries(l), Farads(c)).SiValue)
            .Example("lead_resonance(150 nH, 10 pF)", "129.949 MHz");
        yield return FunctionDefinition.Named("lead_quality", "How sharply a ground lead rings: Q with source and damping resistance together.", "handbook 7.4")
            .Takes("inductance", QuantityKind.Inductance).Takes("capacitance", QuantityKind.Capacitance).Takes("resistance", QuantityKind.Resistance)
            .Returns(QuantityKind.Ratio, (l, c, r) => GroundLead.Quality(Henries(l), Farads(c), Ohms(r)).SiValue)
            .Example("lead_quality(150 nH, 10 pF, 50 Ω)", "2.44949");
        yield return FunctionDefinition.Named("thermal_noise", "The open-circuit noise of a resistance in a noise bandwidth.", "handbook 6.5")
            .Takes("resistance", QuantityKind.Resistance).Takes("noise_bandwidth", QuantityKind.Frequency).TakesOptional("temperature", QuantityKind.Temperature, 290)
            .Returns(QuantityKind.RmsVoltage, (r, b, t) => ThermalNoise.OpenCircuit(Ohms(r), Temperature.FromSi(t, "temperature"), Frequency.FromSi(b, "noise_bandwidth")).SiValue)
            .Example("thermal_noise(50 Ω, 1 GHz)", "28.2980 µVrms");
        yield return FunctionDefinition.Named("capacitor_noise", "All of the thermal noise across a capacitance, whatever the resistance that makes it.", "handbook 6.5")
            .Takes("capacitance", QuantityKind.Capacitance).TakesOptional("temperature", QuantityKind.Temperature, 290)
            .Returns(QuantityKind.RmsVoltage, (c, t) => ThermalNoise.OfCapacitance(Farads(c), Temperature.FromSi(t, "temperature")).SiValue)
            .Example("capacitor_noise(1 pF, 300 K)", "64.3580 µVrms");
    }

    private static IEnumerable<FunctionDefinition> Lines()
    {
        yield return FunctionDefinition.Named("cable_delay", "The delay of a cable.", "handbook 7.6")
            .Takes("length", QuantityKind.Length).Takes("velocity_factor", QuantityKind.Ratio)
            .Returns(QuantityKind.Duration, (length, factor) => new Cable(Resistance.FromOhms(50), Length.FromSi(length, "length"), factor).Delay.SiValue)
            .Example("cable_delay(1 m, 0.66)", "5.05400 ns");
        yield return FunctionDefinition.Named("reflection", "The reflection coefficient of a load on a line.", "handbook 7.7")
            .Takes("line", QuantityKind.Resistance).Takes("load", QuantityKind.Resistance)
            .Returns(QuantityKind.Ratio, (line, load) => Mismatch.Reflection(Ohms(line), Ohms(load)).SiValue)
            .Example("reflection(50 Ω, 75 Ω)", "0.2");
        yield return FunctionDefinition.Named("return_loss", "The return loss of a load on a line, positive.", "handbook 7.7")
            .Takes("line", QuantityKind.Resistance).Takes("load", QuantityKind.Resistance)
            .Returns(QuantityKind.DecibelRatio, (line, load) => Mismatch.ReturnLoss(Ohms(line), Ohms(load)).SiValue)
            .Example("return_loss(50 Ω, 75 Ω)", "13.9794 dB");
        yield return FunctionDefinition.Named("vswr", "The voltage standing-wave ratio of a load on a line.", "handbook 7.7")
            .Takes("line", QuantityKind.Resistance).Takes("load", QuantityKind.Resistance)
            .Returns(QuantityKind.Ratio, (line, load) => Mismatch.StandingWaveRatio(Mismatch.Reflection(Ohms(line), Ohms(load))).SiValue)
            .Example("vswr(50 Ω, 75 Ω)", "1.5");
        yield return FunctionDefinition.Named("mismatch_loss", "The power that does not get across from a line to a load, positive.", "handbook 7.7")
            .Takes("line", QuantityKind.Resistance).Takes("load", QuantityKind.Resistance)
            .Returns(QuantityKind.DecibelRatio, (line, load) => Mismatch.Loss(Mismatch.Reflection(Ohms(line), Ohms(load))).SiValue)
            .Example("mismatch_loss(50 Ω, 75 Ω)", "0.177288 dB");
        yield return FunctionDefinition.Named("mismatch_uncertainty", "The standard uncertainty of an amplitude between two mismatches, by their standing-wave ratios.", "handbook 7.7")
            .Takes("first_vswr", QuantityKind.Ratio).Takes("second_vswr", QuantityKind.Ratio)
            .Returns(QuantityKind.DecibelRatio, (first, second) => Mismatch.StandardUncertainty(Mismatch.ReflectionOf(Fraction(first)), Mismatch.ReflectionOf(Fraction(second))).SiValue)
            .Example("mismatch_uncertainty(1.5, 1.3)", "0.160222 dB");
        yield return FunctionDefinition.Named("cable_loss", "The loss of a cable at a frequency, scaled with the square root of frequency from one point of its data sheet.", "handbook 7.9")
            .Takes("known_frequency", QuantityKind.Frequency).Takes("known_loss", QuantityKind.DecibelRatio).Takes("frequency", QuantityKind.Frequency)
            .Returns(QuantityKind.DecibelRatio, (f0, loss, f) => CableLoss.FromPoint(Frequency.FromSi(f0, "known_frequency"), DecibelRatio.FromSi(loss, "known_loss")).At(Frequency.FromSi(f, "frequency")).SiValue)
            .Example("cable_loss(100 MHz, 2 dB, 1 GHz)", "6.32456 dB");
    }

    private static IEnumerable<FunctionDefinition> Pads()
    {
        yield return FunctionDefinition.Named("pad_pi_series", "The series resistor of a pi attenuator pad.", "handbook 7.8")
            .Takes("attenuation", QuantityKind.DecibelRatio).Takes("impedance", QuantityKind.Resistance)
            .Returns(QuantityKind.Resistance, (loss, z) => AttenuatorPad.Pi(Decibels(loss), Ohms(z)).Middle.SiValue)
            .Example("pad_pi_series(6 dB, 50 Ω)", "37.3519 Ω");
        yield return FunctionDefinition.Named("pad_pi_shunt", "The shunt resistors of a pi attenuator pad.", "handbook 7.8")
            .Takes("attenuation", QuantityKind.DecibelRatio).Takes("impedance", QuantityKind.Resistance)
            .Returns(QuantityKind.Resistance, (loss, z) => AttenuatorPad.Pi(Decibels(loss), Ohms(z)).First.SiValue)
            .Example("pad_pi_shunt(6 dB, 50 Ω)", "150.476 Ω");
        yield return FunctionDefinition.Named("pad_tee_series", "The series resistors of a tee attenuator pad.", "handbook 7.8")
            .Takes("attenuation", QuantityKind.DecibelRatio).Takes("impedance", QuantityKind.Resistance)
            .Returns(QuantityKind.Resistance, (loss, z) => AttenuatorPad.Tee(Decibels(loss), Ohms(z)).First.SiValue)
            .Example("pad_tee_series(6 dB, 50 Ω)", "16.6139 Ω");
        yield return FunctionDefinition.Named("pad_tee_shunt", "The shunt resistor of a tee attenuator pad.", "handbook 7.8")
            .Takes("attenuation", QuantityKind.DecibelRatio).Takes("impedance", QuantityKind.Resistance)
            .Returns(QuantityKind.Resistance, (loss, z) => AttenuatorPad.Tee(Decibels(loss), Ohms(z)).Middle.SiValue)
            .Example("pad_tee_shunt(6 dB, 50 Ω)", "66.9310 Ω");
        yield return FunctionDefinition.Named("minimum_loss", "The least loss with which a resistive pad matches two impedances.", "handbook 7.8")
            .Takes("source", QuantityKind.Resistance).Takes("load", QuantityKind.Resistance)
            .Returns(QuantityKind.DecibelRatio, (source, load) => AttenuatorPad.MinimumLoss(Ohms(source), Ohms(load)).Loss.SiValue)
            .Example("minimum_loss(75 Ω, 50 Ω)", "5.71948 dB");
    }

    private static Resistance Ohms(double value) => Resistance.FromSi(value, "resistance");

    private static Capacitance Farads(double value) => Capacitance.FromSi(value, "capacitance");

    private static Inductance Henries(double value) => Inductance.FromSi(value, "inductance");

    private static DecibelRatio Decibels(double value) => DecibelRatio.FromSi(value, "attenuation");

    private static Ratio Fraction(double value) => Ratio.FromSi(value, "ratio");
}
