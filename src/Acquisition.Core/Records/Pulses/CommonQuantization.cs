using System;

namespace Acquisition.Core.Records;

/// <summary>
/// What quantisation does to repetitions of one edge alike. Sampled at the same phases each time, and without noise that carries it over the steps, an edge is rounded in the same way
/// each time: such errors neither show in the spread nor average out.
/// </summary>
internal static class CommonQuantization
{
    /// <summary>Where phases meet this many different roundings, and half of all, they sweep through them: the errors average out.</summary>
    private const int FewestSwept = 4;

    /// <summary>
    /// The part of the variance of a sample's error that the mean over Gaussian noise leaves: step^2 / (2 pi^2) times the sum over k of exp(-(2 pi k noise / step)^2) / k^2, which is
    /// step^2 / 12 without noise (the characteristic function of the noise at multiples of one over the step; Widrow and Kollár, Quantization Noise, 2008, from memory).
    /// </summary>
    /// <param name="states">The states: their noise holds the rounding of the samples too.</param>
    /// <param name="step">The step of the converter; 0 where it is not known.</param>
    internal static double Part(StateLevels states, double step)
    {
        if (!(step > 0))
            return 0;
        double noise = states.IsQuiet ? 0 : Math.Max(0, states.NoiseSi * states.NoiseSi / (step * step) - 1.0 / 12), sum = 0;
        for (int k = 1; k <= 100; k++)
            sum += Math.Exp(-4 * Math.PI * Math.PI * k * k * noise) / (k * (double)k);
        return step * step * sum / (2 * Math.PI * Math.PI) / (states.SampleUncertaintySi * states.SampleUncertaintySi);
    }

    /// <summary>In how many ways edges are rounded; infinitely many where their phases sweep through all of them.</summary>
    /// <param name="instants">The instants of the edges, in sample intervals.</param>
    /// <param name="stepsPerSample">By how many steps the signal changes from a sample to the next on its edge: as many phases are rounded in different ways.</param>
    internal static double Ways(double[] instants, double stepsPerSample)
    {
        int cells = Math.Max(1, (int)Math.Min(stepsPerSample, 4096));
        // Phases that scatter around the limit of two cells are one: the division that meets fewer of them counts.
        int fewest = Math.Max(1, Math.Min(Occupied(instants, cells, 0), Occupied(instants, cells, 0.5)));
        return fewest >= FewestSwept && 2 * fewest >= cells ? double.PositiveInfinity : fewest;
    }

    private static int Occupied(double[] instants, int cells, double shift)
    {
        var met = new bool[cells];
        int occupied = 0;
        foreach (double instant in instants)
        {
            double phase = instant - Math.Floor(instant);
            int cell = (int)(phase * cells + shift) % cells;
            if (!met[cell])
                occupied++;
            met[cell] = true;
        }
        return occupied;
    }
}
