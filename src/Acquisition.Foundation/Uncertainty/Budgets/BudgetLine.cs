namespace Acquisition.Core;

/// <summary>One row of an uncertainty budget: an input, and what it contributes (JCGM 100 annex H, handbook 11.11).</summary>
/// <remarks>Immutable.</remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonNumberHandling(System.Text.Json.Serialization.JsonNumberHandling.AllowNamedFloatingPointLiterals)] // degrees of freedom may be infinite
#endif
public sealed class BudgetLine
{
    internal BudgetLine(string name, Quantity estimate, Quantity standardUncertainty, string distribution, string statement, double degreesOfFreedom, double sensitivity, Quantity contribution, Ratio share)
    {
        Name = name;
        Estimate = estimate;
        StandardUncertainty = standardUncertainty;
        Distribution = distribution;
        Statement = statement;
        DegreesOfFreedom = degreesOfFreedom;
        SensitivityInSi = sensitivity;
        Contribution = contribution;
        Share = share;
    }

    /// <summary>The name of the input.</summary>
    public string Name { get; }

    /// <summary>Its estimate.</summary>
    public Quantity Estimate { get; }

    /// <summary>Its standard uncertainty.</summary>
    public Quantity StandardUncertainty { get; }

    /// <summary>Its distribution, such as <c>rectangular</c>.</summary>
    public string Distribution { get; }

    /// <summary>How its uncertainty was stated, such as <c>± 5 % (limits, rectangular)</c>.</summary>
    public string Statement { get; }

    /// <summary>Its degrees of freedom; infinite where its uncertainty is taken as known.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>The sensitivity coefficient: how far the result moves per unit of the input, in SI units of both (decibels for decibel kinds).</summary>
    public double SensitivityInSi { get; }

    /// <summary>Sensitivity times standard uncertainty, in the unit of the result; negative where the result falls when the input rises.</summary>
    public Quantity Contribution { get; }

    /// <summary>The part of the combined variance that this input brings on its own. With correlated inputs the shares do not add up to 1; the rest is <see cref="UncertaintyBudget.CorrelationShare"/>.</summary>
    public Ratio Share { get; }
}
