namespace Acquisition.Core.Records;

/// <summary>
/// Samples as the scan for transitions looks at them. Views are structures, so that the scan is compiled anew for each kind of sample and calls nothing: a dense train has an
/// edge every few tens of samples, and a virtual call per sample would be most of its time.
/// </summary>
internal interface ISampleView
{
    int Length { get; }

    /// <summary>How many codes there are; 0 where samples are numbers.</summary>
    int Codes { get; }

    double this[int index] { get; }

    /// <summary>A level as the samples are compared with it.</summary>
    Level LevelOf(double value);

    bool IsAtOrAbove(int index, in Level level);

    /// <summary>The first sample at or above a level, or <paramref name="to"/> where there is none.</summary>
    int NextAtOrAbove(in Level level, int from, int to);

    /// <summary>The first sample below a level, or <paramref name="to"/> where there is none.</summary>
    int NextBelow(in Level level, int from, int to);

    /// <summary>
    /// The samples that lie on another side of a level than the one before them, in order. They are looked for many ahead, so that nothing waits for where the last transition ended.
    /// </summary>
    /// <param name="level">The level.</param>
    /// <param name="from">The first sample that is looked at; there is one before it.</param>
    /// <param name="to">The sample after the last.</param>
    /// <param name="places">Where they are put; room for a hundred at least.</param>
    /// <param name="count">How many there are.</param>
    /// <returns>The first sample that was not looked at: before <paramref name="to"/> where there is no room for more.</returns>
    int Crossings(in Level level, int from, int to, int[] places, out int count);

    /// <summary>Reads the samples on either side of the levels of transitions, from one of a batch to its last; their places are those of samples.</summary>
    void Read(EdgeBatch batch, int first);

#if NET8_0_OR_GREATER
    /// <summary>Whether the samples can be compared with the levels of transitions many at once, where the levels lie between codes.</summary>
    bool HasBits { get; }

    /// <summary>Compares the samples around consecutive crossings of the middle level with the levels of the first and of the next; no bits are set where there are not enough samples around one.</summary>
    void Compare(int[] crossings, int count, EdgeLevels first, EdgeLevels next, EdgeBits[] bits);

    /// <summary>
    /// Finds the extremes around transitions of a batch, where the regions are short enough to be looked at at once; levels are those of transitions of even and of odd index.
    /// </summary>
    /// <returns>The first transition that was not looked at.</returns>
    int Extremes(EdgeBatch batch, EdgeLevels even, EdgeLevels odd, int first, int to);
#endif

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
