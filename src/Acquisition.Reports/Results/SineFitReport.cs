using System;
using Acquisition.Core;
using Acquisition.Core.Records;

namespace Acquisition.Reports;

/// <summary>A <see cref="SineFit"/> as a report (IEEE 1057): the sine with its uncertainties, and what is left over.</summary>
public static class SineFitReport
{
    private const int FrequencyDigits = 9;

    /// <summary>The report of a fit.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="title">The title of the report.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Report ToReport(this SineFit fit, string title = "Sine fit")
    {
        if (fit is null) throw new ArgumentNullException(nameof(fit));
        Report report = new Report(title).WithFindings(fit.Findings);
        if (fit.Sine is not { } sine) return report.WithParagraph("No sine was found.");
        return report.WithTable(Parameters(sine)).WithValues(Rest(sine).With("iterations", ReportCell.Count(fit.Iterations)));
    }

    internal static ReportTable Parameters(FittedSine sine)
    {
        CramerRaoBound? bound = sine.Bound;
        return new ReportTable("sine", "Fitted sine" + (sine.FrequencyWasGiven ? ", frequency given" : ""), "parameter", "value", "standard uncertainty", "least possible")
            .WithRow("frequency", UncertaintyBudgetReport.Digits(sine.Frequency.ToQuantity(), FrequencyDigits), sine.FrequencyWasGiven ? ReportCell.Empty : ReportCell.Of(sine.FrequencyUncertainty), Of(bound?.Frequency))
            .WithRow("amplitude", ReportCell.Of(sine.Amplitude), ReportCell.Of(sine.AmplitudeUncertainty), Of(bound?.Amplitude))
            .WithRow("phase at the first sample", ReportCell.Of(sine.Phase), ReportCell.Of(sine.PhaseUncertainty), Of(bound?.PhaseAtFirstSample))
            .WithRow("phase at the centre", ReportCell.Of(sine.PhaseAtCenter), ReportCell.Of(sine.PhaseAtCenterUncertainty), Of(bound?.PhaseAtCenter))
            .WithRow("offset", ReportCell.Of(sine.Offset), ReportCell.Of(sine.OffsetUncertainty), ReportCell.Empty);
    }

    private static ReportValues Rest(FittedSine sine) => new ReportValues("residuals", "What the sine leaves over")
        .With("noise and distortion", ReportCell.Of(sine.NoiseAndDistortion), null, "IEEE 1057")
        .With("standard deviation of the residuals", ReportCell.Of(sine.ResidualDeviation))
        .With("signal to noise and distortion", ReportCell.OfAny(sine.Sinad))
        .With("effective bits", ReportCell.OfAny(sine.EffectiveBits), "as if the sine filled the range")
        .With("effective bits, uncorrected", ReportCell.OfAny(sine.EffectiveBitsUncorrected), "at the amplitude there was")
        .With("points", ReportCell.Of(sine.Points))
        .With("periods", ReportCell.Number(sine.Periods.Fraction));

    private static ReportCell Of<T>(T? value)
        where T : struct, IQuantity => ReportCell.OfAny(value);
}
