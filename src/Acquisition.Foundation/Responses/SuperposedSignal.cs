using System;
using System.Collections.Generic;
using System.Numerics;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Responses;

/// <summary>The steady state of a signal of levels after a response, as the sum of what its edges do: for slow clocks with fast edges, which have more harmonics than can be summed.</summary>
internal sealed class SuperposedSignal : Signal
{
    /// <summary>Where a harmonic series would need more lines than this, edges are added instead.</summary>
    private const int ManyLines = 16384;
    private const double Negligible = 1e-9;

    /// <summary>The whole period of so few edges is tabulated before a value is given; of a longer pattern a capture may see a small part only.</summary>
    private const int FewTransitions = 64;

    private readonly LevelSignal _source;
    private readonly EdgeSum _sum;
    private readonly double _offset;
    private readonly Lazy<PiecewisePolynomial> _period;
    private readonly Lazy<(double Highest, double Lowest)> _extremes;

    private SuperposedSignal(LevelSignal source, Response response, EdgeSum sum, double offset, Lazy<PiecewisePolynomial>? period)
        : base(source.Name + " > " + response.Name)
    {
        _source = source;
        Through = response;
        _sum = sum;
        _offset = offset;
        _period = period ?? new Lazy<PiecewisePolynomial>(() => new PiecewisePolynomial(sum.Value, sum.Marks(), Tolerance * (source.Highest - source.Lowest) * Math.Abs(response.StepReference)));
        _extremes = new Lazy<(double, double)>(() => _period.Value.Extremes());
    }

    /// <summary>The signal behind the response, or null where a harmonic series serves, or the edges cannot be added up.</summary>
    internal static SuperposedSignal? Of(LevelSignal source, Response response)
    {
        double high = ManyLines / source.Seconds, ramp = source.SteepestEdge!.RiseTime.SiValue / 0.8;
        if (response is GeneralResponse { EndsInRefusal: true })
            return null;
        double passed = response.Magnitude(high) / response.ReferenceMagnitude / Math.Max(1, Math.PI * high * ramp);
        if (passed < Negligible || (response is GeneralResponse && response.Magnitude(1e6 * high) > 0.9 * response.ReferenceMagnitude))
            return null;
        // A tail that is too lively to be followed is left to its lines as long as they can be summed.
        if (response is GeneralResponse && !double.IsInfinity(response.StepResponse.FarFrom) && FilteredSignal.Serves(source, response))
            return null;
        return EdgeSum.Of(source, response) is { } sum ? new SuperposedSignal(source, response, sum, 0, null) : null;
    }

    public override Frequency? Fundamental => _source.Fundamental;

    public override Duration? Period => _source.Period;

    public override Duration RiseTime => Through.RiseTimeOf(_source.SteepestEdge!).Value;

    /// <summary>The response that it has passed.</summary>
    internal Response Through { get; }

    internal override double Mean => _source.Mean * Through.DcGain + _offset;

    internal override double AcPower
    {
        get
        {
            double mean = Mean - _offset;
            return _period.Value.Integral(value => (value - mean) * (value - mean)) / _source.Seconds;
        }
    }

    internal override double Highest => _extremes.Value.Highest + _offset;

    internal override double Lowest => _extremes.Value.Lowest + _offset;

    internal override double MeanMagnitude => _period.Value.Integral(value => Math.Abs(value + _offset)) / _source.Seconds;

    internal override double Value(double seconds)
    {
        double turns = seconds / _source.Seconds, time = (turns - Math.Floor(turns)) * _source.Seconds;
        return (_source.TransitionArray.Length > FewTransitions ? _sum.Value(time) : _period.Value.Value(time)) + _offset;
    }

    internal override Complex Coefficient(int number) => number == 0 ? Mean : _source.Coefficient(number) * Through.ComplexGain(number / _source.Seconds);

    /// <summary>What a further response makes of it: the source behind both.</summary>
    internal Signal Then(Response response) => Through.Then(response).Apply(_source).WithOffset(Voltage.FromSi(_offset * response.DcGain, "offset"));

    private protected override Signal Offset(double volts) => new SuperposedSignal(_source, Through, _sum, _offset + volts, _period);

    /// <summary>A response known by its gain alone has a step that is good to 1e-8: pieces finer than that would hold its rounding.</summary>
    private double Tolerance => Through.Branches is null ? 1e-8 : 1e-11;
}
