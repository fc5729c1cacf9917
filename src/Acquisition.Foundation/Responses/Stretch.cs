using System;

namespace Acquisition.Core.Responses;

/// <summary>A function on a stretch of time, asked for its values at the nodes of a polynomial and for its halves.</summary>
internal abstract class Stretch
{
    private protected Stretch(double low, double high)
    {
        Low = low;
        High = high;
    }

    internal double Low { get; }

    internal double High { get; }

    internal double Middle => 0.5 * (Low + High);

    internal double Half => 0.5 * (High - Low);

    /// <summary>The values at <see cref="PiecewisePolynomial.Nodes"/>, of which -1 is the low end and 1 the high one.</summary>
    internal abstract void Fill(double[] values);

    internal abstract (Stretch Early, Stretch Late) Halve();
}

/// <summary>A function that is asked time by time.</summary>
internal sealed class FunctionStretch : Stretch
{
    private readonly Func<double, double> _function;

    internal FunctionStretch(Func<double, double> function, double low, double high)
        : base(low, high) => _function = function;

    internal override void Fill(double[] values)
    {
        for (int i = 0; i < values.Length; i++)
            values[i] = _function(Middle + Half * PiecewisePolynomial.Nodes[i]);
    }

    internal override (Stretch Early, Stretch Late) Halve() => (new FunctionStretch(_function, Low, Middle), new FunctionStretch(_function, Middle, High));
}
