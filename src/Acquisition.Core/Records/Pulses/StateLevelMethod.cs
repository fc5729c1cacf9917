namespace Acquisition.Core;

/// <summary>How the two state levels of a pulse record are found (IEEE Std 181-2011, from memory; handbook 8.2). Methods differ by up to half a bin: results carry which one it was.</summary>
public enum StateLevelMethod
{
    /// <summary>The mean of the samples in the fullest bin of each half of the histogram.</summary>
    HistogramMode,

    /// <summary>The centre of the fullest bin of each half of the histogram.</summary>
    HistogramBinCenter,

    /// <summary>The mean of the shortest half of the samples on each side of the middle: the shorth.</summary>
    ShorthMean,

    /// <summary>The midpoint of the shortest half of the samples on each side of the middle.</summary>
    ShorthMidpoint,

    /// <summary>Given by the user.</summary>
    Given,
}
