using System;
using System.Collections.Generic;
using System.Numerics;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>Many panels looked at together, against each panel's own exact transform added up; and what data with echoes do.</summary>
public sealed class PanelStretchTests
{
    /// <summary>Narrow panels as of data, and octaves above them that stay too wide for most stretches.</summary>
    private static List<LegendrePanel> Panels()
    {
        var panels = new List<LegendrePanel>();
        Func<double, Complex> gain = omega => Complex.FromPolarCoordinates(omega / (1 + omega * omega), -0.3 * omega + Math.Sin(7 * omega));
        for (int i = 0; i < 300; i++)
            panels.Add(new LegendrePanel(gain, i == 0 ? 1e-6 : 0.1 * i, 0.1 * (i + 1)));
        for (double low = 30; low < 2000; low *= 2)
            panels.Add(new LegendrePanel(gain, low, 2 * low));
        return panels;
    }

    [Theory]
    [InlineData(0.0, 64.0)]
    [InlineData(-40.0, -8.0)]
    [InlineData(500.0, 900.0)]
    public void PanelsTogether_GiveWhatEachGivesAlone(double low, double high)
    {
        List<LegendrePanel> panels = Panels();
        double[] bessel = new double[LegendrePanel.Terms], values = new double[PiecewisePolynomial.Terms];
        Stretch stretch = new PanelStretch(panels, time => 0.25 * time, 1.5, low, high);
        // Down to one time in 4096, first this half, then that.
        for (int level = 0; level <= 12; level++)
        {
            stretch.Fill(values);
            for (int i = 0; i < values.Length; i++)
            {
                double time = stretch.Middle + stretch.Half * PiecewisePolynomial.Nodes[i] - 1.5, sum = 0;
                foreach (LegendrePanel panel in panels)
                    sum += panel.Value(time, bessel);
                Assert.Equal(sum / Math.PI + 0.25 * time, values[i], 1e-10);
            }
            (Stretch early, Stretch late) = stretch.Halve();
            stretch = level % 2 == 0 ? late : early;
        }
    }

    /// <summary>A Gaussian and its echo of a tenth, 100 ns later, as a table in even steps: by closed form the step is the sum of two, one late, but for what is lost between the points.</summary>
    private static Response Echoed(double ofStep)
    {
        Response direct = Response.Gaussian(300.MHz());
        var points = new List<FrequencyPoint>();
        for (double hertz = 0; hertz < 1.5e9; hertz += ofStep)
        {
            Complex gain = direct.ComplexGain(hertz.Hz()) * (1 + 0.1 * Complex.FromPolarCoordinates(1, -2 * Math.PI * hertz * 100e-9));
            points.Add(new FrequencyPoint(hertz.Hz(), DecibelRatio.FromAmplitudeRatio(Ratio.FromFraction(gain.Magnitude)), gain.Phase.rad()));
        }
        return Response.Measured("with an echo", points, OutsideBand.Hold, OutsideBand.Zero);
    }

    [Fact]
    public void ALateEchoInData_IsSeen()
    {
        Response echoed = Echoed(0.5e6), direct = Response.Gaussian(300.MHz());

        for (double t = -2; t < 130; t += 1.13)
            Assert.Equal((direct.StepAt(t.ns()).Fraction + 0.1 * direct.StepAt((t - 100).ns()).Fraction) / 1.1, echoed.StepAt(t.ns()).Fraction / 1.1, 1e-3);
        // The last 5 % of the whole are passed on the flank of the echo, within a rise time of its arrival.
        Assert.Equal(100, echoed.SettlingTime(Ratio.FromPercent(5)).Nanoseconds, 1.2);
    }

    [Theory]
    [InlineData(1e6)]
    [InlineData(1e3)]
    public void ASlowSquareThroughData_ShowsTheirStepAtEachEdge(double hertz)
    {
        Response echoed = Echoed(0.6e6);
        Signal shown = echoed.Apply(Signal.Square(hertz.Hz(), 2.Vpp(), 1.ns()));
        var edge = new Edge(1.ns(), EdgeShape.Linear);
        Func<double, double> step = echoed.EdgeOutput(edge);

        foreach (double t in new[] { -1.0, 0, 0.5, 3, 50, 99.5, 100, 100.7, 140 })
            Assert.Equal(-echoed.DcGain + 2 * step(t * 1e-9), shown.ValueAt(t.ns()).Volts, 2e-3);
    }
}
