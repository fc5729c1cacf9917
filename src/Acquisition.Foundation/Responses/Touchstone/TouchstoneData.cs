using System;
using System.Collections.Generic;
using System.IO;
using System.Numerics;
using System.Threading;

namespace Acquisition.Core.Responses;

/// <summary>
/// Scattering parameters of a one-port or two-port from a Touchstone text, versions 1 and 2.0 (open standard of the IBIS Open Forum, from memory). Read only.
/// </summary>
/// <remarks>Immutable and thread-safe. Noise parameters, other parameters than S, mixed-mode data and more than two ports are refused or, where they follow the network data (noise), left out.</remarks>
public sealed class TouchstoneData
{
    private readonly double[] _hertz;
    private readonly Complex[] _parameters;

    internal TouchstoneData(int ports, double resistance, double[] hertz, Complex[] parameters, string version)
    {
        PortCount = ports;
        ReferenceResistance = Resistance.FromSi(resistance, "reference");
        _hertz = hertz;
        _parameters = parameters;
        Version = version;
    }

    /// <summary>1 or 2.</summary>
    public int PortCount { get; }

    /// <summary>The number of frequencies.</summary>
    public int Count => _hertz.Length;

    /// <summary>The resistance that the parameters refer to; of port 1 where the ports differ.</summary>
    public Resistance ReferenceResistance { get; }

    /// <summary>The version stated in the text; 1.0 where none is.</summary>
    public string Version { get; }

    /// <summary>A frequency.</summary>
    /// <param name="index">From 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such point.</exception>
    public Frequency FrequencyAt(int index) => Frequency.FromSi(_hertz[Check(index)], nameof(index));

    /// <summary>A scattering parameter: S21 is <c>to: 2, from: 1</c>.</summary>
    /// <param name="to">The port at which the wave leaves.</param>
    /// <param name="from">The port at which it enters.</param>
    /// <param name="index">The point, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such port or point.</exception>
    public Complex S(int to, int from, int index) => _parameters[(Check(index) * PortCount + Port(to, nameof(to)) - 1) * PortCount + Port(from, nameof(from)) - 1];

    /// <summary>
    /// One parameter as a response: S21 is what passes from port 1 to port 2 between matched ends. Its 0 dB is a direct connection, so that the amplitude ratio is that of
    /// the voltages with and without the two-port between source and load of the reference resistance.
    /// </summary>
    /// <param name="name">What was measured.</param>
    /// <param name="to">The port at which the wave leaves.</param>
    /// <param name="from">The port at which it enters.</param>
    /// <param name="below">What holds below the data.</param>
    /// <param name="above">What holds above the data.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException">There is a single frequency.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such port.</exception>
    public Response ToResponse(string name, int to, int from, OutsideBand below = OutsideBand.Hold, OutsideBand above = OutsideBand.Refuse)
    {
        var points = new FrequencyPoint[Count];
        for (int i = 0; i < points.Length; i++)
            points[i] = FrequencyPoint.From(_hertz[i], S(to, from, i), nameof(to));
        return Response.Measured(name, points, below, above);
    }

    /// <summary>Reads a Touchstone text.</summary>
    /// <param name="text">The whole text.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    /// <exception cref="TouchstoneFormatException">The text is not understood; the message names the line.</exception>
    public static TouchstoneData Parse(string text) => new TouchstoneReader().Read(new StringReader(text ?? throw new ArgumentNullException(nameof(text))), default);

    /// <summary>Reads a Touchstone text to its end.</summary>
    /// <param name="reader">The text; it stays open.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="reader"/> is null.</exception>
    /// <exception cref="TouchstoneFormatException">The text is not understood; the message names the line.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static TouchstoneData Read(TextReader reader, CancellationToken cancellation = default) =>
        new TouchstoneReader().Read(reader ?? throw new ArgumentNullException(nameof(reader)), cancellation);

    private int Check(int index) => index >= 0 && index < Count ? index : throw new ArgumentOutOfRangeException(nameof(index), $"index must be 0 to {Count - 1}; was {index}");

    private int Port(int port, string argument) =>
        port >= 1 && port <= PortCount ? port : throw new ArgumentOutOfRangeException(argument, $"{argument} must be a port from 1 to {PortCount}; was {port}");
}
