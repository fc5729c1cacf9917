namespace Acquisition.Core.Records;

/// <summary>What surrounds a transition, in parts of the amplitude; NaN where there is no region to look at.</summary>
internal readonly struct Aberrations
{
    private readonly FourNumbers _parts;

    /// <param name="parts">Overshoot, undershoot and preshoot, from the second on.</param>
    internal Aberrations(FourNumbers parts) => _parts = parts;

    internal static Aberrations None => new(new FourNumbers(double.NaN, double.NaN, double.NaN, double.NaN));

    internal double Overshoot => _parts.Second;

    internal double Undershoot => _parts.Third;

    internal double Preshoot => _parts.Fourth;

    /// <summary>Another number and the three of this.</summary>
    internal FourNumbers After(double first) => _parts.WithFirst(first);
}
