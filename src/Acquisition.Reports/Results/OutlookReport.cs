using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Planning;

namespace Acquisition.Reports;

/// <summary>An <see cref="Outlook"/> as a report: what will be seen, why, what it costs, and how the chain behaves.</summary>
public static class OutlookReport
{
    private const int PointsPerCurve = 201;

    private static readonly string[] Pair = { "what", "value" };
    private static readonly string[] HarmonicColumns = { "harmonic", "frequency", "applied", "displayed", "shown at" };
    private static readonly string[] ContributionColumns = { "element", "effect", "share" };

    /// <summary>The report of an outlook.</summary>
    /// <param name="outlook">The outlook.</param>
    /// <param name="title">The title of the report.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Report Of(Outlook outlook, string title)
    {
        if (outlook is null) throw new ArgumentNullException(nameof(outlook));
        Report report = new Report(title)
            .WithParagraph($"{outlook.Signal.Name} through {outlook.Response.Name}, taken by {outlook.Setup.Digitizer}.")
            .WithFindings(outlook.Findings)
            .WithHeading("Chain");
        if (outlook.ChainBandwidth is { } bandwidth) report = report.WithExplained(bandwidth);
        if (outlook.ChainRiseTime is { } rise) report = report.WithExplained(rise);
        report = report.WithHeading("Display").WithExplained(outlook.DisplayedAmplitude);
        if (outlook.DisplayedEdge is { } edge) report = report.WithExplained(edge);
        report = report.WithHeading("Sampling").WithTable(Pair, Sampling(outlook).ToArray());
        if (outlook.Harmonics.Count > 0) report = report.WithHeading("Harmonics").WithTable(HarmonicColumns, outlook.Harmonics.Select(Row).ToArray());
        if (outlook.Contributions.Count > 0)
        {
            report = report.WithHeading("What each element costs")
                .WithTable(ContributionColumns, outlook.Contributions.Select(x => new[] { x.Element, x.Effect, Short(x.Share) }).ToArray());
        }
        return report.WithPlot(Gain(outlook.Response, outlook.NyquistFrequency));
    }

    /// <summary>The gain of a response over frequency, from two decades below its bandwidth to one above, with the Nyquist frequency where it is given.</summary>
    /// <param name="response">The response.</param>
    /// <param name="nyquist">Half the sample rate; null leaves it out.</param>
    /// <exception cref="ArgumentNullException"><paramref name="response"/> is null.</exception>
    public static Plot Gain(Response response, Frequency? nyquist = null)
    {
        if (response is null) throw new ArgumentNullException(nameof(response));
        double center = response.TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth) ? bandwidth.Hertz : nyquist?.Hertz ?? 1e6;
        var hertz = new List<double>();
        var decibels = new List<double>();
        for (int i = 0; i < PointsPerCurve; i++)
        {
            double f = center * Math.Pow(10, -2 + (3.0 * i / (PointsPerCurve - 1)));
            double ratio = response.AmplitudeRatio(Frequency.FromHertz(f)).Fraction;
            if (ratio < 1e-4) continue;
            hertz.Add(f);
            decibels.Add(20 * Math.Log10(ratio));
        }
        double reference = response.ReferenceGain.Decibels;
        Plot plot = new Plot("Gain of " + response.Name, Axis.Logarithmic("frequency", "Hz"), Axis.Linear("gain", "dB").WithRange(Math.Floor(reference - 45), Math.Ceiling(reference + 5)))
            .WithLine(response.Name, hertz, decibels)
            .WithHorizontalLimit("half power", reference + DecibelRatio.HalfPower.Decibels);
        return nyquist is { } limit && limit.Hertz > 0 ? plot.WithVerticalLimit("Nyquist frequency", limit.Hertz) : plot;
    }

    /// <summary>The step response over time: what an ideal edge would look like.</summary>
    /// <param name="response">The response, which must pass DC.</param>
    /// <exception cref="ArgumentNullException"><paramref name="response"/> is null.</exception>
    /// <exception cref="ArgumentException">The response blocks DC, so that its step returns to nothing.</exception>
    public static Plot Step(Response response)
    {
        if (response is null) throw new ArgumentNullException(nameof(response));
        if (!response.PassesDc) throw new ArgumentException($"the step of {response.Name} has no final level, since it blocks DC", nameof(response));
        Duration rise = response.RiseTime, half = response.StepCrossing(Ratio.FromPercent(50));
        var seconds = new List<double>();
        var levels = new List<double>();
        for (int i = 0; i < 2 * PointsPerCurve; i++)
        {
            Duration t = half + (rise * (-2 + (7.0 * i / ((2 * PointsPerCurve) - 1))));
            seconds.Add(t.Seconds);
            levels.Add(100 * response.StepAt(t).Fraction / response.ReferenceGain.ToAmplitudeRatio().Fraction);
        }
        return new Plot("Step response of " + response.Name, Axis.Linear("time", "s"), Axis.Linear("level", "%"))
            .WithLine(response.Name, seconds, levels)
            .WithHorizontalLimit("10 %", 10)
            .WithHorizontalLimit("90 %", 90);
    }

    private static IEnumerable<string[]> Sampling(Outlook outlook)
    {
        yield return new[] { "sample rate", Short(outlook.SampleRate.Value) };
        yield return new[] { "record length", outlook.RecordLength.ToString() };
        yield return new[] { "window", Short(outlook.Window) };
        yield return new[] { "Nyquist frequency", Short(outlook.NyquistFrequency) };
        if (outlook.PointsPerPeriod is { } points) yield return new[] { "points per period", points.ToString("G4", CultureInfo.InvariantCulture) };
        if (outlook.IntervalsPerEdge is { } intervals) yield return new[] { "intervals per edge", intervals.ToString("G4", CultureInfo.InvariantCulture) };
        if (outlook.EffectiveBits is { } bits) yield return new[] { "effective bits", Short(bits.Value) };
        if (outlook.SmallestDetail is { } detail) yield return new[] { "smallest detail", Short(detail) };
    }

    private static string[] Row(HarmonicOutlook line) => new[]
    {
        line.Number.ToString(CultureInfo.InvariantCulture), Short(line.Frequency), Short(line.Applied), Short(line.Displayed), line.IsAliased ? Short(line.ShownAt) + " (folded)" : Short(line.ShownAt),
    };

    private static string Short<T>(T value)
        where T : struct, IQuantity => value.ToQuantity().ToString("G4", CultureInfo.InvariantCulture);
}
