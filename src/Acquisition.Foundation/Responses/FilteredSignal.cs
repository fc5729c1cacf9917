using System;
using System.Collections.Generic;
using System.Numerics;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Responses;

/// <summary>The steady state of a signal with lines after a response: each line with its own gain and phase.</summary>
internal sealed class FilteredSignal : Signal
{
    /// <summary>So many lines are taken without asking; more only while the rest of them would be seen.</summary>
    private const int UsualLines = 16384;
    private const int MostLines = 1 << 18;
    private const double Negligible = 1e-9;

    /// <summary>What a jump loses at its foot by lines left out, as a fraction of it, that a trace would not show.</summary>
    private const double Seen = 1e-2;

    /// <summary>So many lines are summed at each time; more are summed once, into a table.</summary>
    private const int FewLines = 64;

    private readonly Signal _source;
    private readonly Response _response;
    private readonly double _mean;
    private readonly double[] _hertz;
    private readonly Complex[] _coefficients;
    private readonly Lazy<(double Highest, double Lowest)> _extremes;
    private readonly Lazy<PeriodTable> _table;

    internal FilteredSignal(Signal source, Response response, double offset = 0)
        : base(source.Name + " > " + response.Name)
    {
        _source = source;
        _response = response;
        _mean = source.Mean * response.DcGain + offset;
        OffsetVolts = offset;
        var hertz = new List<double>();
        var coefficients = new List<Complex>();
        double strongest = 0;
        int quiet = 0, unseen = 0;
        double ramp = source.SteepestEdge is { } steepest ? steepest.RiseTime.SiValue / 0.8 : 0;
        foreach (SpectralLine line in source.Lines(double.MaxValue))
        {
            Complex coefficient = line.Coefficient == Complex.Zero ? Complex.Zero : line.Coefficient * response.ComplexGain(line.Frequency.SiValue);
            double size = Complex.Abs(coefficient);
            strongest = Math.Max(strongest, size);
            hertz.Add(line.Frequency.SiValue);
            coefficients.Add(coefficient);
            // The n-th line has about n followers that matter together: a falling 1/n² leaves 1/n.
            double rest = size * hertz.Count;
            quiet = strongest > 0 && rest < Negligible * strongest ? quiet + 1 : 0;
            unseen = strongest > 0 && (rest < Seen * strongest || PassedOfARamp(line.Frequency.SiValue, ramp) < Seen) ? unseen + 1 : 0;
            if (quiet >= 64 || (unseen >= 64 && hertz.Count >= UsualLines))
                break;
            if (hertz.Count == UsualLines && NeverFalls(line.Frequency.SiValue))
                break;
            if (hertz.Count == MostLines)
            {
                throw new NotSupportedException(
                    $"{source.Name} through {response.Name} has more than {MostLines} harmonics that matter, up to {line.Frequency.InWords()} and beyond; take one pulse or step of it alone, or a shorter period");
            }
        }
        _hertz = hertz.ToArray();
        _coefficients = coefficients.ToArray();
        _extremes = new Lazy<(double, double)>(FindExtremes);
        _table = new Lazy<PeriodTable>(() => new PeriodTable(_mean, _coefficients));
        double power = 0;
        for (int i = _coefficients.Length - 1; i >= 0; i--)
            power += 2 * Squared(_coefficients[i]);
        AcPower = power;
    }

    /// <summary>Whether so many lines as can be taken show a signal of levels behind a response.</summary>
    internal static bool Serves(LevelSignal source, Response response)
    {
        double high = MostLines / source.Seconds, ramp = source.SteepestEdge!.RiseTime.SiValue / 0.8;
        return (response is GeneralResponse { EndsInRefusal: false } general && general.HighestFrequency < high)
            || response.Magnitude(high) / response.ReferenceMagnitude / Math.Max(1, Math.PI * high * ramp) < Seen;
    }

    public override Frequency? Fundamental => _source.Fundamental;

    public override Duration? Period => _source.Period;

    public override Duration RiseTime => _source.SteepestEdge is { } edge ? _response.RiseTimeOf(edge).Value : SteepestSwing();

    internal double OffsetVolts { get; }

    internal override double Mean => _mean;

    internal override double AcPower { get; }

    internal override double Highest => _extremes.Value.Highest;

    internal override double Lowest => _extremes.Value.Lowest;

    internal override double MeanMagnitude
    {
        get
        {
            double[] samples = Samples(out _);
            double sum = 0;
            foreach (double sample in samples)
                sum += Math.Abs(sample);
            return sum / samples.Length;
        }
    }

    internal override double Value(double seconds)
    {
        double sum = 0;
        if (Fundamental is not { } fundamental)
        {
            for (int i = 0; i < _hertz.Length; i++)
                sum += Real(_coefficients[i], seconds * _hertz[i]);
            return _mean + 2 * sum;
        }
        double turns = seconds * fundamental.SiValue;
        turns -= Math.Floor(turns);
        if (_coefficients.Length > FewLines)
            return _table.Value.Value(turns);
        // Harmonics turn at multiples of one angle.
        var step = new Complex(Math.Cos(2 * Math.PI * turns), Math.Sin(2 * Math.PI * turns));
        Complex turned = step;
        foreach (Complex coefficient in _coefficients)
        {
            sum += coefficient.Real * turned.Real - coefficient.Imaginary * turned.Imaginary;
            turned *= step;
        }
        return _mean + 2 * sum;
    }

