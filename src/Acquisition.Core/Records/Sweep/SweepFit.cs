using System;
using System.Collections.Generic;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>A response model fitted to a sweep, in decibels: its bandwidth and its gain, weighted by the uncertainties of the levels where they are known.</summary>
/// <remarks>Where the levels carry no uncertainty, their scatter about the model stands for it, and whether the model is right cannot be tested. Immutable.</remarks>
public sealed class SweepFit
{
    private SweepFit(Response? response, double bandwidth, double bandwidthDeviation, double gain, double gainDeviation, double residual, double? chiSquared, int freedom, IReadOnlyList<Finding> findings)
    {
        Response = response;
        Bandwidth = response is null ? null : Frequency.FromSi(bandwidth, nameof(bandwidth));
        BandwidthUncertainty = response is null ? null : Frequency.FromSi(bandwidthDeviation, "uncertainty");
        Gain = response is null ? null : DecibelRatio.FromDecibels(gain);
        GainUncertainty = response is null ? null : DecibelRatio.FromDecibels(gainDeviation);
        ResidualDeviation = DecibelRatio.FromDecibels(residual);
        ChiSquared = chiSquared;
        DegreesOfFreedom = freedom;
        Findings = findings.Frozen();
    }

    /// <summary>The fitted model, gain 1 at its reference; null where the sweep does not determine it.</summary>
    public Response? Response { get; }

    /// <summary>The fitted half-power bandwidth; null where the sweep does not determine it.</summary>
    public Frequency? Bandwidth { get; }

    /// <summary>Its standard uncertainty.</summary>
    public Frequency? BandwidthUncertainty { get; }

    /// <summary>The fitted level of the flat part, on the scale of the sweep's levels.</summary>
    public DecibelRatio? Gain { get; }

    /// <summary>Its standard uncertainty; 0 dB where the gain was given.</summary>
    public DecibelRatio? GainUncertainty { get; }

    /// <summary>Scatter of the levels about the model, divisor <see cref="DegreesOfFreedom"/>.</summary>
    public DecibelRatio ResidualDeviation { get; }

    /// <summary>Sum of squares of residuals over uncertainties; null where the levels carry none.</summary>
    public double? ChiSquared { get; }

    /// <summary>Points less the fitted parameters: two, or one where the gain was given.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>What to know about the fit, or why there is none (that comes first); then what the sweep says of its levels.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    internal static SweepFit To(Sweep sweep, Func<Frequency, Response> model, double? knownGain)
    {
        double[] hertz = sweep.HertzValues;
        if (hertz.Length < 3)
            return Refused(sweep, 0, new Finding("sweep-fit-too-few-points", Severity.Failure, $"the sweep has {hertz.Length} points; gain and bandwidth need at least 3", "measure more points"));
        var levels = new double[hertz.Length];
        var weights = new double[hertz.Length];
        bool weighted = sweep.HasUncertainties;
        for (int i = 0; i < hertz.Length; i++)
        {
            levels[i] = sweep.Level(hertz[i], "sweep", out double? u);
            weighted &= u > 0;
            weights[i] = u is { } deviation ? 1 / (deviation * deviation) : 1;
        }
        if (!weighted)
        {
            for (int i = 0; i < weights.Length; i++)
                weights[i] = 1;
        }
        var profile = new Profile(hertz, levels, weights, model, knownGain);

        // The sum of squares over the logarithm of bandwidth: a scan, then a section of the best interval.
        double first = Math.Log(hertz[0] / 30), last = Math.Log(hertz[hertz.Length - 1] * 30), step = (last - first) / 240, best = first, least = double.MaxValue;
        for (int i = 0; i <= 240; i++)
        {
            double squares = profile.Squares(first + i * step);
            if (squares < least)
            {
                least = squares;
                best = first + i * step;
            }
        }
        if (best - first < 1.5 * step || last - best < 1.5 * step)
            return NotDetermined(sweep, profile, best, hertz);
        double low = best - step, high = best + step;
        for (int i = 0; i < 80; i++)
        {
            double third = (high - low) / 3;
            if (profile.Squares(low + third) < profile.Squares(high - third))
                high -= third;
            else
                low += third;
        }
        double p = (low + high) / 2, squaresAtBest = profile.Squares(p);
        profile.Covariance(p, out double varianceOfLog, out double varianceOfGain);
        int freedom = hertz.Length - (knownGain is null ? 2 : 1);
        double scale = weighted ? 1 : squaresAtBest / freedom;
        double logDeviation = Math.Sqrt(varianceOfLog * scale);
        if (!(logDeviation < 0.5))
            return NotDetermined(sweep, profile, p, hertz);
        var findings = new List<Finding>();
        if (weighted && ChiSquaredTest.UpperTail(squaresAtBest, freedom) < 0.01)
        {
            findings.Add(new Finding("model-does-not-fit", Severity.Warning,
                $"chi-squared is {FewDigits.Number(squaresAtBest)} for {freedom} degrees of freedom: levels scatter about the model by more than their uncertainties", "try another model, or read the bandwidth from the crossings"));
        }
        double bandwidth = Math.Exp(p);
        if (bandwidth > hertz[hertz.Length - 1])
        {
            findings.Add(new Finding("bandwidth-extrapolated", Severity.Warning,
                $"the fitted bandwidth {FewDigits.Hertz(bandwidth, 4)} lies beyond the sweep's end at {FewDigits.Hertz(hertz[hertz.Length - 1])}: it rests on the model", "sweep to a higher frequency"));
        }
        findings.AddRange(sweep.Findings);
        return new SweepFit(
            model(Frequency.FromSi(bandwidth, "bandwidth")), bandwidth, bandwidth * logDeviation, profile.Gain(p), Math.Sqrt(varianceOfGain * scale),
            profile.Scatter(p, freedom), weighted ? squaresAtBest : null, freedom, findings);
    }

