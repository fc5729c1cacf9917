using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Responses;

namespace Acquisition.Reports;

/// <summary>The gain of a response over frequency, with its stages and the half-power point.</summary>
public static class ResponsePlot
{
    private const int MostStages = 6;

    /// <summary>A response with the stages that it was built of. Each curve counts from its own gain at DC (or its largest gain, where DC is blocked).</summary>
    /// <param name="response">The response; where a measured one ends, its curve ends.</param>
    /// <param name="options">Size, title, frequencies; null for the usual ones.</param>
    /// <exception cref="ArgumentNullException"><paramref name="response"/> is null.</exception>
    public static Plot Of(Response response, PlotOptions? options = null)
    {
        if (response is null) throw new ArgumentNullException(nameof(response));
        return Draw(response, Stages(response), "Gain of " + response.Name, options ?? PlotOptions.Default, null);
    }

    /// <summary>A measurement chain with what it is made of: the loading of the node, the equipment from the tip on, the front end alone.</summary>
    /// <inheritdoc cref="Of(Response, PlotOptions)"/>
    public static Plot Of(MeasurementChain chain, PlotOptions? options = null)
    {
        if (chain is null) throw new ArgumentNullException(nameof(chain));
        var parts = new List<KeyValuePair<string, Response>>
        {
            new("loading of the node", chain.Loading),
            new("from the tip to the display", chain.ResponseFromTip),
            new("front end alone", chain.FrontEnd.Response),
        };
        return Draw(chain.Response, parts, "Gain of " + chain, options ?? PlotOptions.Default, null, "whole chain");
    }

    /// <summary>The chain of an outlook with half its sample rate.</summary>
    /// <inheritdoc cref="Of(Response, PlotOptions)"/>
    public static Plot Of(Outlook outlook, PlotOptions? options = null)
    {
        if (outlook is null) throw new ArgumentNullException(nameof(outlook));
        return Draw(outlook.Response, Stages(outlook.Response), "Gain of " + outlook.Response.Name, options ?? PlotOptions.Default, outlook.NyquistFrequency);
    }

    private static Plot Draw(Response response, IReadOnlyList<KeyValuePair<string, Response>> stages, string title, PlotOptions options, Frequency? nyquist, string whole = "all stages")
    {
        PassBand band = response.PassBand(DecibelRatio.HalfPower);
        Frequency? upper = ResponseCurve.UpperEdge(response, band);
        Axis x = ResponseCurve.FrequencyAxis(response, options);
        ResponseCurve curve = ResponseCurve.Of(response, x);
        string reference = band.IsRelativeToDc ? "gain re DC" : "gain re largest";
        var plot = new Plot(options.Title ?? title, x, Axis.Linear(reference, "dB").WithRange(Floor(curve), Ceiling(curve, stages, x)));
        plot = plot.With(options).With(stages.Count > 0 ? whole : "", TraceStyle.Line, curve.Hertz, curve.Decibels);
        var left = new List<string>();
        int shown = 0;
        foreach (KeyValuePair<string, Response> stage in stages)
        {
            ResponseCurve own = ResponseCurve.Of(stage.Value, x);
            bool isFlat = own.Decibels.All(decibels => Math.Abs(decibels) < 0.01);
            if (isFlat || shown == MostStages) left.Add(stage.Key + (isFlat ? " (flat)" : ""));
            else plot = plot.With(stage.Key, TraceStyle.Line, own.Hertz, own.Decibels, look: ++shown);
        }
        plot = plot.WithHorizontalLimit("half power " + Engineering.Words(DecibelRatio.HalfPower, 3), DecibelRatio.HalfPower.Decibels);
        foreach (Frequency edge in new[] { band.Lower, upper }.OfType<Frequency>().Where(edge => Inside(x, edge.Hertz)))
        {
            string name = (band.Lower is null ? "bandwidth " : edge == band.Lower ? "lower edge " : "upper edge ") + Engineering.Words(edge);
            plot = plot.WithVerticalLimit(name, edge.Hertz).With("", TraceStyle.Dots, new[] { edge.Hertz }, new[] { DecibelRatio.HalfPower.Decibels }, look: 0);
        }
        if (nyquist is { Hertz: > 0 } limit && Inside(x, limit.Hertz)) plot = plot.WithVerticalLimit("Nyquist frequency " + Engineering.Words(limit), limit.Hertz);
        return plot.WithDescription(Lead(response, band, upper, nyquist, left));
    }

    private static string Lead(Response response, PassBand band, Frequency? edge, Frequency? nyquist, List<string> left)
    {
        string words = response.Name + (edge is { } upper ? " falls to half power at " + Engineering.Words(upper) : " never falls to half power") +
            (band.Lower is { } lower ? " and passes nothing far below " + Engineering.Words(lower) : "") + "; 0 dB stands for a gain of " + Engineering.Words(response.ReferenceGain) + ".";
        if (nyquist is { } limit && LevelAt(response, limit) is { } level) words += " At half the sample rate, " + Engineering.Words(limit) + ", the gain is " + Engineering.Text(level, "dB", 3) + ".";
        if (left.Count > 0) words += " Not drawn: " + string.Join(", ", left) + ".";
        return words;
    }

    private static double? LevelAt(Response response, Frequency frequency) => ResponseCurve.LevelAt(response, frequency) - response.ReferenceGain.Decibels;

    internal static IReadOnlyList<KeyValuePair<string, Response>> Stages(Response response)
    {
        IReadOnlyList<Response> stages = response.Stages;
        if (stages.Count < 2) return Array.Empty<KeyValuePair<string, Response>>();
        return stages.Select((stage, i) => new KeyValuePair<string, Response>(FormattableString.Invariant($"{i + 1}: {stage.Name}"), stage)).ToArray();
    }

    /// <summary>Down to where the curve goes, in steps of 10 dB from -20 dB to -60 dB.</summary>
    private static double Floor(ResponseCurve curve) => Math.Max(-60, Math.Min(-20, Math.Floor(curve.Decibels.DefaultIfEmpty(0).Min() / 10) * 10));

    /// <summary>Up to the highest peak of all curves, at most 20 dB more than that of the whole.</summary>
    private static double Ceiling(ResponseCurve curve, IReadOnlyList<KeyValuePair<string, Response>> stages, Axis x)
    {
        double own = curve.Decibels.DefaultIfEmpty(0).Max(), highest = Math.Max(own, stages.SelectMany(stage => ResponseCurve.Of(stage.Value, x).Decibels).DefaultIfEmpty(0).Max());
        return Math.Max(5, Math.Ceiling((Math.Min(highest, own + 20) + 1) / 5) * 5);
    }

    private static bool Inside(Axis axis, double value) => value >= axis.Lower && value <= axis.Upper;
}
