using System;
using System.Collections.Generic;
using System.Numerics;
using Acquisition.Core.Responses;

namespace Acquisition.Core.Chain;

/// <summary>
/// A ladder between a source impedance and what terminates it: everything up to the next point that nothing looks back through. Voltage and current are
/// carried from the load (1 V, no current beyond it) to the source, which holds every loading and every order of the elements.
/// </summary>
internal sealed class LadderSection
{
    private readonly LumpedBranch? _source;
    private readonly Branch[] _branches;

    /// <param name="source">The impedance of the source; null where it is ideal.</param>
    /// <param name="branches">From the source to the load, the load included.</param>
    internal LadderSection(LumpedBranch? source, IReadOnlyList<Branch> branches)
    {
        _source = source;
        _branches = Joined(branches);
        foreach (Branch branch in _branches)
        {
            Delay += branch.Delay;
            IsLumped &= branch is LumpedBranch;
        }
    }

    /// <summary>Lines without loss of one impedance that follow each other are one: nothing comes back where they meet.</summary>
    private static Branch[] Joined(IReadOnlyList<Branch> branches)
    {
        var joined = new List<Branch>();
        foreach (Branch branch in branches)
        {
            if (branch is Line { IsLossless: true } next && joined.Count > 0 && joined[joined.Count - 1] is Line { IsLossless: true } before && before.Impedance == next.Impedance)
                joined[joined.Count - 1] = new Line(before.Impedance, before.Delay + next.Delay, 0, 0, 1);
            else
                joined.Add(branch);
        }
        return joined.ToArray();
    }

    internal bool IsLumped { get; } = true;

    /// <summary>The delays of all lines, s.</summary>
    internal double Delay { get; }

    /// <summary>Output over the open-circuit voltage of the source.</summary>
    internal Complex Transfer(Complex s)
    {
        Look(s, out Complex voltage, out Complex current);
        _source?.TowardsSource(s, ref voltage, ref current);
        return 1 / voltage;
    }

    /// <summary>Output over the voltage at the input.</summary>
    internal Complex FromInput(Complex s)
    {
        Look(s, out Complex voltage, out _);
        return 1 / voltage;
    }

    /// <summary>Voltage at the input over the open-circuit voltage of the source.</summary>
    internal Complex Loading(Complex s)
    {
        Look(s, out Complex voltage, out Complex current);
        Complex input = voltage;
        _source?.TowardsSource(s, ref voltage, ref current);
        return input / voltage;
    }

    /// <summary>Current over voltage at the input, siemens.</summary>
    internal Complex InputAdmittance(Complex s)
    {
        Look(s, out Complex voltage, out Complex current);
        return current / voltage;
    }

    internal Response TransferResponse(string name, double gain) => IsLumped ? Rational(name, gain, Part.Transfer) : Bounced(name, gain, _source) ?? Echoing(name, Transfer, gain, _source);

    internal Response FromInputResponse(string name, double gain) => IsLumped ? Rational(name, gain, Part.FromInput) : Bounced(name, gain, null) ?? Echoing(name, FromInput, gain, null);

    internal Response LoadingResponse(string name) => IsLumped ? Rational(name, 1, Part.Loading) : new NetworkResponse(name, Loading, 1, Delay);

    private enum Part
    {
        Transfer,
        FromInput,
        Loading,
    }

    private void Look(Complex s, out Complex voltage, out Complex current)
    {
        voltage = Complex.One;
        current = Complex.Zero;
        for (int i = _branches.Length - 1; i >= 0; i--)
            _branches[i].TowardsSource(s, ref voltage, ref current);
    }

