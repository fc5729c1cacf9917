using System;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Records;

namespace Acquisition.Reports;

/// <summary>A <see cref="PulseMeasurement"/> as a report (IEC 60469): states, durations, aberrations, jitter, runts and transitions, each absent one with its reason.</summary>
public static class PulseReport
{
    private const int TimeDigits = 7;

    /// <summary>The report of a measured pulse train.</summary>
    /// <param name="measurement">The measurement.</param>
    /// <param name="title">The title of the report.</param>
    /// <param name="mostTransitions">How many transitions and runts to list; the report says how many there are.</param>
    /// <exception cref="ArgumentNullException"><paramref name="measurement"/> or <paramref name="title"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="mostTransitions"/> is negative.</exception>
    public static Report ToReport(this PulseMeasurement measurement, string title = "Pulse measurement", int mostTransitions = 20)
    {
        if (measurement is null) throw new ArgumentNullException(nameof(measurement));
        if (mostTransitions < 0) throw new ArgumentOutOfRangeException(nameof(mostTransitions), mostTransitions, "mostTransitions must be 0 or more");
        Report report = new Report(title)
            .WithParagraph(Captured(measurement.Record))
            .WithFindings(measurement.Findings)
            .WithValues(States(measurement))
            .WithTable(Parameters(measurement))
            .WithTable(Uncertainties(measurement))
            .WithPlot(RecordPlot.Of(measurement));
        if (measurement.Jitter.HasValue) report = report.WithValues(Jitter(measurement.Jitter.Value));
        report = report.WithTable(Transitions(measurement, mostTransitions)).WithTable(Runts(measurement, mostTransitions));
        return measurement.TransitionCount > mostTransitions || measurement.RuntCount > mostTransitions
            ? report.WithParagraph(FormattableString.Invariant($"Of {measurement.TransitionCount} transitions and {measurement.RuntCount} runts the first {mostTransitions} are listed."))
            : report;
    }

    private static string Captured(Record record) =>
        (record.Name.Length == 0 ? "" : record.Name + ": ") + $"{record.Count} at {ReportCell.Of(record.SampleRate)}." + (record.Provenance.Length == 0 ? "" : " " + record.Provenance);

    private static ReportValues States(PulseMeasurement measurement)
    {
        var values = new ReportValues("states", "States and counts");
        if (measurement.States.HasValue)
        {
            StateLevels states = measurement.States.Value;
            values = values
                .With("low state", states.Low, MethodOf(states.Method))
                .With("high state", states.High)
                .With("amplitude", states.Amplitude)
                .With("standard uncertainty of the low state", states.LowUncertainty)
                .With("standard uncertainty of the high state", states.HighUncertainty)
                .With("standard uncertainty of the amplitude", states.AmplitudeUncertainty)
                .With("noise on the states", states.Noise);
        }
        else
        {
            values = values.With("states", "absent", measurement.States.Reason!.Message);
        }
        values = measurement.Frequency.HasValue
            ? values.With("frequency", UncertaintyBudgetReport.Digits(measurement.Frequency.Value.ToQuantity(), TimeDigits), "one over the mean period")
            : values.With("frequency", "absent", measurement.Frequency.Reason!.Message);
        return values
            .With("standard uncertainty of the frequency", measurement.FrequencyUncertainty.HasValue ? ReportCell.Of(measurement.FrequencyUncertainty.Value) : null)
            .With("transitions", ReportCell.Count(measurement.TransitionCount))
            .With("runts", ReportCell.Count(measurement.RuntCount))
            .With("missing pulses", ReportCell.Count(measurement.MissingPulseCount));
    }

    private static string MethodOf(StateLevelMethod method) => method switch
    {
        StateLevelMethod.HistogramMode => "mode of the histogram",
        StateLevelMethod.HistogramBinCenter => "centre of the fullest bin of the histogram",
        StateLevelMethod.ShorthMean => "mean of the shortest half",
        StateLevelMethod.ShorthMidpoint => "midpoint of the shortest half",
        _ => "given",
    };

    private static ReportTable Parameters(PulseMeasurement x) => new ReportTable("parameters", "Parameters", "parameter", "mean", "standard deviation", "smallest", "largest", "count", "note")
        .WithRow(Row("rising transition duration", x.RisingDuration))
        .WithRow(Row("falling transition duration", x.FallingDuration))
        .WithRow(Row("rising slew rate", x.RisingSlewRate))
        .WithRow(Row("falling slew rate", x.FallingSlewRate))
        .WithRow(Row("positive pulse duration", x.PositivePulseDuration))
        .WithRow(Row("negative pulse duration", x.NegativePulseDuration))
        .WithRow(Row("period", x.Period))
        .WithRow(Row("duty factor", x.DutyFactor))
        .WithRow(Row("overshoot", x.Overshoot))
        .WithRow(Row("undershoot", x.Undershoot))
        .WithRow(Row("preshoot", x.Preshoot));

