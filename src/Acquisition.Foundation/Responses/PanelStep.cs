using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>
/// The step response of anything that can say its complex gain at each frequency (data, brick walls, lossy lines), by Fourier inversion: a Gaussian step of about
/// the same speed is taken out, the difference is held on panels of frequency that are halved until they fit, and each panel is transformed exactly; all together they become polynomials of time.
/// Good to about 1e-8 of the step where the gain is smooth between its break points.
/// </summary>
internal sealed class PanelStep : StepResponse
{
    private const int MostPanels = 3000;
    private const double Tolerance = 1e-10;

    /// <summary>How far a table of a step may be from it, as a fraction of the step.</summary>
    internal const double TableTolerance = 1e-10;

    private readonly List<LegendrePanel> _panels = new();
    private readonly double[] _bessel = new double[LegendrePanel.Terms];
    private readonly double _sigma, _delay, _edge, _quiet;
    private readonly StepTable _table;

    internal PanelStep(GeneralResponse response)
        : this(response, response.ReferenceMagnitude, EdgeOf(response))
    {
    }

    /// <param name="response">What to invert.</param>
    /// <param name="reference">The gain of which the step is to be a fraction of 1e-8: of one way through among several, the gain of all.</param>
    /// <param name="edge">About how fast the step is, Hz.</param>
    internal PanelStep(GeneralResponse response, double reference, double edge)
    {
        Final = response.ComplexGain(0).Real;
        _edge = edge;
        _delay = response.DelayNear(_edge);
        double top = Top(response, reference, _edge);
        // The Gaussian must be gone where the gain is cut off.
        _sigma = Math.Max(0.13 / _edge, 8.6 / (2 * Math.PI * top));
        // A gain that never falls is let fall far above all that matters: cut off, it would ring there for ever.
        bool falls = top >= response.HighestFrequency || response.Magnitude(top) < 1e-9 * reference;
        double scale = Final, sigma = _sigma, delay = _delay, taper = falls ? 0 : 8.6 / (2 * Math.PI * top);
        Func<double, Complex> difference = omega =>
            response.ComplexGain(omega / (2 * Math.PI)) * Complex.FromPolarCoordinates(Math.Exp(-0.5 * omega * omega * taper * taper), omega * delay) - scale * Math.Exp(-0.5 * omega * omega * sigma * sigma);
        _quiet = Build(difference, response, reference, 2 * Math.PI * top);
        _table = new StepTable((low, high) => new PanelStretch(_panels, GaussianStep, _delay, low, high), _delay, 1 / _edge, LatestEcho(response, _edge) * _edge, TableTolerance * reference);
    }

    /// <summary>How fast the step of a response is, about: its half-power frequency, Hz.</summary>
    internal static double EdgeOf(GeneralResponse response) => response.TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth) ? bandwidth.SiValue : Math.Min(response.HighestFrequency, response.FrequencyScale);

    internal override double Final { get; }

    internal override double Value(double seconds, out double slope) =>
        _table.TryValue(seconds, out double value, out slope) ? value : FromPanels(seconds, out slope);

    internal override double Value(double seconds) => _table.TryValue(seconds, out double value) ? value : FromPanels(seconds, out _);

    private protected override bool TryIntegrate(double low, double high, out double integral) => _table.TryIntegrate(low, high, out integral);

    private double FromPanels(double seconds, out double slope)
    {
        double time = seconds - _delay, value = 0;
        slope = 0;
        // One response may be asked by several threads: the scratch space is taken, not shared.
        var bessel = (double[])_bessel.Clone();
        foreach (LegendrePanel panel in _panels)
            panel.Add(time, bessel, ref value, ref slope);
        double x = time / _sigma;
        slope = slope / Math.PI + Final * Math.Exp(-0.5 * x * x) / (_sigma * Math.Sqrt(2 * Math.PI));
        return value / Math.PI + GaussianStep(time);
    }

    /// <summary>The step that is taken out of the panels.</summary>
    private double GaussianStep(double time) => Final * ErrorFunction.NormalBelow(time / _sigma);

    private protected override StepScan Scan()
    {
        var scan = new StepScan();
        foreach ((double from, double to, PiecewisePolynomial? pieces) in _table.StretchesUntil(_quiet * _edge))
        {
            if (pieces is not null)
            {
                foreach (double time in pieces.Times())
                {
                    if (time > _delay + _quiet || (scan.Count > 0 && time <= scan.Times[scan.Count - 1]))
                        continue;
                    double value = pieces.Value(time, out double slope);
                    scan.Add(time, value, slope);
                }
                continue;
            }
            // Too lively for a table: only the decay of a long tail is of interest.
            for (double units = Math.Max(from, 1); units < Math.Min(to, _quiet * _edge); units *= 1.25)
                scan.AddFar(_delay + units / _edge, FromPanels(_delay + units / _edge, out _));
        }
        return scan;
    }

    /// <summary>The frequency above which nothing is left.</summary>
    private static double Top(GeneralResponse response, double reference, double edge)
    {
        double highest = response.HighestFrequency, top = edge;
        int quiet = 0;
        while (top < highest && top < 1e9 * edge && quiet < 3)
        {
            top *= 2;
            quiet = top < highest && response.Magnitude(top) < 1e-9 * reference ? quiet + 1 : 0;
        }
        return Math.Min(top, highest);
    }

    /// <summary>The latest echo that points of data can tell from an earlier one: after a turn of phase from point to point. Nothing where there are no points.</summary>
    private static double LatestEcho(GeneralResponse response, double edge)
    {
        IReadOnlyList<double> points = response.Breaks;
        for (int i = 1; i < points.Count; i++)
        {
            if (points[i] >= edge || i == points.Count - 1)
                return 1 / (points[i] - points[i - 1]);
        }
        return 0;
    }

    /// <summary>Makes the panels; returns the time after which nothing moves any more.</summary>
    private double Build(Func<double, Complex> difference, GeneralResponse response, double reference, double top)
    {
        double allowed = Tolerance * reference, low = 0, quiet = 0;
        var marks = new List<double>();
        for (double omega = top; omega > 1e-17 * top; omega *= 0.5)
            marks.Add(omega);
        foreach (double hertz in response.Breaks)
        {
            if (2 * Math.PI * hertz < top)
                marks.Add(2 * Math.PI * hertz);
        }
        marks.Sort();
        foreach (double high in marks)
        {
            if (high > low)
            {
                double size = Add(difference, low, high, allowed, 0);
                if (quiet == 0 && size > 1e-7 * reference)
                    quiet = 1 / high;
            }
            low = Math.Max(low, high);
        }
        return Math.Max(20 / _edge, Math.Min(quiet * 4, 1e6 / _edge));
    }

    private double Add(Func<double, Complex> difference, double low, double high, double allowed, int depth)
    {
        var panel = new LegendrePanel(difference, low, high);
        if (panel.Remainder > allowed && depth < 12 && _panels.Count < MostPanels)
        {
            double middle = 0.5 * (low + high);
            return Math.Max(Add(difference, low, middle, allowed, depth + 1), Add(difference, middle, high, allowed, depth + 1));
        }
        // What is far below the tolerance is not worth its transform.
        if (panel.Size > 1e-4 * allowed)
            _panels.Add(panel);
        return panel.Size;
    }
}
