namespace Acquisition.Core;

/// <summary>One factor of a unit expression: a symbol with its prefix and power, such as <c>mV</c>, <c>s^-2</c> or <c>√Hz</c>.</summary>
internal readonly struct UnitFactor
{
    private const int HighestPower = 63;

    private UnitFactor(Unit unit, in UnitPrefix prefix, int halves, int start)
    {
        Unit = unit;
        Prefix = prefix;
        Halves = halves;
        Start = start;
    }

    internal readonly Unit Unit;

    internal readonly UnitPrefix Prefix;

    /// <summary>Twice the exponent.</summary>
    internal readonly int Halves;

    /// <summary>Where the factor begins.</summary>
    internal readonly int Start;

    /// <summary>Whether this is a unit as the table has it, without a power.</summary>
    internal bool IsPlain => Halves == 2;

    /// <summary>Reads one factor.</summary>
    /// <param name="text">The text.</param>
    /// <param name="at">Where the factor begins; afterwards, where it has ended. Unchanged where there is none.</param>
    /// <param name="embedded">Whether the text is a formula, in which a word before <c>(</c> is a function.</param>
    /// <param name="factor">The factor.</param>
    /// <param name="problem">Why there is none.</param>
    internal static bool TryRead(Chars text, ref int at, bool embedded, out UnitFactor factor, out TextProblem problem)
    {
        factor = default;
        int start = at, symbol = at;
        bool isRootSign = start < text.Length && text[start] == '√';
        bool isRootCall = !isRootSign && start < text.Length && text[start] == 's' && StartsWithRootCall(text, start);
        if (isRootSign) symbol++;
        if (isRootCall) symbol += 5;

        int end = symbol;
        long key = 0;
        int letters = 0;
        for (; end < text.Length; end++)
        {
            char c = text[end];
            int code = SymbolKey.Code(c == '\u2103' ? '°' : c);
            if (code == 0) break;
            key = key << 6 | (long)code;
            letters++;
            if (c != '\u2103') continue;
            key = key << 6 | (long)SymbolKey.Code('C');
            letters++;
        }
        if (letters == 0)
        {
            problem = new TextProblem(TextFault.UnitExpected, symbol, 0);
            return false;
        }
        if (end < text.Length && GoesOnAsName(text[end], embedded))
        {
            while (end < text.Length && (char.IsLetterOrDigit(text[end]) || text[end] == '_')) end++;
            problem = new TextProblem(TextFault.UnknownUnit, symbol, end - symbol);
            return false;
        }

        bool isRoot = isRootSign || isRootCall;
        Unit? unit = null;
        UnitPrefix prefix = UnitPrefix.None;
        UnitMatch match = letters > SymbolKey.MaximumLength ? UnitMatch.Unknown : UnitTable.Find(key, letters, out unit, out prefix);
        if (match == UnitMatch.Unknown && !isRoot && letters > 2 && letters <= SymbolKey.MaximumLength && text[symbol] == 'r' && text[symbol + 1] == 't')
        {
            match = UnitTable.Find(SymbolKey.Rest(key, letters, 2), letters - 2, out unit, out prefix);
            isRoot = match == UnitMatch.Found;
        }
        if (match != UnitMatch.Found || unit is null)
        {
            problem = new TextProblem(match == UnitMatch.PrefixRefused ? TextFault.PrefixRefused : TextFault.UnknownUnit, symbol, end - symbol);
            return false;
        }
        if (isRootCall)
        {
            if (end >= text.Length || text[end] != ')')
            {
                problem = new TextProblem(TextFault.ClosingParenthesisExpected, end, 0);
                return false;
            }
            end++;
        }

        int halves = isRoot ? 1 : 2;
        problem = default;
        if (!isRoot && IsPower(text, end) && !TryReadPower(text, ref end, ref halves, embedded, out problem)) return false;
        factor = new UnitFactor(unit, prefix, halves, start);
        at = end;
        return true;
    }

    private static bool GoesOnAsName(char c, bool embedded) =>
        IsDigit(c) || c == '_' || (char.IsLetter(c) && SuperscriptDigit(c) < 0) || (embedded && c == '(');

    private static bool IsPower(Chars text, int at) => at < text.Length && (text[at] == '^' || (text[at] > '~' && (text[at] == '⁻' || SuperscriptDigit(text[at]) >= 0)));

    private static bool TryReadPower(Chars text, ref int at, ref int halves, bool embedded, out TextProblem problem)
    {
        problem = default;
        bool isSuperscript = text[at] != '^';
        int place = isSuperscript ? at : at + 1;
        bool isNegative = place < text.Length && (isSuperscript ? text[place] == '⁻' : text[place] == '-' || text[place] == '\u2212');
        if (isNegative) place++;
        int digits = place, value = 0;
        for (; place < text.Length; place++)
        {
            int digit = isSuperscript ? SuperscriptDigit(text[place]) : IsDigit(text[place]) ? text[place] - '0' : -1;
            if (digit < 0) break;
            if (value <= HighestPower) value = value * 10 + digit;
        }
        if (place == digits)
        {
            problem = new TextProblem(TextFault.PowerExpected, place, 0);
            return embedded && !isSuperscript;
        }
        int doubled = 2 * value;
        if (!isSuperscript && place + 1 < text.Length && text[place] == '.' && IsDigit(text[place + 1]))
        {
            bool isHalf = text[place + 1] == '5' && !(place + 2 < text.Length && IsDigit(text[place + 2]));
            doubled = isHalf ? doubled + 1 : int.MaxValue;
            place += 2;
        }
        if (doubled > 2 * HighestPower || doubled == 0)
        {
            problem = new TextProblem(TextFault.PowerRefused, digits, place - digits);
            return false;
        }
        halves = isNegative ? -doubled : doubled;
        at = place;
        return true;
    }

    private static bool StartsWithRootCall(Chars text, int at) =>
        at + 5 <= text.Length && text[at] == 's' && text[at + 1] == 'q' && text[at + 2] == 'r' && text[at + 3] == 't' && text[at + 4] == '(';

    private static bool IsDigit(char c) => c >= '0' && c <= '9';

    internal static int SuperscriptDigit(char c) => c switch
    {
        '⁰' => 0, '¹' => 1, '²' => 2, '³' => 3, >= '⁴' and <= '⁹' => c - '⁴' + 4,
        _ => -1,
    };
}
