using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Binding;

/// <summary>Calls: which definition is meant, whether the arguments fit, and how they reach its kernel.</summary>
internal sealed partial class FormulaBinder
{
    private Operand Call(CallNode node)
    {
        var mark = _program.Mark;
        FunctionDefinition[] candidates = _context.Functions.DefinitionsOf(node.Name);
        var arguments = new Operand[node.Arguments.Length];
        bool isComplete = true;
        for (int i = 0; i < arguments.Length; i++)
        {
            arguments[i] = Bind(node.Arguments[i].Value);
            isComplete &= arguments[i].Kind is not null;
        }
        if (candidates.Length == 0) return NoFunction(node);
        if (!isComplete) return Operand.Unknown;
        FunctionDefinition? function = candidates.Length == 1 ? candidates[0] : FirstThatFits(candidates, node, arguments);
        if (function is null) return NoneFits(candidates, node, arguments);
        int[] order;
        bool isInOrder = IsInOrder(function, node);
        if (isInOrder)
            order = InOrder(arguments.Length);
        else if (!TryArrange(function, node, out order))
            return Operand.Unknown;
        node.Function = function;
        return CheckKinds(function, node, arguments, order) ? Invoke(function, node, arguments, order, isInOrder, mark) : Operand.Unknown;
    }

    private Operand NoFunction(CallNode node)
    {
        string quoted = "'" + Quotation.Of(node.Name, 0, node.Name.Length) + "'";
        bool isName = _scope.Has(node.Name);
        _problems.Add(node.Start, node.Start + node.Name.Length, isName ? $"found {quoted}, which is a value and not a function; expected an operator between it and '('" : $"{quoted} is no function", isName ? null : () => Suggestions.ForFunction(node.Name, _context.Functions));
        return Operand.Unknown;
    }

    private Operand NoneFits(FunctionDefinition[] candidates, CallNode node, Operand[] arguments)
    {
        string found = string.Join(", ", node.Arguments.Select((argument, i) => Describe(argument.Value, arguments[i])));
        _problems.Add(node.Start, node.End, $"found {node.Name} of {(found.Length == 0 ? "nothing" : found)}, expected {string.Join(" or ", candidates.Select(candidate => candidate.Signature))}");
        return Operand.Unknown;
    }

    /// <summary>Whether exactly the parameters are given, by place: the frequent case.</summary>
    private static bool IsInOrder(FunctionDefinition function, CallNode node)
    {
        if (node.Arguments.Length != function.Declared.Length || node.Arguments.Length == 0) return false;
        for (int i = 0; i < node.Arguments.Length; i++)
        {
            if (node.Arguments[i].Name is not null) return false;
        }
        return true;
    }

    private static int[] InOrder(int count)
    {
        if (count == 1) return JustTheFirst;
        var order = new int[count];
        for (int i = 0; i < count; i++) order[i] = i;
        return order;
    }

    private static readonly int[] JustTheFirst = { 0 };

    private static FunctionDefinition? FirstThatFits(FunctionDefinition[] candidates, CallNode node, Operand[] arguments)
    {
        foreach (FunctionDefinition candidate in candidates)
        {
            if (Fits(candidate, node, arguments)) return candidate;
        }
        return null;
    }

    private static bool Fits(FunctionDefinition function, CallNode node, Operand[] arguments)
    {
        int count = function.Declared.Length;
        var given = new bool[count];
        for (int i = 0; i < arguments.Length; i++)
        {
            int parameter = ParameterOf(function, node.Arguments[i], i);
            if (parameter < 0 || (given[parameter] && !function.Declared[parameter].IsRepeated) || !Fits(arguments[i], function.Declared[parameter].Kind)) return false;
            given[parameter] = true;
        }
        for (int i = 0; i < count; i++)
        {
            if (!given[i] && !function.Declared[i].IsOptional) return false;
        }
        return true;
    }

    private static int ParameterOf(FunctionDefinition function, ArgumentNode argument, int place)
    {
        FunctionParameter[] parameters = function.Declared;
        if (argument.Name is null)
            return place < parameters.Length ? place : parameters.Length > 0 && parameters[parameters.Length - 1].IsRepeated ? parameters.Length - 1 : -1;
        for (int i = 0; i < parameters.Length; i++)
        {
            if (parameters[i].Name == argument.Name) return i;
        }
        return -1;
    }

