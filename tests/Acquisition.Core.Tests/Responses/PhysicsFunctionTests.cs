using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas;
using Acquisition.Core.Functions;
using Acquisition.Core.Responses;
using Acquisition.Core.Signals;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>Every function of signals and responses: its example gives what it says.</summary>
public class PhysicsFunctionTests
{
    public static IEnumerable<object[]> Examples => SignalFunctions.Waveforms().Concat(SignalFunctions.Amplitudes()).Concat(SignalFunctions.Spectrum())
        .Concat(ResponseFunctions.Models()).Concat(ResponseFunctions.InFrequency()).Concat(ResponseFunctions.InTime()).Select(function => new object[] { function.ExampleText, function.ExampleResult });

    [Theory, MemberData(nameof(Examples))]
    public void Example_GivesWhatItSays(string text, string result)
    {
        Quantity actual = Formula.Build(text).Evaluate().Quantity, expected = Formula.Build(result).Evaluate().Quantity;
        string digits = new(result.TakeWhile(c => c is not (' ' or '%')).ToArray());
        int decimals = digits.Contains('.', StringComparison.Ordinal) ? digits.Length - digits.IndexOf('.', StringComparison.Ordinal) - 1 : 6;
        double written = double.Parse(digits, System.Globalization.CultureInfo.InvariantCulture), unit = written == 0 ? 1 : expected.SiValue / written;
        Assert.True(actual.Kind == expected.Kind, $"{text}: {actual.Kind} against {expected.Kind}");
        Assert.True(Math.Abs(actual.SiValue - expected.SiValue) <= 0.51 * Math.Pow(10, -decimals) * Math.Abs(unit), $"{text} gives {actual}, not {result}");
    }

    [Fact]
    public void AnOrderThatIsNotWhole_IsRefused() =>
        Assert.Contains("order must be a whole number; was 2.5", Assert.Throws<FormulaException>(() => Formula.Build("bandwidth(butterworth(2.5, 1 MHz))").Evaluate()).Message, StringComparison.Ordinal);

    [Fact]
    public void ABandwidthThatDoesNotExist_IsRefused_WithTheReason() =>
        Assert.Contains("never falls", Assert.Throws<FormulaException>(() => Formula.Build("bandwidth(attenuator(20 dB))").Evaluate()).Message, StringComparison.Ordinal);
}
