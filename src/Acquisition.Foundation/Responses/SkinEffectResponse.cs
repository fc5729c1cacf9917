using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>exp(-√(jωτ)) · exp(-jω delay): a line whose loss is the skin effect alone (handbook 7.9).</summary>
internal sealed class SkinEffectResponse : GeneralResponse
{
    private readonly double _tau;

    internal SkinEffectResponse(string name, double bandwidth)
        : base(name)
    {
        // Half power: √(ωτ/2) nepers is ln 2 / 2.
        FrequencyScale = bandwidth;
        _tau = Math.Log(2) * Math.Log(2) / 2 / (2 * Math.PI * bandwidth);
    }

    internal override double FrequencyScale { get; }

    internal override Complex ComplexGain(double hertz)
    {
        double x = Math.Sqrt(Math.PI * hertz * _tau);
        double magnitude = Math.Exp(-x);
        return new Complex(magnitude * Math.Cos(x), -magnitude * Math.Sin(x));
    }

    internal override double PowerGain(double hertz) => Math.Exp(-2 * Math.Sqrt(Math.PI * hertz * _tau));

    internal override double PhaseRadians(double hertz) => -Math.Sqrt(Math.PI * hertz * _tau);

    internal override double GroupDelaySeconds(double hertz) => 0.5 * Math.Sqrt(Math.PI * _tau / hertz) / (2 * Math.PI);

    private protected override double StatedBandwidth => FrequencyScale;

    private protected override double? PowerIntegral() => 1 / (2 * Math.PI * _tau);
}
