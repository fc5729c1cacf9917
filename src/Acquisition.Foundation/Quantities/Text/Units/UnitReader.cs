namespace Acquisition.Core;

/// <summary>
/// Reads a unit expression at a place in a text: symbols with prefixes and powers, joined by <c>*</c> or <c>·</c> and at most one <c>/</c>, without
/// spaces inside. Work is bounded by the number of factors.
/// </summary>
internal static class UnitReader
{
    private const int MostFactors = 12;

    /// <summary>Whether a whole word, such as a name in a formula, is a unit (with or without prefix).</summary>
    internal static bool IsUnit(Chars word)
    {
        int at = 0;
        return UnitFactor.TryRead(word, ref at, embedded: true, out _, out _) && at == word.Length;
    }

    /// <summary>Reads a unit expression.</summary>
    /// <param name="text">The text.</param>
    /// <param name="start">Where the expression begins.</param>
    /// <param name="embedded">
    /// Whether the text goes on after it, as in a formula: then the expression ends before an operator that no unit follows (<c>5 V/R1</c>, <c>5 V*2</c>).
    /// Otherwise such an operator is a problem.
    /// </param>
    /// <param name="reading">What it is, and where it ends.</param>
    /// <param name="problem">Why it is none: <see cref="TextFault.UnitExpected"/> and <see cref="TextFault.UnknownUnit"/> at the start mean that there is no unit here at all.</param>
    internal static bool TryRead(Chars text, int start, bool embedded, out UnitReading reading, out TextProblem problem)
    {
        problem = default;
        return TryReadSymbol(text, start, out reading) || TryReadExpression(text, start, embedded, out reading, out problem);
    }

    /// <summary>The frequent case: a single symbol that plainly ends. False says nothing but that it is another case.</summary>
    internal static bool TryReadSymbol(Chars text, int start, out UnitReading reading)
    {
        reading = default;
        long key = 0;
        int end = start, code = 0;
        while (end < text.Length && (code = SymbolKey.Code(text[end])) != 0)
        {
            key = key << 6 | (long)code;
            end++;
        }
        if (end < text.Length && (text[end] > '~' || text[end] is '/' or '*' or '^' or '(' or '_' or (>= '0' and <= '9'))) return false;
        int letters = end - start;
        if (letters == 0 || letters > SymbolKey.MaximumLength || UnitTable.Find(key, letters, out Unit? unit, out UnitPrefix prefix) != UnitMatch.Found) return false;
        QuantityKind kind = unit!.Kind;
        reading = new UnitReading(kind.Dimension, kind.Nature, kind.Reference, unit.Scale.WithPrefix(prefix), end, unit.OffsetInHundredths, unit.Constant, kind);
        return true;
    }

    internal static bool TryReadExpression(Chars text, int start, bool embedded, out UnitReading reading, out TextProblem problem)
    {
        reading = default;
        int at = start;
        if (!UnitFactor.TryRead(text, ref at, embedded, out UnitFactor first, out problem)) return false;
        if (at >= text.Length || !(IsProductSign(text[at]) || text[at] == '/')) return TryAlone(first, at, out reading, out problem);
        if (first.Unit.IsLogarithmic) return TryReadLogarithmic(text, first, at, embedded, out reading, out problem);

        var product = new UnitProduct();
        if (!product.TryAdd(first, 1, at, out problem)) return ContinueAlone(text, first, at, embedded, ref problem, out reading);
        int count = 1;
        if (!TryReadFactors(text, ref at, embedded, 1, ref product, ref count, out problem)) return false;
        if (at < text.Length && text[at] == '/')
        {
            int afterSlash = at + 1, countAbove = count;
            UnitProduct above = product;
            if (!TryReadDenominator(text, ref afterSlash, embedded, ref product, ref count, out UnitFactor below, out problem))
            {
                if (!embedded || !IsAbsent(problem)) return false;
                // What follows is an operand of the formula, although it may begin with a unit: 10 V/(s * 2).
                product = above;
                count = countAbove;
                if (count == 1) return TryAlone(first, at, out reading, out problem);
            }
            else
            {
                at = afterSlash;
                if (count == 2 && IsFrontPanelSampleRate(first, below)) product.Dimension = QuantityKind.SampleRate.Dimension;
                if (HasSecondSlash(text, at, embedded))
                {
                    problem = new TextProblem(TextFault.SecondSlash, at, 1);
                    return false;
                }
            }
        }
        if (count == 1) return TryAlone(first, at, out reading, out problem);
        return product.TryFinish(start, at, out reading, out problem);
    }

    private static bool TryReadFactors(Chars text, ref int at, bool embedded, int sign, ref UnitProduct product, ref int count, out TextProblem problem)
    {
        problem = default;
        while (at < text.Length && IsProductSign(text[at]))
        {
            int next = at + 1;
            if (!UnitFactor.TryRead(text, ref next, embedded, out UnitFactor factor, out problem)) return embedded && IsAbsent(problem);
            if (!TryAdd(factor, sign, next, ref product, ref count, out problem)) return false;
            at = next;
        }
        return true;
    }

