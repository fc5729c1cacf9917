using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Records;
using Acquisition.Core.Responses;

namespace Acquisition.Core;

/// <summary>A measured amplitude against frequency: levels in decibels at rising frequencies, with a stated reference (handbook 10.1).</summary>
/// <remarks>
/// The levels may count from anywhere (1 V, 1 mW, the input); what falls by how much is told from the reference level, which is that of the first point until a <c>With...</c> method
/// chooses another. Between points, levels are linear in decibels over the logarithm of frequency; beyond them nothing is known. Immutable.
/// </remarks>
public sealed partial class Sweep
{
    /// <summary>A level beyond is a misread number, whatever it counts from.</summary>
    internal const double LargestDecibels = 1e6;

    private readonly double[] _hertz;
    private readonly double[] _decibels;
    private readonly double[]? _uncertainties;

    private Sweep(double[] hertz, double[] decibels, double[]? uncertainties, double reference, double referenceUncertainty, string referenceText, double referenceHertz, IReadOnlyList<Finding> findings)
    {
        _hertz = hertz;
        _decibels = decibels;
        _uncertainties = uncertainties;
        ReferenceDecibels = reference;
        ReferenceDeviation = referenceUncertainty;
        ReferenceText = referenceText;
        ReferenceHertz = referenceHertz;
        Findings = findings.Frozen();
    }

    /// <summary>What it is called; empty unless <see cref="WithName"/> or the head of its column named it.</summary>
    public string Name { get; private init; } = "";

    /// <summary>Measured points.</summary>
    public int Count => _hertz.Length;

    /// <summary>The points, by rising frequency.</summary>
    public IReadOnlyList<SweepPoint> Points => Enumerable.Range(0, Count).Select(i => new SweepPoint(_hertz[i], _decibels[i], _uncertainties?[i])).ToArray();

    /// <summary>What to know about the levels: warnings of the fits and records that they come from, each code once. Bandwidths, fitted models and attributions pass them on.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>The level that drops are counted from.</summary>
    public DecibelRatio ReferenceLevel => DecibelRatio.FromDecibels(ReferenceDecibels);

    /// <summary>How the reference level was chosen, in words.</summary>
    public string ReferenceText { get; }

    /// <summary>The lowest frequency.</summary>
    public Frequency Lowest => Frequency.FromSi(_hertz[0], "frequency");

    /// <summary>The highest frequency.</summary>
    public Frequency Highest => Frequency.FromSi(_hertz[Count - 1], "frequency");

    internal double ReferenceDecibels { get; }

    internal double ReferenceDeviation { get; }

    internal double ReferenceHertz { get; }

    internal double[] HertzValues => _hertz;

    internal bool HasUncertainties => _uncertainties is not null;

    /// <summary>A sweep from a table of levels in decibels.</summary>
    /// <param name="hertz">Frequencies in hertz, above 0 and rising; at least one. Copied.</param>
    /// <param name="decibels">The level at each.</param>
    /// <param name="uncertaintiesInDecibels">Standard uncertainty of each level, at least 0; null where unknown.</param>
    /// <exception cref="ArgumentNullException">Frequencies or levels are null.</exception>
    /// <exception cref="ArgumentException">The lengths differ, or a row is out of order or out of range; the message names the row.</exception>
    public static Sweep OfDecibels(double[] hertz, double[] decibels, double[]? uncertaintiesInDecibels = null)
    {
        if (hertz is null)
            throw new ArgumentNullException(nameof(hertz));
        if (decibels is null)
            throw new ArgumentNullException(nameof(decibels));
        CheckLength(hertz.Length, decibels.Length, nameof(decibels));
        if (uncertaintiesInDecibels is not null)
            CheckLength(hertz.Length, uncertaintiesInDecibels.Length, nameof(uncertaintiesInDecibels));
        if (hertz.Length == 0)
            throw new ArgumentException($"{nameof(hertz)} must hold at least one frequency", nameof(hertz));
        for (int i = 0; i < hertz.Length; i++)
        {
            if (!(hertz[i] > (i == 0 ? 0 : hertz[i - 1]) && hertz[i] <= double.MaxValue))
                throw new ArgumentException($"row {i}: {nameof(hertz)} must rise and be above 0 Hz; was {FewDigits.Number(hertz[i], 17)}" + (i > 0 ? $" after {FewDigits.Number(hertz[i - 1], 17)}" : ""), nameof(hertz));
            if (!(Math.Abs(decibels[i]) <= LargestDecibels))
                throw new ArgumentException($"row {i}: {nameof(decibels)} must be finite; was {FewDigits.Number(decibels[i], 17)}", nameof(decibels));
            if (uncertaintiesInDecibels is not null && !(uncertaintiesInDecibels[i] >= 0 && uncertaintiesInDecibels[i] <= LargestDecibels))
                throw new ArgumentException($"row {i}: {nameof(uncertaintiesInDecibels)} must be at least 0 dB; was {FewDigits.Number(uncertaintiesInDecibels[i], 17)}", nameof(uncertaintiesInDecibels));
        }
        return Referenced((double[])hertz.Clone(), (double[])decibels.Clone(), (double[]?)uncertaintiesInDecibels?.Clone(), []);
    }

