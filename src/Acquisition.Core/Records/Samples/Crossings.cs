namespace Acquisition.Core.Records;

/// <summary>Where samples cross a level, one crossing after the other: for samples that are not compared many at once.</summary>
internal static class Crossings
{
    /// <inheritdoc cref="ISampleView.Crossings"/>
    internal static int OneByOne<TView>(TView samples, in Level level, int from, int to, int[] places, out int count)
        where TView : struct, ISampleView
    {
        count = 0;
        bool above = samples.IsAtOrAbove(from - 1, level);
        for (int i = from; i < to; above = !above)
        {
            i = above ? samples.NextBelow(level, i, to) : samples.NextAtOrAbove(level, i, to);
            if (i == to)
                break;
            places[count++] = i++;
            if (count == places.Length)
                return i;
        }
        return to;
    }
}
