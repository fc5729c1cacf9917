namespace Acquisition.Core.Records;

/// <summary>
/// Samples as the scan for transitions looks at them. Views are structures, so that the scan is compiled anew for each kind of sample and calls nothing: a dense train has an
/// edge every few tens of samples, and a virtual call per sample would be most of its time.
/// </summary>
internal interface ISampleView
{
    int Length { get; }

    double this[int index] { get; }

    /// <summary>A level as the samples are compared with it.</summary>
    Level LevelOf(double value);

    bool IsAtOrAbove(int index, in Level level);

    /// <summary>The first sample at or above a level, or <paramref name="to"/> where there is none.</summary>
    int NextAtOrAbove(in Level level, int from, int to);

    /// <summary>The first sample below a level, or <paramref name="to"/> where there is none.</summary>
    int NextBelow(in Level level, int from, int to);

    /// <summary>The largest or the smallest value from <paramref name="from"/> to before <paramref name="to"/>, of at least one sample; all are numbers.</summary>
    double Extreme(bool highest, int from, int to);
}

/// <summary>A level, and for codes the lowest one at or above it: codes then compare as their values do, without a value being made of them.</summary>
internal readonly struct Level
{
    internal Level(double value, int code = 0)
    {
        Value = value;
        Code = code;
    }

    internal double Value { get; }

    internal int Code { get; }
}
