using System;

namespace Acquisition.Core.Records;

/// <summary>
/// What a state does between two transitions: the means of eight equal parts of it and a straight line through the last six, so that ringing and settling after the edge are left out. Of long parts some hundred
/// samples are read.
/// </summary>
internal readonly struct Plateau
{
    private const int Parts = 8, Skipped = 2, MostPerPart = 512;

    /// <summary>Parts must hold this many samples.</summary>
    private const int LeastPerPart = 2;

    /// <summary>Of the places of six parts, in parts of the whole, about their mean: (2.5^2 + 1.5^2 + 0.5^2) 2 / 64.</summary>
    private const double SquaresOfPlaces = 17.5 / 64;

    private Plateau(int length, double mean, double change, double scatter, int samples)
    {
        Length = length;
        Mean = mean;
        Change = change;
        Scatter = scatter;
        Samples = samples;
    }

    /// <summary>In samples.</summary>
    internal int Length { get; }

    internal double Mean { get; }

    /// <summary>How far the line goes from the beginning to the end.</summary>
    internal double Change { get; }

    /// <summary>The standard deviation of the means of the parts about the line.</summary>
    internal double Scatter { get; }

    /// <summary>Samples that were read of each part.</summary>
    internal int Samples { get; }

    /// <summary>The standard uncertainty of the change where the means of the parts are uncertain by this.</summary>
    internal static double OfChange(double ofParts) => ofParts / Math.Sqrt(SquaresOfPlaces);

    /// <summary>The standard uncertainty of the mean where the means of the parts are uncertain by this.</summary>
    internal static double OfMean(double ofParts) => ofParts / Math.Sqrt(Parts - Skipped);

    /// <summary>A plateau from one to before another sample; null where it is too short.</summary>
    internal static Plateau? Of(SampleStore samples, int from, int to, double[] buffer)
    {
        int part = (to - from) / Parts, read = Math.Min(part, MostPerPart);
        if (part < LeastPerPart)
            return null;
        double mean = 0, moment = 0, squares = 0, first = samples[from];
        for (int k = Skipped; k < Parts; k++)
        {
            samples.Copy(from + k * part + (part - read) / 2, buffer, 0, read);
            double sum = 0;
            for (int i = 0; i < read; i++)
                sum += buffer[i] - first;
            double value = sum / read, place = (k + 0.5 - 0.5 * (Parts + Skipped)) / Parts;
            mean += value / (Parts - Skipped);
            moment += value * place;
            squares += value * value;
        }
        double residual = squares - (Parts - Skipped) * mean * mean - moment * moment / SquaresOfPlaces;
        return new Plateau(to - from, first + mean, moment / SquaresOfPlaces, Math.Sqrt(Math.Max(0, residual) / (Parts - Skipped - 2)), read);
    }

    internal static double[] Buffer() => new double[MostPerPart];
}
