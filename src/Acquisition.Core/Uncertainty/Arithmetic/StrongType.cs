using System;

namespace Acquisition.Core.Uncertainty;

/// <summary>How a strong quantity type is made from a value in its SI unit, and its kind: the table that lets generic code stay free of reflection.</summary>
internal static class StrongType<T>
    where T : struct, IQuantity
{
    internal static readonly Func<double, string, T> FromSi = Find<T>();

    internal static readonly QuantityKind Kind = default(T).ToQuantity().Kind;

    private static Func<double, string, TAny> Find<TAny>()
    {
        Delegate maker = default(T) switch
        {
            Angle => (Func<double, string, Angle>)Angle.FromSi,
            BitDepth => (Func<double, string, BitDepth>)BitDepth.FromSi,
            BitRate => (Func<double, string, BitRate>)BitRate.FromSi,
            Capacitance => (Func<double, string, Capacitance>)Capacitance.FromSi,
            Current => (Func<double, string, Current>)Current.FromSi,
            DecibelRatio => (Func<double, string, DecibelRatio>)DecibelRatio.FromSi,
            Duration => (Func<double, string, Duration>)Duration.FromSi,
            Frequency => (Func<double, string, Frequency>)Frequency.FromSi,
            Inductance => (Func<double, string, Inductance>)Inductance.FromSi,
            Length => (Func<double, string, Length>)Length.FromSi,
            NoiseDensity => (Func<double, string, NoiseDensity>)NoiseDensity.FromSi,
            PeakToPeakVoltage => (Func<double, string, PeakToPeakVoltage>)PeakToPeakVoltage.FromSi,
            PeakVoltage => (Func<double, string, PeakVoltage>)PeakVoltage.FromSi,
            PointCount => (Func<double, string, PointCount>)((points, argument) => PointCount.FromSi(Math.Round(points), argument)),
            Power => (Func<double, string, Power>)Power.FromSi,
            PowerLevel => (Func<double, string, PowerLevel>)PowerLevel.FromSi,
            Ratio => (Func<double, string, Ratio>)Ratio.FromSi,
            Resistance => (Func<double, string, Resistance>)Resistance.FromSi,
            RmsVoltage => (Func<double, string, RmsVoltage>)RmsVoltage.FromSi,
            SampleRate => (Func<double, string, SampleRate>)SampleRate.FromSi,
            SlewRate => (Func<double, string, SlewRate>)SlewRate.FromSi,
            Temperature => (Func<double, string, Temperature>)Temperature.FromSi,
            Voltage => (Func<double, string, Voltage>)Voltage.FromSi,
            VoltageLevel => (Func<double, string, VoltageLevel>)VoltageLevel.FromSi,
            _ => throw new NotSupportedException($"{typeof(T).Name} is not one of the library's quantity types"),
        };
        return (Func<double, string, TAny>)maker;
    }
}
