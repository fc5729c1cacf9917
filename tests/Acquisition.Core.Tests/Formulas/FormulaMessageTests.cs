using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

/// <summary>What is said about each mistake, word for word. This list is the specification of the messages.</summary>
public sealed class FormulaMessageTests
{
    private static readonly FormulaContext Context = FormulaContext.Standard.WithFunctions(Sketches.All)
        .WithInput("clock", QuantityKind.Frequency).WithInput("edge", QuantityKind.Duration).WithInput("n", QuantityKind.Ratio);

    [Theory]
    // Nothing, or something missing.
    [InlineData("", "column 1: found the end of the formula, expected a value")]
    [InlineData("1 +", "column 4: found the end of the formula, expected a value")]
    [InlineData("* 2", "column 1: found '*', expected a value")]
    [InlineData("2 * (3 s + 4 ns", "column 16: found the end of the formula, expected ')' for the '(' at column 5")]
    [InlineData("period(24 MHz", "column 14: found the end of the formula, expected ')' for the '(' of period at column 7")]
    [InlineData("(1 + 2", "column 7: found the end of the formula, expected ')' for the '(' at column 1")]
    [InlineData("1 + 2)", "column 6: found ')' without '(' before it")]
    [InlineData("min(1, )", "column 8: found ')', expected a value")]
    [InlineData("if n > 1 then 2", "column 16: found the end of the formula, expected 'else' of the 'if' at column 1")]
    [InlineData("if n > 1, 2, 3", "column 9: found ',', expected 'then' of the 'if' at column 1")]
    [InlineData("\"sinc", "column 1: found '\"' without its end, expected another '\"'")]
    [InlineData("+ 3", "column 1: found '+' without a left operand, expected a value")]
    // Not of the language.
    [InlineData("2,5 GHz", "column 2: found ',', expected a decimal point or an operator; did you mean 2.5?")]
    [InlineData("n = 3", "column 3: found '=', expected an operator; did you mean ==?")]
    [InlineData("n ** 2", "column 3: found '**', expected an operator; did you mean ^?")]
    [InlineData("n × 2", "column 3: found '×', expected an operator; did you mean *?")]
    [InlineData("n > 1 && n < 2", "column 7: found '&&', expected an operator; did you mean and?")]
    [InlineData("n² + 1", "column 2: found '²', expected an operator or the end of the formula; did you mean ^2?")]
    [InlineData("1 < n < 3", "column 7: comparisons do not follow one another; did you mean 1 < n and n < 3?")]
    [InlineData("n n", "column 3: found 'n', expected an operator or the end of the formula")]
    [InlineData("'sinc'", "column 1: found 'sinc', expected a value; did you mean \"sinc\"?")]
    [InlineData("5 @ 3", "column 3: found '@', expected an operator or the end of the formula")]
    [InlineData("٣ + 1", "column 1: found a digit of another script, expected digits 0 to 9")]
    // Numbers and units.
    [InlineData("0.35 / 100 Mhz", "column 12: 'Mhz' is not a unit; did you mean MHz or mHz?")]
    [InlineData("100 MHzz", "column 5: 'MHzz' is not a unit; did you mean MHz or mHz?")]
    [InlineData("1 furlong", "column 3: 'furlong' is not a unit")]
    [InlineData("1e400", "column 1: found '1e400', expected a value that a double holds, up to 1.7976931348623157E+308")]
    [InlineData("1 V/m/s", "column 6: found '/', expected the end of the unit after one '/'; parentheses say what is below it: V/(m·s) or V·s/m")]
    [InlineData("10:0", "column 1: found the ratio 10:0, expected one whose second number is not 0")]
    [InlineData("edge in Ns", "column 9: 'Ns' is not a unit; did you mean ns or nS?")]
    [InlineData("edge in", "column 8: found the end of the formula, expected a unit after 'in'")]
    // Names.
    [InlineData("0.35 / clok", "column 8: 'clok' is not known; did you mean clock?")]
    [InlineData("0.35 / Clock", "column 8: 'Clock' is not known; did you mean clock?")]
    [InlineData("xyzzy + 1", "column 1: 'xyzzy' is not known")]
    [InlineData("priod(clock)", "column 1: 'priod' is no function; did you mean period?")]
    [InlineData("period + 1", "column 1: found the function 'period' without its arguments, expected period(frequency: frequency)")]
    [InlineData("clock(2)", "column 1: found 'clock', which is a value and not a function; expected an operator between it and '('")]
    // Dimensions and kinds.
    [InlineData("1 GSa/s + 1 MHz", "column 11: found a frequency (1 MHz), expected a sample rate; did you mean 1 MSa/s?")]
    [InlineData("clock + edge", "column 9: found a duration (edge), expected a frequency")]
    [InlineData("edge > 3", "column 8: found a ratio (3), expected a duration")]
    [InlineData("1 Vpp + 1 Vrms", "column 9: found an rms voltage (1 Vrms), expected a peak-to-peak voltage (amplitudes stated differently do not meet); for a sine, sine_peak_to_peak converts it")]
    [InlineData("sine_peak(1 Vpp)", "column 11: found a peak-to-peak voltage (1 Vpp), expected an rms voltage for 'rms' of sine_peak; for a sine, sine_rms converts it")]
    [InlineData("sine_peak(1 V)", "column 11: found a voltage (1 V), expected an rms voltage for 'rms' of sine_peak; did you mean 1 Vrms?")]
    [InlineData("1 mW in dBm", "column 1: found a power (1 mW), expected a power level before 'in dBm'; power_level converts it")]
    [InlineData("0 dBm in mW", "column 1: found a power level (0 dBm), expected a power before 'in mW'; power converts it")]
    [InlineData("1 Vrms in dBV", "column 1: found an rms voltage (1 Vrms), expected a voltage level before 'in dBV'; voltage_level converts it")]
    [InlineData("1 Vpk in Vpp", "column 1: found a peak voltage (1 Vpk), expected a peak-to-peak voltage before 'in Vpp'; for a sine, sine_peak_to_peak(sine_rms(...)) converts it")]
    // Mean power is Vrms Irms: 1 Vpp into 50 Ω is 2.5 mW as a sine and 5 mW as a square, so that no number can be given for it (handbook 1.5).
    [InlineData("(1 Vpp)^2 / 50 Ω", "column 2: found a peak-to-peak voltage (1 Vpp), expected an rms value, as only rms times rms is a mean power; convert to rms: half of it divided by the crest factor, for a sine Vpp/(2√2), by sine_rms")]
    [InlineData("(1 Vpk)^2 / 50 Ω", "column 2: found a peak voltage (1 Vpk), expected an rms value, as only rms times rms is a mean power; convert to rms: divided by the crest factor, for a sine Vpk/√2, by sine_rms")]
    [InlineData("1 Vpk * 1 Apk", "column 1: found a peak voltage (1 Vpk), expected an rms value, as only rms times rms is a mean power; convert to rms: divided by the crest factor, for a sine Vpk/√2, by sine_rms")]
    [InlineData("1 Vrms * 20 mApp", "column 10: found a peak-to-peak current (20 mApp), expected an rms value, as only rms times rms is a mean power; convert to rms: half of it divided by the crest factor, for a sine Vpp/(2√2)")]
    [InlineData("1 V * 20 mApk", "column 7: found a peak current (20 mApk), expected an rms value, as only rms times rms is a mean power; convert to rms: divided by the crest factor, for a sine Vpk/√2")]
    [InlineData("1 Vpp * 1 Vrms", "column 1: found a peak-to-peak voltage (1 Vpp), expected an rms value, as only rms times rms is a mean power; convert to rms: half of it divided by the crest factor, for a sine Vpp/(2√2), by sine_rms")]
    [InlineData("1 Vrms * 2 A", "column 10: found a current (2 A), expected an rms value, as only rms times rms is a mean power; state both as rms, or neither")]
    [InlineData("1 Vpp / 1 Arms", "column 9: found an rms current (1 Arms), expected an amplitude stated as the one before '/' is (peak, peak-to-peak and rms do not meet)")]
    [InlineData("-10 dBm + -20 dBm", "column 11: found a power level (-20 dBm), expected decibels (levels do not add; add the powers: see power_sum)")]
    [InlineData("-10 dBm * 2", "column 11: found a ratio (2), expected decibels with + or - (leave the logarithm by name: voltage_ratio, power_ratio, power, voltage)")]
    [InlineData("3 dB * 3 dB", "column 8: found a decibel ratio (3 dB), expected a plain number (leave the logarithm by name: voltage_ratio, power_ratio, power, voltage)")]
    [InlineData("3 dB + 1", "column 8: found a ratio (1), expected a decibel ratio")]
    [InlineData("20 °C + 10 °C", "column 9: found a temperature (10 °C), expected a temperature difference (two points on a scale do not add)")]
    [InlineData("2 * 20 °C", "column 5: found a temperature (20 °C), expected a temperature difference (a temperature is a point on a scale and cannot be scaled)")]
    [InlineData("clock in ns", "column 1: found a frequency (clock), expected a duration before 'in ns'")]
    [InlineData("(1 V)^0.3", "column 7: found a ratio (0.3), expected an exponent that is a whole number of halves")]
    [InlineData("clock ^ n", "column 9: found a ratio (n), expected an exponent that is known when the formula is built, because the unit of a frequency depends on it")]
    [InlineData("2 ^ (1 V)", "column 6: found a voltage (1 V), expected a plain number as exponent")]
    [InlineData("not n", "column 5: found a ratio (n), expected a truth value after 'not'")]
    [InlineData("n > 1 and clock", "column 11: found a frequency (clock), expected a truth value after 'and'")]
    [InlineData("if n then 1 else 2", "column 4: found a ratio (n), expected a truth value after 'if'")]
    [InlineData("if n > 1 then 1 V else 1 A", "column 24: found a current (1 A), expected a voltage as after 'then'")]
    [InlineData("\"a\" + 1", "column 1: found a text (\"a\"), expected a quantity before '+'")]
    // Calls.
    [InlineData("nyquist_frequency(1 MHz)", "column 19: found a frequency (1 MHz), expected a sample rate for 'sample_rate' of nyquist_frequency; did you mean 1 MSa/s?")]
    [InlineData("angular_frequency(frequncy: 1 MHz)", "column 19: angular_frequency has no parameter 'frequncy'; did you mean frequency?")]
    [InlineData("angular_frequency(1 MHz, 2)", "column 26: found argument 2 of angular_frequency, expected at most 1: angular_frequency(frequency: frequency)")]
    [InlineData("angular_frequency()", "column 19: angular_frequency needs 'frequency': angular_frequency(frequency: frequency)")]
    [InlineData("atan2(1 V, up: 2 V)", "column 12: 'up' of atan2 is given twice")]
    [InlineData("atan2(up: 1 V, 2 V)", "column 16: found an argument without a name after one with a name")]
    [InlineData("min(1 V, 1 A)", "column 10: found a current (1 A), expected a voltage as the first argument of min")]
    [InlineData("sin(1 V)", "column 1: found sin of a voltage (1 V), expected sin(angle: angle) or sin(radians: ratio)")]
    [InlineData("sqrt(3 dBm)", "column 6: found a power level (3 dBm), expected a quantity that sqrt can take (no logarithm and no point on a scale)")]
    [InlineData("line(\"dashd\", 3)", "column 6: found \"dashd\", expected \"plain\" or \"dashed\" for 'style' of line; did you mean \"dashed\"?")]
    // Uncertain values.
    [InlineData("clock ± 1 V", "column 9: found a voltage (1 V), expected a frequency or a percentage")]
    [InlineData("-3 dBm ± 5 %", "column 10: found a ratio (5 %), expected a decibel ratio")]
    [InlineData("n ± 5 %", "column 5: found a ratio (5 %), expected a half-width without % (of a plain number it could mean points or a part of the value)")]
    [InlineData("clock ± -5 %", "column 9: found a ratio (-5 %), expected a half-width of at least 0")]
    [InlineData("clock ± 5 % (k=0)", "column 16: a coverage factor lies above 0 and is at most 100")]
    public void Mistake_IsExplained(string text, string message)
    {
        Assert.False(Context.TryBuild(text, out Formula? formula, out IReadOnlyList<FormulaProblem> problems));
        Assert.Null(formula);
        Assert.Equal(message, string.Join(" | ", problems));
    }