    internal override Complex Coefficient(int number) =>
        number == 0 ? _mean : number <= _coefficients.Length && Fundamental is not null ? _coefficients[number - 1] : Complex.Zero;

    internal override IEnumerable<SpectralLine> Lines(double hertz)
    {
        double carrier = 0;
        foreach (Complex coefficient in _coefficients)
            carrier = Math.Max(carrier, 2 * Complex.Abs(coefficient));
        if (Fundamental is not null && _coefficients.Length > 0)
            carrier = 2 * Complex.Abs(_coefficients[0]);
        for (int i = 0; i < _hertz.Length && _hertz[i] <= hertz * (1 + 1e-12); i++)
            yield return new SpectralLine(Fundamental is null ? -1 : i + 1, _hertz[i], _coefficients[i], carrier);
    }

    /// <summary>How much of a jump's own spectrum is left at a frequency, after a ramp so long and the response.</summary>
    private double PassedOfARamp(double hertz, double seconds) =>
        _response.Magnitude(hertz) / _response.ReferenceMagnitude / Math.Max(1, Math.PI * hertz * seconds);

    /// <summary>Whether the response lets a jump through as it is, so that no number of lines would do: then the usual number stands for it.</summary>
    private bool NeverFalls(double hertz) => PassedOfARamp(1e6 * hertz, 0) > 0.9;

    private protected override Signal Offset(double volts) => new FilteredSignal(_source, _response, OffsetVolts + volts);

    private static double Real(Complex coefficient, double turns)
    {
        double angle = 2 * Math.PI * (turns - Math.Floor(turns));
        return coefficient.Real * Math.Cos(angle) - coefficient.Imaginary * Math.Sin(angle);
    }

    /// <summary>One period, at least eight samples to the highest line; of a signal without a period as many beats as show every phase.</summary>
    private double[] Samples(out double interval)
    {
        if (Fundamental is not { } fundamental)
        {
            double low = _hertz[0], high = _hertz[_hertz.Length - 1], span = 64 / Math.Min(low, Math.Max(high - low, 1e-3 * low));
            int count = (int)Math.Min(200_000, Math.Ceiling(16 * span * high));
            var values = new double[count];
            interval = span / count;
            for (int i = 0; i < count; i++)
                values[i] = Value(i * interval);
            return values;
        }
        double[] samples = _table.Value.Samples;
        interval = 1 / fundamental.SiValue / samples.Length;
        return samples;
    }

    private (double Highest, double Lowest) FindExtremes()
    {
        if (Fundamental is null)
        {
            // Lines that are not locked to each other all peak together sooner or later.
            double sum = 0;
            foreach (Complex coefficient in _coefficients)
                sum += 2 * Complex.Abs(coefficient);
            return (_mean + sum, _mean - sum);
        }
        double[] samples = Samples(out double interval);
        int top = 0, bottom = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            if (samples[i] > samples[top])
                top = i;
            if (samples[i] < samples[bottom])
                bottom = i;
        }
        return (Refine(top * interval, interval, 1), -Refine(bottom * interval, interval, -1));
    }

    /// <summary>The largest value within a sample of a time, by golden section.</summary>
    private double Refine(double at, double interval, double sign)
    {
        double low = at - interval, high = at + interval, golden = 0.5 * (Math.Sqrt(5) - 1);
        double left = high - golden * (high - low), right = low + golden * (high - low), atLeft = sign * Value(left), atRight = sign * Value(right);
        for (int i = 0; i < 40; i++)
        {
            if (atLeft > atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - golden * (high - low);
                atLeft = sign * Value(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + golden * (high - low);
                atRight = sign * Value(right);
            }
        }
        return Math.Max(sign * Value(at), Math.Max(atLeft, atRight));
    }

    /// <summary>From 10 % to 90 % of the swing, through the steepest point.</summary>
    private Duration SteepestSwing()
    {
        double[] samples = Samples(out double interval);
        int steepest = 0, length = samples.Length;
        for (int i = 0; i < length; i++)
        {
            if (samples[(i + 1) % length] - samples[i] > samples[(steepest + 1) % length] - samples[steepest])
                steepest = i;
        }
        double low = Lowest + 0.1 * (Highest - Lowest), high = Lowest + 0.9 * (Highest - Lowest);
        int down = 0, up = 0;
        while (down < length && At(steepest - down) > low)
            down++;
        while (up < length && At(steepest + up) < high)
            up++;
        if (down == length || up == length)
            throw new InvalidOperationException($"{Name} has no swing from 10 % to 90 %");
        double start = -down + (low - At(steepest - down)) / (At(steepest - down + 1) - At(steepest - down));
        double end = up - 1 + (high - At(steepest + up - 1)) / (At(steepest + up) - At(steepest + up - 1));
        return Duration.FromSi((end - start) * interval, "rise time");

        double At(int index) => samples[((index % length) + length) % length];
    }
}