    /// <summary>The same with polynomials over a common denominator: a lumped ladder is a ratio of polynomials, whose step is exact.</summary>
    private FactoredResponse Rational(string name, double gain, Part part)
    {
        double[] voltage = Polynomial.One, current = { 0 }, common = Polynomial.One;
        for (int i = _branches.Length - 1; i >= 0; i--)
            Carry((LumpedBranch)_branches[i], ref voltage, ref current, ref common);
        if (part == Part.FromInput)
            return FromPolynomials(name, gain, common, voltage);
        double[] input = voltage;
        if (_source is not null)
        {
            Carry(_source, ref voltage, ref current, ref common);
            input = Polynomial.Product(input, _source.Denominator);
        }
        return FromPolynomials(name, gain, part == Part.Loading ? input : common, voltage);
    }

    /// <summary>Several lines, or loss: the gain at each frequency, and its echoes as far as they die.</summary>
    private NetworkResponse Echoing(string name, Func<Complex, Complex> transfer, double gain, LumpedBranch? source) =>
        new(name, transfer, gain, Delay, (whole, rest) => EchoSeries.Of(name, gain, whole.FrequencyScale, transfer, rest, source, _branches));

    /// <summary>One line without loss in the ladder, with its echoes one by one; null where there are more lines, or loss, or echoes that hardly die.</summary>
    private Response? Bounced(string name, double gain, LumpedBranch? source)
    {
        int at = Array.FindIndex(_branches, branch => branch is not LumpedBranch);
        if (_branches[at] is not Line { IsLossless: true } line || Array.FindLastIndex(_branches, branch => branch is not LumpedBranch) != at)
            return null;
        double[] voltage = Polynomial.One, current = { 0 }, common = Polynomial.One;
        for (int i = _branches.Length - 1; i > at; i--)
            Carry((LumpedBranch)_branches[i], ref voltage, ref current, ref common);
        double[] ofVoltage = Polynomial.One, none = { 0 }, ofCurrent = { 0 }, one = Polynomial.One, denominator = Polynomial.One, same = Polynomial.One;
        for (int i = at - 1; i >= -1; i--)
        {
            if ((i >= 0 ? (LumpedBranch)_branches[i] : source) is not { } branch)
                continue;
            Carry(branch, ref ofVoltage, ref none, ref denominator);
            Carry(branch, ref ofCurrent, ref one, ref same);
        }
        return BounceDiagram.Of(name, gain, (ofVoltage, ofCurrent, denominator), (voltage, current, common), line.Impedance, line.Delay);
    }

    private static void Carry(LumpedBranch branch, ref double[] voltage, ref double[] current, ref double[] common)
    {
        if (branch.IsSeries)
        {
            voltage = Polynomial.Sum(Polynomial.Product(voltage, branch.Denominator), Polynomial.Product(current, branch.Numerator));
            current = Polynomial.Product(current, branch.Denominator);
        }
        else
        {
            current = Polynomial.Sum(Polynomial.Product(current, branch.Denominator), Polynomial.Product(voltage, branch.Numerator));
            voltage = Polynomial.Product(voltage, branch.Denominator);
        }
        common = Polynomial.Product(common, branch.Denominator);
    }

    private static FactoredResponse FromPolynomials(string name, double gain, double[] numerator, double[] denominator)
    {
        numerator = Polynomial.Trim(numerator);
        denominator = Polynomial.Trim(denominator);
        var zeros = new List<Complex>(PolynomialRoots.Of(numerator));
        var poles = new List<Complex>(PolynomialRoots.Of(denominator));
        double dc = gain * numerator[0] / denominator[0];
        // A compensated divider has a pole on its zero: what cancels is not there.
        for (int i = zeros.Count - 1; i >= 0; i--)
        {
            int match = poles.FindIndex(pole => Complex.Abs(pole - zeros[i]) <= 1e-10 * Complex.Abs(pole));
            if (match >= 0 && zeros[i].Imaginary == 0 && poles[match].Imaginary == 0)
            {
                zeros.RemoveAt(i);
                poles.RemoveAt(match);
            }
        }
        return new FactoredResponse(name, RationalFactors.FromRoots(zeros.ToArray(), poles.ToArray(), dc));
    }
}
