using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>The products and quotients of the strong quantities, for uncertain ones: the same pairs, the same results.</summary>
public static class UncertainProducts
{
    extension<T>(Uncertain<T>)
        where T : struct, IQuantity
    {
        /// <summary>The value, scaled by an uncertain ratio.</summary>
        public static Uncertain<T> operator *(Uncertain<Ratio> factor, Uncertain<T> value) => value * factor;

        /// <summary>The value, divided by an uncertain ratio.</summary>
        public static Uncertain<T> operator /(Uncertain<T> value, Uncertain<Ratio> divisor) => value.DividedBy<Ratio, T>(divisor);
    }

    extension(Uncertain<Capacitance>)
    {
        /// <summary>The product.</summary>
        public static Uncertain<Duration> operator *(Uncertain<Capacitance> left, Uncertain<Resistance> right) => Uncertain<Capacitance>.Product<Resistance, Duration>(left, right);
    }

    extension(Uncertain<Current>)
    {
        /// <summary>The product.</summary>
        public static Uncertain<Voltage> operator *(Uncertain<Current> left, Uncertain<Resistance> right) => Uncertain<Current>.Product<Resistance, Voltage>(left, right);

        /// <summary>The product.</summary>
        public static Uncertain<Power> operator *(Uncertain<Current> left, Uncertain<Voltage> right) => Uncertain<Current>.Product<Voltage, Power>(left, right);
    }

    extension(Uncertain<Duration>)
    {
        /// <summary>The product.</summary>
        public static Uncertain<Ratio> operator *(Uncertain<Duration> left, Uncertain<Frequency> right) => Uncertain<Duration>.Product<Frequency, Ratio>(left, right);

        /// <summary>The product.</summary>
        public static Uncertain<PointCount> operator *(Uncertain<Duration> left, Uncertain<SampleRate> right) => Uncertain<Duration>.Product<SampleRate, PointCount>(left, right);
    }

    extension(Uncertain<Frequency>)
    {
        /// <summary>The product.</summary>
        public static Uncertain<Ratio> operator *(Uncertain<Frequency> left, Uncertain<Duration> right) => Uncertain<Frequency>.Product<Duration, Ratio>(left, right);
    }

    extension(Uncertain<Inductance>)
    {
        /// <summary>The quotient.</summary>
        public static Uncertain<Duration> operator /(Uncertain<Inductance> left, Uncertain<Resistance> right) => Uncertain<Inductance>.Quotient<Resistance, Duration>(left, right);
    }

    extension(Uncertain<PointCount>)
    {
        /// <summary>The quotient.</summary>
        public static Uncertain<Duration> operator /(Uncertain<PointCount> left, Uncertain<SampleRate> right) => Uncertain<PointCount>.Quotient<SampleRate, Duration>(left, right);

        /// <summary>The quotient.</summary>
        public static Uncertain<SampleRate> operator /(Uncertain<PointCount> left, Uncertain<Duration> right) => Uncertain<PointCount>.Quotient<Duration, SampleRate>(left, right);
    }

    extension(Uncertain<Power>)
    {
        /// <summary>The quotient.</summary>
        public static Uncertain<Current> operator /(Uncertain<Power> left, Uncertain<Voltage> right) => Uncertain<Power>.Quotient<Voltage, Current>(left, right);

        /// <summary>The quotient.</summary>
        public static Uncertain<Voltage> operator /(Uncertain<Power> left, Uncertain<Current> right) => Uncertain<Power>.Quotient<Current, Voltage>(left, right);
    }

    extension(Uncertain<Resistance>)
    {
        /// <summary>The product.</summary>
        public static Uncertain<Voltage> operator *(Uncertain<Resistance> left, Uncertain<Current> right) => Uncertain<Resistance>.Product<Current, Voltage>(left, right);

        /// <summary>The product.</summary>
        public static Uncertain<Duration> operator *(Uncertain<Resistance> left, Uncertain<Capacitance> right) => Uncertain<Resistance>.Product<Capacitance, Duration>(left, right);
    }

    extension(Uncertain<SampleRate>)
    {
        /// <summary>The product.</summary>
        public static Uncertain<PointCount> operator *(Uncertain<SampleRate> left, Uncertain<Duration> right) => Uncertain<SampleRate>.Product<Duration, PointCount>(left, right);
    }

    extension(Uncertain<SampleRate>)
    {
        /// <summary>Samples per period.</summary>
        public static Uncertain<Ratio> operator /(Uncertain<SampleRate> left, Uncertain<Frequency> right) => Uncertain<SampleRate>.Quotient<Frequency, Ratio>(left, right);
    }

    extension(Uncertain<SlewRate>)
    {
        /// <summary>The product.</summary>
        public static Uncertain<Voltage> operator *(Uncertain<SlewRate> left, Uncertain<Duration> right) => Uncertain<SlewRate>.Product<Duration, Voltage>(left, right);
    }

    extension(Uncertain<Voltage>)
    {
        /// <summary>The quotient.</summary>
        public static Uncertain<Current> operator /(Uncertain<Voltage> left, Uncertain<Resistance> right) => Uncertain<Voltage>.Quotient<Resistance, Current>(left, right);

        /// <summary>The quotient.</summary>
        public static Uncertain<Resistance> operator /(Uncertain<Voltage> left, Uncertain<Current> right) => Uncertain<Voltage>.Quotient<Current, Resistance>(left, right);

        /// <summary>The product.</summary>
        public static Uncertain<Power> operator *(Uncertain<Voltage> left, Uncertain<Current> right) => Uncertain<Voltage>.Product<Current, Power>(left, right);

        /// <summary>The quotient.</summary>
        public static Uncertain<SlewRate> operator /(Uncertain<Voltage> left, Uncertain<Duration> right) => Uncertain<Voltage>.Quotient<Duration, SlewRate>(left, right);

        /// <summary>The quotient.</summary>
        public static Uncertain<Duration> operator /(Uncertain<Voltage> left, Uncertain<SlewRate> right) => Uncertain<Voltage>.Quotient<SlewRate, Duration>(left, right);
    }

    extension(Uncertain<PowerLevel>)
    {
        /// <summary>The level after a gain.</summary>
        public static Uncertain<PowerLevel> operator +(Uncertain<PowerLevel> level, Uncertain<DecibelRatio> gain) => Shifted(level, gain, 1);

        /// <summary>The level after a loss.</summary>
        public static Uncertain<PowerLevel> operator -(Uncertain<PowerLevel> level, Uncertain<DecibelRatio> loss) => Shifted(level, loss, -1);
    }

    extension(Uncertain<VoltageLevel>)
    {
        /// <summary>The level after a gain.</summary>
        public static Uncertain<VoltageLevel> operator +(Uncertain<VoltageLevel> level, Uncertain<DecibelRatio> gain) => Shifted(level, gain, 1);

        /// <summary>The level after a loss.</summary>
        public static Uncertain<VoltageLevel> operator -(Uncertain<VoltageLevel> level, Uncertain<DecibelRatio> loss) => Shifted(level, loss, -1);
    }

    private static Uncertain<T> Shifted<T>(Uncertain<T> level, Uncertain<DecibelRatio> gain, double sign)
        where T : struct, IQuantity =>
        Uncertain<T>.Made(level.SiEstimate + sign * gain.SiEstimate, LinearCombination.Sum(level.Combination, 1, gain.Combination, sign), nameof(gain));
}
