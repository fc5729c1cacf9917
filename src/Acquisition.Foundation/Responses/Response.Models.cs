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

    /// <summary>The Chebyshev response of type I: an even ripple in the band, then the steepest fall of all-pole filters. The bandwidth is the half-power frequency, not the edge of the ripple.</summary>
    /// <param name="order">An odd order from 1 to 9: an even one has its DC gain at the bottom of the ripple, so that "-3 dB" would have two meanings (handbook 2.2).</param>
    /// <param name="ripple">The ripple in the band, above 0 dB and below 3 dB.</param>
    /// <param name="bandwidth">The half-power frequency re DC.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bandwidth"/> is not above 0 Hz, <paramref name="order"/> is not odd from 1 to 9, or <paramref name="ripple"/> is out of range.</exception>
    public static Response Chebyshev(int order, DecibelRatio ripple, Frequency bandwidth)
    {
        RequireOrder(order, HighestFilterOrder, nameof(order));
        if (order % 2 == 0)
            throw new ArgumentOutOfRangeException(nameof(order), $"order must be odd, because an even one has no gain of 1 at DC; was {Number(order)}");
        if (!(ripple.SiValue > 0 && ripple.SiValue < 3))
            throw Refuse.OutOfRange(ripple.SiValue, DecibelRatio.Kind, nameof(ripple), "above 0 dB and below 3 dB");
        return Model($"Chebyshev {Number(order)}, {ripple} ripple", bandwidth, Prototype(ChebyshevPoles.Sections(order, ripple.SiValue), Omega(bandwidth)));
    }

    /// <summary>
    /// The second-order low-pass wn² / (s² + 2 ζ wn s + wn²), as of an input capacitance at the end of a lead inductance. The natural frequency is not the bandwidth:
    /// f3 = fn √(1 - 2ζ² + √(1 + (1 - 2ζ²)²)) (handbook 2.3).
    /// </summary>
    /// <param name="naturalFrequency">The natural frequency fn.</param>
    /// <param name="damping">The damping ratio ζ = 1/(2Q): 0.7071 is the second-order Butterworth, 1 a double pole.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or the damping is not above 0.</exception>
    public static Response SecondOrder(Frequency naturalFrequency, Ratio damping)
    {
        double omega = Omega(naturalFrequency, nameof(naturalFrequency)), zeta = Refuse.UnlessAboveZero(damping.SiValue, Ratio.Kind, nameof(damping));
        double a = 1 - 2 * zeta * zeta, root = Math.Sqrt(1 + a * a);
        // For strong damping 1 - 2ζ² cancels against the root: the same value from the other side.
        double square = a >= 0 ? a + root : 1 / (root - a);
        return new FactoredResponse(
            $"second order, {naturalFrequency}, damping {damping.Fraction.ToString(System.Globalization.CultureInfo.InvariantCulture)}",
            new Factors(1, new[] { Section.Poles(2 * zeta / omega, 1 / (omega * omega)) }, 0, 0),
            naturalFrequency.SiValue * Math.Sqrt(square));
    }

    /// <summary>An ideal delay: nothing but later.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="delay"/> is negative.</exception>
    public static Response Delay(Duration delay) => delay.SiValue >= 0
        ? new FactoredResponse($"delay, {delay}", new Factors(1, Array.Empty<Section>(), 0, delay.SiValue))
        : throw Refuse.OutOfRange(delay.SiValue, Duration.Kind, nameof(delay), "at least 0 s");

    /// <summary>An ideal attenuator: the same loss at every frequency.</summary>
    /// <param name="attenuation">The loss: 20 dB divides the amplitude by ten.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="attenuation"/> is negative.</exception>
    public static Response Attenuator(DecibelRatio attenuation) => attenuation.SiValue >= 0
        ? new FactoredResponse($"attenuator, {attenuation}", new Factors((-attenuation).ToAmplitudeRatio().SiValue, Array.Empty<Section>(), 0, 0))
        : throw Refuse.OutOfRange(attenuation.SiValue, DecibelRatio.Kind, nameof(attenuation), "at least 0 dB", "a gain is an Amplifier");

    /// <summary>An ideal amplifier: the same gain at every frequency.</summary>
    public static Response Amplifier(DecibelRatio gain) =>
        new FactoredResponse($"amplifier, {gain}", new Factors(gain.ToAmplitudeRatio().SiValue, Array.Empty<Section>(), 0, 0));

    /// <summary>One RC high-pass, as of AC coupling: j f/fc / (1 + j f/fc). It blocks DC; fc is its lower half-power frequency, and it has no bandwidth of its own.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="corner"/> is not above 0 Hz.</exception>
    public static Response HighPass(Frequency corner)
    {
        double tau = 1 / Omega(corner, nameof(corner));
        return new FactoredResponse($"high-pass, {corner}", new Factors(1, new[] { new Section(0, tau, 0, tau, 0) }, 0, 0));
    }

    /// <summary>
    /// Everything below an edge and nothing above, without delay: what sinc interpolation assumes. Its step rings before and after alike, 8.95 % (handbook 2.2);
    /// no circuit does that. The bandwidth is the edge.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bandwidth"/> is not above 0 Hz.</exception>
    public static Response BrickWall(Frequency bandwidth)
    {
        Omega(bandwidth);
        return new BrickWallResponse($"brick wall, {bandwidth}", bandwidth.SiValue);
    }

    /// <summary>
    /// A line whose loss is the skin effect alone, exp(-√(jωτ)), without its delay: the loss in dB grows as √f, and the step has a long tail, so that 0.35 over
    /// the bandwidth is 3.4 times too short for its rise time (handbook 7.9). The bandwidth is the half-power frequency.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bandwidth"/> is not above 0 Hz.</exception>
    public static Response SkinEffect(Frequency bandwidth)
    {
        Omega(bandwidth);
        return new SkinEffectResponse($"skin effect, {bandwidth}", bandwidth.SiValue);
    }

    /// <summary>A response that the caller computes: its complex gain at each frequency.</summary>
    /// <param name="name">What the response is.</param>
    /// <param name="scale">A frequency near which the gain changes; searches look from a millionth to a million times of it.</param>
    /// <param name="gainAtHertz">The complex gain at a frequency in Hz, at least 0; called often, by any thread, and expected to give the same answer always.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="scale"/> is not above 0 Hz.</exception>
    public static Response FromFunction(string name, Frequency scale, Func<double, System.Numerics.Complex> gainAtHertz) => new FunctionResponse(
        name ?? throw new ArgumentNullException(nameof(name)),
        Refuse.UnlessAboveZero(scale.SiValue, Frequency.Kind, nameof(scale)),
        gainAtHertz ?? throw new ArgumentNullException(nameof(gainAtHertz)));

    /// <summary>A ratio of polynomials in s (rad/s), as a network analysis gives it.</summary>
    /// <param name="name">What the response is.</param>
    /// <param name="numeratorInSeconds">Coefficients of s to the power 0, 1, 2 ..., the k-th in seconds to the power k.</param>
    /// <param name="denominatorInSeconds">Coefficients of s to the power 0, 1, 2 ..., alike; the first must not be 0.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">A coefficient is not finite, the response grows with frequency without bound, or it is not stable (a pole not in the left half-plane).</exception>
    public static Response Rational(string name, double[] numeratorInSeconds, double[] denominatorInSeconds) => new FactoredResponse(
        name ?? throw new ArgumentNullException(nameof(name)),
        RationalFactors.FromPolynomials(numeratorInSeconds ?? throw new ArgumentNullException(nameof(numeratorInSeconds)), denominatorInSeconds ?? throw new ArgumentNullException(nameof(denominatorInSeconds))));

    /// <summary>Poles and zeros in rad/s and the gain at DC. Complex ones come in conjugate pairs.</summary>
    /// <param name="name">What the response is.</param>
    /// <param name="zeros">The zeros; none of them 0 (use <see cref="HighPass"/>).</param>
    /// <param name="poles">The poles, all in the left half-plane, at least as many as zeros.</param>
    /// <param name="dcGain">The gain at DC.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">A pole is not in the left half-plane, a zero is 0, a conjugate is missing, or there are more zeros than poles.</exception>
    public static Response PolesAndZeros(string name, System.Numerics.Complex[] zeros, System.Numerics.Complex[] poles, Ratio dcGain) => new FactoredResponse(
        name ?? throw new ArgumentNullException(nameof(name)),
        RationalFactors.FromRoots(zeros ?? throw new ArgumentNullException(nameof(zeros)), poles ?? throw new ArgumentNullException(nameof(poles)), dcGain.SiValue));

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
