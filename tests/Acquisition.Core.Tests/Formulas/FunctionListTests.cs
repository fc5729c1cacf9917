using System;
using System.IO;
using System.Linq;
using Acquisition.Core.Formulas;
using Acquisition.Core.Functions;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

public sealed class FunctionListTests
{
    public static TheoryData<string> Examples() => new(StandardFunctions.Set.All.Select(function => function.ExampleText).Distinct());

    [Fact]
    public void EveryFunction_HasAnExampleThatCallsIt() =>
        Assert.All(StandardFunctions.Set.All, function => Assert.Contains(function.Name, function.ExampleText, StringComparison.Ordinal));

    /// <summary>A name that is missing here could not be called, because nothing else makes the declarations run.</summary>
    [Fact]
    public void EveryGroup_DeclaresExactlyTheNamesItIsKnownBy() =>
        Assert.All(StandardFunctions.Set.Groups, group => Assert.Equal(group.Definitions.Select(function => function.Name).Distinct(), group.Names));

    [Fact]
    public void EveryFunction_CanBeToldApartFromTheOthers() =>
        Assert.Equal(StandardFunctions.Set.All, FunctionSet.Empty.With(StandardFunctions.Set.All).All);

    /// <summary>The example gives what the declaration says, to the digits shown there.</summary>
    [Theory]
    [MemberData(nameof(Examples))]
    public void Example_GivesWhatIsDeclared(string example)
    {
        FunctionDefinition function = StandardFunctions.Set.All.First(each => each.ExampleText == example);
        FormulaValue value = Formula.Build(example).Evaluate();
        if (!value.Kind.IsQuantity)
        {
            Assert.Equal(function.ExampleResult, value.ToString());
            return;
        }
        Quantity expected = Quantity.Parse(function.ExampleResult);
        Assert.Equal(expected.Kind, value.Quantity.Kind);
        Assert.True(Math.Abs(value.SiValue - expected.SiValue) <= HalfADigit(function.ExampleResult), $"{example} is {value}, declared as {function.ExampleResult}");
    }

    /// <summary>Declared derivatives agree with numerical ones at the example's arguments.</summary>
    [Fact]
    public void DeclaredDerivatives_AgreeWithNumericalOnes()
    {
        foreach (FunctionDefinition function in StandardFunctions.Set.All.Where(each => each.HasDerivatives && each.Parameters.All(parameter => parameter.Kind.Quantity is not null)))
        {
            FormulaContext context = FormulaContext.Standard;
            for (int i = 0; i < function.Parameters.Count; i++) context = context.WithInput("x_" + i, function.Parameters[i].Kind);
            Formula formula = context.Build($"{function.Name}({string.Join(", ", context.Inputs.Select(input => input.Name))})");
            double[] inputs = ExampleArguments(function);
            if (inputs.Length != function.Parameters.Count) continue;
            double[] scales = Array.ConvertAll(inputs, input => Math.Abs(input) * 1e-3);
            double[] declared = formula.Sensitivities(inputs, null, scales).Derivatives;
            for (int i = 0; i < inputs.Length; i++)
            {
                int moved = i;
                double numerical = Acquisition.Core.Uncertainty.NumericalDerivative.At(
                    x => formula.EvaluateSi(inputs.Select((input, j) => j == moved ? x : input).ToArray()), inputs[i], inputs[i] == 0 ? 1e-9 : scales[i], out _);
                // An argument that must be whole, such as a record length, cannot be moved a little.
                if (double.IsNaN(numerical)) continue;
                Assert.True(Math.Abs(declared[i] - numerical) <= 1e-5 * Math.Max(Math.Abs(numerical), 1e-12), $"{function.Name}: declared {declared[i]:R}, numerical {numerical:R} by {function.Parameters[i].Name}");
            }
        }
    }

    /// <summary>Regenerate with ACQUISITION_WRITE_DOCS=1 dotnet test --filter FunctionListTests.</summary>
    [Fact]
    public void FunctionList_IsWhatTheDocumentSays()
    {
        string path = Path.Combine(Root(), "docs", "functions.md");
        string current = StandardFunctions.Set.ToMarkdown();
        if (Environment.GetEnvironmentVariable("ACQUISITION_WRITE_DOCS") == "1") File.WriteAllText(path, current);
        Assert.True(File.Exists(path) && File.ReadAllText(path).ReplaceLineEndings("\n") == current, "docs/functions.md is not the list of the code; regenerate it with: ACQUISITION_WRITE_DOCS=1 dotnet test --filter FunctionListTests");
    }

    private static double[] ExampleArguments(FunctionDefinition function)
    {
        var call = (Acquisition.Core.Formulas.Syntax.FormulaNode)Formula.Build(function.ExampleText).Root;
        while (call is Acquisition.Core.Formulas.Syntax.ConversionNode conversion) call = conversion.Operand;
        return call is Acquisition.Core.Formulas.Syntax.CallNode { Arguments: var arguments } && arguments.All(argument => argument.Name is null)
            ? arguments.Select(argument => Formula.Build(Acquisition.Core.Formulas.Syntax.FormulaWriter.Write(argument.Value)).EvaluateSi()).ToArray()
            : [];
    }

    private static double HalfADigit(string text)
    {
        string number = new(text.TakeWhile(c => c is '-' or '.' or 'e' or '+' || char.IsAsciiDigit(c)).ToArray());
        int decimals = number.Contains('.', StringComparison.Ordinal) ? number.Length - number.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        string step = decimals == 0 ? "0.5" : "0." + new string('0', decimals) + "5";
        Quantity half = Quantity.Parse(step + text[number.Length..]), zero = Quantity.Parse("0" + text[number.Length..]);
        return (half.SiValue - zero.SiValue) * (1 + 1e-9);
    }

    internal static string Root()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Acquisition.Core.sln"))) return folder.FullName;
        }
        throw new DirectoryNotFoundException("the solution folder is not above " + AppContext.BaseDirectory);
    }
}
