using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Reports;

/// <summary>A table of a <see cref="Report"/>: a name for machines, a caption for people, columns, and rows of cells that keep their quantities.</summary>
/// <remarks>Immutable: each <c>With…</c> returns a new table.</remarks>
public sealed class ReportTable
{
    private ReportTable(string name, string caption, IReadOnlyList<string> columns, IReadOnlyList<IReadOnlyList<ReportCell>> rows)
    {
        Name = name;
        Caption = caption;
        Columns = columns;
        Rows = rows;
    }

    /// <summary>A table without rows.</summary>
    /// <param name="name">The name by which CSV and JSON call it, such as <c>harmonics</c>.</param>
    /// <param name="caption">What the table shows.</param>
    /// <param name="columns">The heads of the columns, at least one.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There is no column, or a head is null.</exception>
    public ReportTable(string name, string caption, params string[] columns)
        : this(
            name ?? throw new ArgumentNullException(nameof(name)), caption ?? throw new ArgumentNullException(nameof(caption)), Checked(columns), Array.Empty<IReadOnlyList<ReportCell>>())
    {
    }

    /// <summary>The name by which CSV and JSON call it.</summary>
    public string Name { get; }

    /// <summary>What the table shows.</summary>
    public string Caption { get; }

    /// <summary>The heads of the columns.</summary>
    public IReadOnlyList<string> Columns { get; }

    /// <summary>The rows, each with one cell for each column.</summary>
    public IReadOnlyList<IReadOnlyList<ReportCell>> Rows { get; }

    /// <summary>Adds a row.</summary>
    /// <param name="cells">One cell for each column; null is an empty one.</param>
    /// <exception cref="ArgumentNullException"><paramref name="cells"/> is null.</exception>
    /// <exception cref="ArgumentException">There are more or fewer cells than columns.</exception>
    public ReportTable WithRow(params ReportCell[] cells) => WithRows(new[] { cells ?? throw new ArgumentNullException(nameof(cells)) });

    /// <summary>Adds rows.</summary>
    /// <param name="rows">The rows, each with one cell for each column.</param>
    /// <exception cref="ArgumentNullException"><paramref name="rows"/> is null.</exception>
    /// <exception cref="ArgumentException">A row has more or fewer cells than there are columns.</exception>
    public ReportTable WithRows(IEnumerable<IReadOnlyList<ReportCell>> rows)
    {
        if (rows is null) throw new ArgumentNullException(nameof(rows));
        var all = new List<IReadOnlyList<ReportCell>>(Rows);
        foreach (IReadOnlyList<ReportCell> row in rows)
        {
            if (row is null || row.Count != Columns.Count)
                throw new ArgumentException(FormattableString.Invariant($"row {all.Count + 1} of the table '{Name}' must have {Columns.Count} cells; had {row?.Count ?? 0}"), nameof(rows));
            all.Add(row.Select(cell => cell ?? ReportCell.Empty).ToArray());
        }
        return new ReportTable(Name, Caption, Columns, all);
    }

    private static string[] Checked(string[] columns)
    {
        if (columns is null) throw new ArgumentNullException(nameof(columns));
        return columns.Length > 0 && Array.IndexOf(columns, null) < 0 ? (string[])columns.Clone() : throw new ArgumentException("a table needs at least one column, and each a head", nameof(columns));
    }
}
