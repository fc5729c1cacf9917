using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Acquisition.Core.Uncertainty;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

public sealed class UncertainArithmeticTests
{
    private static readonly Uncertain<Voltage> U = Uncertain.Of(5.V(), Spread.Standard(30.mV()), "voltage");
    private static readonly Uncertain<Resistance> R = Uncertain.Of(50.Ohm(), Spread.Bound(1.Percent()), "resistance");

    [Fact]
    public void ValueLessItself_IsExactlyZero()
    {
        Uncertain<Voltage> difference = U - U;

        Assert.Equal(0.V(), difference.Value);
        Assert.Equal(0, difference.StandardUncertainty.SiValue);
        Assert.Empty(difference.Budget().Lines);
    }

    [Fact]
    public void ValueOverItself_IsExactlyOne()
    {
        Uncertain<Ratio> ratio = U / U;

        Assert.Equal(1, ratio.Value.Fraction);
        Assert.Equal(0, ratio.StandardUncertainty.SiValue);
    }

    [Fact]
    public void TwoReadingsWithOneReference_DifferByTheReferenceNoMore()
    {
        Uncertain<Voltage> reference = Uncertain.Of(0.V(), Spread.Standard(10.mV()), "reference");
        Uncertain<Voltage> first = 1.V() + reference, second = 3.V() + reference;

        Assert.Equal(0, (second - first).StandardUncertainty.SiValue);
        Assert.Equal(1, first.CorrelationWith(second));
    }

    [Fact]
    public void OhmsLaw_HasTheTypeAndTheRelativeUncertaintyOfAQuotient()
    {
        Uncertain<Current> current = U / R;

        Assert.Equal(100, current.Value.Milliamperes, 1e-12);
        Assert.Equal(Math.Sqrt(0.006 * 0.006 + 0.01 * 0.01 / 3), current.RelativeStandardUncertainty.Fraction, 1e-15);
        Assert.Equal(current.Value, U.DividedBy<Resistance, Current>(R).Value);
    }

    [Fact]
    public void PowerFromVoltageSquaredOverResistance_CountsTheVoltageTwice()
    {
        Uncertain<Power> power = U * (U / R);

        Assert.Equal(Math.Sqrt(0.012 * 0.012 + 0.01 * 0.01 / 3), power.RelativeStandardUncertainty.Fraction, 1e-15);
    }

    [Fact]
    public void QuotientOfTheWrongType_IsRefusedByName()
    {
        var exception = Assert.Throws<ArgumentException>(() => U.DividedBy<Resistance, Power>(R));

        Assert.Equal("the quotient of a voltage and a resistance is not a power", exception.Message);
    }

