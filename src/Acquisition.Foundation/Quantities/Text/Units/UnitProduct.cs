namespace Acquisition.Core;

/// <summary>A product of units under construction.</summary>
internal struct UnitProduct
{
    private UnitScale _scale;
    private bool _hasFactor;
    private bool _isRms;

    internal Dimension Dimension;

    /// <summary>Multiplies by a factor, or divides where <paramref name="sign"/> is -1.</summary>
    internal bool TryAdd(in UnitFactor factor, int sign, int end, out TextProblem problem)
    {
        if (!_hasFactor) _scale = UnitScale.One;
        _hasFactor = true;
        Unit unit = factor.Unit;
        _isRms |= unit.Nature == QuantityNature.Rms;
        int halves = factor.Halves * sign;
        UnitScale scale = unit.Scale.WithPrefix(factor.Prefix);
        TextFault fault =
            unit.IsLogarithmic ? TextFault.LogarithmInProduct
            : unit.OffsetInHundredths != 0 ? TextFault.CelsiusInProduct
            : unit.Nature is QuantityNature.Peak or QuantityNature.PeakToPeak || (unit.Nature == QuantityNature.Rms && !factor.IsPlain) ? TextFault.AmplitudeInProduct
            : (halves == 2 || scale.TryPower(halves, out scale)) && UnitScale.TryMultiply(_scale, scale, out _scale)
              && TryPower(unit.Dimension, halves, out Dimension power) && Dimension.TryMultiply(Dimension, power, out Dimension) ? TextFault.None
            : TextFault.ScaleRefused;
        problem = new TextProblem(fault, factor.Start, end - factor.Start);
        return fault == TextFault.None;
    }

    /// <summary>The product as a reading. A noise density is an rms value by nature, so <c>nVrms/√Hz</c> is one; no other product takes a tagged amplitude.</summary>
    internal readonly bool TryFinish(int start, int end, out UnitReading reading, out TextProblem problem)
    {
        reading = new UnitReading(Dimension, QuantityNature.Linear, LevelReference.None, _scale, end);
        bool fits = !_isRms || Dimension == QuantityKind.NoiseDensity.Dimension || Dimension == QuantityKind.CurrentNoiseDensity.Dimension;
        problem = fits ? default : new TextProblem(TextFault.AmplitudeInProduct, start, end - start);
        return fits;
    }

    private static bool TryPower(Dimension dimension, int halves, out Dimension power)
    {
        power = dimension;
        return halves == 2 || dimension.TryPower(halves, out power);
    }
}
