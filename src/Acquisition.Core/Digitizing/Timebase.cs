using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>A window as a digitizer records it: at which rate, in how many points, and what stands behind that (handbook 5.4).</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class Timebase
{
    internal Timebase(Duration window, SampleRate rate, SampleRate maximumRate, PointCount memory)
    {
        Window = window;
        Rate = rate;
        MaximumRate = maximumRate;
        RecordLength = rate * window;
        // The rate may be rounded up by its last bit; the record is never longer than the memory.
        if (RecordLength > memory)
            RecordLength = memory;
        IsLimitedByMemory = memory / window < maximumRate;
        Findings = Explain(memory).Frozen();
    }

    /// <summary>The window: record length times sample interval.</summary>
    public Duration Window { get; }

    /// <summary>The sample rate.</summary>
    public SampleRate Rate { get; }

    /// <summary>The highest rate of the digitizer with the channels in use.</summary>
    public SampleRate MaximumRate { get; }

    /// <summary>The points of the record.</summary>
    public PointCount RecordLength { get; }

    /// <summary>Whether the memory keeps the rate below the highest one.</summary>
    public bool IsLimitedByMemory { get; }

    /// <summary>The time from sample to sample.</summary>
    public Duration SampleInterval => Rate.SampleInterval;

    /// <summary>Half the rate: content must lie below it.</summary>
    public Frequency NyquistFrequency => Rate.NyquistFrequency;

    /// <summary>What to know: <c>memory-caps-rate</c>, <c>no-samples-in-window</c>.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Rate, points and window in one line.</summary>
    public override string ToString() => $"{RecordLength} at {Rate.InWords(6)} over {Window.InWords(6)}";

    private List<Finding> Explain(PointCount memory)
    {
        var findings = new List<Finding>();
        if (IsLimitedByMemory)
        {
            // A day at the highest rates is more points than can be counted; more memory is then no remedy.
            string wanted = MaximumRate.SiValue * Window.SiValue <= PointCount.MaxValue.SiValue ? $"{MaximumRate * Window} of memory, or " : "";
            findings.Add(new Finding(
                "memory-caps-rate",
                Severity.Warning,
                $"{memory} over {Window.InWords()} allow {Rate.InWords()} of the {MaximumRate} the converter could do; the Nyquist frequency falls to {NyquistFrequency.InWords()}",
                $"a window of at most {(memory / MaximumRate).InWords()} keeps the highest rate, or {wanted}segments",
                "handbook 5.4"));
        }
        if (RecordLength.Points < 2)
        {
            findings.Add(new Finding(
                "no-samples-in-window",
                Severity.Failure,
                $"at {Rate.InWords()} a window of {Window.InWords()} holds {RecordLength}",
                $"a window of at least {(PointCount.FromPoints(2) / Rate).InWords()}",
                "handbook 5.4"));
        }
        return findings;
    }
}
