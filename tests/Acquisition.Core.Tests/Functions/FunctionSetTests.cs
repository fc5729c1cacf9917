using System;
using Acquisition.Core.Functions;
using Xunit;

namespace Acquisition.Core.Tests.Functions;

public sealed class FunctionSetTests
{
    private static FunctionDefinition Halved(string name, QuantityKind kind) =>
        FunctionDefinition.Named(name, "Half of it.", "common practice, no source").Takes("value", kind).Returns(kind, x => x / 2, _ => 0.5).Example(name, "");

    [Fact]
    public void FunctionsOfOneName_AreToldApartByTheirArguments()
    {
        FunctionSet catalog = FunctionSet.Empty.With(Halved("halved", QuantityKind.Frequency), Halved("halved", QuantityKind.Duration));
        Assert.Equal(2, catalog.Find("halved").Count);
    }

    [Fact]
    public void FunctionThatCannotBeToldApart_IsRefusedWhenDeclared()
    {
        FunctionSet catalog = FunctionSet.Empty.With(Halved("halved", QuantityKind.Frequency));
        var refusal = Assert.Throws<ArgumentException>(() => catalog.With(Halved("halved", QuantityKind.Frequency)));
        Assert.StartsWith("function halved(value: frequency) cannot be told apart from halved(value: frequency), which is declared already", refusal.Message, StringComparison.Ordinal);
        Assert.Single(catalog.Find("halved"));
    }

    [Theory]
    [InlineData("Period")]
    [InlineData("")]
    [InlineData("2nd")]
    [InlineData("rise time")]
    public void NameThatIsNotInSnakeCase_IsRefused(string name) =>
        Assert.Throws<ArgumentException>(() => FunctionDefinition.Named(name, "Something.", "common practice, no source"));

    [Fact]
    public void WordOfTheLanguage_IsNoFunctionName() =>
        Assert.Throws<ArgumentException>(() => FunctionSet.Empty.With(Halved("then", QuantityKind.Frequency)));

    [Fact]
    public void KernelThatTakesAnotherNumberOfArguments_IsRefused() =>
        Assert.Throws<ArgumentException>(() => FunctionDefinition.Named("sum", "The sum.", "common practice, no source").Takes("left", ValueKind.Number).Returns(ValueKind.Number, (a, b) => a + b));

    [Fact]
    public void KernelThatTakesAModelWhereAQuantityIsDeclared_IsRefused() =>
        Assert.Throws<ArgumentException>(() => FunctionDefinition.Named("length_of", "The length.", "common practice, no source").Takes("left", ValueKind.Number).Returns(ValueKind.Number, (Version v) => v.Major));

    [Fact]
    public void DeclaredDerivatives_AreAllOrNone() =>
        Assert.Throws<ArgumentException>(() => FunctionDefinition.Named("sum", "The sum.", "common practice, no source")
            .Takes("left", ValueKind.Number).Takes("right", ValueKind.Number).Returns(ValueKind.Number, (a, b) => a + b, (_, _) => 1));
}
