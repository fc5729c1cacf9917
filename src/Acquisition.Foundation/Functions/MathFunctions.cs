using System;
using System.Collections.Generic;

namespace Acquisition.Core.Functions;

/// <summary>The functions of arithmetic: those that are generic in dimension keep kinds, the others take plain numbers and angles.</summary>
internal static class MathFunctions
{
    private const string Source = "common practice, no source";

    /// <summary>The names that <see cref="All"/> declares.</summary>
    internal const string Names =
        "pi sqrt abs sign min max mean hypot floor ceil round exp ln lg lb sin cos tan asin acos atan atan2";

    internal static IEnumerable<FunctionDefinition> All()
    {
        yield return FunctionDefinition.Named("pi", "The ratio of a circle's circumference to its diameter.", "common practice, no source")
            .Returns(QuantityKind.Ratio, Math.PI)
            .Example("pi", "3.14159265");

        yield return FunctionDefinition.Named("sqrt", "The square root; its unit is the root of the argument's.", Source)
            .Takes("value", ValueKind.AnyQuantity)
            .ReturnsByRule(RootKind, new KernelOf1(Math.Sqrt, x => 0.5 / Math.Sqrt(x)), 1)
            .ComputedBy(Intrinsic.SquareRoot)
            .Example("sqrt((3 ns)^2 + (4 ns)^2)", "5 ns");

        yield return FunctionDefinition.Named("abs", "The magnitude without its sign.", Source)
            .Takes("value", ValueKind.AnyQuantity)
            .ReturnsByRule(MagnitudeKind, new KernelOf1(Math.Abs, x => Math.Sign(x)), 1)
            .ComputedBy(Intrinsic.Absolute)
            .Example("abs(-3 dB)", "3 dB");

        yield return FunctionDefinition.Named("sign", "1, 0 or -1 by the sign of the argument.", Source)
            .Takes("value", ValueKind.AnyQuantity)
            .Returns(ValueKind.Number, x => Math.Sign(x), _ => 0)
            .Example("sign(-20 mV)", "-1");

        yield return FunctionDefinition.Named("min", "The smallest of its arguments.", Source)
            .TakesMany("values", ValueKind.AnyQuantity)
            .ReturnsSameKind(Smallest)
            .ComputedBy(Intrinsic.Minimum)
            .Example("min(200 MHz, 500 MHz, 1 GHz)", "200 MHz");

        yield return FunctionDefinition.Named("max", "The greatest of its arguments.", Source)
            .TakesMany("values", ValueKind.AnyQuantity)
            .ReturnsSameKind(Greatest)
            .ComputedBy(Intrinsic.Maximum)
            .Example("max(1.75 ns, 700 ps)", "1.75 ns");

        yield return FunctionDefinition.Named("mean", "The arithmetic mean of its arguments; not of decibels and temperatures.", Source)
            .TakesMany("values", ValueKind.AnyQuantity)
            .ReturnsByRule(kind => kind.Nature < QuantityNature.Point ? kind : null, new GeneralKernel(Mean), -1)
            .Example("mean(2 ns, 3 ns, 7 ns)", "4 ns");

        yield return FunctionDefinition.Named("hypot", "The root of the sum of the squares: how independent contributions combine.", "handbook 2.5")
            .TakesMany("values", ValueKind.AnyQuantity)
            .ReturnsByRule(kind => kind.Nature < QuantityNature.Point ? kind : null, new GeneralKernel(RootSumOfSquares), -1)
            .Example("hypot(3 ns, 4 ns)", "5 ns");

        yield return FunctionDefinition.Named("floor", "The greatest whole number not above the argument.", Source)
            .Takes("value", ValueKind.Number)
            .Returns(ValueKind.Number, Math.Floor, _ => 0)
            .Example("floor(2.7)", "2");

        yield return FunctionDefinition.Named("ceil", "The smallest whole number not below the argument.", Source)
            .Takes("value", ValueKind.Number)
            .Returns(ValueKind.Number, Math.Ceiling, _ => 0)
            .Example("ceil(2.2)", "3");

        yield return FunctionDefinition.Named("round", "The nearest whole number; halves go to the even one.", Source)
            .Takes("value", ValueKind.Number)
            .Returns(ValueKind.Number, Math.Round, _ => 0)
            .Example("round(2.6)", "3");

        yield return FunctionDefinition.Named("exp", "e to the power of the argument.", Source)
            .Takes("value", ValueKind.Number)
            .Returns(ValueKind.Number, Math.Exp, Math.Exp)
            .Example("exp(1)", "2.718281828");

        yield return FunctionDefinition.Named("ln", "The natural logarithm.", Source)
            .Takes("value", ValueKind.Number)
            .Returns(ValueKind.Number, x => Math.Log(AboveZero(x)), x => 1 / x)
            .Example("ln(9)", "2.197224577");

        yield return FunctionDefinition.Named("lg", "The common logarithm, to base 10.", "ISO 80000-2 (from memory)")
            .Takes("value", ValueKind.Number)
            .Returns(ValueKind.Number, x => Math.Log10(AboveZero(x)), x => 1 / (x * Math.Log(10)))
            .Example("lg(1000)", "3");

        yield return FunctionDefinition.Named("lb", "The binary logarithm, to base 2.", "ISO 80000-2 (from memory)")
            .Takes("value", ValueKind.Number)
            .Returns(ValueKind.Number, x => Math.Log(AboveZero(x)) / Math.Log(2), x => 1 / (x * Math.Log(2)))
            .Example("lb(256)", "8");

        foreach (FunctionDefinition function in Trigonometric("sin", "The sine.", Math.Sin, Math.Cos, "sin(30°)", "0.5")) yield return function;
        foreach (FunctionDefinition function in Trigonometric("cos", "The cosine.", Math.Cos, x => -Math.Sin(x), "cos(60°)", "0.5")) yield return function;
        foreach (FunctionDefinition function in Trigonometric("tan", "The tangent.", Math.Tan, x => 1 / (Math.Cos(x) * Math.Cos(x)), "tan(45°)", "1")) yield return function;

        yield return FunctionDefinition.Named("asin", "The angle whose sine is the argument.", Source)
            .Takes("value", ValueKind.Number)
            .Returns(QuantityKind.Angle, x => Math.Asin(WithinOne(x)), x => 1 / Math.Sqrt(1 - x * x))
            .Example("asin(0.5) in °", "30 °");

        yield return FunctionDefinition.Named("acos", "The angle whose cosine is the argument.", Source)
            .Takes("value", ValueKind.Number)
            .Returns(QuantityKind.Angle, x => Math.Acos(WithinOne(x)), x => -1 / Math.Sqrt(1 - x * x))
            .Example("acos(0.5) in °", "60 °");

        yield return FunctionDefinition.Named("atan", "The angle whose tangent is the argument.", Source)
            .Takes("value", ValueKind.Number)
            .Returns(QuantityKind.Angle, Math.Atan, x => 1 / (1 + x * x))
            .Example("atan(1) in °", "45 °");

        yield return FunctionDefinition.Named("atan2", "The angle of the point that lies so far up and so far to the right.", Source)
            .Takes("up", ValueKind.AnyQuantity)
            .Takes("right", ValueKind.AnyQuantity)
            .Returns(QuantityKind.Angle, Math.Atan2, (y, x) => x / (x * x + y * y), (y, x) => -y / (x * x + y * y))
            .Example("atan2(1 V, -1 V) in °", "135 °");
    }

