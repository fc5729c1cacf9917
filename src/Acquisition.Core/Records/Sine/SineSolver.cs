using System;

namespace Acquisition.Core.Records;

/// <summary>Least-squares fit of a sine with known (three parameters) or free frequency (four parameters): IEEE 1057/1241, handbook 9.1 and 9.2.</summary>
internal static class SineSolver
{
    /// <summary>A clean line takes fewer than ten. Where the residual is as large as the sine, steps shrink by a half each time, and thirty do not reach the last digits.</summary>
    internal const int MaximumIterations = 100;

    /// <summary>Fits all samples of the range, or those that are not clipped.</summary>
    /// <param name="x">The samples; all finite.</param>
    /// <param name="from">First index of the range.</param>
    /// <param name="to">Index after the last.</param>
    /// <param name="cycles">The frequency in cycles per sample, or where to start.</param>
    /// <param name="free">Whether the frequency is fitted.</param>
    /// <param name="clipped">Which samples are left out; null where none is.</param>
    /// <param name="near">A fit to a part of the same samples, to start from; null to start from the frequency alone.</param>
    /// <returns>The fit; null where the columns cannot be told apart (frequency at a multiple of half the sample rate, too few samples).</returns>
    internal static SineSolution? Solve(SamplePasses x, int from, int to, double cycles, bool free, ClippedSamples? clipped = null, SineSolution? near = null)
    {
        double centre = (from + to - 1) / 2.0, half = Math.Max((to - from - 1) / 2.0, 0.5);
        var matrix = new double[16];
        var gradient = new double[4];
        SineModel model = near?.ModelAt(centre) ?? new SineModel(0, 0, 0, cycles);
        double lastChange = double.PositiveInfinity;
        bool settled = false, started = near is not null;
        for (int iteration = 0; ; iteration++)
        {
            SineSums sums = Sums(x, from, to, clipped, centre, half, model);
            bool withFrequency = free && (started || iteration > 0);
            int columns = withFrequency ? 4 : 3;
            sums.Normal(model, withFrequency, matrix, gradient);
            // At half the sample rate one column is nothing but rounding.
            if (Math.Min(sums.CC, sums.Count - sums.CC) < 1e-12 * sums.Count || NormalSystem.Factor(matrix, columns) is not { } system)
                return null;
            if (settled || iteration == MaximumIterations)
                return new SineSolution(model, centre, half, sums, system, iteration, settled);
            double[] step = system.Solve(gradient);
            double turn = withFrequency ? step[3] : 0;
            var next = new SineModel(model.Cosine + step[0], model.Sine + step[1], model.Offset + step[2], model.Cycles + turn / (2 * Math.PI * half));
            double amplitude = next.Amplitude;
            // Steps shrink by a steady factor, or faster: what is still to come is less than a geometric series, and less than the 1e-10 rad that no one can see. The second
            // bound is the rounding of the phase itself in long records.
            double change = Math.Abs(turn) + (Math.Abs(step[0]) + Math.Abs(step[1])) / (amplitude + double.Epsilon);
            double factor = Math.Min(change / lastChange, 0.999);
            settled = lastChange < double.PositiveInfinity && (change * factor / (1 - factor) <= 1e-10 || change <= 1e-9 + 4e-16 * Math.PI * half);
            // Without the frequency the equations are linear: the second step removes what rounding left of the first, however small the sine may be.
            settled |= !free && iteration > 0;
            lastChange = !free || withFrequency ? change : double.PositiveInfinity;
            model = next;
            if (Math.Abs(model.Cycles - cycles) > 3.0 / (to - from) || !(amplitude <= double.MaxValue))
                return new SineSolution(model, centre, half, sums, system, iteration, false);
        }
    }

    /// <summary>One pass over the samples of a range, at the given parameters.</summary>
    internal static SineSums Sums(SamplePasses x, int from, int to, ClippedSamples? clipped, double centre, double half, in SineModel model)
    {
        SineSums sums = default;
        for (int at = from; at < to;)
        {
            SampleBlock block = x.Next(at, to);
            if (clipped is null)
                sums.Add(block, centre, half, model);
            else
                AddRuns(ref sums, block, clipped, centre, half, model);
            at = block.To;
        }
        return sums;
    }

    /// <summary>Adds the runs of samples between clipped ones.</summary>
    private static void AddRuns(ref SineSums sums, in SampleBlock block, ClippedSamples clipped, double centre, double half, in SineModel model)
    {
        int start = block.From;
        for (int i = block.From; i < block.To; i++)
        {
            if (!clipped.Holds(block[i]))
                continue;
            sums.Add(block.Between(start, i), centre, half, model);
            start = i + 1;
        }
        sums.Add(block.Between(start, block.To), centre, half, model);
    }
}