    /// <summary>For each argument in the order of the parameters, its place in the text; -1 where the default stands in.</summary>
    private bool TryArrange(FunctionDefinition function, CallNode node, out int[] order)
    {
        FunctionParameter[] parameters = function.Declared;
        bool isGood = true, hasNames = false;
        int repeated = 0;
        var placeOf = new int[parameters.Length];
        for (int j = 0; j < placeOf.Length; j++) placeOf[j] = -1;
        for (int i = 0; i < node.Arguments.Length; i++)
        {
            ArgumentNode argument = node.Arguments[i];
            int parameter = ParameterOf(function, argument, i);
            hasNames |= argument.Name is not null;
            bool isTaken = parameter >= 0 && placeOf[parameter] >= 0;
            if (parameter < 0 || (argument.Name is null && hasNames) || (isTaken && !parameters[parameter].IsRepeated))
            {
                ReportArgument(function, argument, i, parameter, isUnnamedAfterNamed: argument.Name is null && hasNames);
                isGood = false;
            }
            else if (isTaken)
                repeated++;
            else
                placeOf[parameter] = i;
        }
        for (int j = 0; j < placeOf.Length && isGood; j++)
        {
            if (placeOf[j] < 0 && !parameters[j].IsOptional) isGood = ReportMissing(function, node, placeOf);
        }
        order = isGood ? new int[placeOf.Length + repeated] : Array.Empty<int>();
        if (!isGood) return false;
        Array.Copy(placeOf, order, placeOf.Length);
        // What is repeated is the last parameter; its further arguments follow in their order.
        for (int i = node.Arguments.Length - 1, next = order.Length - 1; next >= placeOf.Length; i--)
        {
            if (ParameterOf(function, node.Arguments[i], i) == placeOf.Length - 1) order[next--] = i;
        }
        return true;
    }

    private void ReportArgument(FunctionDefinition function, in ArgumentNode argument, int place, int parameter, bool isUnnamedAfterNamed)
    {
        FunctionParameter[] parameters = function.Declared;
        string problem;
        string? suggestion = null;
        if (parameter < 0 && argument.Name is not null)
        {
            problem = $"{function.Name} has no parameter '{Quotation.Of(argument.Name, 0, argument.Name.Length)}'";
            suggestion = Suggestions.Nearest(argument.Name, parameters.Select(each => each.Name));
        }
        else if (parameter < 0)
            problem = parameters.Length == 0 ? $"{function.Name} takes no arguments" : FormattableString.Invariant($"found argument {place + 1} of {function.Name}, expected at most {parameters.Length}: {function.Signature}");
        else
            problem = isUnnamedAfterNamed ? "found an argument without a name after one with a name" : $"'{parameters[parameter].Name}' of {function.Name} is given twice";
        _problems.Add(argument.NameStart, argument.Name is null ? argument.Value.End : argument.NameStart + argument.Name.Length, problem, suggestion);
    }

    private bool ReportMissing(FunctionDefinition function, CallNode node, int[] placeOf)
    {
        string missing = string.Join(" and ", function.Declared.Where((parameter, j) => placeOf[j] < 0 && !parameter.IsOptional).Select(parameter => "'" + parameter.Name + "'"));
        _problems.Add(node.End - 1, node.End - 1, $"{function.Name} needs {missing}: {function.Signature}");
        return false;
    }

    private bool CheckKinds(FunctionDefinition function, CallNode node, Operand[] arguments, int[] order)
    {
        bool isGood = true;
        QuantityKind? generic = null;
        for (int j = 0; j < order.Length; j++)
        {
            if (order[j] < 0) continue;
            FunctionParameter parameter = function.Declared[Math.Min(j, function.Declared.Length - 1)];
            FormulaNode place = node.Arguments[order[j]].Value;
            Operand argument = arguments[order[j]];
            if (!Fits(argument, parameter.Kind))
            {
                Refuse(place, argument, Quotation.WithArticle(parameter.Kind.Name) + PurposeOf(parameter, function), parameter.Kind.Quantity);
                isGood = false;
            }
            else if (argument.IsKnown && parameter.Kind.Choices.Count > 0)
                isGood &= CheckChoice(function, parameter, place, (string)argument.Object!);
            else if (parameter.Kind.IsAnyQuantity && function.Declared.Length >= 1)
            {
                QuantityKind kind = argument.Kind!.Quantity!;
                generic ??= kind;
                if (generic != kind && !(argument.CanBeDifference && generic == QuantityKind.TemperatureDifference))
                {
                    Refuse(place, argument, SumRules.Expected(generic) + " as the first argument of " + function.Name, generic);
                    isGood = false;
                }
            }
        }
        return isGood;
    }

    private bool CheckChoice(FunctionDefinition function, FunctionParameter parameter, FormulaNode place, string word)
    {
        if (parameter.Kind.Choices.Contains(word)) return true;
        string? nearest = Suggestions.Nearest(word, parameter.Kind.Choices);
        _problems.Add(place.Start, place.End, $"found \"{Quotation.Of(word, 0, word.Length)}\", expected {string.Join(" or ", parameter.Kind.Choices.Select(choice => "\"" + choice + "\""))}{PurposeOf(parameter, function)}", nearest is null ? null : "\"" + nearest + "\"");
        return false;
    }

    private static string PurposeOf(FunctionParameter parameter, FunctionDefinition function) => $" for '{parameter.Name}' of {function.Name}";

    private static bool Fits(Operand argument, ValueKind kind) =>
        kind.IsAnyQuantity ? argument.Kind is { IsQuantity: true }
        : kind.Quantity is { } quantity ? Fits(argument, quantity)
        : kind.Equals(argument.Kind);
}