    /// <summary>A sweep from a table of levels in decibels.</summary>
    /// <param name="frequencies">Frequencies, above 0 and rising; at least one.</param>
    /// <param name="levels">The level at each.</param>
    /// <param name="uncertainties">Standard uncertainty of each level; null where unknown.</param>
    /// <exception cref="ArgumentNullException">Frequencies or levels are null.</exception>
    /// <exception cref="ArgumentException">The lengths differ, or a row is out of order or out of range; the message names the row.</exception>
    public static Sweep Of(IReadOnlyList<Frequency> frequencies, IReadOnlyList<DecibelRatio> levels, IReadOnlyList<DecibelRatio>? uncertainties = null)
    {
        if (frequencies is null)
            throw new ArgumentNullException(nameof(frequencies));
        if (levels is null)
            throw new ArgumentNullException(nameof(levels));
        return OfDecibels(frequencies.Select(f => f.SiValue).ToArray(), levels.Select(l => l.Decibels).ToArray(), uncertainties?.Select(u => u.Decibels).ToArray());
    }

    /// <summary>A sweep from a table of amplitudes, or of gains as plain ratios: 20 lg of each.</summary>
    /// <param name="hertz">Frequencies in hertz, above 0 and rising; at least one.</param>
    /// <param name="volts">Amplitude at each (all peak, or all rms), above 0.</param>
    /// <param name="uncertaintiesInVolts">Standard uncertainty of each amplitude; null where unknown.</param>
    /// <exception cref="ArgumentNullException">Frequencies or amplitudes are null.</exception>
    /// <exception cref="ArgumentException">The lengths differ, or a row is out of order or out of range; the message names the row.</exception>
    public static Sweep OfAmplitudes(double[] hertz, double[] volts, double[]? uncertaintiesInVolts = null)
    {
        if (volts is null)
            throw new ArgumentNullException(nameof(volts));
        for (int i = 0; i < volts.Length; i++)
        {
            if (!(volts[i] > 0 && volts[i] <= double.MaxValue))
                throw new ArgumentException($"row {i}: {nameof(volts)} must be above 0 V, for the logarithm of 0 does not exist; was {FewDigits.Number(volts[i], 17)}", nameof(volts));
        }
        if (uncertaintiesInVolts is not null)
            CheckLength(volts.Length, uncertaintiesInVolts.Length, nameof(uncertaintiesInVolts));
        return OfDecibels(hertz, volts.Select(v => 20 * Math.Log10(v)).ToArray(), uncertaintiesInVolts?.Select((u, i) => DecibelRatio.DecibelsPerNeper * u / volts[i]).ToArray());
    }

    /// <summary>A sweep from sines fitted to one record per frequency, in any order: 20 lg of each amplitude in volts, with the uncertainty of its fit.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="sines"/> is null.</exception>
    /// <exception cref="ArgumentException">There is none, or two have the same frequency.</exception>
    public static Sweep OfSines(IEnumerable<FittedSine> sines)
    {
        if (sines is null)
            throw new ArgumentNullException(nameof(sines));
        FittedSine[] sorted = sines.OrderBy(s => s.Frequency.SiValue).ToArray();
        return OfAmplitudes(
            sorted.Select(s => s.Frequency.SiValue).ToArray(), sorted.Select(s => s.Amplitude.SiValue).ToArray(), sorted.Select(s => s.AmplitudeUncertainty.SiValue).ToArray())
            .With(PassedOn.Gathered(sorted.Select(s => s.Findings)));
    }

