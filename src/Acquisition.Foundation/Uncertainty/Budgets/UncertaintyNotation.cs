namespace Acquisition.Core;

/// <summary>How a result with its uncertainty is written (JCGM 100 7.2).</summary>
public enum UncertaintyNotation
{
    /// <summary>The expanded uncertainty after ±, with k and p: <c>(10.020 ± 0.030) V, k = 2, p = 95.45 %</c> (JCGM 100 7.2.4).</summary>
    PlusMinus,

    /// <summary>The standard uncertainty in parentheses, in units of the last digits: <c>10.020(15) V</c> (JCGM 100 7.2.2).</summary>
    Concise,
}
