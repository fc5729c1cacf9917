namespace Acquisition.Core.Planning;

/// <summary>One needed value beside the one that a set-up has.</summary>
/// <remarks>Immutable. Made by <see cref="Specification.Check"/>.</remarks>
public sealed class NeedCheck
{
    internal NeedCheck(string need, string needed, string present, bool isMet)
    {
        Need = need;
        Needed = needed;
        Present = present;
        IsMet = isMet;
    }

    /// <summary>What is needed: <c>bandwidth</c>, <c>rise time</c>, <c>sample rate</c> ...</summary>
    public string Need { get; }

    /// <summary>The needed value with its bound: <c>at least 390 MHz</c>.</summary>
    public string Needed { get; }

    /// <summary>The value that the set-up has.</summary>
    public string Present { get; }

    /// <summary>Whether the set-up meets the need.</summary>
    public bool IsMet { get; }

    /// <summary>The verdict in words.</summary>
    internal string Verdict => $"here {Present}: {(IsMet ? "met" : "not met")}";

    /// <summary>Need, needed and present value, and the verdict.</summary>
    public override string ToString() => $"{Need}: needed {Needed}, {Verdict}";
}
