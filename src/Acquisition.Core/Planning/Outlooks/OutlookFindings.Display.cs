using System;

namespace Acquisition.Core.Planning;

// Amplitude and edge as they are displayed. What is wrong is cured by its cause: each remedy is tried on the set-up itself.
internal sealed partial class OutlookFindings
{
    private const double UsualAmplitudeError = 0.02, UsualEdgeError = 0.05, MostOvershoot = 0.05;

    // Beyond ten times, percents say less than how many times.
    private const double ManyTimes = 10;

    private readonly Remedies _remedies = new(outlook);

    /// <summary>Whether the error of the amplitude is that of the gain at DC, so that the chain need not say it again.</summary>
    private bool AmplitudeIsOffAtDc(double limit) =>
        outlook.Response.PassesDc && Math.Abs(((1 + outlook.AmplitudeError.SiValue) / Math.Abs(outlook.Response.DcGain)) - 1) <= limit;

    private double AmplitudeLimit => outlook.Wanted?.AmplitudeTolerance?.SiValue ?? UsualAmplitudeError;

    private void Amplitude()
    {
        double error = outlook.AmplitudeError.SiValue, limit = AmplitudeLimit;
        if (Math.Abs(error) <= Math.Min(UsualAmplitudeError, limit) * (1 + 1e-9))
            return;
        string shown = $"the display shows {outlook.DisplayedAmplitude.Value.InWords()} of {Signal.PeakToPeak.InWords()}: ";
        bool isStated = outlook.Wanted?.AmplitudeTolerance is not null, isWithin = Math.Abs(error) <= limit * (1 + 1e-9);
        string within = isWithin ? $", within the {FewDigits.Of(limit, Ratio.Kind)} wanted" : "";
        if (error < 0)
        {
            Add("amplitude-short", isWithin ? Severity.Note : isStated || -error > 0.1 ? Severity.Failure : Severity.Warning,
                $"{shown}{FewDigits.Of(-error, Ratio.Kind)} short{within}", isWithin ? null : ShortRemedy(-error, limit), "handbook 4.6, 7.1");
        }
        else
        {
            string much = error > ManyTimes ? FewDigits.Number(1 + error) + " times as much" : FewDigits.Of(error, Ratio.Kind) + " too much";
            Add("amplitude-high", isWithin ? Severity.Note : isStated || error > 0.1 ? Severity.Failure : Severity.Warning,
                shown + much + within, isWithin ? null : HighRemedy(limit), "handbook 2.2, 7.3, 7.4");
        }
    }

    private string ShortRemedy(double error, double limit)
    {
        bool IsCured(Outlook changed) => -changed.AmplitudeError.SiValue <= limit * (1 + 1e-9);
        if (_remedies.For(IsCured) is { } remedy)
            return remedy;
        if (AmplitudeIsOffAtDc(limit))
            return "less load on the source" + Correction(error) + "; an amplitude that the generator states into a load is given as such with the source impedance";
        if (!outlook.Response.PassesDc && IsLowered())
            return "a chain that passes DC, or a lower cut-off of its coupling" + Correction(error);
        if (_remedies.Element(IsCured, Short) is { } element)
            return element;
        string load = Worst(Short) + (outlook.Response.PassesDc && 1 - Math.Abs(outlook.Response.DcGain) > limit ? ", and less load on the source" : "");
        string within = FewDigits.Of(limit, Ratio.Kind);
        if (Signal.SteepestEdge is null)
        {
            if (outlook.Tone is not { } f)
                return "more bandwidth";
            double needed = Specifier.BandwidthForAmplitude(ResponseShape.Gaussian, f.SiValue, Math.Min(limit, 0.99));
            return $"a chain of at least {FewDigits.Of(FewDigits.RoundUp(needed), Frequency.Kind)} (Gaussian) shows it to {within}{Correction(error)}{load}";
        }
        (double least, double shortest) = outlook.Settling;
        return (shortest > 0 && !double.IsInfinity(least) && outlook.ChainBandwidth is { } present
            ? $"a chain of the same shape and at least {FewDigits.Of(FewDigits.RoundUp(present.Value.SiValue * least / shortest * (1 + 1e-3)), Frequency.Kind)} lets the levels settle to 0.1 %"
            : "a chain that passes DC and settles between the edges") + load;
    }

