using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>Everything up to an edge, nothing above, no delay.</summary>
internal sealed class BrickWallResponse : GeneralResponse
{
    private readonly double _edge;

    internal BrickWallResponse(string name, double edge)
        : base(name) => _edge = edge;

    internal override double FrequencyScale => _edge;

    internal override double HighestFrequency => _edge;

    internal override Complex ComplexGain(double hertz) => hertz <= _edge ? Complex.One : Complex.Zero;

    internal override double GroupDelaySeconds(double hertz) => 0;

    private protected override double StatedBandwidth => _edge;
}
