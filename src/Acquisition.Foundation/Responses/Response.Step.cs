using System;
using System.Collections.Generic;
using Acquisition.Core.Responses;

namespace Acquisition.Core;

// The response in time: what a step does. The step starts at t = 0 at the input; levels are fractions of the final value (handbook 2.1).
public abstract partial class Response
{
    private StepResponse? _step;
    private Held? _stepReference;

    private static readonly Ratio TenPercent = Ratio.FromPercent(10), NinetyPercent = Ratio.FromPercent(90);

    /// <summary>The step response without the pure delay, which <see cref="StepDelay"/> adds back.</summary>
    private protected abstract StepResponse MakeStep();

    /// <summary>The pure delay left out of <see cref="MakeStep"/>, s.</summary>
    internal abstract double StepDelay { get; }

    /// <summary>When a step arrives at the output, s: once for each way through that has a delay of its own; its corners and jumps are there.</summary>
    internal virtual IReadOnlyList<double> Arrivals => new[] { StepDelay };

    internal StepResponse StepResponse => _step ??= MakeStep();

    /// <summary>What a step of 1 ends at; for a response that blocks DC, its largest value, which the droop then leaves.</summary>
    internal double StepReference
    {
        get
        {
            _stepReference ??= new Held(ReferenceOf(StepResponse));
            return _stepReference.Value;
        }
    }

    /// <summary>Whether a constant passes: false for AC-coupled and band-pass responses.</summary>
    public bool PassesDc => Math.Abs(DcGain) > 1e-12 * ReferenceMagnitude;

    /// <summary>The output at a time after a step of 1 was applied at t = 0 (before it where the time is negative: models such as the Gaussian answer early).</summary>
    public Ratio StepAt(Duration time) => Ratio.FromSi(StepResponse.Value(time.SiValue - StepDelay), nameof(time));

    /// <summary>The 10 % to 90 % rise time of the step response (IEEE 181 transition duration): computed from the response, not from its bandwidth.</summary>
    /// <exception cref="InvalidOperationException">The step response does not rise through the levels.</exception>
    public Duration RiseTime => RiseTimeBetween(TenPercent, NinetyPercent);

    /// <summary>The rise time between two levels: from the first crossing of the lower to the first crossing of the upper one.</summary>
    /// <param name="low">The lower level, as a fraction of the final value (of the largest value where the response blocks DC).</param>
    /// <param name="high">The upper level.</param>
    /// <exception cref="ArgumentOutOfRangeException">The levels are not 0 &lt; low &lt; high &lt; 1.</exception>
    /// <exception cref="InvalidOperationException">The step response does not rise through the levels.</exception>
    public Duration RiseTimeBetween(Ratio low, Ratio high)
    {
        RequireLevels(low, high);
        double first = Reach(low.SiValue), last = Reach(high.SiValue);
        return Duration.FromSi(last - first, nameof(high));
    }

    /// <summary>When the step response first reaches a level, after the step at the input.</summary>
    /// <param name="level">The level, as a fraction of the final value: 0.5 gives the delay of the edge.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not above 0 and below 1.</exception>
    /// <exception cref="InvalidOperationException">The step response does not reach the level.</exception>
    public Duration StepCrossing(Ratio level)
    {
        if (!(level.SiValue > 0 && level.SiValue < 1))
            throw Refuse.OutOfRange(level.SiValue, Ratio.Kind, nameof(level), "above 0 and below 1");
        return Duration.FromSi(Reach(level.SiValue) + StepDelay, nameof(level));
    }

    /// <summary>By how much the step response exceeds its final value, as a fraction of that; 0 where it does not.</summary>
    /// <exception cref="InvalidOperationException">The response blocks DC: it has no final value to exceed.</exception>
    public Ratio Overshoot
    {
        get
        {
            RequireDc("overshoot");
            double over = StepResponse.Largest(Math.Sign(StepReference), out _) / StepReference - 1;
            return Ratio.FromSi(over > 1e-12 ? over : 0, "overshoot");
        }
    }

    /// <summary>By how much the step response goes the other way before it rises, as a fraction of the final value; 0 where it does not. Linear-phase responses do it as much as they overshoot.</summary>
    /// <exception cref="InvalidOperationException">The response blocks DC.</exception>
    public Ratio Preshoot
    {
        get
        {
            RequireDc("preshoot");
            double under = -StepResponse.Largest(-Math.Sign(StepReference), out _) / StepReference;
            return Ratio.FromSi(under > 1e-12 ? under : 0, "preshoot");
        }
    }

    /// <summary>How long after the step at the input the output stays within a band around its final value for good.</summary>
    /// <param name="band">Half the width of the band as a fraction of the final value: 1 % means from 99 % to 101 %.</param>
    /// <exception cref="ArgumentOutOfRangeException">The band is not above 0 and below 1.</exception>
    /// <remarks>A step is followed for 1000 periods of each resonance (500 behind a Gaussian). What rings longer than that is answered from its decay where it rings alone, else refused.</remarks>
    /// <exception cref="InvalidOperationException">The response blocks DC, or several resonances ring outside the band for longer than a step is followed.</exception>
    public Duration SettlingTime(Ratio band)
    {
        if (!(band.SiValue > 0 && band.SiValue < 1))
            throw Refuse.OutOfRange(band.SiValue, Ratio.Kind, nameof(band), "above 0 and below 1");
        RequireDc("settling time");
        if (!StepResponse.TryLastOutside(band.SiValue * Math.Abs(StepReference), out double seconds))
        {
            Ringing ringing = StepResponse.Ringing!;
            throw new InvalidOperationException(
                FormattableString.Invariant($"{Name} still rings outside {band} after {ringing.Until * ringing.Hertz:F0} periods ({ringing.Sharpness}) and not alone: its settling time is not computed; add damping, or take a wider band"));
        }
        return Duration.FromSi(seconds + StepDelay, nameof(band));
    }

    /// <summary>From where the step response leaves zero by a fraction of its final value to where it stays that near to it, s; null where it rings on.</summary>
    internal double? TransitionSpan(double band)
    {
        StepResponse step = StepResponse;
        double level = band * StepReference, begin = double.PositiveInfinity;
        if (!step.TryLastOutside(Math.Abs(level), out double settled))
            return null;
        if (step.FirstReach(level, out double rising))
            begin = rising;
        if (step.FirstReach(-level, out double preshoot))
            begin = Math.Min(begin, preshoot);
        return Math.Max(0, settled - begin);
    }

    private protected static void RequireLevels(Ratio low, Ratio high)
    {
        if (!(low.SiValue > 0 && low.SiValue < 1))
            throw Refuse.OutOfRange(low.SiValue, Ratio.Kind, nameof(low), "above 0 and below 1");
        if (!(high.SiValue > low.SiValue && high.SiValue < 1))
            throw Refuse.OutOfRange(high.SiValue, Ratio.Kind, nameof(high), $"above the lower level {low} and below 1");
    }

    private double Reach(double level) =>
        StepResponse.FirstReach(level * StepReference, out double seconds)
            ? seconds
            : throw new InvalidOperationException($"the step response of {Name} does not reach {Ratio.FromFraction(level)} of its final value");

    private void RequireDc(string what)
    {
        if (!PassesDc)
            throw new InvalidOperationException($"{Name} blocks DC: its step returns to zero, so that {what} has no final value to refer to; ask for the droop at a time with StepAt instead");
    }
}
