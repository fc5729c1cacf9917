using System;

namespace Acquisition.Core.Formulas.Syntax;

/// <summary>
/// Reads the text of a formula into a tree, by operator precedence. It goes on after a mistake wherever the rest still makes sense. Time is proportional
/// to the length of the text; nesting and nodes are bounded.
/// </summary>
internal sealed partial class FormulaParser
{
    private readonly string _text;
    private readonly int _end;
    private readonly FormulaLimits _limits;
    private readonly ProblemList _problems;
    private readonly LocalUnits _units;
    private int _at;
    private int _depth;
    private int _nodes;
    private int _calls;
    private int _operations;
    private bool _stopped;

    private FormulaParser(string text, int start, int end, FormulaLimits limits, LocalUnits units, ProblemList problems)
    {
        _text = text;
        _at = start;
        _end = end;
        _limits = limits;
        _units = units;
        _problems = problems;
    }

    /// <summary>Reads the formula that fills a part of a text. What is wrong with it is added to <paramref name="problems"/>.</summary>
    internal static FormulaNode Parse(string text, int start, int end, FormulaLimits limits, LocalUnits units, ProblemList problems) => Parse(text, start, end, limits, units, problems, out _);

    /// <summary>The same, and how many operators and calls are in it: about as many instructions as it will need.</summary>
    internal static FormulaNode Parse(string text, int start, int end, FormulaLimits limits, LocalUnits units, ProblemList problems, out int operations)
    {
        FormulaNode node = ParseBegin(text, start, end, limits, units, problems, out FormulaParser? parser);
        operations = parser?._operations ?? 0;
        if (parser is { _stopped: false } && parser._at < end) parser.ReportTrailing();
        return node;
    }

    /// <summary>Reads the formula that begins a part of a text and tells where it ends; what follows is the caller's matter.</summary>
    internal static FormulaNode ParsePrefix(string text, int start, int end, FormulaLimits limits, LocalUnits units, ProblemList problems, out int formulaEnd)
    {
        FormulaNode node = ParseBegin(text, start, end, limits, units, problems, out FormulaParser? parser);
        formulaEnd = parser?._at ?? end;
        return node;
    }

    /// <summary>Says that what follows a formula does not belong there.</summary>
    internal static void ReportTrailing(string text, int at, int end, FormulaLimits limits, LocalUnits units, ProblemList problems) =>
        new FormulaParser(text, at, end, limits, units, problems).ReportTrailing();

    private static FormulaNode ParseBegin(string text, int start, int end, FormulaLimits limits, LocalUnits units, ProblemList problems, out FormulaParser? parser)
    {
        parser = null;
        if (end - start > limits.Length) return TooLong(start, end, limits, problems);
        parser = new FormulaParser(text, start, end, limits, units, problems);
        FormulaNode node = parser.Expression(0);
        parser.SkipSpaces();
        return node;
    }

    private static MissingNode TooLong(int start, int end, FormulaLimits limits, ProblemList problems)
    {
        problems.Add(start, end, FormattableString.Invariant($"the formula has {end - start} characters; at most {limits.Length} are read"));
        return new MissingNode(start, end);
    }

    private FormulaNode Expression(int loosest)
    {
        if (++_depth > _limits.Nesting) return TooDeep();
        int outside = _depth;
        FormulaNode left = Prefix();
        while (!_stopped)
        {
            SkipSpaces();
            if (_at >= _end) break;
            int start = _at;
            if (_text[_at] == '±' || IsPlusMinus())
            {
                if (Tightness.Uncertainty < loosest) break;
                if (++_depth > _limits.Nesting) return TooDeep();
                _at += _text[_at] == '±' ? 1 : 3;
                left = Uncertain(left);
                continue;
            }
            Operator op = PeekOperator(out int length);
            if (op == Operator.None)
            {
                if (loosest <= Tightness.Conversion && IsWord("in"))
                {
                    if (++_depth > _limits.Nesting) return TooDeep();
                    _at += 2;
                    left = Conversion(left);
                    continue;
                }
                break;
            }
            int tightness = Tightness.Of(op);
            if (tightness < loosest) break;
            _at += length;
            int calls = _calls;
            FormulaNode right = Expression(op == Operator.Power ? Tightness.Sign : tightness + 1);
            if (tightness == Tightness.Comparison && left is BinaryNode { Operator: >= Operator.Less and <= Operator.NotEqual } chain && !IsParenthesised(left, start))
            {
                ReportChain(chain, op, start, right);
                left = new MissingNode(left.Start, right.End);
                continue;
            }
            _operations++;
            left = Count(new BinaryNode(op, start, left, right, _calls > calls));
        }
        _depth = outside - 1;
        return left;
    }

    /// <summary>A chain of ± or of conversions puts each link inside the next, so it counts as nesting; a sum does not, the binder walks along it.</summary>
    private MissingNode TooDeep() => Stop(FormattableString.Invariant($"more than {_limits.Nesting} levels of nesting"));

    /// <summary>Whether a closing parenthesis stands between the end of an operand and the operator after it.</summary>
    private bool IsParenthesised(FormulaNode operand, int operatorStart)
    {
        for (int i = operand.End; i < operatorStart; i++)
        {
            if (_text[i] == ')') return true;
        }
        return false;
    }

