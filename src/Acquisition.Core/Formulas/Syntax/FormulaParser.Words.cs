using System;
using System.Text;

namespace Acquisition.Core.Formulas.Syntax;

/// <summary>Numbers, units, words and texts.</summary>
internal sealed partial class FormulaParser
{
    private FormulaNode Number()
    {
        int start = _at;
        if (!NumberReader.TryRead(_text, start, '.', true, out DecimalNumber number, out TextProblem problem)) return Refused(problem);
        _at = number.End;
        if (_at + 1 < _end && _text[_at] == ':' && NumberReader.IsDigit(_text, _at + 1)) return RatioOf(start, number);
        int unit = SkipFrom(_at);
        if (unit < _end && IsUnitStart(unit))
        {
            if (!TryUnit(unit, out UnitReading reading, out int end, out double factor, out problem)) return WithoutUnit(start, unit, problem);
            _at = end;
            return Valued(start, number, reading, NumberTraits.HasUnit, factor);
        }
        return number.TryConvert(out double plain) ? Count(new NumberNode(_text, start, _at, plain, QuantityKind.Ratio, NumberTraits.None)) : Valued(start, number, UnitReading.PlainNumber(number.End), NumberTraits.None, 1);
    }

    private MissingNode WithoutUnit(int start, int unit, in TextProblem problem)
    {
        if (problem.Fault is not (TextFault.UnknownUnit or TextFault.UnitExpected) || !IsWordStart(_text[unit])) return Refused(problem);
        _at = WordEnd(unit);
        ReportNoUnit(unit, _at);
        return new MissingNode(start, _at);
    }

    private FormulaNode Valued(int start, in DecimalNumber number, in UnitReading unit, NumberTraits traits, double factor)
    {
        double value = DecimalConversion.ToDouble(_text, number, unit) * factor;
        if (double.IsInfinity(value)) return Refused(new TextProblem(TextFault.TooLarge, start, _at - start));
        if (value == 0 && number.Mantissa != 0 && unit.Nature < QuantityNature.Point) return Refused(new TextProblem(TextFault.TooSmall, start, _at - start));
        if (unit.Dimension.IsNone && unit.Nature == QuantityNature.Linear && (traits & NumberTraits.HasUnit) != 0) traits |= NumberTraits.IsPercentage;
        if (unit.Nature == QuantityNature.Point && unit.OffsetInHundredths == 0) traits |= NumberTraits.CanBeDifference;
        return Count(new NumberNode(_text, start, _at, value, unit.Kind, traits));
    }

    /// <summary>A minus sign before a number belongs to it: -40 dBm is a level and -20 °C a temperature, neither is the negative of something.</summary>
    private NumberNode Negated(int start, NumberNode positive)
    {
        double value = -positive.SiValue;
        if (positive.Quantity.Nature >= QuantityNature.Point && NumberReader.TryRead(_text, positive.Start, '.', true, out DecimalNumber number, out _))
        {
            number.IsNegative = true;
            int unit = SkipFrom(number.End);
            if (TryUnit(unit, out UnitReading reading, out _)) value = DecimalConversion.ToDouble(_text, number, reading);
        }
        return new NumberNode(_text, start, positive.End, value, positive.Quantity, positive.Traits | NumberTraits.IsNegative);
    }

    private FormulaNode RatioOf(int start, in DecimalNumber left)
    {
        if (!NumberReader.TryRead(_text, _at + 1, '.', true, out DecimalNumber right, out TextProblem problem)) return Refused(problem);
        _at = right.End;
        double divisor = DecimalConversion.ToDouble(_text, right, UnitReading.PlainNumber(right.End));
        double value = DecimalConversion.ToDouble(_text, left, UnitReading.PlainNumber(left.End)) / divisor;
        if (!(Math.Abs(value) <= double.MaxValue))
        {
            _problems.Add(start, _at, $"found the ratio {Slice(start, _at)}, expected one whose second number is not 0");
            return new MissingNode(start, _at);
        }
        return Count(new RatioNode(_text, start, _at, value));
    }