    private static IEnumerable<FunctionDefinition> Trigonometric(string name, string meaning, Func<double, double> function, Func<double, double> derivative, string example, string result)
    {
        yield return FunctionDefinition.Named(name, meaning, Source).Takes("angle", QuantityKind.Angle).Returns(ValueKind.Number, function, derivative).Example(example, result);
        yield return FunctionDefinition.Named(name, meaning.TrimEnd('.') + " of a plain number, taken as radians.", Source)
            .Takes("radians", ValueKind.Number)
            .Returns(ValueKind.Number, function, derivative)
            .Example(name == "sin" ? "sin(pi / 6)" : name == "cos" ? "cos(pi / 3)" : "tan(pi / 4)", result);
    }

    private static QuantityKind? RootKind(QuantityKind kind) =>
        kind.Nature < QuantityNature.Point && kind.Dimension.TryPower(1, out Dimension root) ? (kind.Dimension.IsNone ? kind : QuantityKind.Of(root)) : null;

    private static QuantityKind? MagnitudeKind(QuantityKind kind) =>
        kind.Nature == QuantityNature.Point || kind.Reference != LevelReference.None ? null : kind;

    private static double Smallest(FunctionArguments arguments)
    {
        double smallest = arguments.SiValue(0);
        for (int i = 1; i < arguments.Count; i++) smallest = Math.Min(smallest, arguments.SiValue(i));
        return smallest;
    }

    private static double Greatest(FunctionArguments arguments)
    {
        double greatest = arguments.SiValue(0);
        for (int i = 1; i < arguments.Count; i++) greatest = Math.Max(greatest, arguments.SiValue(i));
        return greatest;
    }

    /// <summary>Scaled by the greatest, so that squares neither overflow nor vanish.</summary>
    private static double Mean(FunctionArguments arguments)
    {
        double sum = 0;
        for (int i = 0; i < arguments.Count; i++) sum += arguments.SiValue(i);
        return sum / arguments.Count;
    }

    private static double RootSumOfSquares(FunctionArguments arguments)
    {
        double greatest = 0, sum = 0;
        for (int i = 0; i < arguments.Count; i++) greatest = Math.Max(greatest, Math.Abs(arguments.SiValue(i)));
        if (greatest == 0) return 0;
        for (int i = 0; i < arguments.Count; i++)
        {
            double part = arguments.SiValue(i) / greatest;
            sum += part * part;
        }
        return greatest * Math.Sqrt(sum);
    }

    private static double AboveZero(double value) => Refuse.UnlessAboveZero(value, QuantityKind.Ratio, "value", "the logarithm of zero or less does not exist");

    private static double WithinOne(double value) =>
        Math.Abs(value) <= 1 ? value : throw Refuse.OutOfRange(value, QuantityKind.Ratio, "value", "from -1 to 1");
}
