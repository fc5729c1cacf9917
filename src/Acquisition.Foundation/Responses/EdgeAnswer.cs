using System;
using System.Collections.Generic;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Responses;

/// <summary>What comes out of a response for one edge of 1, from when it begins to when it has settled; times count from the edge's 50 % point at the input.</summary>
internal sealed class EdgeAnswer
{
    private const double SettledExactly = 1e-12, SettledAsGood = 1e-8;

    /// <summary>What may be left of a tail that is too lively to be followed, as the kinks between points of data leave one.</summary>
    private const double SettledForData = 1e-4;

    /// <summary>The times at which a step is looked at are close enough for a cubic; a piece holds several of them.</summary>
    private const int Sparse = 8;

    private readonly StepResponse _output;
    private readonly double _delay;

    private EdgeAnswer(StepResponse output, double delay, double settled, IReadOnlyList<double> marks)
    {
        _output = output;
        _delay = delay;
        First = output.Times[0] + delay;
        Settled = settled + delay;
        Marks = marks;
    }

    /// <summary>When it begins, s.</summary>
    internal double First { get; }

    /// <summary>When it has come to rest, s.</summary>
    internal double Settled { get; }

    /// <summary>Where it may have a corner or a jump, s, and as many times more as show where it is lively.</summary>
    internal IReadOnlyList<double> Marks { get; }

    /// <summary>The output, or null where it never comes to rest: a gain that ends abruptly rings for ever.</summary>
    internal static EdgeAnswer? Of(Response response, Edge edge)
    {
        StepResponse output = response.EdgeStep(edge, out double shift);
        double delay = response.StepDelay - shift;
        double size = Math.Max(Math.Abs(output.Final), Math.Abs(response.StepReference));
        bool isExact = response.Branches is not null;
        bool isFollowed = double.IsInfinity(output.FarFrom);
        if (!output.TryLastOutside((isExact ? SettledExactly : isFollowed ? SettledAsGood : SettledForData) * size, out double settled) || settled >= output.FarFrom)
            return null;
        // What is given by its gain alone is looked at for as long as it may move: not to have settled by then is to ring on.
        if (!isExact && settled >= output.Times[output.Times.Count - 2])
            return null;
        var marks = new List<double>();
        double half = edge.Shape == EdgeShape.Linear ? 0.5 * edge.Scale : 0;
        foreach (double arrival in response.Arrivals)
        {
            marks.Add(arrival - shift - half);
            marks.Add(arrival - shift + half);
        }
        // Where a tail is left, what counts as settled begins with a little jump.
        if (!isFollowed)
            marks.Add(settled + delay);
        for (int i = 0; i < output.Times.Count; i += Sparse)
            marks.Add(output.Times[i] + delay);
        return new EdgeAnswer(output, delay, settled, marks);
    }

    internal double Final => _output.Final;

    internal double Value(double seconds) => _output.Value(seconds - _delay);

    internal double Value(double seconds, out double slope) => _output.Value(seconds - _delay, out slope);

    /// <summary>The integral of the output, less its final value from the edge on, from long before the edge to a time.</summary>
    internal double ExcessIntegral(double seconds) => _output.Integral(seconds - _delay) - _output.Final * (seconds - _delay);
}