/// <summary>What a fit ended with: parameters about the record's centre, residual sum of squares and the inverse of the normal matrix.</summary>
internal sealed class SineSolution
{
    private readonly double[] _inverse;

    internal SineSolution(SineModel model, double centre, double half, in SineSums sums, NormalSystem system, int iterations, bool converged)
    {
        Model = model;
        Centre = centre;
        Half = half;
        Count = (int)sums.Count;
        ResidualSquares = sums.RR;
        Parameters = system.Size;
        Iterations = iterations;
        Converged = converged;
        _inverse = system.Inverse();
    }

    internal SineModel Model { get; }

    internal double Centre { get; }

    internal double Half { get; }

    internal int Count { get; }

    internal int Parameters { get; }

    internal int Iterations { get; }

    internal bool Converged { get; }

    internal double ResidualSquares { get; }

    /// <summary>Noise and distortion: root mean square of the residual, divisor M (handbook 9.1).</summary>
    internal double NoiseAndDistortion => Math.Sqrt(ResidualSquares / Count);

    /// <summary>Unbiased standard deviation of the residual: divisor M less the number of parameters.</summary>
    internal double ResidualDeviation => Math.Sqrt(ResidualSquares / Math.Max(1, Count - Parameters));

    /// <summary>Phase of the cosine at the centre of the record, in radians.</summary>
    internal double PhaseAtCenter => Math.Atan2(-Model.Sine, Model.Cosine);

    /// <summary>Phase of the cosine at sample 0, in radians, from -pi to pi.</summary>
    internal double PhaseAtStart => Math.IEEERemainder(PhaseAtCenter - 2 * Math.PI * Math.IEEERemainder(Model.Cycles * Centre, 1), 2 * Math.PI);

    internal double AmplitudeUncertainty
    {
        get
        {
            double a = Model.Cosine / Model.Amplitude, b = Model.Sine / Model.Amplitude;
            return ResidualDeviation * Math.Sqrt(Math.Max(0, a * a * V(0, 0) + 2 * a * b * V(0, 1) + b * b * V(1, 1)));
        }
    }

    internal double OffsetUncertainty => ResidualDeviation * Math.Sqrt(V(2, 2));

    /// <summary>In cycles per sample; zero where the frequency was given.</summary>
    internal double CyclesUncertainty => Parameters < 4 ? 0 : ResidualDeviation * Math.Sqrt(V(3, 3)) / (2 * Math.PI * Half);

    internal double PhaseAtCenterUncertainty => PhaseUncertainty(0);

    /// <summary>Of the phase at sample 0, in radians: the frequency's share counts over half the record.</summary>
    internal double PhaseAtStartUncertainty => PhaseUncertainty(-Centre / Half);

    private double V(int row, int column) => _inverse[row * Parameters + column];

    /// <param name="time">In scaled, centred time.</param>
    private double PhaseUncertainty(double time)
    {
        double power = Model.Amplitude * Model.Amplitude;
        // theta = atan2(-B, A) + w t: its derivatives by A, B and (w half).
        double a = Model.Sine / power, b = -Model.Cosine / power, w = Parameters < 4 ? 0 : time;
        double variance = a * a * V(0, 0) + 2 * a * b * V(0, 1) + b * b * V(1, 1);
        if (w != 0)
            variance += w * w * V(3, 3) + 2 * w * (a * V(0, 3) + b * V(1, 3));
        return ResidualDeviation * Math.Sqrt(Math.Max(0, variance));
    }

    /// <summary>The same sine about another centre.</summary>
    internal SineModel ModelAt(double centre)
    {
        double p = 2 * Math.PI * Math.IEEERemainder(Model.Cycles * (centre - Centre), 1), c = Math.Cos(p), s = Math.Sin(p);
        return new SineModel(Model.Cosine * c + Model.Sine * s, Model.Sine * c - Model.Cosine * s, Model.Offset, Model.Cycles);
    }

    /// <summary>The fitted sine at the samples of a block, which begins at a multiple of 512, into an array from its first item on.</summary>
    internal void Values(in SampleBlock block, double[] values)
    {
        const int Restart = 512;
        double w = 2 * Math.PI * Model.Cycles, stepC = Math.Cos(w), stepS = Math.Sin(w), c = 0, s = 0;
        for (int i = block.From; i < block.To; i++)
        {
            if (i % Restart == 0)
            {
                c = Math.Cos(w * (i - Centre));
                s = Math.Sin(w * (i - Centre));
            }
            values[i - block.From] = Model.Offset + Model.Cosine * c + Model.Sine * s;
            double next = c * stepC - s * stepS;
            s = s * stepC + c * stepS;
            c = next;
        }
    }
}