    /// <summary>A sweep of gains from one channel to another, one comparison per frequency, in any order.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="gains"/> is null.</exception>
    /// <exception cref="ArgumentException">There is none, or two have the same frequency.</exception>
    public static Sweep OfGains(IEnumerable<ChannelComparison> gains)
    {
        if (gains is null)
            throw new ArgumentNullException(nameof(gains));
        ChannelComparison[] sorted = gains.OrderBy(g => g.Frequency.SiValue).ToArray();
        return Of(sorted.Select(g => g.Frequency).ToArray(), sorted.Select(g => g.Gain).ToArray(), sorted.Select(g => g.GainUncertainty).ToArray())
            .With(PassedOn.Gathered(sorted.Select(g => g.Findings)));
    }

    /// <summary>What a response would show at these frequencies, without uncertainty.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The frequencies are not above 0 and rising, or the response passes nothing at one.</exception>
    public static Sweep Of(Response response, IReadOnlyList<Frequency> frequencies)
    {
        if (response is null)
            throw new ArgumentNullException(nameof(response));
        if (frequencies is null)
            throw new ArgumentNullException(nameof(frequencies));
        return Of(frequencies, frequencies.Select(f => response.Gain(f)).ToArray());
    }

    /// <summary>The same sweep under a name.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public Sweep WithName(string name)
    {
        _ = name ?? throw new ArgumentNullException(nameof(name));
        return new(_hertz, _decibels, _uncertainties, ReferenceDecibels, ReferenceDeviation, ReferenceText, ReferenceHertz, Findings) { Name = name };
    }

    /// <summary>The same sweep with drops counted from its level at a frequency, interpolated.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency lies outside the sweep.</exception>
    public Sweep WithReference(Frequency frequency)
    {
        double level = Level(frequency.SiValue, nameof(frequency), out double? deviation);
        return new Sweep(_hertz, _decibels, _uncertainties, level, deviation ?? 0, $"level at {FewDigits.Hertz(frequency.SiValue)}", frequency.SiValue, Findings) { Name = Name };
    }

    /// <summary>The same sweep with drops counted from the median of its levels in a band: a mid-band gain that a single bad point does not move.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The band holds no point.</exception>
    public Sweep WithReferenceBand(Frequency low, Frequency high)
    {
        int[] inside = Enumerable.Range(0, Count).Where(i => _hertz[i] >= low.SiValue && _hertz[i] <= high.SiValue).ToArray();
        if (inside.Length == 0)
            throw Refuse.OutOfRange(high.SiValue, Frequency.Kind, nameof(high), $"such that the band from {low} holds a point of the sweep");
        double[] levels = inside.Select(i => _decibels[i]).OrderBy(l => l).ToArray();
        int middle = levels.Length / 2;
        double median = levels.Length % 2 == 1 ? levels[middle] : (levels[middle - 1] + levels[middle]) / 2;
        // A median scatters 1.2533 times as much as a mean of normal values; a single point as itself.
        double deviation = _uncertainties is null ? 0 : Math.Sqrt(inside.Average(i => _uncertainties[i] * _uncertainties[i]) / inside.Length) * (inside.Length > 2 ? Math.Sqrt(Math.PI / 2) : 1);
        return new Sweep(_hertz, _decibels, _uncertainties, median, deviation, $"median level from {FewDigits.Hertz(low.SiValue)} to {FewDigits.Hertz(high.SiValue)}", Math.Sqrt(_hertz[inside[0]] * _hertz[inside[inside.Length - 1]]), Findings) { Name = Name };
    }

    /// <summary>The same sweep with drops counted from a level known from elsewhere.</summary>
    public Sweep WithReferenceLevel(DecibelRatio level) =>
        new(_hertz, _decibels, _uncertainties, level.Decibels, 0, $"stated level {FewDigits.Decibels(level.Decibels)}", _hertz[0], Findings) { Name = Name };

    /// <summary>The level at a frequency, interpolated: linear in decibels over the logarithm of frequency.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency lies outside the sweep: it is not extrapolated.</exception>
    public DecibelRatio LevelAt(Frequency frequency) => DecibelRatio.FromDecibels(Level(frequency.SiValue, nameof(frequency), out _));

    /// <summary>The level at a frequency relative to the reference level.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency lies outside the sweep: it is not extrapolated.</exception>
    public DecibelRatio RelativeLevelAt(Frequency frequency) => DecibelRatio.FromDecibels(Level(frequency.SiValue, nameof(frequency), out _) - ReferenceDecibels);

