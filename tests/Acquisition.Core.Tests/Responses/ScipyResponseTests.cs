using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>
/// Filters and cascades against scipy.signal 1.10.1 (tests/scripts/responses/scipy_responses.py): poles and gains by its own design functions, steps by its
/// matrix exponential, a Gaussian before a pole by the closed form with erfc.
/// </summary>
public class ScipyResponseTests
{
    public static TheoryData<string> Names => new(Rows().Select(row => row.Name).Distinct());

    [Theory, MemberData(nameof(Names))]
    public void Response_IsScipys(string name)
    {
        Response response = Make(name);
        double f3 = response.Bandwidth.Hertz;
        foreach ((_, string what, double at, double expected) in Rows().Where(row => row.Name == name))
        {
            // SciPy multiplies polynomials out, which costs it digits at high order; its step of repeated poles still more.
            (double actual, double tolerance) = what switch
            {
                "bandwidth" => (2 * Math.PI * f3, 1e-8 * expected),
                "real" => (response.ComplexGain(Frequency.FromHertz(at * f3)).Real, 1e-8),
                "imaginary" => (response.ComplexGain(Frequency.FromHertz(at * f3)).Imaginary, 1e-8),
                "groupdelay" => (response.GroupDelay(Frequency.FromHertz(at * f3)).Seconds * 2 * Math.PI * f3, 1e-7 * Math.Abs(expected) + 1e-9),
                "step" => (response.StepAt(Duration.FromSeconds(at / f3)).Fraction, 1e-7),
                _ => (response.StepAt(Duration.FromSeconds(at)).Fraction, 1e-11),
            };
            Assert.True(Math.Abs(actual - expected) <= tolerance, FormattableString.Invariant($"{name} {what} at {at}: expected {expected:R}, was {actual:R}"));
        }
    }

    private static Response Make(string name)
    {
        string[] parts = name.Split('-');
        Frequency unit = Frequency.FromHertz(1 / (2 * Math.PI));
        Frequency Omega(double value) => unit * value;
        return name switch
        {
            "mixed" => Response.SinglePole(Omega(5)).Then(Response.Butterworth(4, Omega(3.5))).Then(Response.Bessel(3, Omega(10))),
            "butterworth-4-twice" => Response.Butterworth(4, unit).Then(Response.Butterworth(4, unit)),
            "gaussian-pole" => Response.Gaussian(2.Hz()).Then(Response.SinglePole(5.Hz())),
            _ => parts[0] switch
            {
                "butterworth" => Response.Butterworth(Order(), unit),
                "bessel" => Response.Bessel(Order(), unit),
                // SciPy states the edge of the ripple: the half-power frequency is taken from its own file.
                _ => Response.Chebyshev(Order(), Number(parts[2]).dB(), Omega(Rows().First(row => row.Name == name && row.What == "bandwidth").Value)),
            },
        };

        int Order() => int.Parse(parts[1], CultureInfo.InvariantCulture);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static IEnumerable<(string Name, string What, double At, double Value)> Rows() =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Responses", "scipy-responses.csv")).Skip(1).Select(line => line.Split(',')).Select(cells => (cells[0], cells[1], Number(cells[2]), Number(cells[3])));
}
