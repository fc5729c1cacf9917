namespace Acquisition.Reports;

/// <summary>A text with its place on the picture.</summary>
internal sealed class PlacedText(string text, double x, double baseline, string anchor = "start", double size = PlacedText.Usual, bool isUpright = false, string? whole = null)
{
    internal const double Usual = 13, Small = 12, Title = 16;

    internal string Text { get; } = text;

    internal double X { get; } = x;

    internal double Baseline { get; } = baseline;

    internal string Anchor { get; } = anchor;

    internal double Size { get; } = size;

    /// <summary>Whether it reads from bottom to top.</summary>
    internal bool IsUpright { get; } = isUpright;

    /// <summary>The text before it was shortened.</summary>
    internal string Whole { get; } = whole ?? text;
}
