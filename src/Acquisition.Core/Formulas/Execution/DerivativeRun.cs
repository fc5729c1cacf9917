using System;
using Acquisition.Core.Functions;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core.Formulas.Execution;

/// <summary>
/// Runs a program and carries along the derivatives of every register with respect to the inputs and the uncertain terms (forward mode). Arithmetic is
/// differentiated exactly; functions by their declared derivatives, else numerically. What passes through a model is differentiated numerically as a whole.
/// </summary>
internal sealed class DerivativeRun
{
    private readonly Program _program;
    private readonly double[] _inputs;
    private readonly object?[]? _objectInputs;
    private readonly double[] _inputScales;
    private readonly double[]? _deviations;
    private readonly int _directions;
    private readonly double[] _numbers;
    private readonly object?[] _objects;
    private readonly double[] _slopes;
    private readonly double[] _objectSlopes;
    private readonly double[] _scales;
    private readonly double[] _scratch;

    /// <summary>Prepares a run.</summary>
    /// <param name="program">The program, compiled so that uncertain terms may deviate.</param>
    /// <param name="inputs">The number inputs in SI.</param>
    /// <param name="objectInputs">The object inputs.</param>
    /// <param name="inputScales">How far each input may move: the first step of numerical derivatives. 0 where it is exact.</param>
    /// <param name="deviations">How far each uncertain term lies from its stated value; null for not at all.</param>
    internal DerivativeRun(Program program, double[] inputs, object?[]? objectInputs, double[] inputScales, double[]? deviations)
    {
        _program = program;
        _inputs = inputs;
        _objectInputs = objectInputs;
        _inputScales = inputScales;
        _deviations = deviations;
        _directions = program.Inputs + program.Terms.Length;
        _numbers = new double[program.Registers];
        _scratch = new double[program.Registers];
        _objects = program.NewObjects(objectInputs);
        _slopes = new double[program.Registers * _directions];
        _objectSlopes = new double[program.ObjectRegisters * _directions];
        _scales = new double[_directions];
        IsNumerical = new bool[_directions];
    }

    /// <summary>Whether a derivative rests on a numerical one, by direction: inputs first, then terms.</summary>
    internal bool[] IsNumerical { get; }

    /// <summary>The half-widths of the uncertain terms, after <see cref="Run"/>.</summary>
    internal double[] HalfWidths { get; private set; } = Array.Empty<double>();

    /// <summary>The value of a register and its derivatives by direction: inputs first, then terms. A derivative that does not exist is NaN.</summary>
    internal double Run(int result, out double[] derivatives)
    {
        Array.Copy(_inputs, _numbers, _inputs.Length);
        _program.LoadConstants(_numbers);
        for (int i = 0; i < _program.Inputs; i++)
        {
            _slopes[i * _directions + i] = 1;
            _scales[i] = _inputScales[i] > 0 ? _inputScales[i] : Math.Abs(_inputs[i]) * 0.01;
        }
        for (int at = 0; at < _program.Code.Length;) at = Step(at);
        HalfWidths = Array.ConvertAll(_program.Terms, term => _numbers[term.HalfWidthRegister]);
        derivatives = new double[_directions];
        Array.Copy(_slopes, result * _directions, derivatives, 0, _directions);
        for (int direction = 0; direction < _directions; direction++)
        {
            if (Arithmetic.IsFinite(derivatives[direction])) continue;
            derivatives[direction] = AsAWhole(direction, result);
            IsNumerical[direction] = true;
        }
        return _numbers[result];
    }

    private int Step(int at)
    {
        Instruction i = _program.Code[at];
        double a = 0, b = 0;
        bool isCall = i.Operation is Operation.Call or Operation.Call1 or Operation.Call2;
        double[] partials = isCall ? Partials(_program.Calls[i.C]) : Array.Empty<double>();
        bool hasNumbers = i.Operation is not (Operation.Jump or Operation.Call or Operation.CallForObject or Operation.CopyObject or Operation.SelectObject or Operation.TextsEqual);
        if (hasNumbers)
        {
            a = _numbers[i.A];
            if (i.Operation is not (Operation.Deviate or Operation.JumpUnless or Operation.JumpUnlessForObject or Operation.Call1)) b = _numbers[i.B];
        }
        int next = _program.Run(at, at + 1, _numbers, _objects, _deviations);
        switch (i.Operation)
        {
            case Operation.Jump or Operation.JumpUnless or Operation.JumpUnlessForObject:
                break;
            case Operation.CallForObject:
                Taint(i.Target, _program.Calls[i.C]);
                break;
            case Operation.SelectObject:
                Array.Copy(_objectSlopes, (_numbers[i.A] != 0 ? i.B : i.C) * _directions, _objectSlopes, i.Target * _directions, _directions);
                break;
            case Operation.CopyObject:
                Array.Copy(_objectSlopes, i.A * _directions, _objectSlopes, i.Target * _directions, _directions);
                break;
            case Operation.Call or Operation.Call1 or Operation.Call2:
                Spread(i.Target, _program.Calls[i.C], partials);
                break;
            case Operation.Select:
                Array.Copy(_slopes, (a != 0 ? i.B : i.C) * _directions, _slopes, i.Target * _directions, _directions);
                break;
            case Operation.Deviate:
                Array.Copy(_slopes, i.A * _directions, _slopes, i.Target * _directions, _directions);
                int term = _program.Inputs + i.B;
                _slopes[i.Target * _directions + term] += 1;
                _scales[term] = Math.Max(_numbers[_program.Terms[i.B].HalfWidthRegister], 0);
                break;
            case >= Operation.Less and <= Operation.Not or Operation.TextsEqual:
                Array.Clear(_slopes, i.Target * _directions, _directions);
                break;
            default:
                Combine(i, a, b, _numbers[i.Target]);
                break;
        }
        return next;
    }

