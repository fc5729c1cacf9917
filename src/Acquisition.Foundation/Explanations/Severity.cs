namespace Acquisition.Core;

/// <summary>How much a <see cref="Finding"/> matters.</summary>
/// <remarks>In rising order of urgency: <c>severity &gt;= Severity.Failure</c> takes safety in. A safety finding says nothing about the number; a result can be right and the measurement dangerous.</remarks>
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
