using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Formulas;

/// <summary>A formula, worksheet or template that cannot be built, or that has no value for the inputs it was given. The one exception of the formula language.</summary>
public sealed class FormulaException : FormatException
{
    /// <summary>An exception without a message of its own.</summary>
    public FormulaException() { }

    /// <summary>An exception with a message.</summary>
    public FormulaException(string message) : base(message) { }

    /// <summary>An exception with a message and a cause.</summary>
    public FormulaException(string message, Exception innerException) : base(message, innerException) { }

    internal FormulaException(IReadOnlyList<FormulaProblem> problems, Exception? cause = null)
        : base(string.Join(Environment.NewLine, problems.Select(problem => problem.ToString())), cause) => Problems = problems.Frozen();

    /// <summary>Everything that is wrong, in the order of the places.</summary>
    public IReadOnlyList<FormulaProblem> Problems { get; } = Array.Empty<FormulaProblem>();
}
