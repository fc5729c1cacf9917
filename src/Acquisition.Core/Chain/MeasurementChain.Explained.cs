using System;
using System.Collections.Generic;
using System.Globalization;
using Acquisition.Core.Responses;

namespace Acquisition.Core;

// Answers that say how they came about.
public sealed partial class MeasurementChain
{
    private static readonly string[] Assumptions =
    {
        "everything is linear: no input is driven beyond its range",
        "the voltage meant is that of the node while nothing is connected",
        "what an own response says was stated without the loading of the source",
    };

    /// <summary>What is displayed of a sine of amplitude 1 at a frequency, with the parts that make it so.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative.</exception>
    public Explained<Ratio> AmplitudeAt(Frequency frequency)
    {
        Ratio value = Response.AmplitudeRatio(frequency);
        var rules = new List<RuleOfThumb<Ratio>>();
        if (Response.TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth))
        {
            double x = frequency.SiValue / bandwidth.SiValue, pole = Response.ReferenceGain.ToAmplitudeRatio().SiValue / Math.Sqrt(1 + x * x);
            rules.Add(new RuleOfThumb<Ratio>("one pole at the chain's bandwidth", Ratio.FromFraction(pole), Ratio.FromSi(value.SiValue == 0 ? 0 : pole / value.SiValue - 1, "difference")));
        }
        return new Explained<Ratio>(
            "displayed amplitude at " + frequency.InWords(), value, "|H| of the loaded network times the parts' own responses", "handbook 7.1, 12.4", Inputs(), rules, Assumptions, Examine(frequency, default, default));
    }

    /// <summary>The half-power bandwidth of the loaded chain.</summary>
    /// <exception cref="InvalidOperationException">The chain never falls that far.</exception>
    public Explained<Frequency> Bandwidth()
    {
        Frequency value = Response.Bandwidth;
        var rules = new List<RuleOfThumb<Frequency>>();
        double squares = 0;
        foreach (double hertz in OnTheirOwn(chain => chain.Response.TryBandwidth(DecibelRatio.HalfPower, out Frequency own) ? own.SiValue : double.PositiveInfinity))
            squares += 1 / (hertz * hertz);
        if (squares > 0)
        {
            double rule = 1 / Math.Sqrt(squares);
            rules.Add(new RuleOfThumb<Frequency>("1/√(Σ 1/f²) of the parts, each alone on this source", Frequency.FromHertz(rule), Ratio.FromSi(rule / value.SiValue - 1, "difference")));
        }
        PassBand band = Response.PassBand(DecibelRatio.HalfPower);
        return new Explained<Frequency>(
            "bandwidth of the chain", value, "first fall of |H| by 3.0103 dB re DC", "handbook 1.2, 3.1", Inputs(), rules, Assumptions, Join(Findings, band.Findings));
    }

    /// <summary>The 10 % to 90 % rise time of the step response of the loaded chain.</summary>
    /// <exception cref="InvalidOperationException">The step response does not rise through the levels.</exception>
    public Explained<Duration> RiseTime()
    {
        Duration value = Response.RiseTime;
        var rules = new List<RuleOfThumb<Duration>>();
        if (Response.TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth))
        {
            Duration rule = 0.35 / bandwidth;
            rules.Add(new RuleOfThumb<Duration>("0.35 / bandwidth", rule, Ratio.FromSi(rule.SiValue / value.SiValue - 1, "difference")));
        }
        rules.Add(RiseTimeByParts().PartsOnTheirOwn);
        return new Explained<Duration>("rise time of the chain", value, "10 % to 90 % of the step response of the loaded network", "IEEE 181; handbook 2.6", Inputs(), rules, Assumptions, Findings);
    }

    /// <summary>By how much the step response of the loaded chain overshoots.</summary>
    public Explained<Ratio> Overshoot() => new(
        "overshoot of the chain", Response.Overshoot, "largest value of the step response over the final one, less 1", "IEEE 181; handbook 2.6, 7.3, 7.4", Inputs(), null, Assumptions, Findings);

    private List<KeyValuePair<string, string>> Inputs()
    {
        var inputs = new List<KeyValuePair<string, string>> { new("source", Source.ToString()) };
        foreach (ChainElement element in _elements)
            inputs.Add(new KeyValuePair<string, string>(element.Name, Describe(element)));
        string limit = FrontEnd.BandwidthLimit is null ? "" : ", limited by " + FrontEnd.BandwidthLimit.Name;
        inputs.Add(new KeyValuePair<string, string>(FrontEnd.Name, $"{FrontEnd.InputResistance} beside {FrontEnd.InputCapacitance}, {FrontEnd.OwnResponse.Name}{limit}"));
        return inputs;
    }

    private static string Describe(ChainElement element) => element switch
    {
        Probe probe => string.Format(
            CultureInfo.InvariantCulture, "{0}:1, {1} beside {2}, {3}{4}{5}", probe.AttenuationFactor, probe.InputResistance, probe.InputCapacitance, probe.OwnResponse.Name,
            probe.LeadInductance.SiValue > 0 ? ", lead " + probe.LeadInductance : "", probe.Damping.SiValue > 0 ? ", damped by " + probe.Damping : ""),
        Cable cable => $"{cable.Impedance}, {cable.Length}, delay {cable.Delay.InWords()}, loss {cable.Loss.At(Frequency.FromGigahertz(1)).InWords(3)} at 1 GHz",
        AttenuatorPad pad => $"{pad.First}, {pad.Middle}, {pad.Last}",
        BandwidthLimiter limiter => limiter.Response.Name,
        _ => element.Name,
    };

    private static List<Finding> Join(IReadOnlyList<Finding> first, IReadOnlyList<Finding> second)
    {
        var all = new List<Finding>(first);
        all.AddRange(second);
        return all;
    }
}