    private void Combine(in Instruction i, double a, double b, double value)
    {
        double byA = 0, byB = 0;
        switch (i.Operation)
        {
            case Operation.Copy: byA = 1; break;
            case Operation.Negate: byA = -1; break;
            case Operation.Add: byA = 1; byB = 1; break;
            case Operation.Subtract: byA = 1; byB = -1; break;
            case Operation.Multiply: byA = b; byB = a; break;
            case Operation.Divide: byA = 1 / b; byB = -value / b; break;
            case Operation.Square: byA = 2 * a; break;
            case Operation.SquareRoot: byA = 0.5 / value; break;
            case Operation.Absolute: byA = Math.Sign(a); break;
            case Operation.Minimum: byA = a <= b ? 1 : 0; byB = 1 - byA; break;
            case Operation.Maximum: byA = a >= b ? 1 : 0; byB = 1 - byA; break;
            case Operation.LevelInBandwidth: byA = 1; byB = 10 / (Math.Log(10) * b); break;
            case Operation.LevelPerBandwidth: byA = 1; byB = -10 / (Math.Log(10) * b); break;
            case Operation.Power: byA = b * Math.Pow(a, b - 1); byB = a > 0 ? value * Math.Log(a) : double.NaN; break;
        }
        int from = i.A * _directions, other = i.B * _directions, to = i.Target * _directions;
        for (int d = 0; d < _directions; d++) _slopes[to + d] = Part(byA, _slopes[from + d]) + Part(byB, _slopes[other + d]);
    }

    /// <summary>A product in which nothing times anything is nothing, even where the other factor does not exist.</summary>
    private static double Part(double partial, double slope) => slope == 0 || partial == 0 ? 0 : partial * slope;

    private double[] Partials(CallSite site)
    {
        var partials = new double[site.Slots.Length];
        for (int j = 0; j < partials.Length; j++)
        {
            if (!site.IsNumber[j]) continue;
            double reach = Reach(site.Slots[j]);
            if (reach == 0) continue;
            if (site.Kernel.HasPartials)
                partials[j] = site.Kernel.Partial(j, _numbers, site.Slots);
            else
                partials[j] = NumericalPartial(site, j, reach);
        }
        return partials;
    }

    /// <summary>How far a register may move when the inputs and terms do: 0 where it cannot.</summary>
    private double Reach(int register)
    {
        double reach = 0;
        bool moves = false;
        for (int d = 0; d < _directions; d++)
        {
            double slope = _slopes[register * _directions + d];
            moves |= slope != 0;
            reach = Math.Max(reach, Math.Abs(slope) * _scales[d]);
        }
        if (!moves) return 0;
        return reach > 0 && Arithmetic.IsFinite(reach) ? reach : Math.Abs(_numbers[register]) > 0 ? Math.Abs(_numbers[register]) * 0.01 : 1e-3;
    }

    private double NumericalPartial(CallSite site, int argument, double step)
    {
        Array.Copy(_numbers, _scratch, _numbers.Length);
        // The same register may feed two arguments; only this one moves.
        var slots = (int[])site.Slots.Clone();
        var numbers = new double[_scratch.Length + 1];
        Array.Copy(_scratch, numbers, _scratch.Length);
        slots[argument] = numbers.Length - 1;
        double partial = NumericalDerivative.At(
            x =>
            {
                numbers[numbers.Length - 1] = x;
                return site.Kernel.Number(numbers, _objects, slots);
            },
            _numbers[site.Slots[argument]], step, out _);
        for (int d = 0; d < _directions; d++) IsNumerical[d] |= _slopes[site.Slots[argument] * _directions + d] != 0;
        return partial;
    }

    private void Spread(int target, CallSite site, double[] partials)
    {
        var sums = new double[_directions];
        for (int j = 0; j < partials.Length; j++)
        {
            int from = site.Slots[j] * _directions;
            for (int d = 0; d < _directions; d++) sums[d] += site.IsNumber[j] ? Part(partials[j], _slopes[from + d]) : _objectSlopes[from + d];
        }
        Array.Copy(sums, 0, _slopes, target * _directions, _directions);
    }

    /// <summary>A model made from something that moves has no derivative of its own: whatever is asked of it has to be differentiated as a whole.</summary>
    private void Taint(int target, CallSite site)
    {
        for (int d = 0; d < _directions; d++)
        {
            bool moves = false;
            for (int j = 0; j < site.Slots.Length; j++) moves |= (site.IsNumber[j] ? _slopes : _objectSlopes)[site.Slots[j] * _directions + d] != 0;
            _objectSlopes[target * _directions + d] = moves ? double.NaN : 0;
        }
    }

    private double AsAWhole(int direction, int result)
    {
        var numbers = new double[_program.Registers];
        var inputs = (double[])_inputs.Clone();
        double[] deviations = _deviations is null ? new double[_program.Terms.Length] : (double[])_deviations.Clone();
        double step = _scales[direction] > 0 ? _scales[direction] : 1e-3;
        return NumericalDerivative.At(
            x =>
            {
                if (direction < _program.Inputs)
                    inputs[direction] = _inputs[direction] + x;
                else
                    deviations[direction - _program.Inputs] = (_deviations?[direction - _program.Inputs] ?? 0) + x;
                Array.Copy(inputs, numbers, inputs.Length);
                _program.LoadConstants(numbers);
                _program.Run(0, _program.Code.Length, numbers, _program.NewObjects(_objectInputs), deviations);
                return numbers[result];
            },
            0, step, out _);
    }
}
