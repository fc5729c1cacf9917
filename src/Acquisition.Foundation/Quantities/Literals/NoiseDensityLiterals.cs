namespace Acquisition.Core.Literals;

/// <summary>Noise density literals: <c>2.VPerRtHz()</c>.</summary>
public static class NoiseDensityLiterals
{
    /// <summary>A noise density in volts per root hertz.</summary>
    public static NoiseDensity VPerRtHz(this double value) => NoiseDensity.FromVoltsPerRootHertz(value);

    /// <summary>A noise density in volts per root hertz.</summary>
    public static NoiseDensity VPerRtHz(this int value) => NoiseDensity.FromVoltsPerRootHertz(value);

    /// <summary>A noise density in nanovolts per root hertz.</summary>
    public static NoiseDensity nVPerRtHz(this double value) => NoiseDensity.FromNanovoltsPerRootHertz(value);

    /// <summary>A noise density in nanovolts per root hertz.</summary>
    public static NoiseDensity nVPerRtHz(this int value) => NoiseDensity.FromNanovoltsPerRootHertz(value);
}
