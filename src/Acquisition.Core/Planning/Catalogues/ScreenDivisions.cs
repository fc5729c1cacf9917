using System;

namespace Acquisition.Core.Planning;

/// <summary>The divisions of a screen.</summary>
public sealed class ScreenDivisions
{
    /// <summary>States the divisions.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is below 1.</exception>
    public ScreenDivisions(int across, int up)
    {
        Across = Positive(across, nameof(across));
        Up = Positive(up, nameof(up));
    }

    /// <summary>The divisions from left to right: the window is so many times the time per division.</summary>
    public int Across { get; }

    /// <summary>The divisions from bottom to top.</summary>
    public int Up { get; }

    /// <summary>Across by up.</summary>
    public override string ToString() => FormattableString.Invariant($"{Across} x {Up} div");

    private static int Positive(int value, string argument) =>
        value >= 1 ? value : throw new ArgumentOutOfRangeException(argument, FormattableString.Invariant($"{argument} must be at least 1; was {value}"));
}