    private static SweepFit NotDetermined(Sweep sweep, Profile profile, double p, double[] hertz) => Refused(sweep, profile.Scatter(p, hertz.Length - 2), new Finding(
        "bandwidth-not-determined", Severity.Failure, $"the levels from {FewDigits.Hertz(hertz[0])} to {FewDigits.Hertz(hertz[hertz.Length - 1])} do not bend enough to tell a bandwidth", "sweep across the roll-off"), hertz.Length - 2);

    private static SweepFit Refused(Sweep sweep, double residual, Finding reason, int freedom = 0) => new(null, 0, 0, 0, 0, residual, null, freedom, [reason, .. sweep.Findings]);

    /// <summary>Bandwidth, gain and scatter in one line.</summary>
    public override string ToString() => Bandwidth is { } f ? $"{f.InWords(5)}{(BandwidthUncertainty is { } u ? $" (u = {u.InWords(2)})" : "")}, gain {Gain?.InWords()}, residual {ResidualDeviation.InWords()}" : Findings[0].ToString();

    /// <summary>The sum of squares as a function of the logarithm of bandwidth, the gain always the best one.</summary>
    private sealed class Profile
    {
        private readonly double[] _hertz;
        private readonly double[] _levels;
        private readonly double[] _weights;
        private readonly Func<Frequency, Response> _model;
        private readonly double? _knownGain;

        internal Profile(double[] hertz, double[] levels, double[] weights, Func<Frequency, Response> model, double? knownGain)
        {
            _hertz = hertz;
            _levels = levels;
            _weights = weights;
            _model = model;
            _knownGain = knownGain;
        }

        internal double Gain(double p) => GainOf(Shape(p));

        internal double Squares(double p)
        {
            double[] shape = Shape(p);
            double gain = GainOf(shape), sum = 0;
            for (int i = 0; i < shape.Length; i++)
            {
                double r = _levels[i] - gain - shape[i];
                sum += _weights[i] * r * r;
            }
            return sum;
        }

        internal double Scatter(double p, int freedom)
        {
            double[] shape = Shape(p);
            double gain = GainOf(shape), sum = 0;
            for (int i = 0; i < shape.Length; i++)
                sum += (_levels[i] - gain - shape[i]) * (_levels[i] - gain - shape[i]);
            return Math.Sqrt(sum / freedom);
        }

        internal void Covariance(double p, out double varianceOfLog, out double varianceOfGain)
        {
            const double H = 1e-4;
            double[] above = Shape(p + H), below = Shape(p - H);
            double w = 0, wd = 0, wdd = 0;
            for (int i = 0; i < above.Length; i++)
            {
                double d = (above[i] - below[i]) / (2 * H);
                w += _weights[i];
                wd += _weights[i] * d;
                wdd += _weights[i] * d * d;
            }
            if (_knownGain is not null)
            {
                varianceOfLog = 1 / wdd;
                varianceOfGain = 0;
                return;
            }
            double determinant = w * wdd - wd * wd;
            varianceOfLog = w / determinant;
            varianceOfGain = wdd / determinant;
        }

        private double[] Shape(double p)
        {
            Response response = _model(Frequency.FromSi(Math.Exp(p), "bandwidth")) ?? throw new InvalidOperationException("the model returned no response");
            double reference = response.ReferenceMagnitude;
            var shape = new double[_hertz.Length];
            for (int i = 0; i < shape.Length; i++)
                shape[i] = Math.Max(-1000, 20 * Math.Log10(response.Magnitude(_hertz[i]) / reference));
            return shape;
        }

        private double GainOf(double[] shape)
        {
            if (_knownGain is { } known)
                return known;
            double sum = 0, weight = 0;
            for (int i = 0; i < shape.Length; i++)
            {
                sum += _weights[i] * (_levels[i] - shape[i]);
                weight += _weights[i];
            }
            return sum / weight;
        }
    }
}
