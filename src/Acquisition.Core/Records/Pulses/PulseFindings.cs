using System;
using System.Linq;

namespace Acquisition.Core.Records;

/// <summary>What there is to say about a pulse record, in one place: codes are stable.</summary>
internal static class PulseFindings
{
    private const string States = "handbook 8.2; IEEE Std 181-2011", Procedure = "handbook 8.7";

    /// <summary>Of a mean period: below it digits are those of the computation.</summary>
    private const double LeastShown = 1e-9;

    internal static Finding NotFinite(int index) => new("not-a-number", Severity.Failure, FormattableString.Invariant($"sample {index} is not a finite number"), "leave the stretch out with Slice, or fill it knowingly", Procedure);

    internal static Finding TooShort(int count) => new("record-too-short", Severity.Failure, FormattableString.Invariant($"{count} samples; a transition needs at least 3"), null, Procedure);

    internal static Finding Constant(double value, QuantityKind kind) => new("no-two-states", Severity.Failure, $"all samples are {FewDigits.Of(value, kind)}: there is one state and no transition", null, States);

    internal static Finding NotSeparated(double amplitude, double noise, double step, QuantityKind kind) => new(
        "states-not-separated",
        Severity.Failure,
        $"the states found are {FewDigits.Of(amplitude, kind)} apart, which is not above 6 times the noise ({FewDigits.Of(noise, kind)} rms)"
            + (step > 0 ? $" and 4 steps ({FewDigits.Of(step, kind)} each)" : "") + ": this may be noise and no pulse",
        "give the state levels if you know them",
        Procedure);

    internal static Finding NoiseIsSlow(double fast, double all, double window, QuantityKind kind) => new(
        "noise-is-slow",
        Severity.Note,
        $"the noise of the states grows with the time that one looks at it: {FewDigits.Of(fast, kind)} rms from sample to sample, {FewDigits.Of(all, kind)} rms along the states, and still growing within {FewDigits.Seconds(window)}. "
            + "It is behind a bandwidth limit far below the sample rate, or the states move: all of it is taken for noise",
        "longer states or fewer samples per second; a record of the resting signal tells noise from change",
        Procedure);

    internal static Finding NoPlateau(double share) => new(
        "no-plateau",
        Severity.Failure,
        FormattableString.Invariant($"a state holds only {share:F2} times as many samples as lie between the states, less than 0.6: the record has no plateau there, as a sine, a ramp or noise has none"),
        "use a sine fit or the extremes for a sine, or give the state levels if you know them",
        States);

    internal static Finding MoreStates(double count, double level, QuantityKind kind) => new(
        "more-than-two-states",
        Severity.Warning,
        FormattableString.Invariant($"{count} samples rest around {FewDigits.Of(level, kind)}, which is neither of the two states: the record has three levels or more, and transitions to the others are not counted"),
        "give the state levels between which to measure (WithStateLevels), or cut out the stretch with two levels",
        States);

    internal static Finding Clipped(long count, string side, double limit, QuantityKind kind) =>
        ConverterLimits.Clipped(count, side, limit, kind, "levels, overshoot and what is derived from them may be those of the converter");

    internal static Finding NotResolved(long count, long of, bool rising, double atMost, int needed, double interval) => new(
        "edge-not-resolved",
        Severity.Warning,
        FormattableString.Invariant($"{count} of {of} {(rising ? "rising" : "falling")} transitions hold fewer than {needed} samples: they take at most {FewDigits.Seconds(atMost)}; the samples are {FewDigits.Seconds(interval)} apart"),
        "sample faster by " + FewDigits.Number(Math.Max(2, Math.Ceiling((needed + 1) * interval / atMost * 2) / 2), 3) + " times or more",
        "handbook 8.4");

    internal static Finding NoTransition(bool? rising) => new(
        "no-transition",
        Severity.Failure,
        rising is null ? "the record holds no complete transition" : $"the record holds no complete {(rising.Value ? "rising" : "falling")} transition",
        "record longer, or check the trigger");

    internal static Finding NotEnough(string what, string needs) => new("incomplete-pulse", Severity.Note, $"{what} needs {needs}, which the record does not hold", "record longer", "handbook 8.3");

    internal static Finding Incomplete(bool rising) => new("edge-incomplete", Severity.Note, $"the {(rising ? "rising" : "falling")} transition does not pass both reference levels within the record and its neighbours", null, "handbook 8.3");

    internal static Finding NotMonotone(long count) => new("edge-not-monotone", Severity.Warning, FormattableString.Invariant($"{count} transitions go back by more than the noise on their way: their durations depend on which crossing is taken (last of the proximal, first of the distal level)"), null, "handbook 8.3");

    internal static Finding Rejected(long count) => new("crossings-rejected", Severity.Note, FormattableString.Invariant($"{count} further crossings of the middle level did not count, because the signal had not gone through the hysteresis"), null, "handbook 8.3");

    internal static Finding Runts(long count) => new("runt-pulses", Severity.Warning, (count == 1 ? "1 pulse crosses the middle level and returns" : FormattableString.Invariant($"{count} pulses cross the middle level and return")) + " without reaching the other state", "look at them one by one: their times are in the list", "handbook 8.3");

    internal static Finding Missing(long count, double period) => new("missing-pulses", Severity.Warning, FormattableString.Invariant($"{count} pulses are missing from a regular train of {FewDigits.Seconds(period)} period"), null, "handbook 8.3");

