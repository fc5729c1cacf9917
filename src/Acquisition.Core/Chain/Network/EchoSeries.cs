using System;
using System.Collections.Generic;
using System.Numerics;
using Acquisition.Core.Responses;

namespace Acquisition.Core.Chain;

/// <summary>
/// A ladder with lines in it, echo by echo. Each line splits voltage and current at its input into e^γ times what goes along it and e^-γ times what comes back; with the e^γ of all lines
/// taken out, the voltage of the source is Σ c(S) Π e^-2γ over the sets S of lines, and its inverse is a power series in the round trips e^-2γ of each line. A term of it is a pure delay
/// and a gain that is smooth in frequency, however long the lines and whatever their loss.
/// </summary>
internal sealed class EchoSeries
{
    /// <summary>What the echoes left out add up to at most, each at its largest over frequency behind the rest of the cascade, as a fraction of the gain at DC.</summary>
    private const double Gone = 1e-9;
    private const int MostWays = 200;

    /// <summary>So many round trips on each of one, two or three lines are looked at.</summary>
    private static readonly int[] MostTrips = { 0, 80, 24, 8 };

    private readonly Func<Complex, Complex> _whole;
    private readonly Func<double, double> _rest;
    private readonly LumpedBranch? _source;
    private readonly IReadOnlyList<Branch> _branches;
    private readonly List<Line> _lines = new();

    private EchoSeries(Func<Complex, Complex> whole, Func<double, double> rest, LumpedBranch? source, IReadOnlyList<Branch> branches)
    {
        _whole = whole;
        _rest = rest;
        _source = source;
        _branches = branches;
        foreach (Branch branch in branches)
        {
            if (branch is Line line)
                _lines.Add(line);
        }
    }

    /// <summary>The ways through, or null where there are more lines than can be followed, or echoes that hardly die.</summary>
    /// <param name="name">The name of the whole.</param>
    /// <param name="gain">A factor on all of it.</param>
    /// <param name="scale">A frequency near which the whole changes, Hz.</param>
    /// <param name="whole">All echoes together at a complex frequency in rad/s, but for the factor.</param>
    /// <param name="rest">What the rest of the cascade passes at a frequency in Hz, re its reference.</param>
    /// <param name="source">The impedance of the source; null where it is ideal.</param>
    /// <param name="branches">From the source to the load.</param>
    internal static Way[]? Of(string name, double gain, double scale, Func<Complex, Complex> whole, Func<double, double> rest, LumpedBranch? source, IReadOnlyList<Branch> branches)
    {
        var series = new EchoSeries(whole, rest, source, branches);
        if (series._lines.Count >= MostTrips.Length || series.Worthwhile() is not { } all)
            return null;
        return Array.ConvertAll(all, trips => new Way(new FunctionResponse(name, scale, hertz => gain * series.Term(new Complex(0, 2 * Math.PI * hertz), trips)), series.Delay(trips)));
    }

    /// <summary>The trips whose echoes are worth adding, or null where what would be left out is not negligible.</summary>
    private RoundTrips[]? Worthwhile()
    {
        var all = new RoundTrips(_lines.Count, MostTrips[_lines.Count]);
        var largest = new double[all.Count];
        double beyond = 0, whole = Complex.Abs(_whole(Complex.Zero));
        Look(0);
        for (double hertz = 1e3; hertz < 1e12 && beyond <= Gone * whole; hertz *= 1.1)
            Look(hertz);
        // The smallest first, until those left out would be seen together with all that were not looked at.
        var order = new int[all.Count];
        for (int i = 0; i < order.Length; i++)
            order[i] = i;
        Array.Sort((double[])largest.Clone(), order);
        int first = 0;
        for (; first < order.Length && beyond + largest[order[first]] <= Gone * whole; first++)
            beyond += largest[order[first]];
        if (beyond > Gone * whole || order.Length - first > MostWays)
            return null;
        var kept = new int[order.Length - first];
        Array.Copy(order, first, kept, 0, kept.Length);
        Array.Sort(kept);
        return Array.ConvertAll(kept, all.Upto);

        void Look(double hertz)
        {
            var s = new Complex(0, 2 * Math.PI * hertz);
            Complex[] terms = all.Series(SourceVoltages(s));
            Complex left = _whole(s);
            double passed = _rest(hertz);
            for (int i = 0; i < terms.Length; i++)
            {
                Complex term = terms[i] * Complex.Exp(-Exponent(s, all.At(i)));
                largest[i] = Math.Max(largest[i], passed * Complex.Abs(term));
                left -= term * Complex.Exp(-s * Delay(all.At(i)));
            }
            beyond = Math.Max(beyond, passed * Complex.Abs(left));
        }
    }

    /// <summary>What arrives after the last of the trips, its delay left out.</summary>
    private Complex Term(Complex s, RoundTrips trips)
    {
        Complex[] terms = trips.Series(SourceVoltages(s));
        return terms[terms.Length - 1] * Complex.Exp(-Exponent(s, trips.At(terms.Length - 1)));
    }

    /// <summary>The loss of every passage along a line and its phase, but for the delays.</summary>
    private Complex Exponent(Complex s, int[] trips)
    {
        Complex exponent = Complex.Zero;
        for (int i = 0; i < trips.Length; i++)
            exponent += (1 + 2 * trips[i]) * _lines[i].Loss(s);
        return exponent;
    }

    private double Delay(RoundTrips trips) => Delay(trips.At(trips.Count - 1));

    private double Delay(int[] trips)
    {
        double seconds = 0;
        for (int i = 0; i < trips.Length; i++)
            seconds += (1 + 2 * trips[i]) * _lines[i].Delay;
        return seconds;
    }

    /// <summary>c(S) for each set S of lines (bit i for the i-th line from the source): the voltage of the source for 1 V at the output, over the e^γ of all lines.</summary>
    private Complex[] SourceVoltages(Complex s)
    {
        int sets = 1 << _lines.Count, bit = sets;
        var voltages = new Complex[sets];
        var currents = new Complex[sets];
        voltages[0] = Complex.One;
        for (int i = _branches.Count - 1; i >= 0; i--)
        {
            if (_branches[i] is not Line line)
            {
                for (int k = 0; k < sets; k += bit)
                    _branches[i].TowardsSource(s, ref voltages[k], ref currents[k]);
                continue;
            }
            // The sets so far are those of the lines behind this one: multiples of its bit times two.
            bit /= 2;
            for (int k = 0; k < sets; k += 2 * bit)
            {
                Complex forth = 0.5 * (voltages[k] + line.Impedance * currents[k]), back = 0.5 * (voltages[k] - line.Impedance * currents[k]);
                (voltages[k], currents[k]) = (forth, forth / line.Impedance);
                (voltages[k + bit], currents[k + bit]) = (back, -back / line.Impedance);
            }
        }
        for (int k = 0; k < sets && _source is not null; k++)
            _source.TowardsSource(s, ref voltages[k], ref currents[k]);
        return voltages;
    }
}
