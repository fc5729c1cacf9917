using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Xml.Linq;
using Xunit;

namespace Acquisition.Reports.Tests;

/// <summary>The room that the texts of a picture really take: advance widths of two fonts, read from their files by tests/scripts/font-widths.py, the wider one for each character.</summary>
internal static class TextBoxes
{
    internal static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>Thousandths of the font size by code point.</summary>
    internal static readonly IReadOnlyDictionary<int, double> Widths = File.ReadLines(Path.Combine(Repository.Folder, "tests", "Acquisition.Reports.Tests", "Plots", "font-widths.csv")).Skip(1)
        .Select(line => line.Split(',')).ToDictionary(cells => int.Parse(cells[0], CultureInfo.InvariantCulture), cells => cells.Skip(1).Where(cell => cell.Length > 0).Max(cell => double.Parse(cell, CultureInfo.InvariantCulture)));

    /// <summary>What a character takes that the two fonts do not hold: that of a full-width one.</summary>
    private const double Unknown = 1000;

    internal sealed record Box(string Text, double Left, double Top, double Right, double Bottom)
    {
        internal bool Meets(Box other) => Left < other.Right - 0.01 && other.Left < Right - 0.01 && Top < other.Bottom - 0.01 && other.Top < Bottom - 0.01;
    }

    internal static Box[] Of(XElement root) => root.Descendants(Svg + "text").Select(BoxOf).ToArray();

    internal static Box[] Frames(XElement root) => root.Elements(Svg + "svg").Select(frame => new Box("frame", Number(frame, "x") + 4, Number(frame, "y") + 4, Number(frame, "x") + Number(frame, "width") - 4, Number(frame, "y") + Number(frame, "height") - 4)).ToArray();

    internal static void AssertTheyAreApartAndInside(string svg)
    {
        XElement root = XDocument.Parse(svg).Root!;
        double[] view = root.Attribute("viewBox")!.Value.Split(' ').Select(x => double.Parse(x, CultureInfo.InvariantCulture)).ToArray();
        Box[] boxes = Of(root);
        foreach (Box box in boxes) Assert.True(box.Left >= 0 && box.Top >= 0 && box.Right <= view[2] && box.Bottom <= view[3], $"outside of {view[2]} by {view[3]}: {box}");
        for (int i = 0; i < boxes.Length; i++)
        {
            for (int k = i + 1; k < boxes.Length; k++) Assert.False(boxes[i].Meets(boxes[k]), $"{boxes[i]} meets {boxes[k]}");
        }
    }

    internal static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    private static Box BoxOf(XElement text)
    {
        string shown = string.Concat(text.Nodes().OfType<XText>().Select(node => node.Value));
        double size = Number(text, "font-size"), x = Number(text, "x"), y = Number(text, "y"), width = shown.EnumerateRunes().Sum(rune => Widths.GetValueOrDefault(rune.Value, IsMark(rune.Value) ? 0 : Unknown)) * size / 1000;
        // The fonts' own ascent and descent, 0.93 and 0.24 of the size, hold accents of capitals too; digits and letters stay within 0.76 and 0.24.
        double ascent = 0.78 * size, descent = 0.24 * size;
        double start = (string?)text.Attribute("text-anchor") switch { "middle" => x - (width / 2), "end" => x - width, _ => x };
        return text.Attribute("transform") is null
            ? new Box(shown, start, y - ascent, start + width, y + descent)
            : new Box(shown, x - ascent, y - (width / 2), x + descent, y + (width / 2));
    }

    private static bool IsMark(int code) => CharUnicodeInfo.GetUnicodeCategory(code) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format;
}
