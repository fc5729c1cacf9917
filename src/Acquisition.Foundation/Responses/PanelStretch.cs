using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>
/// The Fourier integral over many panels on a stretch of time. What a band of frequencies does, its middle frequency taken out, is a polynomial of time where the stretch is short for
/// the width of the band; half a stretch allows bands twice as wide. So the nearer a time is looked at, the fewer the bands, and all times together cost little more than one
/// (the butterfly algorithm: E. Michielssen and A. Boag, IEEE Trans. Antennas Propagat. 44 (1996) 1086; with Chebyshev nodes E. Candès, L. Demanet and L. Ying, Multiscale Model.
/// Simul. 7 (2009) 1727; both from memory).
/// </summary>
internal sealed class PanelStretch : Stretch
{
    /// <summary>
    /// By how many radians a band may turn from the middle of a stretch to its end, its middle frequency taken out: sixteen Chebyshev nodes leave twice J16 of it, 4e-12, of what the band
    /// contributes.
    /// </summary>
    private const double MostTurn = 2.5;

    private const int Nodes = PiecewisePolynomial.Terms;

    private readonly Func<double, double> _rest;
    private readonly double _origin;

    /// <summary>Panels still too wide to be bands.</summary>
    private readonly List<LegendrePanel> _panels = new();
    private readonly List<Band> _bands = new();

    /// <param name="panels">The panels, frequency rising.</param>
    /// <param name="rest">What is added to what the panels give, over π.</param>
    /// <param name="origin">The time that is 0 to the panels, s.</param>
    /// <param name="low">Where the stretch begins, s.</param>
    /// <param name="high">Where it ends.</param>
    internal PanelStretch(IReadOnlyList<LegendrePanel> panels, Func<double, double> rest, double origin, double low, double high)
        : this(rest, origin, low, high) => Take(panels, Array.Empty<Band>());

    private PanelStretch(Func<double, double> rest, double origin, double low, double high)
        : base(low, high)
    {
        _rest = rest;
        _origin = origin;
    }

    internal override void Fill(double[] values)
    {
        var bessel = new double[LegendrePanel.Terms];
        for (int i = 0; i < Nodes; i++)
        {
            double time = TimeAt(i), value = 0;
            foreach (LegendrePanel panel in _panels)
                value += panel.Value(time, bessel);
            values[i] = value;
        }
        var turned = new Phasors(Middle - _origin, Half);
        foreach (Band band in _bands)
            band.AddTo(values, turned);
        for (int i = 0; i < Nodes; i++)
            values[i] = values[i] / Math.PI + _rest(TimeAt(i));
    }

    internal override (Stretch Early, Stretch Late) Halve()
    {
        PanelStretch early = new(_rest, _origin, Low, Middle), late = new(_rest, _origin, Middle, High);
        var halves = new Band[_bands.Count];
        for (int i = 0; i < halves.Length; i++)
            halves[i] = _bands[i].OnHalf(isLate: false);
        early.Take(_panels, halves);
        for (int i = 0; i < halves.Length; i++)
            halves[i] = _bands[i].OnHalf(isLate: true);
        late.Take(_panels, halves);
        return (early, late);
    }

    /// <summary>The time of a node, as the panels count it.</summary>
    private double TimeAt(int node) => Middle - _origin + Half * PiecewisePolynomial.Nodes[node];

    /// <summary>Makes bands of the panels that are narrow enough here, and one of as many neighbouring bands as may be.</summary>
    private void Take(IReadOnlyList<LegendrePanel> panels, Band[] bands)
    {
        double most = 2 * MostTurn / Half;
        int next = 0;
        var turned = new Phasors(Middle - _origin, Half);
        Band? open = null;
        foreach (LegendrePanel panel in panels)
        {
            if (panel.High - panel.Low > most)
            {
                _panels.Add(panel);
                continue;
            }
            while (next < bands.Length && bands[next].Low < panel.Low)
                Join(bands[next++]);
            Join(BandOf(panel));
        }
        while (next < bands.Length)
            Join(bands[next++]);

        void Join(Band band)
        {
            if (open is null || band.High > open.High)
                _bands.Add(open = new Band(band.Low, band.Low + most));
            open.Add(band, turned);
        }
    }

    private Band BandOf(LegendrePanel panel)
    {
        var band = new Band(panel.Low, panel.High);
        var bessel = new double[LegendrePanel.Terms];
        for (int i = 0; i < Nodes; i++)
            panel.Amplitude(TimeAt(i), bessel, out band.Real[i], out band.Imaginary[i]);
        return band;
    }
}
