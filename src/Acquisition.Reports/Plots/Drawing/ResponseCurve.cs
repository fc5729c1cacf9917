using System;
using System.Collections.Generic;
using Acquisition.Core;
using Acquisition.Core.Responses;

namespace Acquisition.Reports;

/// <summary>Points of a response over frequency, in decibels re its own reference gain, where it has any.</summary>
internal sealed class ResponseCurve
{
    private const int Points = 401;

    /// <summary>So far below the reference nothing is told apart from zero.</summary>
    private const double Nothing = -300;

    private ResponseCurve(double[] hertz, double[] decibels)
    {
        Hertz = hertz;
        Decibels = decibels;
    }

    internal double[] Hertz { get; }

    internal double[] Decibels { get; }

    internal static ResponseCurve Of(Response response, Axis frequency)
    {
        var hertz = new List<double>();
        var decibels = new List<double>();
        double reference = response.ReferenceGain.Decibels;
        for (int i = 0; i < Points; i++)
        {
            double part = i / (Points - 1.0);
            double f = frequency.IsLogarithmic ? frequency.Lower * Math.Pow(frequency.Upper / frequency.Lower, part) : frequency.Lower + ((frequency.Upper - frequency.Lower) * part);
            if (LevelAt(response, Frequency.FromHertz(f)) is not { } level) continue;
            hertz.Add(f);
            decibels.Add(Math.Max(Nothing, level - reference));
        }
        return new ResponseCurve(hertz.ToArray(), decibels.ToArray());
    }

    /// <summary>The gain in decibels; null where a measured response refuses to say.</summary>
    internal static double? LevelAt(Response response, Frequency frequency)
    {
        try
        {
            double ratio = response.AmplitudeRatio(frequency).Fraction;
            return ratio > 0 ? Math.Max(Nothing, 20 * Math.Log10(ratio)) : Nothing;
        }
        catch (ArgumentOutOfRangeException)
        {
            return null;
        }
    }

    /// <summary>The frequency axis: the range asked for, or from two decades below the band's edge to one above.</summary>
    internal static Axis FrequencyAxis(Response response, PlotOptions options)
    {
        PassBand band = response.PassBand(DecibelRatio.HalfPower);
        double? upper = UpperEdge(response, band)?.Hertz, lower = band.Lower is { Hertz: > 0 } edge ? edge.Hertz : null;
        double from = lower is { } low ? low / 100 : (upper ?? 100e6) / 100, to = upper is { } high ? high * 10 : (lower ?? 1e6) * 100;
        return FrequencyAxis(options, from, to);
    }

    /// <summary>Where the band ends; a brick wall crosses no level but states its edge.</summary>
    internal static Frequency? UpperEdge(Response response, PassBand band)
    {
        if (band.Upper is not null) return band.Upper;
        try
        {
            return response.Bandwidth;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    internal static Axis FrequencyAxis(PlotOptions options, double from, double to)
    {
        if (options.LowestFrequency is { } lowest) (from, to) = (lowest.Hertz, options.HighestFrequency!.Value.Hertz);
        else if (options.HasLinearFrequency) from = 0;
        if (options.HasLinearFrequency) return Axis.Linear("frequency", "Hz").WithRange(from, to);
        if (from <= 0) throw new ArgumentException("a logarithmic frequency axis cannot begin at 0 Hz: choose a higher one, or WithLinearFrequency", nameof(options));
        return Axis.Logarithmic("frequency", "Hz").WithRange(from, to);
    }
}
