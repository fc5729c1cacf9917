using System;
using System.Collections.Generic;

namespace Acquisition.Core.Records;

/// <summary>The bins of a spectrum, dealt out: to DC, to the fundamental, to each harmonic, and the rest to the noise (handbook 9.5). All values are mean squares.</summary>
internal sealed class ToneLines
{
    private const int Nobody = -1;
    private const int Dc = 0;

    private readonly Spectrum _spectrum;
    private readonly int[] _owner;
    private readonly int _halfWidth;
    private readonly double _bin;

    internal ToneLines(Spectrum spectrum, double cycles, int highestHarmonic)
    {
        _spectrum = spectrum;
        _halfWidth = spectrum.Window.MainLobeHalfWidthInBins;
        // Without a window a coherent line is one bin wide.
        if (spectrum.Window.Name == SpectralWindow.Rectangular.Name)
            _halfWidth = 0;
        _bin = spectrum.Rate.SiValue / spectrum.Points.Points;
        _owner = new int[spectrum.Bins];
        for (int k = 0; k < _owner.Length; k++)
            _owner[k] = Nobody;
        HighestHarmonic = highestHarmonic;

        Claim(0, Dc);
        double position = cycles * spectrum.Points.Points;
        if (Collision(position) is not null)
        {
            throw new InvalidOperationException(
                $"the tone lies {FewDigits.Number(position, 3)} bins from DC, and the {spectrum.Window} window spreads both over {_halfWidth} bins to either side; capture more than {2 * _halfWidth + 1} periods, or choose a narrower window");
        }
        Fundamental = Claim(position, 1);
        var orders = new List<(int Order, double Position, double Square, string? Collision)>();
        for (int h = 2; h <= highestHarmonic; h++)
        {
            double at = HarmonicLine.Fold(h * cycles, 1) * spectrum.Points.Points;
            string? collision = Collision(at);
            orders.Add((h, at, collision is null ? Claim(at, h) : 0, collision));
        }

        double rest = 0;
        for (int k = 0; k < _owner.Length; k++)
        {
            if (_owner[k] != Nobody)
                continue;
            rest += spectrum.MeanSquare(k);
            BinsOfNoise++;
        }
        double perBin = BinsOfNoise > 0 ? rest / BinsOfNoise : 0;
        Noise = perBin * _owner.Length;

        var harmonics = new List<HarmonicLine>();
        double nad = rest;
        int covered = _owner.Length - BinsOfNoise;
        foreach ((int order, double at, double square, string? collision) in orders)
        {
            Distortion += square;
            int width = Width(at);
            if (collision is null)
            {
                nad += square;
                covered -= width;
            }
            if (square > Spur)
            {
                Spur = square;
                SpurFrequency = at * _bin;
            }
            harmonics.Add(new HarmonicLine(
                order,
                Frequency.FromSi(at * _bin, "frequency"),
                collision is null ? RmsVoltage.FromSi(Math.Sqrt(square), "rms") : null,
                square > 0 ? DecibelRatio.FromDecibels(10 * Math.Log10(square / Fundamental)) : null,
                collision is null && square < 3 * perBin * width,
                collision));
        }
        // Bins under DC and the fundamental hold noise as well.
        NoiseAndDistortion = nad + perBin * covered;
        Harmonics = harmonics;
        FindSpur(perBin);
    }

    internal int HighestHarmonic { get; }

    internal IReadOnlyList<HarmonicLine> Harmonics { get; }

    internal double Fundamental { get; }

    internal double Distortion { get; }

    internal double Noise { get; }

    internal double NoiseAndDistortion { get; }

    internal int BinsOfNoise { get; }

    internal double Spur { get; private set; }

    /// <summary>In hertz.</summary>
    internal double SpurFrequency { get; private set; }

    private int First(double position) => Math.Max(0, (int)Math.Round(position) - _halfWidth);

    private int Last(double position) => Math.Min(_owner.Length - 1, (int)Math.Round(position) + _halfWidth);

    private int Width(double position) => Last(position) - First(position) + 1;

    private double Claim(double position, int owner)
    {
        double sum = 0;
        for (int k = First(position); k <= Last(position); k++)
        {
            // Bins that DC holds already stay with it: a fundamental that close is too low for the window.
            if (_owner[k] != Nobody)
                continue;
            _owner[k] = owner;
            sum += _spectrum.MeanSquare(k);
        }
        return sum;
    }

    private string? Collision(double position)
    {
        for (int k = First(position); k <= Last(position); k++)
        {
            if (_owner[k] != Nobody)
                return _owner[k] == Dc ? "DC" : _owner[k] == 1 ? "the fundamental" : $"harmonic {_owner[k]}";
        }
        return null;
    }

    /// <summary>The largest line among the bins of nobody: a clear line counts with its main lobe, a peak of the noise with its bin.</summary>
    private void FindSpur(double perBin)
    {
        int peak = -1;
        for (int k = 0; k < _owner.Length; k++)
        {
            if (_owner[k] == Nobody && (peak < 0 || _spectrum.MeanSquare(k) > _spectrum.MeanSquare(peak)))
                peak = k;
        }
        if (peak < 0)
            return;
        double line = _spectrum.PeakAmplitude(peak) * _spectrum.PeakAmplitude(peak) / 2;
        if (_spectrum.MeanSquare(peak) > 30 * perBin)
        {
            double lobe = 0;
            for (int k = First(peak); k <= Last(peak); k++)
                lobe += _owner[k] == Nobody ? _spectrum.MeanSquare(k) : 0;
            line = Math.Max(line, lobe);
        }
        if (line > Spur)
        {
            Spur = line;
            SpurFrequency = peak * _bin;
        }
    }
}
