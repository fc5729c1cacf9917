namespace Acquisition.Core;

/// <summary>What an instrument keeps of the samples its converter takes (handbook 5.5).</summary>
public enum AcquisitionMode
{
    /// <summary>Every stored point is one sample. Nothing is lost but what lies between the stored ones; content above half the stored rate folds down.</summary>
    Sample,

    /// <summary>Every stored pair is the smallest and then the largest of the samples of two intervals: spikes are kept, noise looks larger, and the record is no longer fit for rms, spectra or effective bits.</summary>
    PeakDetect,

    /// <summary>Every stored point is the mean of the samples of its interval (boxcar): less noise and more resolution, less bandwidth.</summary>
    HighResolution,

    /// <summary>Every stored point is the mean over several records: less noise on a signal that repeats, single events are lost.</summary>
    Average,

    /// <summary>The extremes over several records: single events are kept, their course is lost.</summary>
    Envelope,
}
