using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Reports;

/// <summary>The names of level lines right of the frame, moved apart where they would meet.</summary>
internal static class SideLabels
{
    internal const double Spacing = 16;

    /// <summary>Where each name stands, by rising place: its middle, between the ends and at least <see cref="Spacing"/> from the next.</summary>
    /// <param name="wanted">Where the names would stand best, rising.</param>
    /// <param name="top">The least place.</param>
    /// <param name="bottom">The largest place; there must be room for all.</param>
    internal static double[] Spread(IReadOnlyList<double> wanted, double top, double bottom)
    {
        var places = new double[wanted.Count];
        for (int i = 0; i < places.Length; i++) places[i] = Math.Max(Math.Max(wanted[i], top), i == 0 ? top : places[i - 1] + Spacing);
        for (int i = places.Length - 1; i >= 0; i--) places[i] = Math.Min(places[i], i == places.Length - 1 ? bottom : places[i + 1] - Spacing);
        return places;
    }

    /// <summary>How many names fit between two ends.</summary>
    internal static int Room(double top, double bottom) => Math.Max(1, (int)Math.Floor((bottom - top) / Spacing) + 1);
}
