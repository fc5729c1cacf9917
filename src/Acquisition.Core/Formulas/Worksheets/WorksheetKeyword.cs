namespace Acquisition.Core.Formulas;

/// <summary>What a line of a worksheet does.</summary>
public enum WorksheetKeyword
{
    /// <summary>An input that a host may override by name.</summary>
    Given,

    /// <summary>A derived value.</summary>
    Let,

    /// <summary>A demand with a verdict.</summary>
    Check,

    /// <summary>An output.</summary>
    Show,
}

/// <summary>How a check of a worksheet ended.</summary>
/// <remarks>A value nobody has set is no pass.</remarks>
public enum WorksheetVerdict
{
    /// <summary>The demand could not be evaluated.</summary>
    NotEvaluated,

    /// <summary>Inputs are uncertain, and the margin lies within the expanded uncertainty (k=2): neither can be said.</summary>
    Inconclusive,

    /// <summary>The demand is not met; where inputs are uncertain, by more than the expanded uncertainty.</summary>
    Failed,

    /// <summary>The demand is met; where inputs are uncertain, with the expanded uncertainty to spare.</summary>
    Passed,
}
