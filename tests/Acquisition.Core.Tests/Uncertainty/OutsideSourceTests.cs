using System;
using System.Globalization;
using System.IO;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Acquisition.Core.Uncertainty;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

/// <summary>Against SciPy 1.10.1 (tests/scripts/uncertainty), the NIST Statistical Reference Datasets and published tables.</summary>
public sealed class OutsideSourceTests
{
    /// <summary>SciPy's incomplete beta function keeps nine digits where the degrees of freedom are many.</summary>
    [Fact]
    public void StudentQuantiles_AreThoseOfScipy()
    {
        foreach (double[] row in ReferenceValues.Table("t_quantiles"))
            Assert.Equal(1, StudentT.CoverageFactor(row[1], row[0]) / row[2], 1e-9);
    }

    /// <summary>The first three rows are the resistors of JCGM 106 9.5.4, inputs from memory: 1500 Ω, process 0.12 Ω, u = 0.04 Ω, limits ± 0.2 Ω.</summary>
    [Fact]
    public void GlobalRisks_AreThoseOfScipysQuadrature()
    {
        foreach (double[] row in ReferenceValues.Table("global_risks"))
        {
            (double acceptance, double rejection) = ConformityRisk.Global(row[0], row[1], row[2], row[3], row[4], row[3] + row[5], row[4] - row[5]);
            Assert.Equal(row[6], acceptance, 1e-12);
            Assert.Equal(row[7], rejection, 1e-11);
        }
    }

    [Fact]
    public void GlobalRisk_OfARule_IsThatOfItsAcceptanceLimits()
    {
        double[] row = ReferenceValues.Table("global_risks")[1];

        GlobalRisk risk = GlobalRisk.Of(
            Resistance.FromOhms(row[0]), Resistance.FromOhms(row[1]), Resistance.FromOhms(row[2]),
            ToleranceLimits.Between(Resistance.FromOhms(row[3]), Resistance.FromOhms(row[4])), DecisionRule.GuardedAcceptance);

        Assert.Equal(row[6], risk.FalseAcceptance.Fraction, 1e-12);
        Assert.Equal(row[7], risk.FalseRejection.Fraction, 1e-11);
        Assert.Equal(row[8], risk.ConformingPart.Fraction, 1e-12);
    }

    [Fact]
    public void StraightLine_IsThatOfScipy()
    {
        var line = StraightLine<Frequency, DecibelRatio>.Fit(
            ReferenceValues.Numbers("straight_line", "x").Select(Frequency.FromHertz).ToArray(),
            ReferenceValues.Numbers("straight_line", "y").Select(DecibelRatio.FromDecibels).ToArray(), 0.Hz());

        Assert.Equal(1, line.SlopeInSi / ReferenceValues.Number("straight_line", "slope"), 1e-10);
        Assert.Equal(1, line.SlopeStandardUncertaintyInSi / ReferenceValues.Number("straight_line", "slope_u"), 1e-10);
        Assert.Equal(1, line.Intercept.Value.Decibels / ReferenceValues.Number("straight_line", "intercept"), 1e-9);
        Assert.Equal(1, line.Intercept.StandardUncertainty.SiValue / ReferenceValues.Number("straight_line", "intercept_u"), 1e-10);
    }

    /// <summary>Power in a resistor that is known badly: quantiles of V²/R by numerical integration.</summary>
    [Fact]
    public void QuantilesOfANonlinearModel_AreThoseOfNumericalIntegration()
    {
        Uncertain<Voltage> v = Uncertain.Of(5.V(), Spread.Standard(0.3.V()), "V");
        Uncertain<Resistance> r = Uncertain.Of(50.Ohm(), Spread.Bound(10.Ohm()), "R");
        MonteCarloResult result = MonteCarlo.Run(v, r, (a, b) => a * (a / b), MonteCarloOptions.Default.WithTrials(2_000_000));

        Assert.Equal(ReferenceValues.Number("product_quantiles", "mean"), result.Estimate.SiValue, 3e-4);
        Assert.Equal(ReferenceValues.Number("product_quantiles", "u"), result.StandardUncertainty.SiValue, 3e-4);
        double[] p = ReferenceValues.Numbers("product_quantiles", "p"), y = ReferenceValues.Numbers("product_quantiles", "y");
        for (int i = 0; i < p.Length; i++) Assert.Equal(y[i], result.Quantile(Ratio.FromFraction(p[i])).SiValue, 2e-3);
    }