    internal static Finding RegionsCut(long count) => new("aberration-region-cut", Severity.Note, FormattableString.Invariant($"{count} aberration regions are cut short by the next transition or the end of the record"), "choose a shorter region or a slower repetition", "handbook 8.3");

    internal static Finding ListCut(long all, int listed) => new("list-cut", Severity.Note, FormattableString.Invariant($"{all} transitions were measured and all are in the statistics; the first {listed} are listed"), "raise the limit of the list in the settings");

    internal static Finding SlopeInNoise() => new("slope-in-noise", Severity.Note, "around a crossing the signal changes by less than 3 times the noise of the difference of two samples: noise over slope says nothing there", "average records, or choose reference levels where the signal is steeper", "handbook 6.12");

    internal static Finding JitterIsNoise(double jitter, double own, double atMost) => new(
        "jitter-is-noise",
        Severity.Warning,
        $"the period jitter of {FewDigits.Seconds(jitter)} rms is no more than noise, quantisation and interpolation of the record make of two instants, {FewDigits.Seconds(own)}: of the signal's own there may be at most {FewDigits.Seconds(atMost)} (95 %, one-sided, of the scatter alone)",
        "less noise, a steeper edge at the instrument or more samples on it; more periods narrow the bound",
        "handbook 6.12, 8.6");

    internal static Finding JitterHoldsNoise(double jitter, double own, double left) => new(
        "jitter-holds-noise",
        Severity.Note,
        $"of the period jitter of {FewDigits.Seconds(jitter)} rms, {FewDigits.Seconds(own)} are noise, quantisation and interpolation of the record: in quadrature {FewDigits.Seconds(left)} are left to the signal",
        null,
        "handbook 6.12, 8.6");

    internal static Finding Rings(double over, double back, double amplitude, QuantityKind kind) => new(
        "states-ring",
        Severity.Note,
        $"most edges ring: {FewDigits.Of(over, Ratio.Kind, 3)} of the amplitude ({FewDigits.Of(over * amplitude, kind, 3)}) beyond the state and {FewDigits.Of(back, Ratio.Kind, 3)} ({FewDigits.Of(back * amplitude, kind, 3)}) back across it. "
            + "Levels are those of the states only where the ringing dies away before they end; large ringing crosses levels again, as runts do",
        "a shorter ground lead or a resistor at the tip of the probe, a matched termination; if the signal itself rings, give the state levels (WithStateLevels)",
        "handbook 7.4, 12.5");

    internal static Finding StatesTilt(double high, double highSeconds, double low, double lowSeconds, double amplitude, double? corner, QuantityKind kind)
    {
        string what = string.Join(" and ", new[] { Moves("high", high, highSeconds), Moves("low", low, lowSeconds) }.Where(x => x is not null));
        string like = corner is { } hertz ? $"AC coupling with a corner of about {FewDigits.Hertz(hertz, 2)}, or a probe with too much compensation, does so" : "a probe with too little compensation, a thermal tail or a slow settling does so";
        double tilt = Math.Max(Math.Abs(high), Math.Abs(low)) / amplitude;
        return new(
            "states-tilt",
            Severity.Warning,
            $"{what} of a pulse: {like}. Each level found is one of those the state passes, so that levels, amplitude, overshoot and what follows from them are off by up to that much",
            (corner is not null ? $"couple DC, or lower the corner {FewDigits.Number(Math.Max(2, Math.Ceiling(tilt / 0.01)), 2)} times for a tilt of 1 % or less; " : "") + "compensate the probe, give the state levels (WithStateLevels), or measure a shorter stretch behind the edge",
            "handbook 7.3, 12.5");

        string? Moves(string state, double change, double seconds) => change == 0 ? null
            : $"the {state} state {(change > 0 ? "rises" : "falls")} by {FewDigits.Of(Math.Abs(change) / amplitude, Ratio.Kind, 3)} of the amplitude ({FewDigits.Of(Math.Abs(change), kind, 3)}) within the {FewDigits.Seconds(seconds, 3)}";
    }

    internal static Finding StatesDrift(double range, string state, double amplitude, QuantityKind kind) => new(
        "states-drift",
        Severity.Warning,
        $"the {state} state moves by {FewDigits.Of(range / amplitude, Ratio.Kind, 3)} of the amplitude ({FewDigits.Of(range, kind, 3)}) over the record, slowly from pulse to pulse: levels, overshoot and instants of single pulses refer to one level for all of them and are off by up to that much",
        "measure a shorter stretch (Slice), or remove the drift or hum: DC coupling for bursts whose density changes, a differential probe for hum (never lift an earth)",
        States);

    internal static Finding TimebaseNotStated(double part) => new(
        "timebase-not-stated",
        Severity.Note,
        $"the mean period repeats to {(part < LeastShown ? "better than 0.001" : FewDigits.Number(1e6 * part))} ppm, and nothing is stated of the time base, which is commonly off by 1 ppm to 50 ppm: uncertainties of period and frequency hold within the record only",
        "state the limit from the data sheet with WithTimebase",
        "common practice, no source");

    internal static Finding NoSlew(QuantityKind kind) => new("no-slew-rate", Severity.Note, $"a slew rate is that of a voltage, not of a {kind.Name}");
}
