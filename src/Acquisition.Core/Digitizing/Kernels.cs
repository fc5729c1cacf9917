using System;

namespace Acquisition.Core.Digitizing;

/// <summary>Zero-order hold.</summary>
internal sealed class HoldKernel : Reconstruction
{
    internal HoldKernel()
        : base("hold")
    {
    }

    public override int Taps => 2;

    private protected override int Before => 0;

    private protected override void Weigh(double u, double[] weights)
    {
        weights[0] = u < 1 ? 1 : 0;
        weights[1] = 1 - weights[0];
    }
}

/// <summary>First order.</summary>
internal sealed class LinearKernel : Reconstruction
{
    internal LinearKernel()
        : base("straight lines")
    {
    }

    public override int Taps => 2;

    private protected override int Before => 0;

    private protected override void Weigh(double u, double[] weights)
    {
        weights[0] = 1 - u;
        weights[1] = u;
    }
}

/// <summary>The cubic through the samples at -1, 0, 1 and 2.</summary>
internal sealed class LagrangeKernel : Reconstruction
{
    internal LagrangeKernel()
        : base("cubic through four samples")
    {
    }

    public override int Taps => 4;

    private protected override int Before => 1;

    private protected override void Weigh(double u, double[] weights)
    {
        weights[0] = -u * (u - 1) * (u - 2) / 6;
        weights[1] = (u + 1) * (u - 1) * (u - 2) / 2;
        weights[2] = -(u + 1) * u * (u - 2) / 2;
        weights[3] = (u + 1) * u * (u - 1) / 6;
    }

    /// <summary>The cubic through the nearest four samples goes on beyond the end, so that the stencil there is those four.</summary>
    private protected override double Beyond(double[] samples, int distance)
    {
        int n = samples.Length;
        if (n < 4 || distance > n)
            return base.Beyond(samples, distance);
        return distance < 0
            ? 4 * samples[0] - 6 * samples[1] + 4 * samples[2] - samples[3]
            : 4 * samples[n - 1] - 6 * samples[n - 2] + 4 * samples[n - 3] - samples[n - 4];
    }
}

/// <summary>Cubic convolution, a = -1/2 (Keys 1981).</summary>
internal sealed class KeysKernel : Reconstruction
{
    internal KeysKernel()
        : base("cubic convolution")
    {
    }

    public override int Taps => 4;

    private protected override int Before => 1;

    private protected override void Weigh(double u, double[] weights)
    {
        weights[0] = u * (-0.5 + u * (1 - 0.5 * u));
        weights[1] = 1 + u * u * (-2.5 + 1.5 * u);
        weights[2] = u * (0.5 + u * (2 - 1.5 * u));
        weights[3] = u * u * (-0.5 + 0.5 * u);
    }

    private protected override double Beyond(double[] samples, int distance)
    {
        int n = samples.Length;
        if (n < 3 || distance > n)
            return base.Beyond(samples, distance);
        return distance < 0
            ? 3 * samples[0] - 3 * samples[1] + samples[2]
            : 3 * samples[n - 1] - 3 * samples[n - 2] + samples[n - 3];
    }
}
