using System;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Uncertainty;

/// <summary>Gamma random numbers of scale 1 by the method of Marsaglia and Tsang (2000); half the degrees of freedom as shape gives half a chi-squared draw.</summary>
internal static class GammaSampler
{
    internal static double Next(ref RandomStream stream, double shape)
    {
        // Below shape 1 a draw of shape + 1 is shrunk by a uniform draw to the power 1/shape.
        double shrink = 1;
        if (shape < 1)
        {
            shrink = PortableMath.Exp(Math.Max(-700, PortableMath.Log(1 - stream.NextUnit()) / shape));
            shape += 1;
        }
        double d = shape - 1.0 / 3, c = 1 / (3 * Math.Sqrt(d));
        while (true)
        {
            double z = NormalSampler.Next(ref stream);
            double v = 1 + c * z;
            if (v <= 0) continue;
            v = v * v * v;
            double u = 1 - stream.NextUnit();
            double z2 = z * z;
            if (u < 1 - 0.0331 * z2 * z2 || PortableMath.Log(u) < 0.5 * z2 + d * (1 - v + PortableMath.Log(v))) return d * v * shrink;
        }
    }
}
