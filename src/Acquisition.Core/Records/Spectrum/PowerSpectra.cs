using System;
using System.Collections.Generic;

namespace Acquisition.Core.Records;

/// <summary>
/// The power spectra of segments of a record and their mean (Welch 1967). Samples go straight into the array of the transform, which serves one segment after the other; beside it there are
/// the sums of the bins and one half of the window, which is symmetric.
/// </summary>
internal sealed class PowerSpectra
{
    /// <summary>So many samples or bins between two looks at who watches.</summary>
    private const int Look = 1 << 16;

    private readonly SampleStore _samples;
    private readonly SpectralWindow _window;
    private readonly int _segment, _hop;
    private readonly double[] _weights, _power;
    private readonly RealTransform _transform;

    internal PowerSpectra(SampleStore samples, SpectralWindow window, int segment, int hop)
    {
        _samples = samples;
        _window = window;
        _segment = segment;
        _hop = hop;
        _weights = new double[segment / 2 + 1];
        _transform = new RealTransform(segment);
        _power = new double[_transform.Bins];
    }

    /// <summary>The spectrum. Who watches is looked at between the weights of the window, the samples and the bins, not within a transform.</summary>
    internal Spectrum Mean(double rate, IReadOnlyList<Finding> findings, LongCall? call)
    {
        Weigh(call?.Part(0, 0.1), out double sum, out double squares);
        int averages = (_samples.Length - _segment) / _hop + 1;
        for (int i = 0; i < averages; i++)
            Add(i * _hop, call?.Part(0.1 + 0.9 * i / averages, 0.1 + 0.9 * (i + 1) / averages));
        for (int k = 0; k < _power.Length; k++)
            _power[k] /= averages;
        return new Spectrum(_power, _segment, _window, rate, sum, squares, averages, findings);
    }

    private void Weigh(LongCall? call, out double sum, out double squares)
    {
        for (int i = 0; i < _weights.Length; i++)
        {
            if (i % Look == 0)
                call?.Reached(i, _weights.Length);
            _weights[i] = _window.WeightAt(i, _segment);
        }
        sum = squares = 0;
        for (int i = 0; i < _segment; i++)
        {
            double w = Weight(i);
            sum += w;
            squares += w * w;
        }
    }

    private void Add(int start, LongCall? call)
    {
        var block = new double[Math.Min(SamplePasses.BlockLength, _segment)];
        for (int from = 0, count; from < _segment; from += count)
        {
            if (from % Look == 0)
                call?.Reached(0.2 * from / _segment);
            count = Math.Min(block.Length, _segment - from);
            _samples.Copy(start + from, block, 0, count);
            for (int i = 0; i < count; i++)
                _transform[from + i] = block[i] * Weight(from + i);
        }
        call?.Reached(0.2);
        _transform.Transform();
        for (int k = 0; k < _power.Length; k++)
        {
            if (k % Look == 0)
                call?.Reached(0.8 + 0.2 * k / _power.Length);
            _power[k] += _transform.Power(k);
        }
    }

    private double Weight(int index) => _weights[Math.Min(index, _segment - index)];
}
