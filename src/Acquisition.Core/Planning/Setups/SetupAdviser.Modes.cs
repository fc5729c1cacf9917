using System;
using System.Linq;

namespace Acquisition.Core.Planning;

// What is kept of the samples, and how the display draws between them.
internal sealed partial class SetupAdviser
{
    private const int MostRecords = 65_536;

    private SampledSignal[] Mode(SampledSignal[] setups, double rate, Duration window)
    {
        if (_wanted.NarrowestPulse is { } pulse && pulse.SiValue * rate < 2 && _mode.MaximumRate.SiValue > rate && Has(AcquisitionMode.PeakDetect))
        {
            Add("acquisition mode", "peak detect", $"at {FewDigits.Of(rate, Core.SampleRate.Kind)} a pulse of {pulse.InWords()} would fall between the samples",
                "noise looks larger; the record is not fit for rms, spectra or effective bits", null);
            return Array.ConvertAll(setups, setup => setup.WithPeakDetect());
        }
        if (_wanted.SmallestDetail is not { } detail)
        {
            Add("acquisition mode", "sample", "nothing asks for more, and it loses nothing but what lies between samples", null, null);
            return setups;
        }
        int worst = Enumerable.Range(0, setups.Length).OrderByDescending(i => Shown(setups[i])).First();
        if (!(Shown(setups[worst]) > detail.SiValue))
        {
            Add("acquisition mode", "sample", $"one sample tells {detail.InWords()} apart, and it loses nothing but what lies between samples", null, null);
            return setups;
        }
        string why = $"one sample tells {FewDigits.Of(Shown(setups[worst]), Voltage.Kind)} apart, {detail.InWords()} are wanted";
        // A mean of N gains √N on noise that dithers the codes; how much is needed follows from the outlook of a mean of two.
        int count = setups[worst].WithAveraging(2).Over(window).TotalNoise is { } ofTwo ? CountFor(ofTwo.SiValue * Math.Sqrt(2), detail.SiValue) : 2;
        if (Has(AcquisitionMode.Average) && _signals.All(signal => signal.Signal.Fundamental is not null) && Improves(setups[worst], setups[worst].WithAveraging(count)))
        {
            Add("acquisition mode", FormattableString.Invariant($"average of {count} records"), why + ", and the signal repeats",
                "what happens once, and any edge that jitters against the trigger" + Missing(setups[worst].WithAveraging(count)), _signals[worst]);
            return Array.ConvertAll(setups, setup => setup.WithAveraging(count));
        }
        int raw = Has(AcquisitionMode.HighResolution) ? LongestMean(setups, Math.Min(count, MostRaw()), window) : 1;
        if (raw >= 2 && Improves(setups[worst], setups[worst].WithHighResolution(raw)))
        {
            Add("acquisition mode", FormattableString.Invariant($"high resolution, {raw} samples per point"), why + ", and the rate has room",
                "bandwidth, down to " + HighResolution.Bandwidth(raw, _mode.MaximumRate).InWords() + Missing(setups[worst].WithHighResolution(raw)), _signals[worst]);
            return Array.ConvertAll(setups, setup => setup.WithHighResolution(raw));
        }
        Add("acquisition mode", "sample", why + ", and no mode that this instrument has helps without costing another demand", Missing(setups[worst]).TrimStart(' ', ';'), _signals[worst]);
        return setups;

        double Shown(SampledSignal setup) => setup.Over(window).SmallestDetail?.SiValue ?? double.PositiveInfinity;

        bool Improves(SampledSignal before, SampledSignal after) => Shown(after) < Shown(before) * (1 - 1e-9);

        string Missing(SampledSignal setup) => Shown(setup) > detail.SiValue * (1 + 1e-9) ? $"; the {detail.InWords()} that are wanted: it is {FewDigits.Of(Shown(setup), Voltage.Kind)} still" : "";
    }

    private static int CountFor(double noise, double detail)
    {
        double needed = Math.Pow(2 * noise / detail, 2);
        int count = 2;
        while (count < needed && count < MostRecords)
            count *= 2;
        return count;
    }

    // As many samples of the converter as leave the rate that is needed.
    private int MostRaw() => _fastest.NeededRate > 0 ? (int)Math.Min(MostRecords, Math.Floor(_mode.MaximumRate.SiValue / _fastest.NeededRate * (1 + 1e-9))) : MostRecords;

    // The mean over samples is a low-pass of its own: halved until no signal loses what is demanded of it.
    private int LongestMean(SampledSignal[] setups, int most, Duration window)
    {
        for (int raw = most; raw >= 2; raw /= 2)
        {
            if (setups.Zip(_signals, (setup, signal) => Keeps(setup.WithHighResolution(raw).Over(window), signal)).All(keeps => keeps))
                return raw;
        }
        return 1;
    }

    private bool Keeps(Outlook outlook, AdvisedSignal signal)
    {
        double top = signal.Screen.Signals[0].Top;
        if (signal.Screen.JudgesAmplitude && top > 0 && Math.Abs(1 - (outlook.Response.Magnitude(top) * outlook.Boxcar(top))) > signal.Screen.AmplitudeTolerance)
            return false;
        if (_wanted.EdgeTolerance is { } edge && outlook.EdgeError is { } slower && slower > edge)
            return false;
        return _wanted.NarrowestPulse is not { } pulse || outlook.StoredRate.SiValue * pulse.SiValue >= 2;
    }

    private SampledSignal[] Interpolation(SampledSignal[] setups, Duration window)
    {
        bool sinc = _instrument.Interpolations.Count == 0 || _instrument.Interpolations.Contains(Reconstruction.Sinc), linear = _instrument.Interpolations.Contains(Reconstruction.Linear);
        double[] shares = Array.ConvertAll(setups, setup => setup.Over(window).FoldedShare?.SiValue ?? 0);
        AdvisedSignal worst = _signals[Array.IndexOf(shares, shares.Max())];
        bool folds = shares.Max() > 0.01;
        if (linear && (folds || !sinc))
        {
            Add("interpolation", "linear", folds ? "content above half the rate makes sinc draw pre- and overshoot that is not there" : "it has no other", "the course between samples: it is drawn straight", folds ? worst : null);
            return Array.ConvertAll(setups, setup => setup.WithInterpolation(Reconstruction.Linear));
        }
        if (sinc)
        {
            Add("interpolation", "sinc", folds ? "it has no other" : "what is displayed lies below half the sample rate, so it can be rebuilt between the samples",
                folds ? "truth near steps: they are drawn with pre- and overshoot" : null, folds ? worst : null);
        }
        return Array.ConvertAll(setups, setup => setup.WithInterpolation(Reconstruction.Sinc));
    }
}
