namespace Acquisition.Core.Planning;

/// <summary>One setting, advised: its value, why, and what is lost by it.</summary>
public sealed class Advice
{
    internal Advice(string setting, string value, string reason, string? loses)
    {
        Setting = setting;
        Value = value;
        Reason = reason;
        Loses = loses;
    }

    /// <summary>The setting: <c>window</c>, <c>sample rate</c>, <c>range</c>, <c>bandwidth limit</c>, <c>acquisition mode</c>, <c>interpolation</c>, <c>segments</c>.</summary>
    public string Setting { get; }

    /// <summary>How to set it.</summary>
    public string Value { get; }

    /// <summary>Why.</summary>
    public string Reason { get; }

    /// <summary>What is lost by it; null where nothing is.</summary>
    public string? Loses { get; }

    /// <summary>Setting, value and reason in one line.</summary>
    public override string ToString() => $"{Setting}: {Value}, because {Reason}" + (Loses is null ? "" : $"; lost: {Loses}");
}
