using System;
using System.Collections.Generic;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>A window for spectra, with the constants that its amplitudes and densities are scaled by (handbook 9.7).</summary>
/// <remarks>
/// All windows are periodic (M in the denominator, for the discrete Fourier transform), peak 1. The constants are those of a long record. The name of a flat top does not
/// identify its coefficients: they are part of each description here. Immutable.
/// </remarks>
public sealed class SpectralWindow
{
    private readonly WindowShape _shape;
    private object? _sideLobe;

    private SpectralWindow(string name, WindowShape shape)
    {
        Name = name;
        _shape = shape;
    }

    private SpectralWindow(string name, params double[] terms)
        : this(name, new CosineSum(terms))
    {
    }

    /// <summary>No window: for records that hold a whole number of periods (see <see cref="CoherentSampling"/>), and for transients that start and end at the same level.</summary>
    public static SpectralWindow Rectangular { get; } = new("rectangular", 1.0);

    /// <summary>Hann: 0.5, 0.5.</summary>
    public static SpectralWindow Hann { get; } = new("Hann", 0.5, 0.5);

    /// <summary>Hamming: 0.54, 0.46.</summary>
    public static SpectralWindow Hamming { get; } = new("Hamming", 0.54, 0.46);

    /// <summary>Blackman: 0.42, 0.5, 0.08.</summary>
    public static SpectralWindow Blackman { get; } = new("Blackman", 0.42, 0.5, 0.08);

    /// <summary>Blackman-Harris with four terms, side lobes at -92 dB: 0.35875, 0.48829, 0.14128, 0.01168 (Harris 1978).</summary>
    public static SpectralWindow BlackmanHarris { get; } = new("Blackman-Harris", 0.35875, 0.48829, 0.14128, 0.01168);

    /// <summary>Blackman-Nuttall, side lobes at -98 dB: 0.3635819, 0.4891775, 0.1365995, 0.0106411 (Nuttall 1981).</summary>
    public static SpectralWindow BlackmanNuttall { get; } = new("Blackman-Nuttall", 0.3635819, 0.4891775, 0.1365995, 0.0106411);

    /// <summary>Flat top of ISO 18431-2 (last coefficient from memory): 1, 1.933, 1.286, 0.388, 0.0322.</summary>
    public static SpectralWindow FlatTopIso18431 { get; } = new("flat top ISO 18431-2", 1, 1.933, 1.286, 0.388, 0.0322);

    /// <summary>Flat top with five terms in nine digits: 0.21557895, 0.41663158, 0.277263158, 0.083578947, 0.006947368.</summary>
    public static SpectralWindow FlatTopFiveTerm { get; } = new("flat top 5-term", 0.21557895, 0.41663158, 0.277263158, 0.083578947, 0.006947368);

    /// <summary>Flat top with five terms in three digits: 1, 1.93, 1.29, 0.388, 0.028.</summary>
    public static SpectralWindow FlatTopThreeDigit { get; } = new("flat top 3-digit", 1, 1.93, 1.29, 0.388, 0.028);

    /// <summary>Flat top HFT70 (Heinzel, Ruediger and Schilling 2002): side lobes at -70 dB.</summary>
    public static SpectralWindow Hft70 { get; } = new("HFT70", 1, 1.90796, 1.07349, 0.18199);

    /// <summary>Flat top HFT95 (Heinzel, Ruediger and Schilling 2002): side lobes at -95 dB.</summary>
    public static SpectralWindow Hft95 { get; } = new("HFT95", 1, 1.9383379, 1.3045202, 0.4028270, 0.0350665);

    /// <summary>Flat top HFT116D (Heinzel, Ruediger and Schilling 2002): side lobes at -117 dB.</summary>
    public static SpectralWindow Hft116D { get; } = new("HFT116D", 1, 1.9575375, 1.4780705, 0.6367431, 0.1228389, 0.0066288);

    /// <summary>Flat top HFT144D (Heinzel, Ruediger and Schilling 2002): side lobes at -144 dB.</summary>
    public static SpectralWindow Hft144D { get; } = new("HFT144D", 1, 1.96760033, 1.57983607, 0.81123644, 0.22583558, 0.02773848, 0.00090360);

    /// <summary>All windows with a name of their own.</summary>
    public static IReadOnlyList<SpectralWindow> All { get; } = new[]
    {
        Rectangular, Hann, Hamming, Blackman, BlackmanHarris, BlackmanNuttall, FlatTopIso18431, FlatTopFiveTerm, FlatTopThreeDigit, Hft70, Hft95, Hft116D, Hft144D,
    }.Frozen();

