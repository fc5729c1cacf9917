using System;
using System.Threading;

namespace Acquisition.Core;

// The record that would be captured (handbook 12.4), by the simulation of the Records area.
public sealed partial class Outlook
{
    private const long MostTracePoints = 1_000_000;

    /// <summary>The record that would be captured, from the start of the window, with the noise and jitter that are known: at most a million points.</summary>
    /// <param name="seed">Seed of noise and jitter: the same seed gives the same record.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="InvalidOperationException">The window holds fewer than one point.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public Record PredictTrace(long seed = 1, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        long points = Math.Min(RecordLength.Points, MostTracePoints);
        if (points < 1)
            throw new InvalidOperationException($"at {StoredRate} a window of {Window} holds no point; lengthen the window");
        SimulatedCapture capture = new SimulatedCapture(Signal, StoredRate, PointCount.FromPoints(points)).Through(Response).WithSeed(seed);
        capture = Noise is { } noise ? capture.WithNoise(noise) : capture;
        capture = Setup.Jitter is { } jitter ? capture.WithClockJitter(jitter) : capture;
        double bits = Setup.Digitizer.Resolution.SiValue;
        // The range is centred on the signal; converters of a fractional number of bits exist only as effective ones.
        if (FullScale is { } range && bits == Math.Floor(bits) && bits <= 24)
            capture = capture.WithConverter(Setup.Digitizer.Resolution, range, Voltage.FromSi(0.5 * (Signal.Highest + Signal.Lowest) * Response.DcGain, "centre"));
        return capture.Capture(progress, cancellation);
    }
}
