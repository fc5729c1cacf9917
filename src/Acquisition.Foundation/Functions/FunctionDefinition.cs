using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Functions;

/// <summary>A function of the formula language: its name, what it means, what it takes and gives, where it comes from, an example, and how it is computed.</summary>
/// <remarks>
/// <para>Immutable; each step of the declaration returns a new definition:</para>
/// <code>
/// FunctionDefinition.Named("period", "The time of one cycle.", "handbook 4.1")
///     .Takes("frequency", QuantityKind.Frequency)
///     .Returns(QuantityKind.Duration, f => 1 / f, f => -1 / (f * f))
///     .Example("period(24 MHz)", "41.667 ns")
/// </code>
/// <para>
/// An area declares its functions in one file of its own (<c>Responses/ResponseFunctions.cs</c>: an internal static class with a method
/// <c>IEnumerable&lt;FunctionDefinition&gt; All()</c> and the <c>Names</c> it declares, known without running it) and adds one line to <c>Formulas/StandardFunctions.cs</c>. The kernel calls the area's own public method, so that
/// C# and formulas give the same number; it takes and gives plain doubles in SI (logarithmic kinds in their own unit). An argument out of range is refused as
/// in C#, by an <see cref="ArgumentException"/>: the language adds the place in the text. A name may be declared several times (by several areas even) as long as the
/// kinds or the number of the arguments tell the definitions apart: <c>rise_time</c> of a response and of a record.
/// </para>
/// <para>
/// Derivatives are optional: with them uncertainty is propagated exactly to first order, without them by a numerical derivative whose error is estimated.
/// </para>
/// </remarks>
public sealed partial class FunctionDefinition
{
    private FunctionDefinition(string name, string meaning, string source)
    {
        Name = name;
        Meaning = meaning;
        Source = source;
        Declared = Array.Empty<FunctionParameter>();
        Result = ValueKind.Number;
        ExampleText = "";
        ExampleResult = "";
    }

    private FunctionDefinition Copy() => (FunctionDefinition)MemberwiseClone();

    /// <summary>The trade's term in snake case, such as <c>nyquist_frequency</c>.</summary>
    public string Name { get; }

    /// <summary>What it gives, in one line, a sentence.</summary>
    public string Meaning { get; }

    /// <summary>Where it comes from: standard and clause, or handbook section.</summary>
    public string Source { get; }

    /// <summary>What it takes.</summary>
    public IReadOnlyList<FunctionParameter> Parameters => Array.AsReadOnly(Declared);

    /// <summary>The parameters again, for the binder: an array is read faster than a list behind an interface.</summary>
    internal FunctionParameter[] Declared { get; private set; }

    /// <summary>What it gives. <see cref="ValueKind.AnyQuantity"/> where the kind follows from the arguments.</summary>
    public ValueKind Result { get; private set; }

    /// <summary>A call as a reader would write it.</summary>
    public string ExampleText { get; private set; }

    /// <summary>What the example gives, rounded to the digits shown.</summary>
    public string ExampleResult { get; private set; }

    /// <summary>Whether partial derivatives are declared.</summary>
    public bool HasDerivatives => Kernel is { HasPartials: true };

    /// <summary>The kind of the result from that of the first argument; null where none follows. Only for results of <see cref="ValueKind.AnyQuantity"/>.</summary>
    internal Func<QuantityKind, QuantityKind?>? ResultRule { get; private set; }

    internal FunctionKernel? Kernel { get; private set; }

    /// <summary>The operation of the language that computes it without a call; none for most functions.</summary>
    internal Intrinsic Intrinsic { get; private set; }

    internal int RequiredCount => Parameters.Count(parameter => !parameter.IsOptional);

    /// <summary>Begins a definition.</summary>
    /// <param name="name">The trade's term in snake case.</param>
    /// <param name="meaning">What it gives, in one line, a sentence.</param>
    /// <param name="source">Standard and clause, handbook section, or <c>common practice, no source</c>.</param>
    /// <exception cref="ArgumentException">The name is not in snake case, or meaning or source is empty.</exception>
    public static FunctionDefinition Named(string name, string meaning, string source)
    {
        RequireSnakeCase(name, nameof(name));
        if (string.IsNullOrWhiteSpace(meaning)) throw new ArgumentException($"function {name} needs a meaning", nameof(meaning));
        if (string.IsNullOrWhiteSpace(source)) throw new ArgumentException($"function {name} needs a source", nameof(source));
        return new FunctionDefinition(name, meaning, source);
    }

    /// <summary>With one more parameter that must be given.</summary>
    /// <param name="name">Its name in snake case.</param>
    /// <param name="kind">What the argument must be.</param>
    /// <exception cref="ArgumentException">The name is not in snake case or taken, or an optional or repeated parameter stands before it.</exception>
    public FunctionDefinition Takes(string name, ValueKind kind) => With(new FunctionParameter(name, Require(kind)));

    /// <summary>With one last parameter that may be given any number of times, at least once.</summary>
    /// <param name="name">Its name in snake case.</param>
    /// <param name="kind">What each argument must be.</param>
    /// <exception cref="ArgumentException">The name is not in snake case or taken, or an optional or repeated parameter stands before it.</exception>
    public FunctionDefinition TakesMany(string name, ValueKind kind) => With(new FunctionParameter(name, Require(kind), isRepeated: true));

