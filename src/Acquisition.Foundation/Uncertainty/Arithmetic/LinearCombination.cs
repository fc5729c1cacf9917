using System;
using System.Collections.Generic;

namespace Acquisition.Core.Uncertainty;

/// <summary>To first order, how a value moves with each source: the sensitivities, no source twice. It is what keeps correlation by shared source through arithmetic.</summary>
internal sealed class LinearCombination
{
    internal static readonly LinearCombination Exact = new(Array.Empty<UncertaintySource>(), Array.Empty<double>());

    /// <summary>From this many sources on, a look-up table replaces the search.</summary>
    private const int SearchLimit = 16;

    internal LinearCombination(UncertaintySource[] sources, double[] sensitivities)
    {
        Sources = sources;
        Sensitivities = sensitivities;
    }

    internal UncertaintySource[] Sources { get; }

    internal double[] Sensitivities { get; }

    private static readonly double[] One = { 1.0 };

    internal static LinearCombination Of(UncertaintySource source) => new(new[] { source }, One);

    internal LinearCombination Times(double factor)
    {
        if (Sources.Length == 0) return this;
        var scaled = new double[Sensitivities.Length];
        for (int i = 0; i < scaled.Length; i++) scaled[i] = factor * Sensitivities[i];
        return new LinearCombination(Sources, scaled);
    }

    /// <summary>The combination <paramref name="leftFactor"/> left + <paramref name="rightFactor"/> right.</summary>
    internal static LinearCombination Sum(LinearCombination left, double leftFactor, LinearCombination right, double rightFactor)
    {
        if (right.Sources.Length == 0) return left.Times(leftFactor);
        if (left.Sources.Length == 0) return right.Times(rightFactor);
        int capacity = left.Sources.Length + right.Sources.Length, count = left.Sources.Length;
        var sources = new UncertaintySource[capacity];
        var sensitivities = new double[capacity];
        left.Sources.CopyTo(sources, 0);
        for (int i = 0; i < count; i++) sensitivities[i] = leftFactor * left.Sensitivities[i];
        Dictionary<UncertaintySource, int>? places = null;
        if (count > SearchLimit)
        {
            places = new Dictionary<UncertaintySource, int>(count);
            for (int i = 0; i < count; i++) places[sources[i]] = i;
        }
        int searched = count;
        bool cancelled = false;
        for (int i = 0; i < right.Sources.Length; i++)
        {
            UncertaintySource source = right.Sources[i];
            int place = places is null ? Array.IndexOf(sources, source, 0, searched) : places.TryGetValue(source, out int found) ? found : -1;
            if (place < 0)
            {
                place = count++;
                sources[place] = source;
            }
            double before = sensitivities[place];
            sensitivities[place] += rightFactor * right.Sensitivities[i];
            cancelled |= before != 0 && sensitivities[place] == 0;
        }
        if (cancelled) count = DropCancelled(sources, sensitivities, count);
        if (count < capacity)
        {
            Array.Resize(ref sources, count);
            Array.Resize(ref sensitivities, count);
        }
        return new LinearCombination(sources, sensitivities);
    }

    /// <summary>A value less itself depends on nothing: what cancels exactly is no source any more. (A sensitivity of zero from elsewhere may hide a second-order effect and stays.)</summary>
    private static int DropCancelled(UncertaintySource[] sources, double[] sensitivities, int count)
    {
        int kept = 0;
        for (int i = 0; i < count; i++)
        {
            if (sensitivities[i] == 0) continue;
            sources[kept] = sources[i];
            sensitivities[kept++] = sensitivities[i];
        }
        return kept;
    }

    internal double Variance()
    {
        double variance = 0;
        for (int i = 0; i < Sources.Length; i++)
        {
            double contribution = Sensitivities[i] * Sources[i].StandardUncertainty;
            variance += contribution * contribution;
        }
        return Math.Max(0, variance + Correlated(this, this));
    }

    /// <summary>The covariance of two values through the sources they share or that are correlated with each other.</summary>
    internal static double Covariance(LinearCombination left, LinearCombination right)
    {
        double covariance = 0;
        for (int i = 0; i < left.Sources.Length; i++)
        {
            int place = Array.IndexOf(right.Sources, left.Sources[i]);
            double u = left.Sources[i].StandardUncertainty;
            if (place >= 0) covariance += left.Sensitivities[i] * right.Sensitivities[place] * u * u;
        }
        return covariance + Correlated(left, right);
    }

    /// <summary>The part of the covariance that comes from correlated but different sources.</summary>
    private static double Correlated(LinearCombination left, LinearCombination right)
    {
        double covariance = 0;
        for (int i = 0; i < left.Sources.Length; i++)
        {
            UncertaintySource source = left.Sources[i];
            if (source.Set is null) continue;
            for (int j = 0; j < right.Sources.Length; j++)
            {
                UncertaintySource other = right.Sources[j];
                if (ReferenceEquals(source, other) || !ReferenceEquals(source.Set, other.Set)) continue;
                covariance += left.Sensitivities[i] * right.Sensitivities[j] * source.StandardUncertainty * other.StandardUncertainty * source.CorrelationWith(other);
            }
        }
        return covariance;
    }
}