    private static ReportCell[] Row<T>(string name, Measured<Statistics<T>> measured)
        where T : struct, IQuantity
    {
        if (!measured.HasValue) return new[] { name, "absent", ReportCell.Empty, ReportCell.Empty, ReportCell.Empty, ReportCell.Empty, measured.Reason!.Message };
        Statistics<T> statistics = measured.Value;
        return new[]
        {
            name, ReportCell.Of(statistics.Mean), Of(statistics.StandardDeviation), ReportCell.Of(statistics.Minimum), ReportCell.Of(statistics.Maximum), ReportCell.Count(statistics.Count), ReportCell.Empty,
        };
    }

    private static ReportTable Uncertainties(PulseMeasurement x) =>
        new ReportTable("uncertainties", "Standard uncertainties of the means, by what causes them", "parameter", "together", "noise", "interpolation", "state levels", "time base", "clock jitter")
            .WithRows(new[]
            {
                ("rising transition duration", x.RisingDurationUncertainty), ("falling transition duration", x.FallingDurationUncertainty), ("positive pulse duration", x.PositivePulseDurationUncertainty),
                ("negative pulse duration", x.NegativePulseDurationUncertainty), ("period", x.PeriodUncertainty),
            }.Where(row => row.Item2.HasValue).Select(row => Parts(row.Item1, row.Item2.Value)))
            .WithRows(x.DutyFactorUncertainty is { HasValue: true } duty ? new[] { Parts(duty.Value) } : Array.Empty<ReportCell[]>());

    private static ReportCell[] Parts(string name, TimingUncertainty u) => new[]
    {
        name, ReportCell.Of(u.Standard), ReportCell.Of(u.Noise), ReportCell.Of(u.Interpolation), ReportCell.Of(u.StateLevels), u.StatesTimebase ? ReportCell.Of(u.Timebase) : "not stated", u.StatesTimebase ? ReportCell.Of(u.ClockJitter) : "not stated",
    };

    private static ReportCell[] Parts(DutyFactorUncertainty u) => new[]
    {
        "duty factor", ReportCell.Of(u.Standard), ReportCell.Of(u.Noise), ReportCell.Of(u.Interpolation), ReportCell.Of(u.StateLevels), ReportCell.Empty, ReportCell.Empty,
    };

    private static ReportValues Jitter(EdgeJitter jitter) => new ReportValues("jitter", "Jitter of the rising edges")
        .With("edges", ReportCell.Count(jitter.Edges))
        .With("mean period", UncertaintyBudgetReport.Digits(jitter.MeanPeriod.ToQuantity(), TimeDigits))
        .With("period jitter", ReportCell.Of(jitter.PeriodJitter), "standard deviation")
        .With("period jitter, peak to peak", ReportCell.Of(jitter.PeriodJitterPeakToPeak))
        .With("cycle-to-cycle jitter", ReportCell.Of(jitter.CycleToCycleRms), "root mean square")
        .With("cycle-to-cycle jitter, largest", ReportCell.Of(jitter.CycleToCycleMost))
        .With("time interval error", ReportCell.Of(jitter.TimeIntervalErrorRms), "root mean square, against the fitted clock")
        .With("time interval error, peak to peak", ReportCell.Of(jitter.TimeIntervalErrorPeakToPeak));

    private static ReportTable Transitions(PulseMeasurement measurement, int most) =>
        new ReportTable("transitions", "Transitions", "instant", "direction", "duration", "slew rate", "overshoot", "undershoot", "preshoot", "samples on it", "note")
            .WithRows(measurement.Transitions.Take(most).Select(x => new[]
            {
                UncertaintyBudgetReport.Digits(x.Instant.ToQuantity(), TimeDigits), x.IsRising ? "rising" : "falling", Of(x.TransitionDuration), Of(x.SlewRate), Of(x.Overshoot), Of(x.Undershoot), Of(x.Preshoot),
                ReportCell.Count(x.SamplesOnEdge), x.IsMonotone ? ReportCell.Empty : "not monotone",
            }));

    private static ReportTable Runts(PulseMeasurement measurement, int most) => new ReportTable("runts", "Runts", "from", "to", "extreme", "direction").WithRows(measurement.Runts.Take(most).Select(x => new[]
    {
        ReportCell.Of(x.Start), ReportCell.Of(x.End), x.Extreme, x.IsPositive ? "positive" : "negative",
    }));

    private static ReportCell Of<T>(Measured<T> measured)
        where T : struct, IQuantity => measured.HasValue ? ReportCell.Of(measured.Value) : ReportCell.Empty;
}
