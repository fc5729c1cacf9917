namespace Acquisition.Core.Literals;

/// <summary>Sample rate literals: <c>2.SaPerS()</c>.</summary>
public static class SampleRateLiterals
{
    /// <summary>A sample rate in samples per second.</summary>
    public static SampleRate SaPerS(this double value) => SampleRate.FromSamplesPerSecond(value);

    /// <summary>A sample rate in samples per second.</summary>
    public static SampleRate SaPerS(this int value) => SampleRate.FromSamplesPerSecond(value);

    /// <summary>A sample rate in kilosamples per second.</summary>
    public static SampleRate kSaPerS(this double value) => SampleRate.FromKilosamplesPerSecond(value);

    /// <summary>A sample rate in kilosamples per second.</summary>
    public static SampleRate kSaPerS(this int value) => SampleRate.FromKilosamplesPerSecond(value);

    /// <summary>A sample rate in megasamples per second.</summary>
    public static SampleRate MSaPerS(this double value) => SampleRate.FromMegasamplesPerSecond(value);

    /// <summary>A sample rate in megasamples per second.</summary>
    public static SampleRate MSaPerS(this int value) => SampleRate.FromMegasamplesPerSecond(value);

    /// <summary>A sample rate in gigasamples per second.</summary>
    public static SampleRate GSaPerS(this double value) => SampleRate.FromGigasamplesPerSecond(value);

    /// <summary>A sample rate in gigasamples per second.</summary>
    public static SampleRate GSaPerS(this int value) => SampleRate.FromGigasamplesPerSecond(value);
}
