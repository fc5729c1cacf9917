using System;
using System.Linq;
using Acquisition.Core.Formulas;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

public sealed class FormulaColumnTests
{
    private static FormulaContext Two => FormulaContext.Standard.WithFunctions(Sketches.All).WithInput("a", QuantityKind.Ratio).WithInput("b", QuantityKind.Ratio);

    [Theory]
    [InlineData("sqrt(a^2 + b^2)")]
    [InlineData("a - b")]
    [InlineData("-a * b / 3 + 7")]
    [InlineData("a / (b + 2)")]
    [InlineData("abs(a) ^ b")]
    [InlineData("if a < b then a else b / (a + 10)")]
    [InlineData("if a < b and not (a == b) or b >= 1 then a else b")]
    [InlineData("sin(a) + atan2(a, b + 3) / 1 rad")]
    [InlineData("min(a, b, 1) + max(a, 2)")]
    [InlineData("hypot(a, b, 3)")]
    [InlineData("width(line(\"plain\", abs(a) + 1)) + b")]
    [InlineData("if a > b then exp(b) else width(line(\"dashed\", abs(b) + 1))")]
    [InlineData("a")]
    [InlineData("3")]
    public void Column_HasTheBitsOfRowAfterRow(string text)
    {
        Formula formula = Two.Build(text);
        var random = new Random(4711);
        double[] a = Enumerable.Range(0, 1037).Select(_ => random.NextDouble() * 4 - 2).ToArray(), b = a.Select(_ => random.NextDouble() * 2 - 1).ToArray();
        var results = new double[a.Length];
        formula.EvaluateColumns([a, b], results);
        Assert.Equal(a.Zip(b, (x, y) => BitConverter.DoubleToInt64Bits(formula.EvaluateSi(x, y))), results.Select(BitConverter.DoubleToInt64Bits));
#if NET
        var spans = new double[a.Length];
        formula.EvaluateColumns(a.AsSpan(), b.AsSpan(), spans);
        Assert.Equal(results, spans);
#endif
    }

    [Fact]
    public void RowWithoutAValue_IsNamed()
    {
        Formula formula = Two.Build("1 / (a - b)");
        var refusal = Assert.Throws<FormulaException>(() => formula.EvaluateColumns([[1, 2, 3], [0, 2, 0]], new double[3]));
        Assert.Equal("row 1: column 1: division by zero", refusal.Message);
    }

    [Fact]
    public void ColumnsOfDifferentLength_AreRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() => Two.Build("a + b").EvaluateColumns([[1, 2, 3], [0, 2]], new double[3]));
        Assert.StartsWith("the column of b has 2 values, expected 3", refusal.Message, StringComparison.Ordinal);
    }

#if NET // elsewhere the numbers travel in an array
    [Theory]
    [InlineData("sqrt(a^2 + b^2)")]
    [InlineData("if a > 1 then sin(a) else min(a, b)")]
    [InlineData("period(a * 1 Hz) / 1 s + 0.35")]
    public void Evaluation_AllocatesNothing(string text)
    {
        Formula formula = Two.Build(text);
        double sum = formula.EvaluateSi(2, 3);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 1; i <= 1000; i++) sum += formula.EvaluateSi(i, 3);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(sum > 0);
    }

    [Fact]
    public void EvaluationWithAConstantModel_AllocatesNothing()
    {
        Formula formula = Two.Build("width(line(\"plain\", 3)) * a + b");
        double sum = formula.EvaluateSi(2, 3);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 1000; i++) sum += formula.EvaluateSi(i, 3);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(sum > 0);
    }
#endif
}
