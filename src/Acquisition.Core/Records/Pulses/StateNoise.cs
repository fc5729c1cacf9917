namespace Acquisition.Core.Records;

/// <summary>What is known of the noise of a state.</summary>
internal sealed class StateNoise
{
    internal StateNoise(double rms, bool isLevelled, int window, double? fast)
    {
        Rms = rms;
        IsLevelled = isLevelled;
        Window = window;
        Fast = fast;
    }

    internal double Rms { get; }

    /// <summary>Whether longer windows see no more of it; else some of it may be change.</summary>
    internal bool IsLevelled { get; }

    /// <summary>The samples of the longest window that was looked at.</summary>
    internal int Window { get; }

    /// <summary>Where longer windows saw more and more of it: what the shortest ones saw.</summary>
    internal double? Fast { get; }
}