    /// <summary>Certified values of the NIST Statistical Reference Datasets, univariate summary statistics (the data made to upset one-pass formulas are constructed, so they can be made here).</summary>
    [Theory]
    [InlineData(1000000.2, 0.1, 1e-12)]
    [InlineData(10000000.2, 0.1, 1e-8)]
    public void NumAcc3AndNumAcc4_KeepTheirScatter(double mean, double deviation, double relative)
    {
        double[] data = Enumerable.Range(0, 1001).Select(i => i == 0 ? mean : i % 2 == 1 ? mean - 0.1 : mean + 0.1).Select(x => Math.Round(x, 1)).ToArray();

        var statistics = ReadingStatistics.Of(data);

        Assert.Equal(mean, statistics.Mean, 2e-9);
        // In binary the data themselves are off by parts in 10⁹ of their scatter.
        Assert.Equal(1, statistics.StandardDeviation / deviation, Math.Max(relative, 6e-9));
    }

    [OpenDataFact("reference/nist-strd/Michelso.dat")]
    public void NistUnivariateSets_HaveTheirCertifiedStatistics()
    {
        foreach ((string file, double mean, double deviation) in new[]
                 {
                     ("Michelso.dat", 299.852400000000, 0.0790105478190518),
                     ("Mavro.dat", 2.00185600000000, 0.000429123454003053),
                     ("Lew.dat", -177.435000000000, 277.332168044316),
                 })
        {
            string[] lines = File.ReadAllLines(OpenData.Path("reference/nist-strd/" + file));
            double[] data = lines.Skip(Array.FindLastIndex(lines, line => line.StartsWith("---", StringComparison.Ordinal)) + 1)
                .Where(line => line.Trim().Length > 0).Select(line => double.Parse(line.Trim(), CultureInfo.InvariantCulture)).ToArray();

            var statistics = ReadingStatistics.Of(data);

            Assert.Equal(1, statistics.Mean / mean, 1e-14);
            Assert.Equal(1, statistics.StandardDeviation / deviation, 1e-12);
        }
    }

    /// <summary>NIST StRD Norris, linear regression of lower difficulty: certified B0, B1 and their standard deviations.</summary>
    [OpenDataFact("reference/nist-strd/Norris.dat")]
    public void NistNorris_HasItsCertifiedLine()
    {
        string[] lines = File.ReadAllLines(OpenData.Path("reference/nist-strd/Norris.dat"));
        double[][] rows = lines.Skip(60).Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Where(words => words.Length == 2 && double.TryParse(words[0], CultureInfo.InvariantCulture, out _) && double.TryParse(words[1], CultureInfo.InvariantCulture, out _))
            .Select(words => words.Select(word => double.Parse(word, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        Assert.Equal(36, rows.Length);

        var line = StraightLine<Voltage, Voltage>.Fit(rows.Select(row => Voltage.FromVolts(row[1])).ToArray(), rows.Select(row => Voltage.FromVolts(row[0])).ToArray(), 0.V());

        Assert.Equal(-0.262323073774029, line.Intercept.Value.Volts, 1e-11);
        Assert.Equal(1.00211681802045, line.SlopeInSi, 1e-13);
        Assert.Equal(0.232818234301152, line.Intercept.StandardUncertainty.SiValue, 1e-12);
        Assert.Equal(0.429796848199937e-3, line.SlopeStandardUncertaintyInSi, 1e-15);
        Assert.Equal(0.884796396144373, line.ResidualStandardDeviation.SiValue, 1e-12);
    }

    /// <summary>JCGM 100 tables H.2 and H.6 as others transcribed them, against the copies in check-values.json that the other tests use.</summary>
    [OpenDataFact("reference/gum-h2-impedance.csv")]
    public void TableOfImpedanceReadings_IsThatOfTheCheckValues()
    {
        Assert.Equal(Column("reference/gum-h2-impedance.csv", 0), CheckValue.All["H2-00"].Numbers("V"));
        Assert.Equal(Column("reference/gum-h2-impedance.csv", 2), CheckValue.All["H2-00"].Numbers("phi"));
    }

    [OpenDataFact("reference/gum-h3-thermometer.csv")]
    public void TableOfThermometerReadings_IsThatOfTheCheckValues()
    {
        Assert.Equal(Column("reference/gum-h3-thermometer.csv", 0), CheckValue.All["H3-00"].Numbers("t"));
        Assert.Equal(Column("reference/gum-h3-thermometer.csv", 1), CheckValue.All["H3-00"].Numbers("b"));
    }

    private static double[] Column(string file, int column) =>
        File.ReadAllLines(OpenData.Path(file)).Skip(1).Select(line => double.Parse(line.Split(',')[column], CultureInfo.InvariantCulture)).ToArray();
}
