using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>Where to look for the crossings of a gain made of factors.</summary>
internal static class FrequencyGrid
{
    /// <summary>From far below the lowest corner to far above the highest, denser around poles close to the axis, where the gain peaks or dips.</summary>
    internal static double[] Of(params Factors[] all)
    {
        double lowest = double.PositiveInfinity, highest = 0;
        var marks = new List<double>();
        foreach (Factors factors in all)
        {
            foreach (Section section in factors.Sections)
            {
                Mark(section.D1, section.D2, 1);
                if (section.C1 != 0 || section.C2 != 0)
                    Mark(section.C1, section.C2, section.C0);
            }
            if (factors.Variance > 0)
                Corner(1 / Math.Sqrt(factors.Variance), 1);
        }
        if (highest == 0)
            return new[] { 1e-3, 1e15 };
        const int perDecade = 24;
        double from = Math.Log10(lowest) - 4, to = Math.Log10(highest) + 4;
        int count = (int)Math.Ceiling((to - from) * perDecade);
        for (int i = 0; i <= count; i++)
            marks.Add(Math.Pow(10, from + (to - from) * i / count));
        marks.Sort();
        return marks.ToArray();

        void Mark(double first, double second, double zeroth)
        {
            if (second != 0)
            {
                // Corner and damping of the factor; a low damping makes a feature as narrow as itself.
                double corner = Math.Sqrt(Math.Abs((zeroth == 0 ? 1 : zeroth) / second));
                double damping = Math.Abs(first) * corner / 2 / Math.Abs(zeroth == 0 ? 1 : zeroth);
                Corner(corner, damping);
                if (damping > 1)
                {
                    Corner(corner / (2 * damping), 1);
                    Corner(corner * 2 * damping, 1);
                }
            }
            else if (first != 0)
            {
                Corner(Math.Abs((zeroth == 0 ? 1 : zeroth) / first), 1);
            }
        }

        void Corner(double omega, double damping)
        {
            double hertz = omega / (2 * Math.PI);
            lowest = Math.Min(lowest, hertz);
            highest = Math.Max(highest, hertz);
            if (damping >= 0.5)
                return;
            double width = Math.Max(damping, 1e-12);
            for (int k = -6; k <= 6; k++)
                marks.Add(hertz * (1 + width * k / 2));
            for (double offset = 4 * width; offset < 0.5; offset *= 1.5)
            {
                marks.Add(hertz * (1 - offset));
                marks.Add(hertz * (1 + offset));
            }
        }
    }
}
