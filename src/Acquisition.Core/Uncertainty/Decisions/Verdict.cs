namespace Acquisition.Core;

/// <summary>What a measurement says about a limit, in four states rather than two (ILAC-G8:09/2019, handbook 11.9).</summary>
public enum Verdict
{
    /// <summary>Within the acceptance limits: conforms, with the confidence of the rule.</summary>
    Pass,

    /// <summary>Within the tolerance limits but inside the guard band: the measured value conforms, without the confidence of the rule.</summary>
    ConditionalPass,

    /// <summary>Outside the tolerance limits by less than the guard band: the measured value does not conform, without the confidence of the rule.</summary>
    ConditionalFail,

    /// <summary>Outside the tolerance limits by more than the guard band: does not conform.</summary>
    Fail,
}
