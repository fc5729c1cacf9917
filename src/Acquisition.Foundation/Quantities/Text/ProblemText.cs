namespace Acquisition.Core;

/// <summary>The sentences for what can be wrong with the text of a quantity. They are made only when somebody asks.</summary>
internal static class ProblemText
{
    internal static QuantityFormatException ToException(string text, TextProblem problem, QuantityKind? wanted, char decimalMark) =>
        new(problem.Start, Found(text, problem, decimalMark), Expected(text, problem, wanted, decimalMark), Suggestion(text, problem, wanted, decimalMark));

    internal static string Found(string text, TextProblem problem, char decimalMark)
    {
        string quoted = Quote(text, problem.Start, problem.Length);
        return problem.Fault switch
        {
            TextFault.Empty => "nothing",
            TextFault.TooLong => "more text",
            TextFault.UnitMissing => $"a plain number ({EchoedText.Of(text.Substring(problem.Start, problem.Length))})",
            TextFault.WrongKind when QuantityReader.TryRead(text, null, decimalMark, out QuantityReading reading, out _) =>
                $"{Article(reading.Kind.Name)} ({EchoedText.Of(text.Substring(problem.Start, problem.Length))})",
            _ => quoted,
        };
    }

    internal static string Expected(string text, TextProblem problem, QuantityKind? wanted, char decimalMark) => problem.Fault switch
    {
        TextFault.Empty => wanted is null ? "a quantity such as 100 MHz" : Kind(wanted),
        TextFault.TooLong => $"at most {QuantityReader.MaximumLength} characters",
        TextFault.NumberExpected => "a number",
        TextFault.FractionExpected => "a digit after the decimal separator",
        TextFault.GroupNotOfThree => "a unit, or a group of exactly three digits",
        TextFault.Comma => "a decimal point (a comma is read only with a culture that has one)",
        TextFault.Point when decimalMark == '.' => "the end of the number, which has a decimal point already",
        TextFault.Point => $"the decimal separator '{decimalMark}' of the culture that was asked for",
        TextFault.ForeignDigit => "a digit from 0 to 9",
        TextFault.TooLarge => "a value that a double holds, up to 1.7976931348623157E+308",
        TextFault.TooSmall => "0 or a value that a double holds, from 5E-324",
        TextFault.UnitExpected => "a unit",
        TextFault.UnknownUnit or TextFault.TrailingText or TextFault.UnitExpected when InsteadOfFahrenheit(text, problem.Start) is { } instead => instead,
        TextFault.UnknownUnit => wanted is null || wanted.Symbol.Length == 0 ? "a unit" : $"the unit of {Article(wanted.Name)}",
        TextFault.PrefixRefused => "a prefix that goes with the unit, or none",
        TextFault.PowerExpected => "an exponent",
        TextFault.PowerRefused => "an exponent from 0.5 to 63 in steps of one half",
        TextFault.ScaleRefused => "a unit whose scale can be held exactly",
        TextFault.SecondSlash => "the end of the unit after one '/'; parentheses say what is below it: " + BothReadings(text, problem.Start),
        TextFault.ClosingParenthesisExpected => "')'",
        TextFault.TooManyFactors => "at most 12 factors in a unit",
        TextFault.LogarithmInProduct => "a logarithmic unit alone, or dB/m, dB/octave, dB/decade, dBm/Hz, dBc/Hz, dBFS/Hz",
        TextFault.AmplitudeInProduct => "V or A in a product (only a single amplitude is stated as peak, peak to peak or rms)",
        TextFault.CelsiusInProduct => "K in a product (°C is a point on a scale)",
        TextFault.TrailingText => "the end of the text",
        TextFault.UnitMissing => Kind(wanted!) + " with its unit",
        TextFault.WrongKind when QuantityReader.TryRead(text, null, decimalMark, out QuantityReading reading, out _) && KindConversions.Hint(reading.Kind, wanted!) is { } hint =>
            Kind(wanted!) + " (in a formula, " + hint + ")",
        TextFault.WrongKind => Kind(wanted!),
        _ => "a quantity",
    };

    internal static string? Suggestion(string text, TextProblem problem, QuantityKind? wanted, char decimalMark) => problem.Fault switch
    {
        TextFault.PrefixRefused => UnitSuggestions.WithoutPrefix(text.Substring(problem.Start, problem.Length)),
        TextFault.UnknownUnit => UnitSuggestions.Near(text, problem.Start, problem.Length, wanted, decimalMark),
        TextFault.UnitMissing => EchoedText.Of(text.Trim()) + " " + wanted!.Symbol,
        TextFault.WrongKind => UnitSuggestions.OfKind(text, problem.Start, wanted!, decimalMark),
        TextFault.TrailingText => UnitSuggestions.AmplitudeOf(text, problem.Start, problem.Length),
        _ => null,
    };

    /// <summary>What to write instead where °F, degF or the F behind a degree sign stands; null where it does not. F alone is the farad.</summary>
    internal static string? InsteadOfFahrenheit(string text, int start)
    {
        bool isOne = start > 0 && start < text.Length && text[start] == 'F' && text[start - 1] == '°';
        foreach (string symbol in Fahrenheit) isOne |= string.CompareOrdinal(text, start, symbol, 0, symbol.Length) == 0;
        return isOne ? "°C or K (degrees Fahrenheit are not read: (t - 32)/1.8 are the degrees Celsius, so 77 are 25)" : null;
    }

    private static readonly string[] Fahrenheit = { "°F", "degF", "[degF]", "fahrenheit", "Fahrenheit" };

    private static string Kind(QuantityKind kind) => Article(kind.Name);

    internal static string Article(string name) => (name[0] is 'a' or 'e' or 'i' or 'o' || name.StartsWith("rms", System.StringComparison.Ordinal) ? "an " : "a ") + name;

    private static string Quote(string text, int start, int length)
    {
        if (start >= text.Length) return "the end of the text";
        int end = start + length;
        if (length == 0)
        {
            end = start + 1;
            while (char.IsLetterOrDigit(text[start]) && end < text.Length && char.IsLetterOrDigit(text[end])) end++;
        }
        return "'" + EchoedText.Of(text.Substring(start, end - start)) + "'";
    }

    /// <summary>For <c>V/m/s</c> and <c>V/m·s</c>: what each could mean, spelt so that it is read.</summary>
    private static string BothReadings(string text, int second)
    {
        int slash = text.LastIndexOf('/', second - 1);
        int start = slash, end = second + 1;
        while (start > 0 && !NumberReader.IsSpace(text[start - 1]) && !NumberReader.IsDigit(text, start - 1)) start--;
        while (end < text.Length && !NumberReader.IsSpace(text[end]) && text[end] is not ('/' or '*' or '·' or '⋅')) end++;
        string above = text.Substring(start, slash - start), first = text.Substring(slash + 1, second - slash - 1), last = text.Substring(second + 1, end - second - 1);
        return EchoedText.Of($"{above}/({first}·{last})") + " or " + EchoedText.Of($"{above}·{last}/{first}");
    }
}
