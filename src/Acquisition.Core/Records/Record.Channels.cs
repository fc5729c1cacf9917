using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Records;

namespace Acquisition.Core;

// Arithmetic of channels that were captured together: the differential signal of two inputs, the power of a voltage and a current.
public sealed partial class Record
{
    /// <summary>The sum of two channels, sample by sample. For its steps, limits and findings see <see cref="Minus"/>.</summary>
    /// <param name="other">A channel of the same kind, captured at the same instants.</param>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    /// <exception cref="ArgumentException">The two differ in kind, count, rate or start, or hold levels in decibels.</exception>
    public Record Plus(Record other) => Joined(other, "+", SameKind(other), (a, b) => a + b).With(resolution: BothSteps(other));

    /// <summary>The difference of two channels, sample by sample: what lies between two points, each of which was measured against earth.</summary>
    /// <param name="other">A channel of the same kind, captured at the same instants.</param>
    /// <remarks>
    /// The steps of the two converters join as √(a² + b²), because the errors of rounding are independent. The result has no limits of its own; where samples of either channel lie at the
    /// end of its converter, a finding says so. What both have in common is taken away only as well as their gains and delays agree: 1 % of difference in gain leaves 1 % of it.
    /// </remarks>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    /// <exception cref="ArgumentException">The two differ in kind, count, rate or start, or hold levels in decibels.</exception>
    public Record Minus(Record other) => Joined(other, "-", SameKind(other), (a, b) => a - b).With(resolution: BothSteps(other));

    /// <summary>The product of two channels, sample by sample: the power at each instant of a voltage and a current, whose mean over whole periods is the mean power.</summary>
    /// <param name="other">A channel captured at the same instants.</param>
    /// <remarks>The step of a product is not the same everywhere, so the result states none. A delay between the channels, as of a current probe, shifts the phase and with it the mean: state it with <see cref="WithStart"/> and take it out before.</remarks>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    /// <exception cref="ArgumentException">The two differ in count, rate or start, or hold something that has no product, such as levels in decibels or temperatures.</exception>
    public Record Times(Record other)
    {
        _ = other ?? throw new ArgumentNullException(nameof(other));
        return Dimension.TryMultiply(RequireLinear(this, nameof(other)).Dimension, RequireLinear(other, nameof(other)).Dimension, out Dimension product)
            ? Joined(other, "×", QuantityKind.Of(product), (a, b) => a * b)
            : throw new ArgumentException($"other must have a product with {Kind.Name}; was {other.Kind.Name}", nameof(other));
    }

    private Record Joined(Record other, string sign, QuantityKind kind, Func<double, double, double> of)
    {
        RequireSameInstants(other);
        double[] samples = ToSiValues(), others = other.ToSiValues();
        for (int i = 0; i < samples.Length; i++)
            samples[i] = of(samples[i], others[i]);
        var findings = new List<Finding>();
        foreach (Record channel in new[] { this, other })
            findings.AddNew(RecordStatistics.Of(channel) is { HasValue: true } statistics ? statistics.Value.Findings : channel.Findings);
        string name = Label(this, "first") + " " + sign + " " + Label(other, "second");
        return new Record(NumberSamples.Of(samples), kind, _rate, _interval, _keepsInterval, _start, null, null, null, name, string.Join("; ", new[] { Provenance, other.Provenance }.Where(text => text.Length > 0).Distinct()), findings);

        static string Label(Record record, string otherwise) => record.Name.Length > 0 ? record.Name : otherwise;
    }

    private QuantityKind SameKind(Record other)
    {
        _ = other ?? throw new ArgumentNullException(nameof(other));
        return RequireLinear(this, nameof(other)) == RequireLinear(other, nameof(other)) ? Kind : throw new ArgumentException($"other must hold {Kind.Name} as this record does; was {other.Kind.Name}", nameof(other));
    }

    private static QuantityKind RequireLinear(Record record, string argument) => record.Kind.Nature == QuantityNature.Linear
        ? record.Kind
        : throw new ArgumentException($"channels are joined as linear quantities such as volts; was {record.Kind.Name} ({record.Kind.Symbol})", argument);

    private void RequireSameInstants(Record other)
    {
        if (other.Length != Length)
            throw new ArgumentException($"other must hold {Count} as this record does; was {other.Count} (Slice cuts both to the same stretch)", nameof(other));
        // The last samples lie apart by what the rates differ, times their number.
        double apart = Math.Max(Math.Abs(other._start - _start), Math.Abs(other.TimeSi(Length - 1) - TimeSi(Length - 1)));
        if (apart > 1e-3 * _interval)
            throw new ArgumentException(
                $"other must be sampled at the same instants, from {Start.InWords()} at {SampleRate.InWords(7)}; was from {other.Start.InWords()} at {other.SampleRate.InWords(7)} (Reconstruct draws one at the instants of the other; WithStart takes out a known delay)",
                nameof(other));
    }

    private double? BothSteps(Record other) => ResolutionSi is { } a && other.ResolutionSi is { } b ? Math.Sqrt((a * a) + (b * b)) : null;
}
