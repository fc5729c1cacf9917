using System.Numerics;

namespace Acquisition.Core.Chain;

/// <summary>One link of a ladder network: it turns voltage and current at its output into those at its input (a column of its chain matrix at a time).</summary>
internal abstract class Branch
{
    /// <summary>From the output side to the input side at a complex frequency s in rad/s.</summary>
    internal abstract void TowardsSource(Complex s, ref Complex voltage, ref Complex current);

    /// <summary>The one-way delay of a line, s; 0 for lumped branches.</summary>
    internal virtual double Delay => 0;
}

/// <summary>An impedance in the path or an admittance across it, as a ratio of polynomials.</summary>
internal sealed class LumpedBranch : Branch
{
    private LumpedBranch(bool isSeries, double[] numerator, double[] denominator)
    {
        IsSeries = isSeries;
        Numerator = numerator;
        Denominator = denominator;
    }

    internal bool IsSeries { get; }

    /// <summary>Of the impedance in series, of the admittance across.</summary>
    internal double[] Numerator { get; }

    internal double[] Denominator { get; }

    /// <summary>R + sL in the path.</summary>
    internal static LumpedBranch Series(double ohms, double henries = 0) => new(true, Polynomial.Trim(new[] { ohms, henries }), Polynomial.One);

    /// <summary>R beside C in the path: R/(1 + sRC).</summary>
    internal static LumpedBranch SeriesParallel(double ohms, double farads) => new(true, new[] { ohms }, Polynomial.Trim(new[] { 1, ohms * farads }));

    /// <summary>R beside C across the path: 1/R + sC; an infinite R is none.</summary>
    internal static LumpedBranch Shunt(double ohms, double farads = 0) => new(false, Polynomial.Trim(new[] { 1 / ohms, farads }), Polynomial.One);

    internal override void TowardsSource(Complex s, ref Complex voltage, ref Complex current)
    {
        Complex ratio = Polynomial.Value(Numerator, s) / Polynomial.Value(Denominator, s);
        if (IsSeries)
            voltage += ratio * current;
        else
            current += ratio * voltage;
    }
}
