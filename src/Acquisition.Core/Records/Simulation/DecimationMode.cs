namespace Acquisition.Core;

/// <summary>What becomes of several raw samples of the converter that make one stored sample (handbook 5.5).</summary>
public enum DecimationMode
{
    /// <summary>One of them is stored: decimation. Content above half the stored rate folds down, and spikes are missed.</summary>
    Sample,

    /// <summary>Of two stored intervals the smallest and then the largest raw sample: spikes are kept, noise looks larger. Not for rms, spectra or effective bits.</summary>
    PeakDetect,

    /// <summary>Their mean (boxcar): less noise and more resolution, less bandwidth.</summary>
    HighResolution,
}
