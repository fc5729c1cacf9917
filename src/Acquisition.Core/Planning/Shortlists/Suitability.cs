namespace Acquisition.Core.Planning;

/// <summary>Whether a candidate meets a requirement, best first.</summary>
public enum Suitability
{
    /// <summary>It meets every demand.</summary>
    Suitable,

    /// <summary>It fails no demand that could be judged, but something that is needed to judge one is not stated.</summary>
    Unproven,

    /// <summary>It fails at least one demand.</summary>
    Unsuitable,
}
