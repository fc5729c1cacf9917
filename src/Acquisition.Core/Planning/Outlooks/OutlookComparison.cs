using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using Acquisition.Core.Planning;

namespace Acquisition.Core;

/// <summary>Two set-ups side by side: what is lost and what is gained by the second one.</summary>
/// <remarks>Immutable. Values that are the same to four digits are left out.</remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public sealed class OutlookComparison
{
    private OutlookComparison(IReadOnlyList<Difference> differences, IReadOnlyList<Finding> gone, IReadOnlyList<Finding> added)
    {
        Differences = differences.Frozen();
        FindingsGone = gone.Frozen();
        FindingsAdded = added.Frozen();
    }

    /// <summary>The values that differ.</summary>
    public IReadOnlyList<Difference> Differences { get; }

    /// <summary>The findings that the second set-up no longer has.</summary>
    public IReadOnlyList<Finding> FindingsGone { get; }

    /// <summary>The findings that only the second set-up has.</summary>
    public IReadOnlyList<Finding> FindingsAdded { get; }

    /// <summary>Compares two outlooks.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static OutlookComparison Of(Outlook first, Outlook second)
    {
        _ = first ?? throw new ArgumentNullException(nameof(first));
        _ = second ?? throw new ArgumentNullException(nameof(second));
        var rows = new List<Difference>();
        Add(rows, "bandwidth of the chain", first.ChainBandwidth?.Value, second.ChainBandwidth?.Value);
        Add(rows, "rise time of the chain", first.ChainRiseTime?.Value, second.ChainRiseTime?.Value);
        Add<PeakToPeakVoltage>(rows, "amplitude on the display", first.DisplayedAmplitude.Value, second.DisplayedAmplitude.Value);
        Add<Ratio>(rows, "amplitude error", first.AmplitudeError, second.AmplitudeError);
        Add(rows, "edge on the display", first.DisplayedEdge?.Value, second.DisplayedEdge?.Value);
        Add(rows, "edge error", first.EdgeError, second.EdgeError);
        Add(rows, "overshoot of the edge", first.DisplayedOvershoot, second.DisplayedOvershoot);
        AddNumber(rows, "harmonics kept", first.HarmonicsKept, second.HarmonicsKept);
        Add<SampleRate>(rows, "sample rate", first.StoredRate, second.StoredRate);
        Add<Duration>(rows, "window", first.Window, second.Window);
        Add<PointCount>(rows, "record length", first.RecordLength, second.RecordLength);
        AddNumber(rows, "points per edge", first.IntervalsPerEdge?.SiValue, second.IntervalsPerEdge?.SiValue);
        AddNumber(rows, "points per period", first.PointsPerPeriod?.SiValue, second.PointsPerPeriod?.SiValue);
        Add(rows, "folded content", first.AliasShare, second.AliasShare);
        Add(rows, "interpolation error", first.InterpolationErrorOfSignal, second.InterpolationErrorOfSignal);
        Add(rows, "crest kept too low", first.CrestShortfall, second.CrestShortfall);
        Add(rows, "range", first.FullScale, second.FullScale);
        Add(rows, "one code", first.LeastSignificantBit, second.LeastSignificantBit);
        Add(rows, "noise", first.Noise, second.Noise);
        Add(rows, "effective bits", first.EffectiveBits?.Value, second.EffectiveBits?.Value);
        Add(rows, "smallest detail", first.SmallestDetail, second.SmallestDetail);
        Add(rows, "edge timing", first.EdgeTimingUncertainty, second.EdgeTimingUncertainty);
        Add(rows, "height of the pulse", first.Events?.Height, second.Events?.Height);
        Add(rows, "chance of the pulse", first.Events?.ChancePerOccurrence, second.Events?.ChancePerOccurrence);
        return new OutlookComparison(rows, Only(first, second), Only(second, first));
    }

    /// <summary>The differences as a plain table, and the findings that come and go.</summary>
    public override string ToString()
    {
        if (Differences.Count == 0 && FindingsGone.Count == 0 && FindingsAdded.Count == 0)
            return "no difference\n";
        var text = new StringBuilder();
        int[] widths = [Width(row => row.Name), Width(row => row.First), Width(row => row.Second)];
        foreach (Difference row in Differences)
            text.Append((row.Name.PadRight(widths[0]) + "  " + row.First.PadLeft(widths[1]) + "  " + row.Second.PadLeft(widths[2]) + "  " + row.Change).TrimEnd()).Append('\n');
        foreach (Finding finding in FindingsGone)
            text.Append("gone: ").Append(finding.Code).Append(": ").Append(finding.Message).Append('\n');
        foreach (Finding finding in FindingsAdded)
            text.Append("new: ").Append(finding).Append('\n');
        return text.ToString();
    }

    private int Width(Func<Difference, string> cell) => Differences.Count == 0 ? 0 : Differences.Max(row => cell(row).Length);

    private static List<Finding> Only(Outlook one, Outlook other)
    {
        var codes = new HashSet<string>(other.Findings.Select(finding => finding.Code), StringComparer.Ordinal);
        return one.Findings.Where(finding => !codes.Contains(finding.Code)).ToList();
    }

    private static void Add<T>(List<Difference> rows, string name, T? first, T? second)
        where T : struct, IQuantity
    {
        string one = first is { } a ? a.InWords() : "-", other = second is { } b ? b.InWords() : "-";
        if (one == other)
            return;
        double before = first?.ToQuantity().SiValue ?? 0, after = second?.ToQuantity().SiValue ?? 0;
        // Of a share the change is told in the same unit; of anything else as a share of the first.
        bool isShare = typeof(T) == typeof(Ratio);
        Ratio? change = first is null || second is null ? null : isShare ? Ratio.FromSi(after - before, "change") : before != 0 ? Ratio.FromSi((after - before) / Math.Abs(before), "change") : null;
        rows.Add(new Difference(name, one, other, change, isShare, first?.ToQuantity(), second?.ToQuantity()));
    }

    private static void AddNumber(List<Difference> rows, string name, double? first, double? second)
    {
        string one = first is { } a ? FewDigits.Number(a) : "-", other = second is { } b ? FewDigits.Number(b) : "-";
        if (one == other)
            return;
        Ratio? change = first is { } before && second is { } after && before != 0 ? Ratio.FromSi((after - before) / before, "change") : null;
        rows.Add(new Difference(name, one, other, change, false, Plain(first), Plain(second)));
    }

    private static Quantity? Plain(double? number) => number is { } value ? new Quantity(value, QuantityKind.Ratio) : null;
}
