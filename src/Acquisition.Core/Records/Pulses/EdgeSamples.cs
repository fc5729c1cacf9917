namespace Acquisition.Core.Records;

/// <summary>The samples before and after the passage of each level by the transitions of a batch; NaN at proximal and distal level where a transition does not pass both.</summary>
internal sealed class EdgeSamples
{
    internal EdgeSamples(int length)
    {
        BeforeProximal = new double[length];
        AfterProximal = new double[length];
        BeforeMiddle = new double[length];
        AfterMiddle = new double[length];
        BeforeDistal = new double[length];
        AfterDistal = new double[length];
    }

    internal double[] BeforeProximal { get; }

    internal double[] AfterProximal { get; }

    internal double[] BeforeMiddle { get; }

    internal double[] AfterMiddle { get; }

    internal double[] BeforeDistal { get; }

    internal double[] AfterDistal { get; }

    /// <summary>Reads those of transitions of a batch, from one to before another.</summary>
    internal static void Read<TView>(TView samples, EdgeBatch batch, int first, int to)
        where TView : struct, ISampleView
    {
        EdgeSamples at = batch.Samples;
        for (int k = first; k < to; k++)
        {
            int last = batch.Last[k], crossing = batch.Crossing[k], beyond = batch.First[k];
            bool complete = batch.IsComplete[k];
            at.BeforeProximal[k] = complete ? samples[last] : double.NaN;
            at.AfterProximal[k] = complete ? samples[last + 1] : double.NaN;
            at.BeforeMiddle[k] = samples[crossing - 1];
            at.AfterMiddle[k] = samples[crossing];
            at.BeforeDistal[k] = complete ? samples[beyond - 1] : double.NaN;
            at.AfterDistal[k] = complete ? samples[beyond] : double.NaN;
        }
    }
}
