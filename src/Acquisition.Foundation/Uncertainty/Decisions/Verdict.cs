namespace Acquisition.Core;

/// <summary>What a measurement says about a limit, in four states rather than two (ILAC-G8:09/2019, handbook 11.9).</summary>
/// <remarks>From the worst to the best, so that a value nobody has set is no pass.</remarks>
public enum Verdict
{
    /// <summary>Outside the tolerance limits by more than the guard band: does not conform.</summary>
    Fail,

    /// <summary>Outside the tolerance limits by less than the guard band: the measured value does not conform, without the confidence of the rule.</summary>
    ConditionalFail,

    /// <summary>Within the tolerance limits but inside the guard band: the measured value conforms, without the confidence of the rule.</summary>
    ConditionalPass,

    /// <summary>Within the acceptance limits: accepted, with the confidence of the rule. Where the rule has its guard band outside the tolerance limits that is no confidence that the value conforms, only that there is no sure reason to reject it (JCGM 106 8.3.3).</summary>
    Pass,
}
