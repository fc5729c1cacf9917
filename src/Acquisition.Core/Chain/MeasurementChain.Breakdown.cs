using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core;

// Which part spoils it: the chain solved again with one part ideal, and with the parts made real one after the other.
public sealed partial class MeasurementChain
{
    /// <summary>The loss at a frequency re the gain at DC, taken apart by the parts of the chain: positive where the chain loses, negative where it peaks.</summary>
    /// <param name="frequency">The frequency.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative, or one that the chain blocks altogether.</exception>
    public ChainBreakdown<DecibelRatio> AttenuationAt(Frequency frequency)
    {
        Func<MeasurementChain, double> loss = chain => (chain.Response.ReferenceGain - chain.Response.Gain(frequency)).SiValue;
        double total = loss(this), sum = OnTheirOwn(loss).Sum();
        var parts = Take(loss, total, value => DecibelRatio.FromSi(value, nameof(frequency)));
        var findings = new List<Finding>();
        if (Math.Abs(sum - total) > 0.05)
        {
            findings.Add(new Finding(
                "parts-do-not-add",
                Severity.Warning,
                $"at {frequency.InWords()} the parts measured on their own add up to {DecibelRatio.FromDecibels(sum).InWords(3)}, the chain loses {DecibelRatio.FromDecibels(total).InWords(3)}: they load each other",
                "use the chain's own response instead of a sum of data-sheet decibels",
                "handbook 10.4"));
        }
        return new ChainBreakdown<DecibelRatio>(
            $"attenuation at {frequency.InWords()} re DC", DecibelRatio.FromDecibels(total), parts, Rule("sum of the parts' decibels, each alone on this source", sum, total, DecibelRatio.FromDecibels),
            Weakest(parts, part => Math.Abs(total) - Math.Abs(part.Without.SiValue), 1e-3 * Math.Max(0.1, Math.Abs(total))), findings);
    }

    /// <summary>The 10 % to 90 % rise time of the step response, taken apart by the parts of the chain.</summary>
    /// <exception cref="InvalidOperationException">The step response does not rise through the levels.</exception>
    public ChainBreakdown<Duration> RiseTimeByParts()
    {
        Func<MeasurementChain, double> rise = chain => chain.RiseSeconds();
        double total = rise(this), squares = Math.Sqrt(OnTheirOwn(rise).Sum(x => x * x));
        var parts = Take(rise, total, value => Duration.FromSi(value, "rise time"));
        var findings = new List<Finding>();
        if (total > 0 && Math.Abs(squares - total) > 0.03 * total)
        {
            findings.Add(new Finding(
                "parts-do-not-add",
                Severity.Warning,
                $"the root sum of squares of the parts' rise times is {Duration.FromSeconds(squares).InWords(3)}, the chain's step takes {Duration.FromSeconds(total).InWords(3)}",
                "use the chain's own step",
                "handbook 2.5"));
        }
        return new ChainBreakdown<Duration>(
            "rise time of the chain", Duration.FromSeconds(total), parts, Rule("root sum of squares of the parts' rise times, each alone on this source", squares, total, Duration.FromSeconds),
            Weakest(parts, part => part.ByRemoval.SiValue, 1e-3 * total), findings);
    }

    /// <summary>
    /// The noise at the display, referred to the tip: thermal noise of the source, and the stated noise of probes and front end, each in the bandwidth that the
    /// chain leaves it. Independent noises, so the squares add; resistors inside probes and pads are taken as noiseless.
    /// </summary>
    /// <param name="temperature">The temperature of the source resistance.</param>
    /// <exception cref="InvalidOperationException">The chain passes noise without end: nothing in it limits the band.</exception>
    public IReadOnlyList<KeyValuePair<string, RmsVoltage>> NoiseByParts(Temperature temperature)
    {
        var noises = new List<KeyValuePair<string, RmsVoltage>>();
        if (!Source.IsIdeal)
        {
            // Re Zs of R beside C falls as one more pole.
            Response seen = Source.Capacitance.SiValue > 0 ? Response.Then(Response.SinglePole(Impedance.Corner(Source.Resistance, Source.Capacitance))) : Response;
            double gain = seen.ReferenceGain.ToAmplitudeRatio().SiValue / Source.Scale;
            Add(Source.ToString(), Math.Sqrt(4 * ThermalNoise.Boltzmann * temperature.SiValue * Source.Resistance.SiValue * seen.NoiseBandwidth.SiValue) * gain);
        }
        Response? after = null;
        for (int i = _elements.Length - 1; i >= 0; i--)
        {
            if (_elements[i] is not Probe probe)
                continue;
            after ??= FrontEnd.Response;
            Response through = probe.OwnResponse.Then(after);
            if (probe.Noise is { } noise)
                Add(probe.Name, noise.SiValue * Narrowed(probe.OwnResponse, through));
            after = through;
        }
        if (FrontEnd.Noise is { } own)
            Add(FrontEnd.Name, own.SiValue * NominalAttenuationFactor * (FrontEnd.BandwidthLimit is null ? 1 : Narrowed(FrontEnd.OwnResponse, FrontEnd.Response)));
        noises.Sort((x, y) => y.Value.CompareTo(x.Value));
        return noises;

        void Add(string part, double volts) => noises.Add(new KeyValuePair<string, RmsVoltage>(part, RmsVoltage.FromSi(volts, "noise")));
    }

