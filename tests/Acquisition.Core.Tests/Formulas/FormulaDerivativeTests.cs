using System;
using System.Linq;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Functions;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

public sealed class FormulaDerivativeTests
{
    private static readonly FunctionDefinition Cube = FunctionDefinition.Named("cube", "The cube.", "common practice, no source").Takes("value", ValueKind.Number).Returns(ValueKind.Number, x => x * x * x);

    private static FormulaContext Context => FormulaContext.Standard.WithFunctions(Sketches.All).WithFunctions(Cube).WithInput("a", QuantityKind.Ratio).WithInput("b", QuantityKind.Ratio);

    /// <summary>Formula, and its derivatives by a and b at a = 2, b = 3 worked out by hand.</summary>
    [Theory]
    [InlineData("a + 2 * b", 1, 2)]
    [InlineData("a * b - b", 3, 1)]
    [InlineData("a / b", 1.0 / 3, -2.0 / 9)]
    [InlineData("a ^ b", 12, 8 * 0.69314718055994531)]
    [InlineData("sqrt(a^2 + b^2)", 0.55470019622522915, 0.83205029433784372)]
    [InlineData("sqrt(a^2 + b^2) / sqrt(a^2 + b^2)", 0, 0)]
    [InlineData("-abs(a - b)", 1, -1)]
    [InlineData("min(a, b) + 5 * max(a, b)", 1, 5)]
    [InlineData("if a < b then a * a else b", 4, 0)]
    [InlineData("if exp(a) < exp(b) then a * a else exp(b)", 4, 0)]
    [InlineData("exp(a) * ln(b)", 8.1177078319432, 2.46301869964355)]
    [InlineData("atan2(a, b) / 1 rad", 3.0 / 13, -2.0 / 13)]
    [InlineData("cube(a) + cube(a * b)", 12 + 3 * 36 * 3, 3 * 36 * 2)]
    [InlineData("hypot(a, b)", 0.55470019622522915, 0.83205029433784372)]
    [InlineData("width(line(\"plain\", a * b, a))", 12, 4)]
    public void Derivatives_AreThoseWorkedOutByHand(string text, double byA, double byB)
    {
        Sensitivities found = Context.Build(text).Sensitivities([2, 3], null, [0.1, 0.1]);
        Assert.Equal(byA, found.Derivatives[0], 1e-9 * Math.Max(1, Math.Abs(byA)));
        Assert.Equal(byB, found.Derivatives[1], 1e-9 * Math.Max(1, Math.Abs(byB)));
    }

    [Fact]
    public void NumericalDerivative_IsSaidToBeOne()
    {
        Assert.Equal([true, false], Context.Build("cube(a) + b").Sensitivities([2, 3], null, [0.1, 0.1]).IsNumerical);
        Assert.Equal([true, false], Context.Build("width(line(\"plain\", a)) + b").Sensitivities([2, 3], null, [0.1, 0.1]).IsNumerical);
    }

    [Fact]
    public void UncertainTerms_HaveHalfWidthsAndDerivatives()
    {
        Formula formula = FormulaContext.Standard.WithInput("clock", QuantityKind.Frequency).Build("(0.35 ± 0.01) / (100 MHz ± 5 % (k=2)) + 1 / (clock ± 50 ppm)");
        Sensitivities found = formula.Sensitivities([24e6], null, [0]);
        Assert.Equal([null, 2, null], formula.UncertainTerms.Select(term => term.CoverageFactor));
        Assert.Equal([0.01, 5e6, 1200], found.HalfWidths.Select(width => Math.Round(width, 9)));
        double[] expected = [-1 / (24e6 * 24e6), 1e-8, -0.35e-16, -1 / (24e6 * 24e6)];
        Assert.All(expected.Zip(found.Derivatives), pair => Assert.Equal(pair.First, pair.Second, Math.Abs(pair.First) * 1e-12));
        Assert.Equal(formula.EvaluateSi(24e6), found.Value);
    }

    [Fact]
    public void UncertainTermOfALevel_DeviatesInDecibels()
    {
        Formula formula = Formula.Build("-10 dBm ± 0.5 dB");
        Assert.Equal(QuantityKind.DecibelRatio, formula.UncertainTerms[0].DeviationKind);
        Assert.Equal(0.5, formula.Sensitivities([], null, []).HalfWidths[0]);
    }

    [Fact]
    public void Trials_MoveEachTermByItsOwnColumn()
    {
        Formula formula = FormulaContext.Standard.WithInput("x", QuantityKind.Ratio).Build("(1 ± 0.5) * x + (10 ± 1)");
        var results = new double[3];
        formula.EvaluateTrials([null], [2], null, [[0, 0.25, -0.5], [1, 0, -1]], results);
        Assert.Equal([13, 12.5, 10], results);
        formula.EvaluateTrials([[1, 2, 3]], [0], null, [null, [0, 0, 1]], results);
        Assert.Equal([11, 12, 14], results);
    }

    [Theory]
    [InlineData(1.0, 0.5)]
    [InlineData(0.001, 0.0005)]
    [InlineData(30.0, 3.0)]
    public void RiddersDerivative_OfALogarithm_IsTheReciprocal(double x, double step) =>
        Assert.Equal(1 / x, Acquisition.Core.Uncertainty.NumericalDerivative.At(Math.Log, x, step, out _), 1e-10 / x);
}
