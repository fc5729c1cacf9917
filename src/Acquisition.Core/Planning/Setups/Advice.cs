namespace Acquisition.Core.Planning;

/// <summary>One setting, advised: its value, why, which signal decided it, and what is lost by it.</summary>
public sealed class Advice
{
    internal Advice(string setting, string value, string reason, string? loses, Signal? decidedBy)
    {
        Setting = setting;
        Value = value;
        Reason = reason;
        Loses = loses;
        DecidedBy = decidedBy;
    }

    /// <summary>The setting: <c>window</c>, <c>segments</c>, <c>sample rate</c>, <c>range</c>, <c>bandwidth limit</c>, <c>acquisition mode</c>, <c>interpolation</c>.</summary>
    public string Setting { get; }

    /// <summary>How to set it.</summary>
    public string Value { get; }

    /// <summary>Why.</summary>
    public string Reason { get; }

    /// <summary>What is lost by it; null where nothing is.</summary>
    public string? Loses { get; }

    /// <summary>The signal that asks most of this setting; null where the requirement itself decides, or nothing does.</summary>
    public Signal? DecidedBy { get; }

    /// <summary>Setting, value and reason in one line.</summary>
    public override string ToString() => $"{Setting}: {Value}, because {Reason}" + (DecidedBy is null ? "" : $"; decided by {DecidedBy}") + (Loses is null ? "" : $"; lost: {Loses}");
}