    [Fact]
    public void DivisionByAnEstimateOfZero_IsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => U / Uncertain.Of(0.A(), Spread.Standard(1.mA())));

    /// <summary>Whatever product or quotient two strong quantities have, their uncertain counterparts have too, with the same result.</summary>
    [Fact]
    public void EveryProductOfStrongQuantities_ExistsForUncertainOnes()
    {
        Type[] strong = typeof(Frequency).Assembly.GetExportedTypes().Where(type => type.IsValueType && typeof(IQuantity).IsAssignableFrom(type) && type != typeof(Quantity)).ToArray();
        var wanted = from type in strong
                     from method in type.GetMethods(BindingFlags.Public | BindingFlags.Static)
                     where method.Name is "op_Multiply" or "op_Division"
                     let parameters = method.GetParameters()
                     where strong.Contains(parameters[0].ParameterType) && strong.Contains(parameters[1].ParameterType)
                     where parameters[0].ParameterType != parameters[1].ParameterType
                     where parameters[0].ParameterType != typeof(Ratio) && parameters[1].ParameterType != typeof(Ratio)
                     select $"{method.Name}({parameters[0].ParameterType.Name}, {parameters[1].ParameterType.Name}) -> {method.ReturnType.Name}";
        var offered = from method in typeof(UncertainProducts).GetMethods(BindingFlags.Public | BindingFlags.Static)
                      where method.Name is "op_Multiply" or "op_Division"
                      let parameters = method.GetParameters()
                      where parameters.Length == 2
                      select $"{method.Name}({Argument(parameters[0].ParameterType)}, {Argument(parameters[1].ParameterType)}) -> {Argument(method.ReturnType)}";

        Assert.Empty(wanted.Distinct().Except(offered).Order());

        static string Argument(Type type) => type.GetGenericArguments()[0].Name;
    }

    [Theory]
    [HandbookData("LP-01")]
    public void CorrelatedDifference(string id)
    {
        CheckValue value = CheckValue.All[id];
        Uncertain<Ratio>[] inputs = value.Numbers("u").Select(u => Uncertain.Of(Ratio.FromFraction(1), Spread.Standard(Ratio.FromFraction(u)))).ToArray();

        (Uncertain<Ratio> a, Uncertain<Ratio> b) = Uncertain.Correlated(inputs[0], inputs[1], value.Number("r"));

        value.Confirm((a - b).StandardUncertainty.SiValue);
    }

    [Theory]
    [HandbookData("LP-02")]
    public void ProductOfIndependentValues(string id)
    {
        CheckValue value = CheckValue.All[id];
        double[] u = value.Numbers("u");

        value.Confirm((Number(value.Number("a"), u[0]) * Number(value.Number("b"), u[1])).StandardUncertainty.SiValue);
    }

    [Theory]
    [HandbookData("LP-03")]
    public void ProductAtZero_HasSecondOrderUncertaintyOnly(string id)
    {
        CheckValue value = CheckValue.All[id];
        double[] u = value.Numbers("u");

        value.Confirm(Math.Sqrt(SecondOrder.Variance((x, g) => (g[0], g[1]) = (x[1], x[0]), [value.Number("a"), value.Number("b")], u)));

        UncertaintyBudget budget = (Number(0, u[0]) * Number(0, u[1])).Budget();
        Assert.Equal(0, budget.StandardUncertainty.SiValue);
        Assert.Equal(2, budget.Findings.Count(finding => finding.Code == "zero-sensitivity"));
    }

    [Fact]
    public void ImpossibleCorrelations_AreRefused()
    {
        Uncertain<Ratio> a = Number(1, 0.1), b = Number(1, 0.1), c = Number(1, 0.1);

        var exception = Assert.Throws<ArgumentException>(() => Uncertain.Correlated(a, b, c, 0.9, 0.9, -0.9));

        Assert.Contains("not positive semidefinite", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void CorrelationOfAResult_IsRefused() => Assert.Throws<ArgumentException>(() => Uncertain.Correlated(U + U, R, 0.5));

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void FullCorrelation_AddsLinearly(int sign)
    {
        (Uncertain<Ratio> a, Uncertain<Ratio> b) = Uncertain.Correlated(Number(1, 0.3), Number(2, 0.4), sign);

        Assert.Equal(Math.Abs(0.3 + sign * 0.4), (a + b).StandardUncertainty.SiValue, 1e-15);
        Assert.Equal(Math.Abs(0.3 - sign * 0.4), (a - b).StandardUncertainty.SiValue, 1e-15);
    }

    [Fact]
    public void RootSumOfSquares_OfOneSourceTwice_IsLinearInIt()
    {
        Uncertain<Duration> edge = Uncertain.Of(3.ns(), Spread.Standard(0.1.ns()));

        Uncertain<Duration> root = Uncertain.RootSumOfSquares(edge, edge);

        Assert.Equal(Math.Sqrt(2) * 0.1e-9, root.StandardUncertainty.SiValue, 1e-24);
    }

    [Fact]
    public void LibraryCalculation_OfAnUncertainValue_GetsItsDerivativeNumerically()
    {
        Uncertain<Frequency> f = Uncertain.Of(24.MHz(), Spread.Standard(50.kHz()));

        Uncertain<Duration> period = Uncertain.Apply(f, x => Duration.FromSeconds(1 / x.Hertz));

        Assert.Equal(Uncertain.Period(f).StandardUncertainty.SiValue, period.StandardUncertainty.SiValue, 1e-9 * period.StandardUncertainty.SiValue);
    }

    [Fact]
    public void FunctionOfTwoSharedValues_KeepsTheirCorrelation()
    {
        Uncertain<Voltage> twice = Uncertain.Apply(U, U, (a, b) => a - b);

        Assert.Equal(0, twice.StandardUncertainty.SiValue, 1e-9);
    }

    [Fact]
    public void FunctionWithAStep_IsRefusedRatherThanGuessed()
    {
        var exception = Assert.Throws<InvalidOperationException>(() => Uncertain.Apply(U, x => x > 5.V() ? 1.V() : 0.V()));

        Assert.Contains("use Monte Carlo", exception.Message, StringComparison.Ordinal);
    }

    public static TheoryData<string, double, double> Functions => new()
    {
        { "sqrt", Uncertain.Sqrt(Number(4, 0.1)).StandardUncertainty.SiValue, 0.1 / 4 },
        { "pow", Uncertain.Pow(Number(2, 0.1), 3).StandardUncertainty.SiValue, 1.2 },
        { "exp", Uncertain.Exp(Number(1, 0.1)).StandardUncertainty.SiValue, Math.E * 0.1 },
        { "log", Uncertain.Log(Number(2, 0.1)).StandardUncertainty.SiValue, 0.05 },
        { "sin", Uncertain.Sin(Uncertain.Of(Angle.FromDegrees(30), Spread.Standard(Angle.FromRadians(0.1)))).StandardUncertainty.SiValue, 0.1 * Math.Sqrt(3) / 2 },
        { "cos", Uncertain.Cos(Uncertain.Of(Angle.FromDegrees(30), Spread.Standard(Angle.FromRadians(0.1)))).StandardUncertainty.SiValue, 0.05 },
        { "tan", Uncertain.Tan(Uncertain.Of(Angle.FromDegrees(45), Spread.Standard(Angle.FromRadians(0.1)))).StandardUncertainty.SiValue, 0.2 },
        { "atan2", Uncertain.Atan2(Number(1, 0.1), Number(1, 0.1)).StandardUncertainty.SiValue, 0.05 * Math.Sqrt(2) },
        { "level", Uncertain.ToLevel(Uncertain.Of(1.mW(), Spread.Standard(0.01.mW()))).StandardUncertainty.SiValue, 0.04342944819032518 },
        { "rms", Uncertain.ToRmsVoltage(Uncertain.Of(VoltageLevel.FromDecibelVolts(0), Spread.Standard(1.dB()))).StandardUncertainty.SiValue, Math.Log(10) / 20 },
    };

    [Theory]
    [MemberData(nameof(Functions))]
    public void Function_HasItsExactDerivative(string name, double actual, double expected) =>
        Assert.True(Math.Abs(actual - expected) <= 1e-14 * Math.Abs(expected) + 1e-16, FormattableString.Invariant($"{name}: {actual:R}, expected {expected:R}"));

    [Property]
    public bool Scaling_ScalesTheUncertainty(NormalFloat value, NormalFloat width, NormalFloat factor)
    {
        double u = Math.Abs(Math.IEEERemainder(width.Get, 1000)), k = Math.IEEERemainder(factor.Get, 1000);
        Uncertain<Ratio> x = Number(Math.IEEERemainder(value.Get, 1000), u);
        return Close((k * x).StandardUncertainty.SiValue, Math.Abs(k) * u);
    }

    [Property]
    public bool VariancesOfIndependentValues_Add(PositiveInt[] widths)
    {
        Uncertain<Ratio> sum = Number(0, 0);
        foreach (PositiveInt width in widths) sum += Number(1, width.Get);
        return Close(sum.StandardUncertainty.SiValue, Math.Sqrt(widths.Sum(width => (double)width.Get * width.Get)));
    }

    [Property]
    public bool OrderOfInputs_DoesNotMatter(PositiveInt[] widths)
    {
        Uncertain<Ratio>[] inputs = widths.Take(30).Select((width, i) => Number(i + 1, width.Get / 100.0)).ToArray();
        Uncertain<Ratio> forward = inputs.Aggregate(Number(1, 0), (left, right) => left * right);
        Uncertain<Ratio> backward = inputs.Reverse().Aggregate(Number(1, 0), (left, right) => left * right);
        return Close(forward.StandardUncertainty.SiValue, backward.StandardUncertainty.SiValue);
    }

    [Property]
    public bool Propagation_IsLinearInTheFactors(short a, short b)
    {
        Uncertain<Ratio> x = Number(3, 0.2), y = Number(7, 0.5);
        return Close((a * x + b * y).StandardUncertainty.SiValue, Math.Sqrt(a * a * 0.04 + b * b * 0.25));
    }

    [Property]
    public bool ManySources_AreFoundAgain(byte count)
    {
        Uncertain<Ratio>[] sources = Enumerable.Range(0, count + 1).Select(i => Number(i, 1)).ToArray();
        Uncertain<Ratio> sum = sources.Aggregate((left, right) => left + right);
        Uncertain<Ratio> back = sources.Aggregate(sum, (left, right) => left - right);
        return back.Value.Fraction == 0 && back.StandardUncertainty.SiValue == 0;
    }

    internal static Uncertain<Ratio> Number(double value, double u) => Uncertain.Of(Ratio.FromFraction(value), Spread.Standard(Ratio.FromFraction(u)));

    private static bool Close(double actual, double expected) => Math.Abs(actual - expected) <= 1e-12 * Math.Abs(expected) + 1e-300;
}