    private static bool TryReadDenominator(Chars text, ref int at, bool embedded, ref UnitProduct product, ref int count, out UnitFactor first, out TextProblem problem)
    {
        bool isGroup = at < text.Length && text[at] == '(';
        if (isGroup) at++;
        if (!UnitFactor.TryRead(text, ref at, embedded, out first, out problem) || !TryAdd(first, -1, at, ref product, ref count, out problem)) return false;
        if (!isGroup) return true;
        if (!TryReadFactors(text, ref at, embedded, -1, ref product, ref count, out problem)) return false;
        if (at < text.Length && text[at] == ')')
        {
            at++;
            return true;
        }
        problem = new TextProblem(TextFault.ClosingParenthesisExpected, at, 0);
        return false;
    }

    private static bool TryAdd(in UnitFactor factor, int sign, int end, ref UnitProduct product, ref int count, out TextProblem problem)
    {
        if (++count <= MostFactors) return product.TryAdd(factor, sign, end, out problem);
        problem = new TextProblem(TextFault.TooManyFactors, factor.Start, end - factor.Start);
        return false;
    }

    /// <summary>A single factor: everything the table holds, or a linear unit to a power.</summary>
    private static bool TryAlone(in UnitFactor factor, int end, out UnitReading reading, out TextProblem problem)
    {
        Unit unit = factor.Unit;
        problem = default;
        if (factor.IsPlain)
        {
            QuantityKind kind = unit.Kind;
            reading = new UnitReading(kind.Dimension, kind.Nature, kind.Reference, unit.Scale.WithPrefix(factor.Prefix), end, unit.OffsetInHundredths, unit.Constant, kind);
            return true;
        }
        var product = new UnitProduct();
        reading = default;
        return product.TryAdd(factor, 1, end, out problem) && product.TryFinish(factor.Start, end, out reading, out problem);
    }

    /// <summary>The first factor cannot be multiplied; in a formula it may still stand alone before an operator that no unit follows.</summary>
    private static bool ContinueAlone(Chars text, in UnitFactor first, int at, bool embedded, ref TextProblem problem, out UnitReading reading)
    {
        reading = default;
        int next = at + 1;
        bool unitFollows = UnitFactor.TryRead(text, ref next, embedded, out _, out TextProblem none);
        if (!unitFollows && !embedded) problem = none;
        return embedded && !unitFollows && TryAlone(first, at, out reading, out problem);
    }

    /// <summary>dB/m, dB/octave, dB/decade, and dBm/Hz, dBc/Hz, dBFS/Hz; nothing else (handbook 13.8).</summary>
    private static bool TryReadLogarithmic(Chars text, in UnitFactor first, int at, bool embedded, out UnitReading reading, out TextProblem problem)
    {
        reading = default;
        int end = at + 1;
        if (!UnitFactor.TryRead(text, ref end, embedded, out UnitFactor below, out problem))
            return embedded && IsAbsent(problem) && TryAlone(first, at, out reading, out problem);
        problem = new TextProblem(TextFault.LogarithmInProduct, first.Start, end - first.Start);
        if (text[at] != '/' || HasSecondSlash(text, end, embedded) || !first.IsPlain || !below.IsPlain) return false;

        Unit unit = first.Unit, per = below.Unit;
        UnitScale perScale = per.Scale.WithPrefix(below.Prefix);
        bool isSlope = unit.Reference == LevelReference.None && (per.Dimension == Dimension.Length || per.Dimension == Dimension.Octave || per.Dimension == Dimension.Decade);
        bool isDensity = unit.Reference is not (LevelReference.None or LevelReference.Volt) && per.Symbol == "Hz";
        if (isSlope && perScale.TryPower(-2, out UnitScale scale))
            reading = new UnitReading(Dimension.None / per.Dimension, QuantityNature.DecibelSlope, LevelReference.None, scale, end, 0, unit.Constant);
        else if (isDensity)
            reading = new UnitReading(unit.Dimension * Dimension.Time, QuantityNature.LevelDensity, unit.Reference, UnitScale.One, end, unit.OffsetInHundredths - 1000 * perScale.PowerOfTen);
        else
            return false;
        problem = default;
        return true;
    }

    /// <summary><c>GS/s</c> is printed on many front panels and means samples; without a prefix from k upwards S is siemens.</summary>
    private static bool IsFrontPanelSampleRate(in UnitFactor above, in UnitFactor below) =>
        above.IsPlain && above.Unit.Symbol == "S" && above.Prefix.PowerOfTen >= 3 && below.IsPlain && below.Unit.Symbol == "s" && below.Prefix.PowerOfTen == 0;

    private static bool HasSecondSlash(Chars text, int at, bool embedded)
    {
        if (at >= text.Length || !(IsProductSign(text[at]) || text[at] == '/')) return false;
        int next = at + 1;
        return !embedded || UnitFactor.TryRead(text, ref next, embedded, out _, out _);
    }

    private static bool IsAbsent(in TextProblem problem) => problem.Fault is TextFault.UnitExpected or TextFault.UnknownUnit or TextFault.PrefixRefused or TextFault.ClosingParenthesisExpected;

    private static bool IsProductSign(char c) => c is '*' or '·' or '⋅';
}
