using System.Collections.Generic;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>One part of a <see cref="Report"/>.</summary>
internal abstract class Block;

/// <param name="level">2 for a heading below the title, up to 6.</param>
/// <param name="text">The heading.</param>
internal sealed class Heading(int level, string text) : Block
{
    internal int Level { get; } = level;

    internal string Text { get; } = text;
}

internal sealed class Paragraph(string text) : Block
{
    internal string Text { get; } = text;
}

internal sealed class TableBlock(string name, ReportTable table) : Block
{
    internal string Name { get; } = name;

    internal ReportTable Table { get; } = table;
}

internal sealed class ValuesBlock(string name, ReportValues values) : Block
{
    internal string Name { get; } = name;

    internal ReportValues Values { get; } = values;
}

internal sealed class VerdictsBlock(string name, string caption, IReadOnlyList<ReportVerdict> verdicts) : Block
{
    internal string Name { get; } = name;

    internal string Caption { get; } = caption;

    internal IReadOnlyList<ReportVerdict> Verdicts { get; } = verdicts;
}

internal sealed class FindingList(string name, IReadOnlyList<Finding> findings) : Block
{
    internal string Name { get; } = name;

    internal IReadOnlyList<Finding> Findings { get; } = findings;
}

internal sealed class Picture(string name, Plot plot) : Block
{
    internal string Name { get; } = name;

    internal Plot Plot { get; } = plot;
}