    /// <summary>The Kaiser window: side lobes fall and the main lobe widens with the shape parameter.</summary>
    /// <param name="shapeParameter">Beta, from 0 (rectangular) to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">The parameter is not in its range.</exception>
    public static SpectralWindow Kaiser(double shapeParameter)
    {
        if (!(shapeParameter >= 0 && shapeParameter <= 100))
            throw Refuse.OutOfRange(shapeParameter, QuantityKind.Ratio, nameof(shapeParameter), "from 0 to 100");
        return new SpectralWindow("Kaiser " + FewDigits.Number(shapeParameter, 6), new KaiserShape(shapeParameter));
    }

    /// <summary>A window of one's own: <c>sum (-1)^k a_k cos(2 pi k n/M)</c>, scaled to peak 1.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="termWeights">The coefficients a_k, all positive, as they are usually printed; at least one, at most 32.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There is no coefficient, there are too many, or one is not above 0.</exception>
    public static SpectralWindow OfCosines(string name, params double[] termWeights)
    {
        if (name is null)
            throw new ArgumentNullException(nameof(name));
        if (termWeights is null)
            throw new ArgumentNullException(nameof(termWeights));
        if (termWeights.Length is 0 or > 32)
            throw new ArgumentException($"{nameof(termWeights)} must hold 1 to 32 coefficients; has {termWeights.Length}", nameof(termWeights));
        for (int k = 0; k < termWeights.Length; k++)
        {
            if (!(termWeights[k] > 0 && termWeights[k] <= 1e6))
                throw new ArgumentException($"coefficient {k} must be above 0 (the alternating sign is implied) and at most 1E6; was {FewDigits.Number(termWeights[k], 17)}", nameof(termWeights));
        }
        return new SpectralWindow(name, termWeights);
    }

    /// <summary>The name.</summary>
    public string Name { get; }

    /// <summary>Coherent gain: the mean of the window; what a line's amplitude is divided by.</summary>
    public Ratio CoherentGain => Ratio.FromFraction(_shape.CoherentGain);

    /// <summary>Equivalent noise bandwidth, in bins: how much wider a bin is for noise than for a line.</summary>
    public double EquivalentNoiseBandwidthInBins => _shape.NoiseBandwidth;

    /// <summary>Scalloping loss: how much too low a line half-way between two bins reads, as a positive number.</summary>
    public DecibelRatio ScallopingLoss => DecibelRatio.FromDecibels(-20 * Math.Log10(Math.Abs(_shape.Transform(0.5))));

    /// <summary>The highest side lobe, relative to the main one: negative.</summary>
    public DecibelRatio HighestSideLobe
    {
        get
        {
            // Computed once; two threads that race find the same. Boxed, because a 32-bit host writes a bare double in two halves.
            _sideLobe ??= DecibelRatio.FromDecibels(20 * Math.Log10(_shape.HighestSideLobe()));
            return (DecibelRatio)_sideLobe;
        }
    }

    /// <summary>From the middle of the main lobe to its first null, in bins, rounded up: so many bins on each side belong to a line.</summary>
    public int MainLobeHalfWidthInBins => (int)Math.Ceiling(_shape.MainLobe - 1e-9);

    /// <summary>Width of the main lobe at a level below its top, in bins.</summary>
    /// <param name="drop">The level below the top, positive and above the side lobes (3 dB, say).</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not above 0 dB, or lies below the end of the main lobe.</exception>
    public double WidthInBins(DecibelRatio drop)
    {
        double level = Math.Pow(10, -drop.Decibels / 20), low = 0, high = _shape.MainLobe;
        if (!(drop.Decibels > 0) || Math.Abs(_shape.Transform(high)) > level)
            throw Refuse.OutOfRange(drop.Decibels, DecibelRatio.Kind, nameof(drop), "above 0 dB and within the main lobe");
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            if (_shape.Transform(middle) > level)
                low = middle;
            else
                high = middle;
        }
        return low + high;
    }

    /// <summary>The weights of a record of so many samples.</summary>
    /// <param name="points">Samples, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="points"/> is below 1.</exception>
    public double[] Weights(int points)
    {
        if (points < 1)
            throw Refuse.OutOfRange(points, QuantityKind.PointCount, nameof(points), "at least 1 pts");
        var weights = new double[points];
        for (int i = 0; i <= points / 2; i++)
        {
            weights[i] = WeightAt(i, points);
            if (i > 0)
                weights[points - i] = weights[i];
        }
        return weights;
    }

    /// <summary>One weight of them; they are symmetric: that of sample i is that of points - i.</summary>
    internal double WeightAt(int index, int points) => _shape.At((double)index / points);

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
