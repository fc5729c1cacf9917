using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>The poles of a Butterworth response whose half-power frequency is 1 rad/s: on the unit circle, evenly spread (S. Butterworth, 1930).</summary>
internal static class ButterworthPoles
{
    internal static Section[] Sections(int order)
    {
        var sections = new Section[(order + 1) / 2];
        for (int k = 0; k < order / 2; k++)
            sections[k] = Section.Poles(2 * Math.Sin(Math.PI * (2 * k + 1) / (2 * order)), 1);
        if (order % 2 == 1)
            sections[order / 2] = Section.Pole(1);
        return sections;
    }
}
