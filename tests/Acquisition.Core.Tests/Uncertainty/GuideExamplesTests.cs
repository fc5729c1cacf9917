using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Tests.Handbook;
using Acquisition.Core.Uncertainty;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

/// <summary>The worked examples of JCGM 100 annex H. Inputs and computed values are those of check-values.json; figures printed by the standard are named beside each check.</summary>
public sealed class GuideExamplesTests
{
    private const double Nm = 1e-9;

    /// <summary>H.1: d = 215 nm from the readings, the comparator's scatter and its systematic effects.</summary>
    private static Uncertain<Length> EndGaugeDifference()
    {
        Uncertain<Length> readings = Uncertain.Of(Nanometres(215), Spread.Standard(Nanometres(13 / Math.Sqrt(5)), 24), "readings");
        Uncertain<Length> random = Uncertain.Of(Nanometres(0), Spread.Expanded(Nanometres(10), 2.57, 5), "comparator, random");
        Uncertain<Length> systematic = Uncertain.Of(Nanometres(0), Spread.Expanded(Nanometres(20), 3, 8), "comparator, systematic");
        return readings + random + systematic;
    }

    private static Uncertain<Ratio> Number(double value, Spread spread, string name) => Uncertain.Of(Ratio.FromFraction(value), spread, name);

    private static Spread Bound(double halfWidth) => Spread.Bound(Ratio.FromFraction(halfWidth));

    private static Uncertain<Ratio> Temperature() =>
        Number(-0.1, Spread.Standard(Ratio.FromFraction(0.2)), "mean temperature") + Number(0, Spread.Arcsine(Ratio.FromFraction(0.5)), "cycling");

    /// <summary>l = l_s + d - l_s (δα θ + α_s δθ); temperatures in kelvins and coefficients per kelvin stand as plain numbers.</summary>
    private static Uncertain<Length> EndGauge()
    {
        Uncertain<Length> standard = Uncertain.Of(Length.FromMeters(50.000623e-3), Spread.Standard(Nanometres(25), 18), "standard");
        Uncertain<Ratio> alpha = Number(11.5e-6, Bound(2e-6), "expansion of the standard");
        Uncertain<Ratio> dAlpha = Number(0, Spread.BoundInDoubt(Ratio.FromFraction(1e-6), Ratio.FromPercent(10)), "difference of expansion");
        Uncertain<Ratio> dTheta = Number(0, Spread.BoundInDoubt(Ratio.FromFraction(0.05), Ratio.FromPercent(50)), "difference of temperature");
        return standard + EndGaugeDifference() - standard * (dAlpha * Temperature() + alpha * dTheta);
    }

    [Theory]
    [HandbookData("H1-")]
    public void EndGauge_H1(string id)
    {
        CheckValue value = CheckValue.All[id];
        UncertaintyBudget budget = EndGauge().Budget(Coverage.WithProbability(Ratio.FromPercent(99)));
        double Line(string name) => budget.Lines.Single(line => line.Name == name).Contribution.SiValue;
        switch (id)
        {
            case "H1-01": value.Confirm(EndGaugeDifference().StandardUncertainty.SiValue / Nm); break;
            case "H1-02": value.Confirm(EndGaugeDifference().Budget().EffectiveDegreesOfFreedom); break;
            case "H1-03": value.Confirm(Temperature().StandardUncertainty.SiValue); break;
            case "H1-04": value.Confirm(Math.Abs(Line("difference of expansion")) / Nm); break;
            case "H1-05": value.Confirm(Math.Abs(Line("difference of temperature")) / Nm); break;
            case "H1-06": value.Confirm(budget.StandardUncertainty.SiValue / Nm); break;
            case "H1-08": value.Confirm(Coverage.WithProbability(Ratio.FromPercent(99)).CoverageFactorFor(value.Number("dof"))); break;
            case "H1-10": value.Confirm(budget.Value.SiValue * 1e3); break;
            case "H1-11": value.Confirm(SecondOrderPart(dAlpha: true) / Nm); break;
            case "H1-12": value.Confirm(SecondOrderPart(dAlpha: false) / Nm); break;
            case "H1-13": value.Confirm(Math.Sqrt(Math.Pow(budget.StandardUncertainty.SiValue, 2) + Math.Pow(SecondOrderPart(true), 2) + Math.Pow(SecondOrderPart(false), 2)) / Nm); break;
            case "H1-07":
                // The standard rounds ν(d) to 25.6 before it combines; unrounded inputs agree with it to the digits printed (16.7).
                Assert.Equal(value.Expected, budget.EffectiveDegreesOfFreedom, 0.005);
                break;
            case "H1-09": value.Confirm(budget.ExpandedUncertainty.SiValue / Nm); break;
            default: throw new InvalidOperationException(id + " is new");
        }
    }

