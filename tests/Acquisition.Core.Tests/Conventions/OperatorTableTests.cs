using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Text;
using Xunit;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>docs/operators.md is computed from the public surface: a new or lost operator is a changed cell in review.</summary>
public class OperatorTableTests
{
    private static readonly (string Sign, string Method)[] Signs = [("+", "op_Addition"), ("-", "op_Subtraction"), ("*", "op_Multiply"), ("/", "op_Division")];

    [Fact]
    public void OperatorTable_InTheDocumentation_IsTheOneOfTheCode()
    {
        string file = Repository.PathOf("docs", "operators.md");
        string computed = Page();
        // To accept a change, run the test once with this variable set, and review the difference.
        if (Environment.GetEnvironmentVariable("ACQUISITION_WRITE_DOCS") == "1") File.WriteAllText(file, computed);
        Assert.Equal(computed, File.ReadAllText(file).ReplaceLineEndings("\n"));
    }

    [Fact]
    public void EveryProduct_HasTheDimensionOfItsFactors()
    {
        foreach ((Type left, Type right, string method, Type result) in All())
        {
            if (method is not ("op_Multiply" or "op_Division") || IsPlain(left) || IsPlain(right) || Logarithmic(left) || Logarithmic(right) || Logarithmic(result)) continue;
            if (DropsACount.Contains((left, right))) continue;
            Dimension a = StrongTypeList.KindOf(left).Dimension, b = StrongTypeList.KindOf(right).Dimension;
            Dimension expected = method == "op_Multiply" ? a * b : a / b;
            Assert.True(expected == StrongTypeList.KindOf(result).Dimension, $"{left.Name} {method} {right.Name} gives {result.Name}: {expected} is not {StrongTypeList.KindOf(result).Dimension}");
        }
    }

    /// <summary>Where the trade drops the count: samples per cycle are said as a plain number. A new entry is a decision.</summary>
    private static readonly (Type, Type)[] DropsACount = [(typeof(SampleRate), typeof(Frequency))];

    private static readonly Type[] Plain = [typeof(double), typeof(int), typeof(long)];

    private static bool IsPlain(Type type) => Plain.Contains(type);

    private static bool Logarithmic(Type type) => !IsPlain(type) && StrongTypeList.KindOf(type).IsLogarithmic;

    private static IEnumerable<(Type Left, Type Right, string Method, Type Result)> All() =>
        from type in StrongTypeList.All
        from method in type.GetMethods(BindingFlags.Static | BindingFlags.Public)
        where Signs.Any(sign => sign.Method == method.Name) && method.GetParameters().Length == 2
        let parameters = method.GetParameters()
        select (parameters[0].ParameterType, parameters[1].ParameterType, method.Name, method.ReturnType);

    private static string Page()
    {
        var results = All().ToDictionary(entry => (entry.Left, entry.Right, entry.Method), entry => entry.Result);
        Type[] types = StrongTypeList.All.Concat(Plain).ToArray();
        var page = new StringBuilder();
        page.Append("# Operators of the strong types\n\n")
            .Append("Computed from the code by a test (`OperatorTableTests`). What is not here does not compile: a sample rate and a frequency cannot be added, two levels\n")
            .Append("cannot be added, a count of points cannot be scaled by a fraction. `double`, `int` and `long` are plain numbers. Each table shows one left operand.\n");
        foreach (Type left in types)
        {
            var rows = types.Select(right => (Right: right, Cells: Signs.Select(sign => results.TryGetValue((left, right, sign.Method), out Type? result) ? Name(result) : "-").ToArray()))
                .Where(row => row.Cells.Any(cell => cell != "-")).ToArray();
            if (rows.Length == 0) continue;
            page.Append("\n## ").Append(Name(left)).Append("\n\n| with | + | - | * | / |\n|---|---|---|---|---|\n");
            foreach ((Type right, string[] cells) in rows) page.Append("| ").Append(Name(right)).Append(" | ").AppendJoin(" | ", cells).Append(" |\n");
            string[] without = types.Where(right => !IsPlain(right) && rows.All(row => row.Right != right)).Select(Name).ToArray();
            if (without.Length > 0) page.Append("\nNo operator with: ").AppendJoin(", ", without).Append(".\n");
        }
        return page.ToString();
    }

    private static string Name(Type type) => type == typeof(double) ? "double" : type == typeof(int) ? "int" : type == typeof(long) ? "long" : type.Name;
}
