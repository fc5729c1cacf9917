using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Records;

/// <summary>Delimiter and decimal separator, found from the first rows of a table.</summary>
internal sealed class CsvDialect
{
    /// <summary>In this order: what can only be a delimiter before what may be a decimal comma.</summary>
    private static readonly char[] Delimiters = { '\t', ';', '|', ',', ' ' };

    private CsvDialect(char delimiter, char decimalSeparator, int firstData, int columns)
    {
        Delimiter = delimiter;
        DecimalSeparator = decimalSeparator;
        FirstData = firstData;
        Columns = columns;
    }

    internal char Delimiter { get; }

    internal char DecimalSeparator { get; }

    /// <summary>Which of the rows looked at is the first one of numbers.</summary>
    internal int FirstData { get; }

    internal int Columns { get; }

    /// <summary>
    /// The reading that makes numbers of most rows, from the first two in succession on; of equal ones the one with the most columns, and the earliest in the list.
    /// Null where none makes numbers. A row after the first that is not numbers is not skipped: it will be refused.
    /// </summary>
    internal static CsvDialect? Find(IReadOnlyList<string> rows, CsvFormat format)
    {
        CsvDialect? best = null;
        int most = 0;
        foreach ((char delimiter, char decimalSeparator) in Choices(format))
        {
            if (delimiter == decimalSeparator)
                continue;
            int[] counts = rows.Select(row => Numbers(row, delimiter, decimalSeparator)).ToArray();
            int first = 0;
            while (first < counts.Length && (counts[first] == 0 || first + 1 < counts.Length && counts[first + 1] != counts[first]))
                first++;
            if (first == counts.Length)
                continue;
            int good = counts.Skip(first).Count(x => x == counts[first]);
            // One column with a decimal comma would swallow any row of a damaged table of two: it is believed only where two columns make no sense.
            if (best is { Columns: > 1 } && counts[first] == 1 && 2 * most >= good)
                continue;
            if (best is null || best.Columns == 1 && counts[first] > 1 && 2 * good >= most || good > most || good == most && counts[first] > best.Columns && delimiter != ' ')
                (best, most) = (new CsvDialect(delimiter, decimalSeparator, first, counts[first]), good);
        }
        return best?.WithoutEmptyEnd(rows);
    }

    /// <summary>A delimiter at the end of each row is common and makes no column.</summary>
    private CsvDialect WithoutEmptyEnd(IReadOnlyList<string> rows)
    {
        int columns = Columns;
        while (columns > 1 && rows.Skip(FirstData).All(row => CsvLines.Split(row, Delimiter) is var fields && (fields.Count < columns || fields[columns - 1].Trim().Length == 0)))
            columns--;
        return columns == Columns ? this : new CsvDialect(Delimiter, DecimalSeparator, FirstData, columns);
    }

    private static IEnumerable<(char Delimiter, char Decimal)> Choices(CsvFormat format)
    {
        IEnumerable<char> delimiters = format.Delimiter is { } d ? new[] { d } : Delimiters;
        foreach (char delimiter in delimiters)
        {
            if (format.DecimalSeparator is { } given)
            {
                yield return (delimiter, given);
            }
            else
            {
                yield return (delimiter, '.');
                yield return (delimiter, ',');
            }
        }
    }

    /// <summary>How many fields a row has, if all are numbers or empty and one is a number; else 0.</summary>
    private static int Numbers(string row, char delimiter, char decimalSeparator)
    {
        List<string> fields = CsvLines.Split(row, delimiter);
        bool any = false;
        foreach (string field in fields)
        {
            if (NoReading.OfText(field) is not null)
                continue;
            if (!CsvNumber.TryRead(field, 0, field.Length, decimalSeparator, 0, out _))
                return 0;
            any = true;
        }
        return any ? fields.Count : 0;
    }
}
