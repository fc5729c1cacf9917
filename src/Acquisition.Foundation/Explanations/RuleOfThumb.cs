using System;
using System.Globalization;

namespace Acquisition.Core;

/// <summary>A rule of thumb, offered as what it is: beside the computed value, never instead of it.</summary>
/// <typeparam name="T">The quantity type of the value.</typeparam>
public sealed class RuleOfThumb<T>
    where T : struct, IQuantity
{
    /// <summary>Makes a rule's answer.</summary>
    /// <param name="rule">The rule as the trade writes it, such as <c>0.35 / bandwidth</c>.</param>
    /// <param name="value">What the rule says.</param>
    /// <param name="difference">How far the rule's answer lies from the computed one, relative to the computed one.</param>
    /// <exception cref="ArgumentNullException"><paramref name="rule"/> is null.</exception>
    public RuleOfThumb(string rule, T value, Ratio difference)
    {
        Rule = rule ?? throw new ArgumentNullException(nameof(rule));
        Value = value;
        Difference = difference;
    }

    /// <summary>The rule as the trade writes it.</summary>
    public string Rule { get; }

    /// <summary>What the rule says.</summary>
    public T Value { get; }

    /// <summary>How far the rule's answer lies from the computed one, relative to the computed one.</summary>
    public Ratio Difference { get; }

    /// <summary>Rule, answer to four digits and difference in one line.</summary>
    public override string ToString() => FormattableString.Invariant($"{Rule} = {Value.ToQuantity().ToString("G4", CultureInfo.InvariantCulture)} ({Difference.Percent:+0.0;-0.0;0} %)");
}