    /// <summary>H.1.7: the two products of small quantities whose first-order contribution is zero.</summary>
    private static double SecondOrderPart(bool dAlpha)
    {
        double theta = Temperature().StandardUncertainty.SiValue, alpha = 2e-6 / Math.Sqrt(3), length = 50.000623e-3;
        double[] u = dAlpha ? [1e-6 / Math.Sqrt(3), theta] : [alpha, 0.05 / Math.Sqrt(3)];
        return Math.Sqrt(SecondOrder.Variance((x, g) => (g[0], g[1]) = (length * x[1], length * x[0]), [0, 0], u));
    }

    [Fact]
    public void EndGauge_H1_PrintsAsTheStandardDoes()
    {
        UncertaintyBudget budget = EndGauge().Budget(Coverage.WithProbability(Ratio.FromPercent(99)));

        // JCGM 100 H.1.6 prints l = (50.000 838 ± 0.000 093) mm with U = 2.92 x 32 nm; unrounded, U is 92.47 nm.
        Assert.Equal("(50.000838 ± 0.000092) mm, k = 2.92, p = 99 %", budget.ToString());
        Assert.Contains(budget.Findings, finding => finding.Code == "zero-sensitivity");
    }

    private static readonly Voltage[] Voltages = Reading("V").Select(Voltage.FromVolts).ToArray();
    private static readonly Current[] Currents = Reading("I").Select(Current.FromAmperes).ToArray();
    private static readonly Angle[] Phases = Reading("phi").Select(Angle.FromRadians).ToArray();

    private static double[] Reading(string name) => CheckValue.All["H2-00"].Numbers(name);

    [Theory]
    [HandbookData("H2-")]
    public void Impedance_H2(string id)
    {
        CheckValue value = CheckValue.All[id];
        (Uncertain<Voltage> v, Uncertain<Current> i, Uncertain<Angle> phi) = TypeA.Simultaneous(Voltages, Currents, Phases, "V", "I", "φ");
        Uncertain<Resistance> z = v / i, r = z * Uncertain.Cos(phi), x = z * Uncertain.Sin(phi);
        double Mean(Func<double, double, double, double> f) => TypeA.Mean(Enumerable.Range(0, 5)
            .Select(k => Resistance.FromOhms(f(Voltages[k].Volts, Currents[k].Amperes, Phases[k].Radians))).ToArray()).Value.Ohms;
        value.Confirm(id switch
        {
            "H2-00" => v.StandardUncertainty.SiValue,
            "H2-01" => i.StandardUncertainty.SiValue,
            "H2-02" => phi.StandardUncertainty.SiValue,
            "H2-10" => v.CorrelationWith(i),
            "H2-11" => v.CorrelationWith(phi),
            "H2-12" => i.CorrelationWith(phi),
            "H2-20" => r.Value.Ohms,
            "H2-21" => x.Value.Ohms,
            "H2-22" => z.Value.Ohms,
            "H2-30" => r.StandardUncertainty.SiValue,
            "H2-31" => x.StandardUncertainty.SiValue,
            "H2-32" => z.StandardUncertainty.SiValue,
            "H2-40" => r.CorrelationWith(x),
            "H2-41" => r.CorrelationWith(z),
            "H2-42" => x.CorrelationWith(z),
            "H2-50" => Mean((a, b, c) => a / b * Math.Cos(c)),
            "H2-51" => Mean((a, b, c) => a / b * Math.Sin(c)),
            "H2-52" => Mean((a, b, _) => a / b),
            "H2-60" => (TypeA.Mean(Voltages) / TypeA.Mean(Currents) * Uncertain.Cos(TypeA.Mean(Phases))).StandardUncertainty.SiValue,
            _ => throw new InvalidOperationException(id + " is new"),
        });
    }

