using System.Collections.Generic;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Formulas.Worksheets.Checks;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Worksheets;

/// <summary>One line of a worksheet: as read, and, once it is bound, where its instructions and its value are.</summary>
internal sealed class WorksheetStatement(WorksheetKeyword keyword, int line, string name, FormulaNode formula)
{
    internal WorksheetKeyword Keyword { get; } = keyword;

    internal int Line { get; } = line;

    /// <summary>The declared name; empty for checks and shows.</summary>
    internal string Name { get; } = name;

    internal FormulaNode Formula { get; } = formula;

    internal string FormulaText { get; } = FormulaWriter.Write(formula);

    /// <summary>The text after <c>else</c> of a check.</summary>
    internal string? Message { get; set; }

    /// <summary>The significant digits of a show; 0 for as many as read back.</summary>
    internal int Digits { get; set; }

    /// <summary>Whether a show leaves its uncertainty out.</summary>
    internal bool IsValueOnly { get; set; }

    internal ValueKind Kind => Formula.Kind!;

    /// <summary>The names it uses.</summary>
    internal IReadOnlyCollection<string> Uses { get; set; } = System.Array.Empty<string>();
}

/// <summary>Where the instructions and the value of a line are in a program.</summary>
internal struct WorksheetPlace
{
    internal int From;
    internal int To;

    /// <summary>The register of the value.</summary>
    internal int Register;

    /// <summary>For a given, the constant kept open for what a host gives instead.</summary>
    internal int Slot;

    /// <summary>For a check that compares, where its sides and its margin are; null where it does not, and in the uncertain program.</summary>
    internal ComparisonPlace? Comparison;

    /// <summary>In the uncertain program, what a truth value asks for; null for other values.</summary>
    internal Demand? Demand;

    /// <summary>In the uncertain program, the conditions that the value rests on.</summary>
    internal Conditions? Conditions;
}

/// <summary>Where what a check compares is in a program.</summary>
/// <param name="isUpper">Whether the limit is an upper one.</param>
/// <param name="kind">What both sides are.</param>
/// <param name="marginKind">What their difference is.</param>
internal sealed class ComparisonPlace(bool isUpper, QuantityKind kind, QuantityKind marginKind)
{
    internal bool IsUpper { get; } = isUpper;

    internal QuantityKind Kind { get; } = kind;

    internal QuantityKind MarginKind { get; } = marginKind;

    /// <summary>The register of what is checked.</summary>
    internal int Checked { get; set; }

    /// <summary>The register of the limit.</summary>
    internal int Limit { get; set; }

    /// <summary>The register of the margin, positive where the check is met.</summary>
    internal int Margin { get; set; }
}
