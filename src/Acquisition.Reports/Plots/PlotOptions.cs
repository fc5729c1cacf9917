using System;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>How a picture is drawn: size, title, range, kind of the frequency axis. What a kind of picture has no use for it leaves aside.</summary>
/// <remarks>Immutable: each <c>With…</c> returns new options.</remarks>
public sealed class PlotOptions
{
    private PlotOptions()
    {
    }

    private PlotOptions(PlotOptions other)
    {
        Width = other.Width;
        Height = other.Height;
        Title = other.Title;
        LowestFrequency = other.LowestFrequency;
        HighestFrequency = other.HighestFrequency;
        Start = other.Start;
        End = other.End;
        HasLinearFrequency = other.HasLinearFrequency;
        MostCandidates = other.MostCandidates;
    }

    /// <summary>800 by 450 units, the picture's own title, the range of what is shown, logarithmic frequency, six candidates.</summary>
    public static PlotOptions Default { get; } = new();

    /// <summary>The width in units of the SVG.</summary>
    public int Width { get; private set; } = 800;

    /// <summary>The height in units of the SVG; a picture grows where its texts or rows need more.</summary>
    public int Height { get; private set; } = 450;

    /// <summary>The title; null for the picture's own.</summary>
    public string? Title { get; private set; }

    /// <summary>The lower end of the frequency axis; null for that of what is shown.</summary>
    public Frequency? LowestFrequency { get; private set; }

    /// <summary>The upper end of the frequency axis; null for that of what is shown.</summary>
    public Frequency? HighestFrequency { get; private set; }

    /// <summary>From when on a trace is shown; null for the picture's own choice.</summary>
    public Duration? Start { get; private set; }

    /// <summary>Until when a trace is shown; null for the picture's own choice.</summary>
    public Duration? End { get; private set; }

    /// <summary>Whether equal lengths of the frequency axis are equal differences; equal ratios otherwise.</summary>
    public bool HasLinearFrequency { get; private set; }

    /// <summary>How many candidates of a shortlist are shown.</summary>
    public int MostCandidates { get; private set; } = 6;

    /// <summary>The same in another size.</summary>
    /// <param name="width">320 to 4000.</param>
    /// <param name="height">200 to 4000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is outside its range.</exception>
    public PlotOptions WithSize(int width, int height)
    {
        CheckSize(width, height);
        return new PlotOptions(this) { Width = width, Height = height };
    }

    /// <summary>The same with a title.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="title"/> is null.</exception>
    public PlotOptions WithTitle(string title) => new(this) { Title = title ?? throw new ArgumentNullException(nameof(title)) };

    /// <summary>The same over a range of frequencies.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The range does not run upwards, or begins below 0 Hz.</exception>
    public PlotOptions WithFrequencies(Frequency from, Frequency to)
    {
        if (from < Frequency.FromHertz(0) || from >= to) throw new ArgumentOutOfRangeException(nameof(to), $"the frequencies must run upwards from 0 Hz or above; were {from} to {to}");
        return new PlotOptions(this) { LowestFrequency = from, HighestFrequency = to };
    }

    /// <summary>The same with frequency linear, from 0 Hz where no range is given.</summary>
    public PlotOptions WithLinearFrequency() => new(this) { HasLinearFrequency = true };

    /// <summary>The same over a range of time.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The range does not run upwards.</exception>
    public PlotOptions WithTimes(Duration from, Duration to)
    {
        if (from >= to) throw new ArgumentOutOfRangeException(nameof(to), $"the times must run upwards; were {from} to {to}");
        return new PlotOptions(this) { Start = from, End = to };
    }

    /// <summary>The same with so many candidates of a shortlist.</summary>
    /// <param name="candidates">1 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="candidates"/> is not 1 to 100.</exception>
    public PlotOptions WithMostCandidates(int candidates) => candidates is >= 1 and <= 100
        ? new PlotOptions(this) { MostCandidates = candidates }
        : throw new ArgumentOutOfRangeException(nameof(candidates), FormattableString.Invariant($"candidates must be 1 to 100; was {candidates}"));

    internal static void CheckSize(int width, int height)
    {
        if (width is < 320 or > 4000) throw new ArgumentOutOfRangeException(nameof(width), FormattableString.Invariant($"width must be 320 to 4000; was {width}"));
        if (height is < 200 or > 4000) throw new ArgumentOutOfRangeException(nameof(height), FormattableString.Invariant($"height must be 200 to 4000; was {height}"));
    }
}