    [Fact]
    public void Impedance_H2_ClaimsNoEffectiveDegreesOfFreedom()
    {
        (Uncertain<Voltage> v, Uncertain<Current> i, _) = TypeA.Simultaneous(Voltages, Currents, Phases);

        UncertaintyBudget budget = (v / i).Budget();

        Assert.True(double.IsPositiveInfinity(budget.EffectiveDegreesOfFreedom));
        Assert.Contains(budget.Findings, finding => finding.Code == "correlated-readings");
        Assert.Equal(1, budget.Lines.Sum(line => line.Share.Fraction) + budget.CorrelationShare.Fraction, 1e-12);
    }

    [Theory]
    [HandbookData("H3-")]
    public void Thermometer_H3(string id)
    {
        CheckValue value = CheckValue.All[id], data = CheckValue.All["H3-00"];
        // A correction is a difference of temperatures, which may be negative: volts of a thermocouple, so to say, stand for kelvins here.
        var line = StraightLine<Voltage, Voltage>.Fit(
            data.Numbers("t").Select(Voltage.FromVolts).ToArray(), data.Numbers("b").Select(Voltage.FromVolts).ToArray(), Voltage.FromVolts(data.Number("t0")));
        Uncertain<Voltage> at30 = line.At(Voltage.FromVolts(30));
        UncertaintyBudget budget = at30.Budget();
        value.Confirm(id switch
        {
            "H3-00" => line.Intercept.Value.Volts,
            "H3-01" => line.Intercept.StandardUncertainty.SiValue,
            "H3-02" => line.SlopeInSi,
            "H3-03" => line.SlopeStandardUncertaintyInSi,
            "H3-04" => line.CorrelationCoefficient,
            "H3-05" => line.ResidualStandardDeviation.SiValue,
            "H3-10" => at30.Value.Volts,
            "H3-11" => at30.StandardUncertainty.SiValue,
            "H3-12" => Math.Sqrt(budget.Lines.Sum(row => row.Contribution.SiValue * row.Contribution.SiValue)),
            _ => throw new InvalidOperationException(id + " is new"),
        });
    }

    /// <summary>JCGM 100 table H.9 and H.5.2.3 to H.5.2.8; the table as public transcriptions of the standard give it, the printed results from memory.</summary>
    [Fact]
    public void VoltageStandardOverTenDays_H5()
    {
        double[] means = [10.000172, 10.000116, 10.000013, 10.000144, 10.000106, 10.000031, 10.000060, 10.000125, 10.000163, 10.000041];
        double[] scatters = [60, 77, 111, 101, 67, 93, 80, 73, 88, 86];

        var days = GroupedReadings<Voltage>.Of(means.Select(Voltage.FromVolts).ToArray(), scatters.Select(Voltage.FromMicrovolts).ToArray(), 5);

        Assert.Equal(10.000097, days.MeanWithGroupEffect().Value.Volts, 0.5e-6);
        Assert.Equal(128e-6, days.BetweenGroups.SiValue, 0.5e-6);
        Assert.Equal(85e-6, days.WithinGroups.SiValue, 0.5e-6);
        Assert.Equal(2.25, days.VarianceRatio, 0.03);
        Assert.Equal(43e-6, days.GroupEffect.SiValue, 0.5e-6);
        Assert.Equal(18e-6, days.MeanWithGroupEffect().StandardUncertainty.SiValue, 0.5e-6);
        Assert.Equal(9, days.MeanWithGroupEffect().Budget().EffectiveDegreesOfFreedom, 1e-9);
        Assert.Equal(13e-6, days.MeanWithoutGroupEffect().StandardUncertainty.SiValue, 0.5e-6);
        Assert.Equal(49, days.MeanWithoutGroupEffect().Budget().EffectiveDegreesOfFreedom, 1e-9);
    }

    private static Length Nanometres(double nanometres) => Length.FromMeters(nanometres / 1e9);
}
