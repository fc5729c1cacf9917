using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>The step response over time: what an ideal edge would look like, with the 10 % and 90 % levels and the rise time between them.</summary>
public static class StepPlot
{
    private const int Points = 401;

    private static readonly double[] References = { 10, 90 };

    /// <summary>The step of a response, 0 % before and 100 % long after.</summary>
    /// <param name="response">The response, which must pass DC and limit how fast a step rises.</param>
    /// <param name="options">Size, title, times; null for the usual ones.</param>
    /// <exception cref="ArgumentNullException"><paramref name="response"/> is null.</exception>
    /// <exception cref="ArgumentException">The response blocks DC, so that its step returns to nothing; or it passes a step as it is.</exception>
    public static Plot Of(Response response, PlotOptions? options = null)
    {
        if (response is null) throw new ArgumentNullException(nameof(response));
        return Draw(response, "Step response of " + response.Name, options ?? PlotOptions.Default, Array.Empty<KeyValuePair<string, Response>>());
    }

    /// <summary>The step of a measurement chain, with that of the equipment alone: the difference is what the loaded source does.</summary>
    /// <inheritdoc cref="Of(Response, PlotOptions)"/>
    public static Plot Of(MeasurementChain chain, PlotOptions? options = null)
    {
        if (chain is null) throw new ArgumentNullException(nameof(chain));
        return Draw(chain.Response, "Step response of " + chain, options ?? PlotOptions.Default, new[] { new KeyValuePair<string, Response>("from the tip to the display", chain.ResponseFromTip) });
    }

    private static Plot Draw(Response response, string title, PlotOptions options, KeyValuePair<string, Response>[] others)
    {
        if (!response.PassesDc) throw new ArgumentException($"the step of {response.Name} has no final level, since it blocks DC", nameof(response));
        Duration rise = response.RiseTime;
        if (rise <= Duration.FromSeconds(0)) throw new ArgumentException($"{response.Name} passes a step as it is: there is no rise time to draw", nameof(response));
        Duration low = response.StepCrossing(Ratio.FromPercent(10)), high = response.StepCrossing(Ratio.FromPercent(90)), half = response.StepCrossing(Ratio.FromPercent(50));
        Duration from = options.Start ?? half - (rise * 2), to = options.End ?? half + (rise * 5);
        var plot = new Plot(options.Title ?? title, Axis.Linear("time", "s").WithRange(from.Seconds, to.Seconds), Axis.Linear("level", "%"));
        plot = Curve(plot.With(options), others.Length > 0 ? "whole chain" : "", response, from, to, 0);
        for (int i = 0; i < others.Length; i++) plot = Curve(plot, others[i].Key, others[i].Value, from, to, i + 1);
        plot = plot.WithHorizontalLimit("10 %", 10).WithHorizontalLimit("90 %", 90)
            .With("", TraceStyle.Dots, new[] { low.Seconds, high.Seconds }, References, look: 0)
            .WithVerticalStrip("rise time " + Engineering.Words(rise), high.Seconds, low.Seconds, high.Seconds);
        double over = response.Overshoot.Percent;
        if (over >= 0.1) plot = plot.WithHorizontalLimit("overshoot " + Engineering.Text(over, "%", 2), 100 + over);
        return plot.WithDescription(
            $"The step passes 10 % at {Engineering.Words(low)} and 90 % at {Engineering.Words(high)}: a rise time of {Engineering.Words(rise)}, with {(over >= 0.1 ? "an overshoot of " + Engineering.Text(over, "%", 2) : "no overshoot")}.");
    }

    private static Plot Curve(Plot plot, string name, Response response, Duration from, Duration to, int look)
    {
        double final = response.ReferenceGain.ToAmplitudeRatio().Fraction;
        double[] seconds = Enumerable.Range(0, Points).Select(i => from.Seconds + ((to.Seconds - from.Seconds) * i / (Points - 1))).ToArray();
        return plot.With(name, TraceStyle.Line, seconds, seconds.Select(t => 100 * response.StepAt(Duration.FromSeconds(t)).Fraction / final).ToArray(), look: look);
    }
}
