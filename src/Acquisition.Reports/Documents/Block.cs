using System.Collections.Generic;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>One part of a <see cref="Report"/>.</summary>
internal abstract class Block;

internal sealed class Heading(string text) : Block
{
    internal string Text { get; } = text;
}

internal sealed class Paragraph(string text) : Block
{
    internal string Text { get; } = text;
}

internal sealed class Table(IReadOnlyList<string> columns, IReadOnlyList<IReadOnlyList<string>> rows) : Block
{
    internal IReadOnlyList<string> Columns { get; } = columns;

    internal IReadOnlyList<IReadOnlyList<string>> Rows { get; } = rows;
}

internal sealed class FindingList(IReadOnlyList<Finding> findings) : Block
{
    internal IReadOnlyList<Finding> Findings { get; } = findings;
}

internal sealed class Picture(Plot plot) : Block
{
    internal Plot Plot { get; } = plot;
}
