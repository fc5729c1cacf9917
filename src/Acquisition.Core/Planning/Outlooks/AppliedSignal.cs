using System;
using System.Collections.Generic;

#pragma warning disable CA1822
namespace Acquisition.Core;

/// <summary>A signal at the start of a chain. What may follow is the digitizer.</summary>
/// <remarks>Immutable. Nothing is computed until it is asked for.</remarks>
public sealed class AppliedSignal
{
    internal AppliedSignal(Signal signal, Response response)
    {
        Signal = signal;
        Response = response;
    }

    /// <summary>The signal.</summary>
    public Signal Signal { get; }

    /// <summary>The response of the chain, from the source's open-circuit voltage to the display.</summary>
    public Response Response { get; }

    /// <summary>How many times smaller the voltage is at the converter than at the source.</summary>
    internal double Attenuation => 1;

    /// <summary>The noise of probe and input, re the source; null where it is not known.</summary>
    internal RmsVoltage? Noise => null;

    /// <summary>What is to be said about the chain itself.</summary>
    internal IReadOnlyList<Finding> Findings => [];

    internal string Describe() => Response.Name;

    /// <summary>Each element of the chain, with the response that would be left if the element were ideal.</summary>
    internal IEnumerable<KeyValuePair<string, Response>> WithoutEach()
    {
        yield return new KeyValuePair<string, Response>(Response.Name, Response.Cascade());
    }

    /// <summary>With the digitizer that samples it. What may follow is how it is set, and the window.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="digitizer"/> is null.</exception>
    public SampledSignal SampledBy(Digitizer digitizer) => new(this, digitizer ?? throw new ArgumentNullException(nameof(digitizer)));
}

/// <summary>The main job in one line: <c>signal.Through(chain).SampledBy(digitizer).Over(window)</c> is an <see cref="Outlook"/>.</summary>
public static class SignalPath
{
    /// <summary>The signal, sent through a response that stands for the whole chain.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static AppliedSignal Through(this Signal signal, Response response) =>
        new(signal ?? throw new ArgumentNullException(nameof(signal)), response ?? throw new ArgumentNullException(nameof(response)));
}