    /// <summary>With one more parameter that may be left out.</summary>
    /// <param name="name">Its name in snake case.</param>
    /// <param name="kind">The kind of quantity the argument must be.</param>
    /// <param name="defaultSiValue">The value when it is left out, in the unit that <paramref name="kind"/> is held in.</param>
    /// <exception cref="ArgumentException">The name is not in snake case or taken, or a repeated parameter stands before it.</exception>
    public FunctionDefinition TakesOptional(string name, QuantityKind kind, double defaultSiValue) =>
        With(new FunctionParameter(name, ValueKind.Of(kind), defaultValue: new Quantity(defaultSiValue, kind).SiValue));

    /// <summary>With one more text parameter that may be left out.</summary>
    /// <param name="name">Its name in snake case.</param>
    /// <param name="kind"><see cref="ValueKind.Text"/> or a <see cref="ValueKind.Choice"/>.</param>
    /// <param name="defaultText">The text when it is left out.</param>
    /// <exception cref="ArgumentException">The name is not in snake case or taken, the kind is no text, or a repeated parameter stands before it.</exception>
    public FunctionDefinition TakesOptional(string name, ValueKind kind, string defaultText)
    {
        if (!Require(kind).IsText) throw new ArgumentException($"parameter {name} is a {kind.Name}, expected a text", nameof(kind));
        return With(new FunctionParameter(name, kind, defaultValue: defaultText ?? throw new ArgumentNullException(nameof(defaultText))));
    }

    /// <summary>With an example, which the tests run.</summary>
    /// <param name="text">A call as a reader would write it.</param>
    /// <param name="result">What it gives, rounded to the digits shown, such as <c>41.667 ns</c>; for a model, the text its <c>ToString</c> gives.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> or <paramref name="result"/> is null.</exception>
    public FunctionDefinition Example(string text, string result)
    {
        FunctionDefinition copy = Copy();
        copy.ExampleText = text ?? throw new ArgumentNullException(nameof(text));
        copy.ExampleResult = result ?? throw new ArgumentNullException(nameof(result));
        return copy;
    }

    /// <summary>The call with its parameters' names and kinds: <c>period(frequency: frequency) -> duration</c>.</summary>
    public override string ToString() => Signature + " -> " + Result.Name;

    internal string Signature =>
        Parameters.Count == 0
            ? Name
            : Name + "(" + string.Join(", ", Parameters.Select(parameter =>
                parameter.Name + ": " + parameter.Kind.Name + (parameter.IsRepeated ? " ..." : "") + (parameter.IsOptional ? " = " + parameter.DefaultText : ""))) + ")";

    /// <summary>Whether some call would fit both definitions.</summary>
    internal bool ClashesWith(FunctionDefinition other)
    {
        if (MaximumCount < other.RequiredCount || other.MaximumCount < RequiredCount) return false;
        int shared = Math.Min(RequiredCount, other.RequiredCount);
        for (int i = 0; i < shared; i++)
        {
            if (!Overlap(Parameters[i].Kind, other.Parameters[i].Kind)) return false;
        }
        return true;
    }

    private int MaximumCount => Parameters.Count > 0 && Parameters[Parameters.Count - 1].IsRepeated ? int.MaxValue : Parameters.Count;

    private static bool Overlap(ValueKind left, ValueKind right) =>
        left.Equals(right) || (left.IsQuantity && right.IsQuantity && (left.IsAnyQuantity || right.IsAnyQuantity)) || (left.IsText && right.IsText);

    internal FunctionDefinition ComputedBy(Intrinsic intrinsic)
    {
        FunctionDefinition copy = Copy();
        copy.Intrinsic = intrinsic;
        return copy;
    }

    private FunctionDefinition With(FunctionParameter parameter)
    {
        RequireSnakeCase(parameter.Name, "name");
        if (Kernel is not null) throw new InvalidOperationException($"function {Name}: declare parameter {parameter.Name} before what the function returns");
        FunctionParameter? last = null;
        foreach (FunctionParameter earlier in Declared)
        {
            if (earlier.Name == parameter.Name) throw new ArgumentException($"function {Name} has a parameter {parameter.Name} already", nameof(parameter));
            last = earlier;
        }
        if (last is { IsRepeated: true }) throw new ArgumentException($"function {Name}: parameter {parameter.Name} cannot follow {last.Name}, which may be repeated", nameof(parameter));
        if (last is { IsOptional: true } && !parameter.IsOptional) throw new ArgumentException($"function {Name}: parameter {parameter.Name} cannot follow {last.Name}, which may be left out", nameof(parameter));
        var declared = new FunctionParameter[Declared.Length + 1];
        Array.Copy(Declared, declared, Declared.Length);
        declared[Declared.Length] = parameter;
        FunctionDefinition copy = Copy();
        copy.Declared = declared;
        return copy;
    }

    private static ValueKind Require(ValueKind kind) => kind ?? throw new ArgumentNullException(nameof(kind));

    internal static void RequireSnakeCase(string name, string argument)
    {
        bool good = !string.IsNullOrEmpty(name) && name[0] is >= 'a' and <= 'z';
        for (int i = 1; good && i < name.Length; i++) good = name[i] is (>= 'a' and <= 'z') or (>= '0' and <= '9') or '_';
        if (!good) throw new ArgumentException($"'{name}' is not a name in snake case: lower-case letters, digits and underscores, a letter first", argument);
    }
}

/// <summary>Functions that are as frequent and as cheap as an operator.</summary>
internal enum Intrinsic
{
    None,
    SquareRoot,
    Absolute,
    Minimum,
    Maximum,
}
