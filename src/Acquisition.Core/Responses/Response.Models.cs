using System;
using Acquisition.Core.Responses;

namespace Acquisition.Core;

// The models of the trade. Each says what its bandwidth means; all are 1 at DC unless they say otherwise.
public abstract partial class Response
{
    /// <summary>The order to which Butterworth and Bessel responses are made.</summary>
    private const int HighestFilterOrder = 10;

    private const int MostEqualPoles = 50;

    /// <summary>One RC pole: 1 / (1 + j f/f3). The bandwidth is the half-power frequency f3 = 1/(2π RC); rise time ln 9 · RC (handbook 2.2).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bandwidth"/> is not above 0 Hz.</exception>
    public static Response SinglePole(Frequency bandwidth) =>
        Model("single pole", bandwidth, new Factors(1, new[] { Section.Pole(1 / Omega(bandwidth)) }, 0, 0));

    /// <summary>So many equal real poles, as of buffered RC stages. The bandwidth is the half-power frequency of all of them together (handbook 2.2, 3.2).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bandwidth"/> is not above 0 Hz, or <paramref name="count"/> is not 1 to 50.</exception>
    public static Response PolesEqual(int count, Frequency bandwidth)
    {
        RequireOrder(count, MostEqualPoles, nameof(count));
        double tau = Math.Sqrt(Math.Pow(2, 1.0 / count) - 1) / Omega(bandwidth);
        var sections = new Section[count];
        for (int i = 0; i < count; i++)
            sections[i] = Section.Pole(tau);
        return Model($"{count} equal poles", bandwidth, new Factors(1, sections, 0, 0));
    }

    /// <summary>
    /// The Gaussian response |H| = 2^(-(f/f3)²/2), the limit of many equal poles, without delay: its step passes one half at t = 0, so it is not causal.
    /// The bandwidth is the half-power frequency f3; rise time 0.3396/f3 (handbook 2.2).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bandwidth"/> is not above 0 Hz.</exception>
    public static Response Gaussian(Frequency bandwidth)
    {
        double omega = Omega(bandwidth);
        return Model("Gaussian", bandwidth, new Factors(1, Array.Empty<Section>(), Math.Log(2) / (omega * omega), 0));
    }

    /// <summary>The Butterworth response, |H|² = 1/(1 + (f/f3)^2n): flattest in magnitude. The bandwidth is the half-power frequency f3 at every order (handbook 2.2).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bandwidth"/> is not above 0 Hz, or <paramref name="order"/> is not 1 to 10.</exception>
    public static Response Butterworth(int order, Frequency bandwidth)
    {
        RequireOrder(order, HighestFilterOrder, nameof(order));
        return Model("Butterworth " + Number(order), bandwidth, Prototype(ButterworthPoles.Sections(order), Omega(bandwidth)));
    }

    /// <summary>The Bessel (Thomson) response: flattest in delay. The bandwidth is the half-power frequency, not the corner of the delay-normalised filter (handbook 2.2).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bandwidth"/> is not above 0 Hz, or <paramref name="order"/> is not 1 to 10.</exception>
    public static Response Bessel(int order, Frequency bandwidth)
    {
        RequireOrder(order, HighestFilterOrder, nameof(order));
        return Model("Bessel " + Number(order), bandwidth, Prototype(BesselPoles.Sections(order), Omega(bandwidth)));
    }

    private static FactoredResponse Model(string shape, Frequency bandwidth, Factors factors) => new FactoredResponse($"{shape}, {bandwidth}", factors, bandwidth.SiValue);

    private static Factors Prototype(Section[] prototype, double omega) => new(1, Array.ConvertAll(prototype, section => section.Scaled(omega)), 0, 0);

    private static double Omega(Frequency bandwidth, string argument = "bandwidth") => 2 * Math.PI * Refuse.UnlessAboveZero(bandwidth.SiValue, Frequency.Kind, argument);

    private static void RequireOrder(int order, int highest, string argument)
    {
        if (order < 1 || order > highest)
            throw new ArgumentOutOfRangeException(argument, $"{argument} must be 1 to {Number(highest)}; was {Number(order)}");
    }

    private static string Number(int value) => value.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
