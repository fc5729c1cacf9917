namespace Acquisition.Core.Planning;

/// <summary>Whether a candidate meets a requirement.</summary>
/// <remarks>From the worst to the best, so that a value nobody has set recommends nothing.</remarks>
public enum Suitability
{
    /// <summary>It fails at least one demand.</summary>
    Unsuitable,

    /// <summary>It fails no demand that could be judged, but something that is needed to judge one is not stated.</summary>
    Unproven,

    /// <summary>It meets every demand.</summary>
    Suitable,
}
