using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A list of named values of a <see cref="Report"/>, each with how it was found, the rules of thumb beside it and what it rests on.</summary>
/// <remarks>Immutable: each <c>With…</c> returns a new list.</remarks>
public sealed class ReportValues
{
    private ReportValues(string name, string caption, IReadOnlyList<ReportValue> values, IReadOnlyList<Finding> findings)
    {
        Name = name;
        Caption = caption;
        Values = values;
        Findings = findings;
    }

    /// <summary>An empty list.</summary>
    /// <param name="name">The name by which CSV and JSON call it, such as <c>sampling</c>.</param>
    /// <param name="caption">What the values belong to.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public ReportValues(string name, string caption)
        : this(
            name ?? throw new ArgumentNullException(nameof(name)), caption ?? throw new ArgumentNullException(nameof(caption)), Array.Empty<ReportValue>(), Array.Empty<Finding>())
    {
    }

    /// <summary>The name by which CSV and JSON call it.</summary>
    public string Name { get; }

    /// <summary>What the values belong to.</summary>
    public string Caption { get; }

    internal IReadOnlyList<ReportValue> Values { get; }

    internal IReadOnlyList<Finding> Findings { get; }

    /// <summary>Adds a value.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="value">The value; where it is null or empty, nothing is added.</param>
    /// <param name="method">How it was found; null where there is nothing to say.</param>
    /// <param name="source">Standard and clause, or handbook section; null where there is none.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public ReportValues With(string name, ReportCell? value, string? method = null, string? source = null)
    {
        if (name is null) throw new ArgumentNullException(nameof(name));
        return value is null || value.IsEmpty ? this : With(new ReportValue(name, value, method, source), Array.Empty<Finding>());
    }

    /// <summary>Adds an explained value, to four digits, with its method, source, inputs, rules of thumb and assumptions; its findings follow the list.</summary>
    /// <typeparam name="T">The quantity type of the value.</typeparam>
    /// <param name="value">The value; null adds nothing.</param>
    /// <param name="bound">Words before its name, such as <c>at least</c>.</param>
    public ReportValues With<T>(Explained<T>? value, string? bound = null)
        where T : struct, IQuantity
    {
        if (value is null) return this;
        return With(
            new ReportValue(bound is null ? value.Name : value.Name + ", " + bound, ReportCell.Of(value.Value), value.Method, value.Source)
            {
                Inputs = value.Inputs,
                Rules = value.Rules.Select(rule => new ReportRule(rule.Rule, ReportCell.Of(rule.Value), ReportCell.Of(rule.Difference))).ToArray(),
                Assumptions = value.Assumptions,
            },
            value.Findings);
    }

    private ReportValues With(ReportValue value, IReadOnlyList<Finding> findings) => new(Name, Caption, Values.Append(value).ToArray(), Findings.Concat(findings).ToArray());
}

/// <summary>One value of a list.</summary>
internal sealed class ReportValue(string name, ReportCell value, string? method, string? source)
{
    internal string Name { get; } = name;

    internal ReportCell Value { get; } = value;

    internal string? Method { get; } = method;

    internal string? Source { get; } = source;

    internal IReadOnlyList<KeyValuePair<string, string>> Inputs { get; set; } = Array.Empty<KeyValuePair<string, string>>();

    internal IReadOnlyList<ReportRule> Rules { get; set; } = Array.Empty<ReportRule>();

    internal IReadOnlyList<string> Assumptions { get; set; } = Array.Empty<string>();
}

/// <summary>A rule of thumb beside a value.</summary>
internal sealed class ReportRule(string rule, ReportCell value, ReportCell difference)
{
    internal string Rule { get; } = rule;

    internal ReportCell Value { get; } = value;

    internal ReportCell Difference { get; } = difference;
}
