using System;
using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

public sealed class FormulaPropertyTests
{
    /// <summary>A random tree of arithmetic without units, as our text and as that of NCalc, the outside oracle.</summary>
    public sealed record Tree(string Text, string Outside)
    {
        public override string ToString() => Text;
    }

    public static class Trees
    {
        public static Arbitrary<Tree> Tree() => Gen.Sized(size => OfSize(Math.Min(size, 40))).ToArbitrary();

        private static Gen<Tree> OfSize(int size) => size <= 1
            ? Gen.OneOf(
                Gen.Choose(0, 99).Select(n => new Tree(Number(n), Number(n) + ".0")),
                Gen.Choose(1, 999).Select(n => new Tree(Number(n) + "e-2", Number(n) + ".0e-2")),
                Gen.Choose(2, 20).Select(n => new Tree(Number(n) + "^2", $"Pow({Number(n)}.0, 2.0)")))
            // Chosen first and made then: the generators of all branches would be exponentially many.
            : Gen.Choose(0, 5).SelectMany(choice => choice switch
            {
                0 => OfSize(size - 1).Select(t => new Tree("-(" + t.Text + ")", "-(" + t.Outside + ")")),
                1 => OfSize(size - 1).Select(t => new Tree("sqrt(abs(" + t.Text + "))", "Sqrt(Abs(" + t.Outside + "))")),
                _ => Pair(size, "+-*/"[choice - 2]),
            });

        private static Gen<Tree> Pair(int size, char op) =>
            from left in OfSize(size / 2)
            from right in OfSize(size / 2)
            select new Tree($"({left.Text}) {op} ({right.Text})", $"({left.Outside}) {op} ({right.Outside})");

        private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>The same operations on the same doubles give the same bits; what is infinite or not a number there has no value here.</summary>
    [Property(Arbitrary = [typeof(Trees)], MaxTest = 500)]
    public void RandomArithmetic_AgreesWithNCalc(Tree tree)
    {
        double outside = Convert.ToDouble(new NCalc.Expression(tree.Outside, NCalc.ExpressionOptions.NoCache).Evaluate(), CultureInfo.InvariantCulture);
        double ours = Value(Formula.Build(tree.Text));
        if (double.IsNaN(ours))
            Assert.Contains("/", tree.Text, StringComparison.Ordinal);
        else
            Assert.Equal(outside, ours);
        if (!double.IsFinite(outside)) Assert.True(double.IsNaN(ours));
    }

    /// <summary>Printing drops the parentheses that are not needed and no others: what is printed has the same bits.</summary>
    [Property(Arbitrary = [typeof(Trees)], MaxTest = 300)]
    public void PrintedFormula_HasTheSameValue(Tree tree)
    {
        Formula formula = Formula.Build(tree.Text), again = Formula.Build(formula.ToString());
        Assert.Equal(Value(formula), Value(again));
        Assert.True(formula.ToString().Replace(" ", "", StringComparison.Ordinal).Length <= tree.Text.Replace(" ", "", StringComparison.Ordinal).Length);
    }

    /// <summary>Physics does not depend on the prefixes in which inputs are written.</summary>
    [Property(MaxTest = 200)]
    public void Result_DoesNotDependOnThePrefix(PositiveInt megahertz, PositiveInt picoseconds)
    {
        string first = FormattableString.Invariant($"sqrt((0.35 / {megahertz.Get} MHz)^2 + ({picoseconds.Get} ps)^2)");
        string second = FormattableString.Invariant($"sqrt((0.35 / {megahertz.Get}e6 Hz)^2 + ({picoseconds.Get}e-6 µs)^2)");
        Assert.Equal(Formula.Build(first).EvaluateSi(), Formula.Build(second).EvaluateSi());
    }

    private static double Value(Formula formula)
    {
        try
        {
            return formula.EvaluateSi();
        }
        catch (Acquisition.Core.Formulas.FormulaException)
        {
            return double.NaN;
        }
    }
}