    private static double Short(Outlook changed) => -changed.AmplitudeError.SiValue;

    private string Worst(Func<Outlook, double> error) => _remedies.Worst(error) is { } name ? ", loading included; most of it comes from " + name : "";

    private string HighRemedy(double limit)
    {
        if (_remedies.For(changed => changed.AmplitudeError.SiValue <= limit * (1 + 1e-9)) is { } remedy)
            return remedy;
        return AmplitudeIsOffAtDc(limit) ? "check ratio and termination: the chain shows too much at DC as well" : "a response that falls off more gently, without a peak: a Gaussian one has none; damp what rings";
    }

    // Whether the signal lies below what an AC coupling passes best.
    private bool IsLowered() => Signal.SteepestEdge is not null || (outlook.Tone is { } f && f < outlook.Response.PeakGainFrequency);

    // A large factor multiplies the noise as well.
    private static string Correction(double error) => 1 / (1 - error) is var factor && factor is > 0 and < ManyTimes ? $", or correct by the factor {FewDigits.Number(factor)}" : "";

    private void SlowedEdge()
    {
        double limit = outlook.Wanted?.EdgeTolerance?.SiValue ?? UsualEdgeError;
        if (outlook.EdgeError is not { } slow || slow.SiValue <= Math.Min(UsualEdgeError, limit) * (1 + 1e-9))
            return;
        Edge edge = Signal.SteepestEdge!;
        string much = slow.SiValue > ManyTimes ? FewDigits.Number(1 + slow.SiValue) + " times as long" : slow.InWords() + " slower";
        string message = $"the {edge.RiseTime.InWords()} edge is shown as {outlook.DisplayedEdge!.Value.InWords()}: {much}";
        if (slow.SiValue <= limit * (1 + 1e-9))
            Add("edge-slowed", Severity.Note, $"{message}, within the {FewDigits.Of(limit, Ratio.Kind)} wanted", null, "handbook 12.1, 2.6");
        else
            Add("edge-slowed", outlook.Wanted?.EdgeTolerance is not null || slow.SiValue > 0.2 ? Severity.Failure : Severity.Warning, message, SlowedRemedy(edge, limit), "handbook 12.1, 2.6");
    }

    private string SlowedRemedy(Edge edge, double limit)
    {
        bool IsCured(Outlook changed) => changed.EdgeError is { } error && error.SiValue <= limit * (1 + 1e-9);
        if (_remedies.For(IsCured) is { } remedy)
            return remedy;
        static double Slow(Outlook changed) => changed.EdgeError?.SiValue ?? double.PositiveInfinity;
        if (_remedies.Element(IsCured, Slow) is { } element)
            return element;
        // What the specification asks for; more where the edges come too fast for its levels to settle.
        if (_remedies.Bandwidth(Specifier.BandwidthForEdge(edge, limit, ResponseShape.Gaussian), IsCured) is not { } hertz)
            return "a faster chain";
        return $"a chain of at least {FewDigits.Of(hertz, Frequency.Kind)} (Gaussian, rise time {FewDigits.Of(FewDigits.RoundDown(ResponseShape.Gaussian.RiseTimeProduct / hertz), Duration.Kind)}) shows it to {FewDigits.Of(limit, Ratio.Kind)}{Worst(Slow)}";
    }

    private void Overshoot()
    {
        if (outlook.DisplayedOvershoot is not { SiValue: > MostOvershoot } overshoot)
            return;
        Edge edge = Signal.SteepestEdge!;
        string what = edge.RiseTime.SiValue > 0 ? "the edge of " + edge.RiseTime.InWords() : "the ideal edge";
        string much = overshoot.SiValue > ManyTimes ? $"{what} rises to {FewDigits.Number(1 + overshoot.SiValue)} times the level where it ends: the chain differentiates" : $"{what} overshoots by {overshoot.InWords()} behind the chain, which is not in the signal";
        Add("chain-overshoots", Severity.Warning, much,
            _remedies.For(changed => changed.DisplayedOvershoot is { SiValue: <= MostOvershoot }) ?? "a response that falls off more gently, such as a Gaussian one", "handbook 2.2, 7.3, 7.4");
    }
}