    private FormulaNode Prefix()
    {
        SkipSpaces();
        if (_at >= _end) return Missing("a value");
        int start = _at;
        char c = _text[_at];
        if (c is '-' or '\u2212') return Minus(start);
        if (c == '+' && _at + 1 < _end && _text[_at + 1] is (>= '0' and <= '9') or '.')
        {
            // The sign of a number, as instruments write it.
            _at++;
            return Operand();
        }
        if (c == '+')
        {
            _problems.Add(start, start + 1, "found '+' without a left operand, expected a value");
            _at++;
            return Expression(Tightness.Sign);
        }
        if (IsWord("not"))
        {
            _at += 3;
            return Count(new UnaryNode(start, Operator.Not, Expression(Tightness.Not)));
        }
        return Operand();
    }

    private FormulaNode Minus(int start)
    {
        _at++;
        FormulaNode operand = Expression(Tightness.Sign);
        return operand is NumberNode number && !number.Has(NumberTraits.IsNegative) && !IsParenthesised(number, _at) && _text[number.Start] is (>= '0' and <= '9') or '.'
            ? Negated(start, number)
            : Count(new UnaryNode(start, Operator.Negate, operand));
    }

    private FormulaNode Operand()
    {
        int start = _at;
        char c = _text[_at];
        if (c is (>= '0' and <= '9') || (c == '.' && NumberReader.IsDigit(_text, _at + 1))) return Number();
        if (c == '(') return Group();
        if (c == '"') return Text();
        if (c == '√' || IsWordStart(c)) return Word();
        if (c is ')' or ',' or ':' or '*' or '/' or '^' or '=' or '<' or '>' or '!') return Missing("a value");
        return Stray(start, c);
    }

    /// <summary>Something that begins no operand: reported, and skipped so that the rest is read.</summary>
    private FormulaNode Stray(int start, char c)
    {
        _at += char.IsHighSurrogate(c) && _at + 1 < _end && char.IsLowSurrogate(_text[_at + 1]) ? 2 : 1;
        if (c == '\'')
        {
            SkipApostrophes();
            _problems.Add(start, _at, $"found {Slice(start, _at)}, expected a value", "\"" + Slice(start + 1, Math.Max(start + 1, _at - 1)) + "\"");
        }
        else
        {
            _problems.Add(start, _at, char.IsDigit(c) ? "found a digit of another script, expected digits 0 to 9" : $"found {Shown(start, _at)}, expected a value");
        }
        SkipSpaces();
        bool operandFollows = _at < _end && (IsNamePart(_text[_at]) || _text[_at] is '(' or '"');
        return operandFollows && ++_nodes <= _limits.Nodes && ++_depth <= _limits.Nesting ? Leave(Operand()) : new MissingNode(start, _at);
    }

    /// <summary>To the end of a text that is put between apostrophes by mistake.</summary>
    private void SkipApostrophes()
    {
        int close = _text.IndexOf('\'', _at, _end - _at);
        if (close >= 0) _at = close + 1;
    }

    private FormulaNode Leave(FormulaNode node)
    {
        _depth--;
        return node;
    }

    private FormulaNode Uncertain(FormulaNode value)
    {
        FormulaNode halfWidth = Expression(Tightness.Product);
        int end = _stopped ? _at : halfWidth.End;
        double? factor = null;
        if (TryCoverageFactor(out double k))
        {
            factor = k;
            end = _at;
        }
        return Count(new UncertainNode(value, halfWidth, end, factor));
    }

    private bool TryCoverageFactor(out double factor)
    {
        factor = 0;
        int at = SkipFrom(_at);
        if (at >= _end || _text[at] != '(') return false;
        int open = at;
        at = SkipFrom(at + 1);
        if (at >= _end || _text[at] != 'k') return false;
        at = SkipFrom(at + 1);
        if (at >= _end || _text[at] != '=') return false;
        at = SkipFrom(at + 1);
        if (!NumberReader.TryRead(_text, at, '.', true, out DecimalNumber number, out TextProblem problem))
        {
            _problems.Add(problem.Start, problem.Start + problem.Length, "expected a coverage factor such as (k=2)");
            _at = at;
            factor = 1;
            return true;
        }
        factor = DecimalConversion.ToDouble(_text, number, UnitReading.PlainNumber(number.End));
        at = SkipFrom(number.End);
        if (!(factor > 0 && factor <= 100)) _problems.Add(number.Start, number.End, "a coverage factor lies above 0 and is at most 100");
        if (at < _end && _text[at] == ')')
            at++;
        else
            ReportUnclosed(open, "'('");
        _at = at;
        return true;
    }

    private FormulaNode Conversion(FormulaNode operand)
    {
        SkipSpaces();
        int start = _at;
        if (_at < _end && TryUnit(_at, out UnitReading reading, out int end, out double factor, out _))
        {
            _at = end;
            return Count(new ConversionNode(_text, operand, start, end, reading.Kind, factor == 1 && (_units.IsEmpty || UnitReader.TryRead(_text, start, true, out _, out _)) ? 0 : factor));
        }
        ReportNoConversion();
        return operand;
    }

    private void ReportNoConversion()
    {
        if (_at < _end && IsWordStart(_text[_at]))
        {
            int wordEnd = WordEnd(_at);
            ReportNoUnit(_at, wordEnd);
            _at = wordEnd;
        }
        else
        {
            _problems.Add(_at, _at, FoundHere() + ", expected a unit after 'in'");
        }
    }
}
