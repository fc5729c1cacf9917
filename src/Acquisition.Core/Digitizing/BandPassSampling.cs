namespace Acquisition.Core;

/// <summary>One range of sample rates that takes a band down without overlap (handbook 5.3).</summary>
public sealed class BandPassSampling
{
    internal BandPassSampling(int zone, SampleRate lowestRate, SampleRate? highestRate)
    {
        Zone = zone;
        LowestRate = lowestRate;
        HighestRate = highestRate;
    }

    /// <summary>The Nyquist zone that the band lies in; zone 1 is sampling above the Nyquist rate.</summary>
    public int Zone { get; }

    /// <summary>The lowest rate of the range.</summary>
    public SampleRate LowestRate { get; }

    /// <summary>The highest rate of the range; null where there is none (zone 1). Equal to the lowest, it leaves no margin at all: unusable.</summary>
    public SampleRate? HighestRate { get; }

    /// <summary>Whether the band comes out turned round: rising frequencies fall (even zones).</summary>
    public bool IsInverted => Zone % 2 == 0;

    /// <summary>Zone and rates in one line, rounded inwards: what is printed lies in the range, unless it is too narrow for that.</summary>
    public override string ToString()
    {
        double low = FewDigits.RoundUp(LowestRate.SiValue), high = HighestRate is { } highest ? FewDigits.RoundDown(highest.SiValue) : double.PositiveInfinity;
        string range = HighestRate is { } end && low > high ? $"{LowestRate.InWords(15)} to {end.InWords(15)}"
            : FewDigits.Of(low, SampleRate.Kind) + " to " + (HighestRate is null ? "any higher rate" : FewDigits.Of(high, SampleRate.Kind));
        return $"zone {Zone}: {range}{(IsInverted ? ", inverted" : "")}";
    }
}