    /// <summary>The part of the sweep in a band, with the same reference.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The band holds no point.</exception>
    public Sweep Between(Frequency low, Frequency high)
    {
        int[] inside = Enumerable.Range(0, Count).Where(i => _hertz[i] >= low.SiValue && _hertz[i] <= high.SiValue).ToArray();
        if (inside.Length == 0)
            throw Refuse.OutOfRange(high.SiValue, Frequency.Kind, nameof(high), $"such that the band from {low} holds a point of the sweep");
        double[] Part(double[] values) => inside.Select(i => values[i]).ToArray();
        return new Sweep(Part(_hertz), Part(_decibels), _uncertainties is null ? null : Part(_uncertainties), ReferenceDecibels, ReferenceDeviation, ReferenceText, ReferenceHertz, Findings) { Name = Name };
    }

    /// <summary>This sweep less another one, at its own frequencies: what a power sensor, a reference receiver or a second channel saw drops out (handbook 10.2).</summary>
    /// <param name="other">The sweep to subtract; it must cover the frequencies of this one. Its levels are interpolated, and taken as independent.</param>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The other sweep does not cover a frequency of this one.</exception>
    public Sweep Less(Sweep other)
    {
        if (other is null)
            throw new ArgumentNullException(nameof(other));
        var levels = new double[Count];
        double[]? deviations = HasUncertainties || other.HasUncertainties ? new double[Count] : null;
        for (int i = 0; i < Count; i++)
        {
            levels[i] = _decibels[i] - other.Level(_hertz[i], nameof(other), out double? u);
            if (deviations is not null)
                deviations[i] = Math.Sqrt(Square(_uncertainties?[i] ?? 0) + Square(u ?? 0));
        }
        List<Finding> findings = [.. Findings];
        findings.AddNew(other.Findings);
        return Referenced(_hertz, levels, deviations, findings).WithName(Name);
    }

    /// <summary>Peak-to-peak ripple in a band: highest less lowest measured level.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The band holds no point.</exception>
    public DecibelRatio Ripple(Frequency low, Frequency high)
    {
        double[] part = Between(low, high)._decibels;
        return DecibelRatio.FromDecibels(part.Max() - part.Min());
    }

    /// <summary>The sweep as a response that any chain can hold: its levels relative to the reference level, without phase.</summary>
    /// <param name="name">What was measured.</param>
    /// <param name="below">What holds below the sweep.</param>
    /// <param name="above">What holds above the sweep.</param>
    /// <remarks>Magnitude alone does not determine a step: rise times of this response are those of a linear phase (handbook 2.7).</remarks>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException">The sweep has fewer than two points.</exception>
    public Response ToResponse(string name, OutsideBand below = OutsideBand.Hold, OutsideBand above = OutsideBand.Refuse) =>
        Response.Measured(name, Enumerable.Range(0, Count).Select(i => new FrequencyPoint(Frequency.FromSi(_hertz[i], "frequency"), DecibelRatio.FromDecibels(_decibels[i] - ReferenceDecibels))).ToArray(), below, above);

    internal double Level(double hertz, string argument, out double? deviation)
    {
        if (!(hertz >= _hertz[0] && hertz <= _hertz[Count - 1]))
            throw Refuse.OutOfRange(hertz, Frequency.Kind, argument, $"within the sweep, from {Lowest} to {Highest}", "a sweep is not extrapolated");
        int above = Array.BinarySearch(_hertz, hertz);
        if (above >= 0)
        {
            deviation = _uncertainties?[above];
            return _decibels[above];
        }
        above = ~above;
        double share = Math.Log(hertz / _hertz[above - 1]) / Math.Log(_hertz[above] / _hertz[above - 1]);
        // As if the two shared their errors: the systematic part of a calibration does not average out between its points.
        deviation = _uncertainties is { } u ? (1 - share) * u[above - 1] + share * u[above] : null;
        return _decibels[above - 1] + share * (_decibels[above] - _decibels[above - 1]);
    }

    private static Sweep Referenced(double[] hertz, double[] decibels, double[]? uncertainties, IReadOnlyList<Finding> findings) =>
        new(hertz, decibels, uncertainties, decibels[0], uncertainties?[0] ?? 0, $"level at {FewDigits.Hertz(hertz[0])}, the first point", hertz[0], findings);

    internal Sweep With(IReadOnlyList<Finding> findings) => Referenced(_hertz, _decibels, _uncertainties, findings).WithName(Name);

    private static double Square(double x) => x * x;

    private static void CheckLength(int expected, int found, string argument)
    {
        if (expected != found)
            throw new ArgumentException($"{argument} must have one value for each of the {expected} frequencies; has {found}", argument);
    }

    /// <summary>Points, range and reference in one line.</summary>
    public override string ToString() => $"{Count} points from {Lowest.InWords(5)} to {Highest.InWords(5)}, relative to the {ReferenceText}";
}
