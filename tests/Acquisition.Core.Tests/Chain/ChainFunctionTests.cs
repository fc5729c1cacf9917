using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Acquisition.Core.Chain;
using Acquisition.Core.Digitizing;
using Acquisition.Core.Formulas;
using Acquisition.Core.Functions;
using Xunit;

namespace Acquisition.Core.Tests.Chain;

/// <summary>Every example of a function of chains and digitizing gives what it says, to the digits shown.</summary>
public sealed class ChainFunctionTests
{
    public static IEnumerable<object[]> Examples => ChainFunctions.All().Concat(DigitizingFunctions.All()).Select(function => new object[] { function.ExampleText, function.ExampleResult });

    [Theory, MemberData(nameof(Examples))]
    public void AnExample_GivesWhatItSays(string text, string result)
    {
        Quantity actual = Formula.Build(text).Evaluate().Quantity, expected = Formula.Build(result).Evaluate().Quantity;
        string digits = new(result.TakeWhile(c => c is not (' ' or '%')).ToArray());
        int decimals = digits.Contains('.', StringComparison.Ordinal) ? digits.Length - digits.IndexOf('.', StringComparison.Ordinal) - 1 : 6;
        double unit = expected.SiValue / double.Parse(digits, CultureInfo.InvariantCulture);
        Assert.Equal(expected.Kind, actual.Kind);
        Assert.True(Math.Abs(actual.SiValue - expected.SiValue) <= 0.51 * Math.Pow(10, -decimals) * Math.Abs(unit), $"{text} gives {actual}, not {result}");
    }

    [Fact]
    public void ARefusalInAFormula_IsTheOneOfTheMethod()
    {
        Exception refusal = Assert.ThrowsAny<Exception>(() => Formula.Build("linear_error(600 MHz, 1 GSa/s)").Evaluate());

        Assert.Contains("500 MHz", refusal.Message);
    }
}
