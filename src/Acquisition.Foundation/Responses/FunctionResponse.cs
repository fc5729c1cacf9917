using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>A response that the caller computes.</summary>
internal sealed class FunctionResponse : GeneralResponse
{
    private readonly Func<double, Complex> _gain;

    internal FunctionResponse(string name, double scale, Func<double, Complex> gain)
        : base(name)
    {
        FrequencyScale = scale;
        _gain = gain;
    }

    internal override double FrequencyScale { get; }

    internal override Complex ComplexGain(double hertz)
    {
        Complex gain = _gain(hertz);
        return double.IsNaN(gain.Real + gain.Imaginary) || double.IsInfinity(gain.Real) || double.IsInfinity(gain.Imaginary)
            ? throw new InvalidOperationException($"{Name} gave a gain that is not a number at {Acquisition.Core.Frequency.FromSi(hertz, "hertz")}")
            : gain;
    }
}