    private FormulaNode Word()
    {
        int start = _at;
        int end = WordEnd(start);
        // No word of the language is a single letter, most names of inputs are.
        if (end - start > 1)
        {
            if (IsWord("if")) return Choice(start);
            if (IsWord("true") || IsWord("false"))
            {
                _at = end;
                return Count(new TruthNode(start, end, _text[start] == 't'));
            }
            if (IsKeyword(start)) return Missing("a value");
        }
        int next = SkipFrom(end);
        if (next < _end && _text[next] == '(' && IsNameStart(_text[start]))
        {
            _at = next;
            return Call(start, _text.Substring(start, end - start));
        }
        if (TryBareUnit(start, end, out FormulaNode? unit)) return unit!;
        _at = end;
        if (IsNameStart(_text[start])) return Count(new NameNode(_text, start, end));
        ReportNoUnit(start, end);
        return new MissingNode(start, end);
    }

    private bool TryBareUnit(int start, int end, out FormulaNode? node)
    {
        node = null;
        bool isRoot = _text[start] == '√';
        if (!isRoot && !IsSingleUnit(start, end)) return false;
        if (isRoot)
        {
            if (!TryUnit(start, out UnitReading root, out end)) return false;
            _at = end;
            node = Valued(start, new DecimalNumber { Mantissa = 1, Start = start, DigitsEnd = start, End = start }, root, NumberTraits.HasUnit, 1);
            return true;
        }
        if (_units.TryFind(_text.Substring(start, end - start), out Quantity local))
        {
            _at = end;
            node = Count(new NumberNode(_text, start, end, local.SiValue, local.Kind, NumberTraits.HasUnit));
            return true;
        }
        string symbol = _text.Substring(start, end - start);
        if (!UnitReader.TryRead(symbol, 0, false, out UnitReading reading, out _)) return false;
        _at = end;
        node = Valued(start, new DecimalNumber { Mantissa = 1, Start = start, DigitsEnd = start, End = start }, reading, NumberTraits.HasUnit, 1);
        return true;
    }

    private bool IsSingleUnit(int start, int end)
    {
#if NET8_0_OR_GREATER
        if (UnitReader.IsUnit(_text.AsSpan(start, end - start))) return true;
#else
        if (UnitReader.IsUnit(_text.Substring(start, end - start))) return true;
#endif
        return !_units.IsEmpty && _units.TryFind(_text.Substring(start, end - start), out _);
    }

    private bool TryUnit(int start, out UnitReading reading, out int end) => TryUnit(start, out reading, out end, out double factor, out _) && factor == 1;

    /// <summary>The unit expression at a place, longest reading; a unit of the host's own comes as its kind and a factor.</summary>
    private bool TryUnit(int start, out UnitReading reading, out int end, out double factor, out TextProblem problem)
    {
        factor = 1;
        problem = default;
        end = start;
        if (!_units.IsEmpty && TryLocalUnit(start, out reading, out end, out factor)) return true;
        if (!UnitReader.TryRead(_text, start, true, out reading, out problem)) return false;
        end = reading.End;
        if (end < _text.Length && end > start && IsNamePart(_text[end]) && IsNamePart(_text[end - 1]))
        {
            problem = new TextProblem(TextFault.UnknownUnit, start, WordEnd(start) - start);
            return false;
        }
        return true;
    }

    private bool TryLocalUnit(int start, out UnitReading reading, out int end, out double factor)
    {
        int wordEnd = WordEnd(start);
        bool isFound = _units.TryFind(_text.Substring(start, wordEnd - start), out Quantity local);
        end = isFound ? wordEnd : start;
        reading = isFound ? new UnitReading(local.Dimension, local.Kind.Nature, local.Kind.Reference, UnitScale.One, end, kind: local.Kind) : default;
        factor = isFound ? local.SiValue : 1;
        return isFound;
    }

    private FormulaNode Text()
    {
        int start = _at++;
        StringBuilder? doubled = null;
        int from = _at;
        while (_at < _end)
        {
            if (_text[_at] != '"')
            {
                _at++;
                continue;
            }
            if (_at + 1 >= _end || _text[_at + 1] != '"') break;
            (doubled ??= new StringBuilder()).Append(_text, from, _at + 1 - from);
            _at += 2;
            from = _at;
        }
        string value = doubled is null ? _text.Substring(from, _at - from) : doubled.Append(_text, from, _at - from).ToString();
        if (_at < _end)
            _at++;
        else
            _problems.Add(start, start + 1, "found '\"' without its end, expected another '\"'");
        return Count(new TextNode(start, _at, value));
    }