    /// <summary>All of that together: the rms noise at the display, referred to the tip.</summary>
    /// <param name="temperature">The temperature of the source resistance.</param>
    /// <exception cref="InvalidOperationException">The chain passes noise without end: nothing in it limits the band.</exception>
    public RmsVoltage Noise(Temperature temperature) => RmsVoltage.FromSi(Math.Sqrt(NoiseByParts(temperature).Sum(part => part.Value.SiValue * part.Value.SiValue)), "noise");

    /// <summary>By how much stated noise falls when its band is narrowed; as it is where the noise has no bandwidth of its own.</summary>
    private static double Narrowed(Response own, Response seen) =>
        own.TryBandwidth(DecibelRatio.HalfPower, out _) ? Math.Sqrt(Math.Min(1, seen.NoiseBandwidth.SiValue / own.NoiseBandwidth.SiValue)) : 1;

    private int PartCount => _elements.Length + 2;

    private string PartName(int part) => part == 0 ? Source.ToString() : part <= _elements.Length ? _elements[part - 1].Name : FrontEnd.Name;

    /// <summary>The chain with some of its parts ideal: source, elements in order, front end.</summary>
    private MeasurementChain With(Func<int, bool> isReal)
    {
        var elements = new List<ChainElement>();
        for (int i = 0; i < _elements.Length; i++)
        {
            ChainElement? element = isReal(i + 1) ? _elements[i] : _elements[i].Ideal;
            if (element is not null)
                elements.Add(element);
        }
        return new MeasurementChain(isReal(0) ? Source : SourceImpedance.None, elements.ToArray(), isReal(PartCount - 1) ? FrontEnd : FrontEnd.Ideal);
    }

    private List<ChainContribution<T>> Take<T>(Func<MeasurementChain, double> result, double total, Func<double, T> make)
        where T : struct, IQuantity
    {
        var parts = new List<ChainContribution<T>>();
        double before = result(With(_ => false));
        for (int i = 0; i < PartCount; i++)
        {
            int part = i;
            double without = result(With(other => other != part)), upTo = part == PartCount - 1 ? total : result(With(other => other <= part));
            parts.Add(new ChainContribution<T>(PartName(part), make(without), make(total - without), make(upTo - before)));
            before = upTo;
        }
        return parts;
    }

    /// <summary>Each part alone on the real source, everything else ideal: what is measured of it on a bench.</summary>
    private List<double> OnTheirOwn(Func<MeasurementChain, double> result)
    {
        var alone = new List<double>();
        for (int i = 1; i < PartCount; i++)
        {
            int part = i;
            alone.Add(result(With(other => other == 0 || other == part)));
        }
        return alone;
    }

    private double RiseSeconds()
    {
        // A chain that passes everything has no rise time to compute: its step jumps.
        Response response = Response;
        return response.TryBandwidth(DecibelRatio.HalfPower, out _) ? response.RiseTime.SiValue : 0;
    }

    private static RuleOfThumb<T> Rule<T>(string name, double rule, double total, Func<double, T> make)
        where T : struct, IQuantity => new(name, make(rule), Ratio.FromSi(total == 0 ? 0 : rule / total - 1, "difference"));

    private static ChainContribution<T>? Weakest<T>(List<ChainContribution<T>> parts, Func<ChainContribution<T>, double> harm, double least)
        where T : struct, IQuantity
    {
        ChainContribution<T>? weakest = null;
        foreach (ChainContribution<T> part in parts)
        {
            if (harm(part) > least && (weakest is null || harm(part) > harm(weakest)))
                weakest = part;
        }
        return weakest;
    }
}
