using System;
using System.Numerics;
using MathNet.Numerics.Providers.FourierTransform;

namespace Acquisition.Core.Records;

/// <summary>
/// The discrete Fourier transform <c>X_k = sum x_n e^(-2 pi i k n / N)</c>, unscaled, of real samples: bins 0 to N/2. Samples are written into the array of the transform itself; once
/// transformed, bins are read until new samples are written.
/// </summary>
/// <remarks>
/// MathNet's managed transform, called directly so that its process-wide provider switch has no say; any length (powers of two are fastest, and need no other memory). An even
/// number of real samples goes in as half as many complex ones. Not thread-safe.
/// </remarks>
internal sealed class RealTransform
{
    private readonly Complex[] _items;
    private readonly bool _even;

    internal RealTransform(int points)
    {
        Points = points;
        _even = points % 2 == 0;
        _items = new Complex[_even ? points / 2 : points];
    }

    /// <summary>Samples in.</summary>
    internal int Points { get; }

    /// <summary>Bins out.</summary>
    internal int Bins => Points / 2 + 1;

    /// <summary>A sample, before the transform.</summary>
    internal double this[int index]
    {
        get => !_even || index % 2 == 0 ? _items[_even ? index / 2 : index].Real : _items[index / 2].Imaginary;
        set
        {
            if (!_even)
                _items[index] = value;
            else if (index % 2 == 0)
                _items[index / 2] = new Complex(value, _items[index / 2].Imaginary);
            else
                _items[index / 2] = new Complex(_items[index / 2].Real, value);
        }
    }

    /// <summary>Turns samples into bins: one call of the library, which nothing interrupts.</summary>
    internal void Transform()
    {
        if (_items.Length > 1)
            ManagedFourierTransformProvider.Instance.Forward(_items, FourierTransformScaling.NoScaling);
    }

    /// <summary>A bin, after the transform.</summary>
    internal Complex Bin(int k)
    {
        if (!_even)
            return _items[k];
        // Even and odd samples were packed into one: Z = E + iO, E and O hermitian; X_k = E_k + e^(-2 pi i k/N) O_k.
        int half = _items.Length;
        Complex z = _items[k % half], mirrored = Complex.Conjugate(_items[(half - k) % half]);
        Complex even = (z + mirrored) / 2, odd = (z - mirrored) / new Complex(0, 2);
        double angle = -2 * Math.PI * k / Points;
        return even + new Complex(Math.Cos(angle), Math.Sin(angle)) * odd;
    }

    /// <summary>|X_k|^2, after the transform.</summary>
    internal double Power(int k)
    {
        Complex bin = Bin(k);
        return bin.Real * bin.Real + bin.Imaginary * bin.Imaginary;
    }
}
