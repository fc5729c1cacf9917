namespace Acquisition.Reports;

/// <summary>How a <see cref="Bar"/> is filled, so that it is told apart on paper without colour.</summary>
internal enum BarFill
{
    /// <summary>A line of text without a bar: what follows belongs to it.</summary>
    Heading,

    /// <summary>Filled: good, or a plain value.</summary>
    Solid,

    /// <summary>Outlined: fails, or a total of its own kind.</summary>
    Hollow,

    /// <summary>Nothing but the note: there is no value.</summary>
    Absent,
}

/// <summary>One row of a picture of level bars: its name at the left, its bar from 0, its note at the right.</summary>
internal sealed class Bar
{
    internal Bar(string name, double value, string note, BarFill fill, int look = 1, double uncertainty = 0)
    {
        Name = name;
        Value = value;
        Note = note;
        Fill = fill;
        Look = look;
        Uncertainty = uncertainty;
    }

    internal string Name { get; }

    internal double Value { get; }

    internal string Note { get; }

    internal BarFill Fill { get; }

    internal int Look { get; }

    /// <summary>Half the length of the line across the end of the bar; 0 for none.</summary>
    internal double Uncertainty { get; }
}
