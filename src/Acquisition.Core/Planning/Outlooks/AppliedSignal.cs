using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core;

/// <summary>A signal at the start of a chain. What may follow is the digitizer.</summary>
/// <remarks>Immutable. Nothing is computed until it is asked for.</remarks>
public sealed class AppliedSignal
{
    private readonly Response? _response;

    internal AppliedSignal(Signal signal, MeasurementChain? chain, Response? response, Voltage? commonMode = null)
    {
        Signal = signal;
        Chain = chain;
        _response = response;
        CommonMode = commonMode;
    }

    /// <summary>The signal, as the source would give it with nothing connected.</summary>
    public Signal Signal { get; }

    /// <summary>The chain; null where only its response was given.</summary>
    public MeasurementChain? Chain { get; }

    /// <summary>The largest voltage of the signal's reference point against earth, where the signal floats; null where its reference is earth.</summary>
    public Voltage? CommonMode { get; }

    /// <summary>The response of the chain, from the source's open-circuit voltage to the display.</summary>
    public Response Response => _response ?? Chain!.Response;

    /// <summary>With the digitizer that samples it. What may follow is how it is set, and the window.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="digitizer"/> is null.</exception>
    public SampledSignal SampledBy(Digitizer digitizer) => new(this, digitizer ?? throw new ArgumentNullException(nameof(digitizer)));

    /// <summary>The same signal floating: it lies between two points neither of which is earth.</summary>
    /// <param name="commonMode">The largest voltage of its reference point against earth, DC plus peak AC; its sign does not count. An earthed input must not be connected to it.</param>
    public AppliedSignal WithCommonMode(Voltage commonMode) => new(Signal, Chain, _response, commonMode);

    /// <summary>How many times smaller the voltage is at the converter than at the source.</summary>
    internal double Attenuation => Chain?.NominalAttenuationFactor ?? 1;

    /// <summary>The noise of probes and input, re the source; null where none of it is known.</summary>
    internal RmsVoltage? Noise
    {
        get
        {
            if (Chain is null)
                return null;
            List<RmsVoltage> parts = Chain.Elements.OfType<Probe>().Where(probe => probe.Noise is not null).Select(probe => probe.Noise!.Value).ToList();
            if (Chain.FrontEnd.Noise is { } input)
                parts.Add(RmsVoltage.FromSi(input.SiValue * Attenuation, "noise"));
            return parts.Count > 0 ? NoiseCombination.Of(parts.ToArray()) : null;
        }
    }

    /// <summary>What is to be said about the chain in front of this signal; of a response alone only what its voltage brings.</summary>
    internal IReadOnlyList<Finding> Findings => Chain?.Examine(Signal, CommonMode) ?? VoltageCautions.Against(Signal.Peak, CommonMode);

    /// <summary>Each element of the chain, with the response that would be left if the element were ideal.</summary>
    internal IEnumerable<KeyValuePair<string, Response>> WithoutEach()
    {
        if (Chain is null)
        {
            yield return new KeyValuePair<string, Response>(Response.Name, Response.Cascade());
            yield break;
        }
        ChainElement[] elements = Chain.Elements.ToArray();
        for (int i = 0; i < elements.Length; i++)
        {
            var others = elements.Where((_, index) => index != i).ToList();
            if (elements[i].Ideal is { } ideal)
                others.Insert(i, ideal);
            yield return new KeyValuePair<string, Response>(elements[i].Name, new MeasurementChain(Chain.Source, others.ToArray(), Chain.FrontEnd).Response);
        }
        yield return new KeyValuePair<string, Response>(Chain.FrontEnd.Name, new MeasurementChain(Chain.Source, elements, Chain.FrontEnd.Ideal).Response);
    }

    internal string Describe() => Chain?.ToString() ?? Response.Name;
}

/// <summary>The main job in one line: <c>signal.Through(chain).SampledBy(digitizer).Over(window)</c> is an <see cref="Outlook"/>.</summary>
public static class SignalPath
{
    /// <summary>The signal, sent through a chain.</summary>
    /// <param name="signal">The signal, as the source would give it with nothing connected.</param>
    /// <param name="chain">Source impedance, probe, front end.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static AppliedSignal Through(this Signal signal, MeasurementChain chain) =>
        new(signal ?? throw new ArgumentNullException(nameof(signal)), chain ?? throw new ArgumentNullException(nameof(chain)), null);

    /// <summary>The signal, sent through a response that stands for the whole chain.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static AppliedSignal Through(this Signal signal, Response response) =>
        new(signal ?? throw new ArgumentNullException(nameof(signal)), null, response ?? throw new ArgumentNullException(nameof(response)));
}