    private Operator PeekOperator(out int length)
    {
        length = 1;
        char next = _at + 1 < _end ? _text[_at + 1] : '\0';
        switch (_text[_at])
        {
            case '+': return Operator.Add;
            case '-' or '\u2212': return Operator.Subtract;
            case '*' when next != '*': return Operator.Multiply;
            case '/': return Operator.Divide;
            case '^': return Operator.Power;
            case '≤': return Operator.LessOrEqual;
            case '≥': return Operator.GreaterOrEqual;
            case '≠': return Operator.NotEqual;
            case '<': return next == '=' ? Two(Operator.LessOrEqual, out length) : Operator.Less;
            case '>': return next == '=' ? Two(Operator.GreaterOrEqual, out length) : Operator.Greater;
            case '=' when next == '=': return Two(Operator.Equal, out length);
            case '!' when next == '=': return Two(Operator.NotEqual, out length);
            case 'o' when IsWord("or"): return Two(Operator.Or, out length);
            case 'a' when IsWord("and"):
                length = 3;
                return Operator.And;
            default: return Operator.None;
        }
    }

    private static Operator Two(Operator op, out int length)
    {
        length = 2;
        return op;
    }

    private bool IsPlusMinus() => _at + 2 < _end && _text[_at] == '+' && _text[_at + 1] == '/' && _text[_at + 2] == '-';

    /// <summary>Whether a unit may begin here: <c>in</c> is the inch unless a unit follows it, other words of the language are none.</summary>
    private bool IsUnitStart(int at)
    {
        if (_text[at] == '√') return true;
        if (!IsWordStart(_text[at]) || (_text[at] == '_')) return false;
        if (!IsKeyword(at)) return true;
        if (!IsWordAt(at, "in")) return false;
        int next = SkipFrom(at + 2);
        return next >= _end || IsWordAt(next, "in") || !(IsWordStart(_text[next]) || _text[next] == '√') || IsKeyword(next);
    }

    private bool IsKeyword(int at) => _text[at] switch
    {
        'i' => IsWordAt(at, "in") || IsWordAt(at, "if"),
        'o' => IsWordAt(at, "or"),
        'a' => IsWordAt(at, "and"),
        'n' => IsWordAt(at, "not"),
        't' => IsWordAt(at, "then"),
        'e' => IsWordAt(at, "else"),
        _ => false,
    };

    private bool IsWord(string word) => IsWordAt(_at, word);

    private bool IsWordAt(int at, string word)
    {
        if (at + word.Length > _end || _text[at] != word[0]) return false;
        for (int i = 1; i < word.Length; i++)
        {
            if (_text[at + i] != word[i]) return false;
        }
        return at + word.Length >= _end || !IsNamePart(_text[at + word.Length]);
    }

    private void SkipSpaces() => _at = SkipFrom(_at);

    private int SkipFrom(int at)
    {
        while (at < _end && _text[at] is <= ' ' or > '~' && IsSpace(_text[at])) at++;
        return at;
    }

    private int WordEnd(int at)
    {
        int start = at;
        while (at < _end && (IsNamePart(_text[at]) || (_text[at] is '%' or > '~' && IsUnitLetter(_text[at])))) at++;
        return at == start && at < _end ? at + 1 : at;
    }

    internal static bool IsSpace(char c) => NumberReader.IsSpace(c) || c is '\t' or '\r' or '\n';

    internal static bool IsNameStart(char c) => c is (>= 'a' and <= 'z') or (>= 'A' and <= 'Z') or '_' || IsGreek(c);

    /// <summary>The Greek letters of the trade's formulas (τ, σ, Δ); not μ and Ω, which are a prefix and a unit.</summary>
    private static bool IsGreek(char c) => c is ((>= 'α' and <= 'ω') or (>= 'Α' and < 'Ω')) and not 'μ';

    internal static bool IsNamePart(char c) => IsNameStart(c) || c is >= '0' and <= '9';

    private static bool IsUnitLetter(char c) => SymbolKey.Code(c) != 0;

    private static bool IsWordStart(char c) => IsNameStart(c) || IsUnitLetter(c) || (c > 127 && char.IsLetter(c));
}
