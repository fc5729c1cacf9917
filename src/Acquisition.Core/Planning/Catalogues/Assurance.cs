namespace Acquisition.Core.Planning;

/// <summary>How far a maker stands behind a stated value, weakest first.</summary>
public enum Assurance
{
    /// <summary>Said, without more: a headline or an advertisement.</summary>
    Claimed,

    /// <summary>Said to hold for most units; nothing is owed for the one that misses it.</summary>
    Typical,

    /// <summary>Warranted for every unit.</summary>
    Guaranteed,
}
