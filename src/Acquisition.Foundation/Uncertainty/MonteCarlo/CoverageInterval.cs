using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>An interval that holds the value with a stated probability.</summary>
/// <remarks>Immutable.</remarks>
public sealed class CoverageInterval
{
    internal CoverageInterval(Quantity low, Quantity high, Ratio probability, bool isShortest)
    {
        Low = low;
        High = high;
        CoverageProbability = probability;
        IsShortest = isShortest;
    }

    /// <summary>The lower end.</summary>
    public Quantity Low { get; }

    /// <summary>The upper end.</summary>
    public Quantity High { get; }

    /// <summary>The coverage probability.</summary>
    public Ratio CoverageProbability { get; }

    /// <summary>Whether it is the shortest interval; otherwise it is the probabilistically symmetric one, with as much probability below as above.</summary>
    public bool IsShortest { get; }

    /// <summary>Ends, probability and kind of interval. The ends have the digits of the interval's width: three of a quarter of it, which is about the standard uncertainty.</summary>
    public override string ToString() =>
        $"[{ResultText.Beside(Low, Quarter, 3)}, {ResultText.Beside(High, Quarter, 3)}], p {ProbabilityText.Beside(CoverageProbability.SiValue, 4)}, {(IsShortest ? "shortest" : "probabilistically symmetric")}";

    private double Quarter => (High.SiValue - Low.SiValue) / 4;
}
