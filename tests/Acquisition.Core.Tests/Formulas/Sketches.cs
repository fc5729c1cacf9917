using System;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Tests.Formulas;

/// <summary>Functions over a model of the test's own: what formulas do with models does not depend on which they are.</summary>
internal static class Sketches
{
    internal sealed record Line(double Length, double Thickness, string Style);

    internal static readonly ValueKind LineKind = ValueKind.Model<Line>("line");

    internal static readonly FunctionDefinition[] All =
    [
        FunctionDefinition.Named("line", "A line.", "common practice, no source")
            .Takes("style", ValueKind.Choice("style", "plain", "dashed"))
            .Takes("length", ValueKind.Number)
            .TakesOptional("thickness", QuantityKind.Ratio, 1)
            .ReturnsObject(LineKind, arguments => arguments.SiValue(1) > 0
                ? new Line(arguments.SiValue(1), arguments.SiValue(2), arguments.Text(0))
                : throw new ArgumentOutOfRangeException("length", $"length must be above 0; was {arguments.SiValue(1)}"))
            .Example("line(\"plain\", 3)", ""),
        FunctionDefinition.Named("width", "Length times thickness.", "common practice, no source")
            .Takes("line", LineKind)
            .Returns(ValueKind.Number, (Line line) => line.Length * line.Thickness)
            .Example("width(line(\"plain\", 3))", "3"),
    ];
}