    [Theory]
    [InlineData("1 / (n - n)", "column 1: division by zero")]
    [InlineData("sqrt(1 - n)", "column 1: square root of a negative value")]
    [InlineData("(0 - n) ^ 0.3", "column 2: the power has no finite real value")]
    [InlineData("10 ^ (n * 200)", "column 1: the power has no finite real value")]
    [InlineData("1e300 * n * 1e10", "column 1: the value is too large")]
    [InlineData("1 s + period(clock - clock)", "column 7: period: frequency must be above 0 Hz; was 0 Hz")]
    [InlineData("ln(1 - n)", "column 1: ln: value must be above 0; was -1; the logarithm of zero or less does not exist")]
    public void EvaluationWithoutAValue_IsExplained(string text, string message)
    {
        Formula formula = Context.Build(text);
        Assert.Equal(message, Assert.Throws<FormulaException>(() => formula.EvaluateSi(24e6, 1e-9, 2)).Message);
        Assert.Equal(message, Assert.Throws<FormulaException>(() => formula.Evaluate(Quantity.Parse("24 MHz"), Quantity.Parse("1 ns"), Quantity.Parse("2"))).Message);
    }

    [Fact]
    public void AllMistakes_AreReportedAtOnce()
    {
        Context.TryBuild("clok + 100 Mhz +\n (1 V + 1 A) * foo(3)", out _, out IReadOnlyList<FormulaProblem> problems);
        Assert.Equal(
            [
                "line 1, column 1: 'clok' is not known; did you mean clock?",
                "line 1, column 12: 'Mhz' is not a unit; did you mean MHz or mHz?",
                "line 2, column 9: found a current (1 A), expected a voltage",
                "line 2, column 16: 'foo' is no function",
            ],
            problems.Select(problem => problem.ToString()));
        Assert.Equal("clock", problems[0].Suggestion);
        Assert.Equal((11, 3), (problems[1].Start, problems[1].Length));
    }

    [Fact]
    public void Exception_CarriesEveryProblem()
    {
        var refusal = Assert.Throws<FormulaException>(() => Context.Build("clok + 100 Mhz"));
        Assert.Equal(2, refusal.Problems.Count);
        Assert.Equal(2, refusal.Message.Split(Environment.NewLine).Length);
    }
}
