namespace Acquisition.Core;

/// <summary>A pulse that crosses the middle level and returns without reaching the other state.</summary>
/// <remarks>Immutable.</remarks>
public sealed class Runt
{
    internal Runt(Duration start, Duration end, Quantity extreme, bool positive)
    {
        Start = start;
        End = end;
        Extreme = extreme;
        IsPositive = positive;
    }

    /// <summary>When it crosses the middle level.</summary>
    public Duration Start { get; }

    /// <summary>When it crosses back.</summary>
    public Duration End { get; }

    /// <summary>Its largest sample, or smallest for a negative one.</summary>
    public Quantity Extreme { get; }

    /// <summary>Whether it leaves the low state.</summary>
    public bool IsPositive { get; }

    /// <summary>Time and extreme in one line.</summary>
    public override string ToString() => $"{(IsPositive ? "positive" : "negative")} runt from {Start.InWords(6)} to {End.InWords(6)}, up to {Extreme.InWords()}";
}
