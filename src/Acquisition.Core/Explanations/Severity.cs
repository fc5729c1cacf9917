namespace Acquisition.Core;

/// <summary>How much a <see cref="Finding"/> matters.</summary>
public enum Severity
{
    /// <summary>Good to know; the result stands.</summary>
    Note,

    /// <summary>The result stands, but is further from the truth than its reader would expect.</summary>
    Warning,

    /// <summary>The result, or a demand on it, does not hold.</summary>
    Failure,

    /// <summary>Someone could be hurt, or equipment destroyed. Local codes and licensed practice decide.</summary>
    Safety,
}
