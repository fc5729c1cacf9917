"""Values of filters, cascades and waveforms by SciPy, for ScipyResponseTests and ScipySignalTests.

Written with Debian python3 3.11.2, python3-numpy 1.24.2, python3-scipy 1.10.1; no other input. Writes two files beside the tests:
tests/Acquisition.Core.Tests/Responses/scipy-responses.csv and tests/Acquisition.Core.Tests/Signals/scipy-signals.csv.
Run from the top of the checkout: /usr/bin/python3 tests/scripts/responses/scipy_responses.py
"""
import csv
import math

import numpy as np
from scipy import integrate, optimize, signal, special

TESTS = "tests/Acquisition.Core.Tests"


def half_power(b, a):
    h0 = abs(np.polyval(b, 0) / np.polyval(a, 0))
    level = lambda w: abs(np.polyval(b, 1j * w) / np.polyval(a, 1j * w)) / h0 - math.sqrt(0.5)
    ws = np.geomspace(1e-3, 1e3, 60001)
    v = np.array([level(w) for w in ws])
    i = np.nonzero((v[:-1] > 0) & (v[1:] <= 0))[0][0]
    return optimize.brentq(level, ws[i], ws[i + 1], xtol=1e-15, rtol=1e-14)


def step_of(b, a, times):
    """By the state-space matrix exponential of SciPy's lsim on a fine grid."""
    _, y = signal.step(signal.TransferFunction(b, a), T=times)
    return y


def rows():
    filters = {f"butterworth-{n}": signal.butter(n, 1, analog=True) for n in range(1, 11)}
    filters |= {f"bessel-{n}": signal.bessel(n, 1, analog=True, norm="mag") for n in range(1, 11)}
    filters |= {f"chebyshev-{n}-{r}": signal.cheby1(n, r, 1, analog=True) for n in (3, 5, 7, 9) for r in (0.1, 1)}
    mixed = [signal.butter(1, 5.0, analog=True), signal.butter(4, 3.5, analog=True), signal.bessel(3, 10.0, analog=True, norm="mag")]
    b, a = np.array([1.0]), np.array([1.0])
    for x, y in mixed:
        b, a = np.polymul(b, x), np.polymul(a, y)
    filters["mixed"] = (b, a)
    twice = signal.butter(4, 1, analog=True)
    filters["butterworth-4-twice"] = (np.polymul(twice[0], twice[0]), np.polymul(twice[1], twice[1]))
    for name, (b, a) in filters.items():
        w3 = half_power(b, a)
        yield name, "bandwidth", 0, w3
        for ratio in (0.1, 0.5, 0.9, 1.0, 2.0, 5.0):
            h = signal.freqs(b, a, [ratio * w3])[1][0]
            yield name, "real", ratio, h.real
            yield name, "imaginary", ratio, h.imag
        # Group delay by the exact derivative of the polynomials.
        for ratio in (0.0, 0.5, 1.0):
            s = 1j * ratio * w3
            d = np.polyval(np.polyder(a), s) / np.polyval(a, s) - (np.polyval(np.polyder(b), s) / np.polyval(b, s) if len(b) > 1 else 0)
            yield name, "groupdelay", ratio, d.real * w3
        if len(a) <= 9:
            # scipy.signal.step steps by the matrix exponential: exact on its grid. Times in units of 1/f3.
            t = np.linspace(0, 3, 61) * 2 * math.pi / w3
            y = step_of(b, a, t)
            for i in (1, 2, 4, 6, 8, 12, 20, 40):
                yield name, "step", round(3 * i / 60, 12), y[i]


def gaussian_cascade():
    """A Gaussian (f3 = 2) before a single pole (f3 = 5): the exponentially modified normal distribution, closed form by erfc."""
    sigma = math.sqrt(math.log(2)) / (2 * math.pi * 2)
    rate = 2 * math.pi * 5
    for t in (-0.1, 0.0, 0.03, 0.08, 0.15, 0.3):
        u = t / sigma
        v = rate * sigma
        y = special.ndtr(u) - math.exp(-rate * t + v * v / 2) * special.ndtr(u - v)
        yield "gaussian-pole", "steptime", t, y


def signals():
    """Fourier coefficients by numerical integration over the period, period 1: |c_n| twice, against the closed forms of the library."""
    def trapezoid(t, duty, rise, fall):
        return np.interp(t, [-rise / 2, rise / 2, duty - fall / 2, duty + fall / 2, 1 - rise / 2], [-1, 1, 1, -1, -1])

    def line(f, n, points):
        re = sum(integrate.quad(lambda t: f(t) * math.cos(2 * math.pi * n * t), lo, hi, epsabs=1e-13, limit=200)[0] for lo, hi in zip(points, points[1:]))
        im = sum(integrate.quad(lambda t: f(t) * math.sin(2 * math.pi * n * t), lo, hi, epsabs=1e-13, limit=200)[0] for lo, hi in zip(points, points[1:]))
        return 2 * math.hypot(re, im)

    for n in range(1, 8):
        yield "trapezoid", n, line(lambda t: float(trapezoid(t, 0.3, 0.05, 0.1)), n, [-0.025, 0.025, 0.25, 0.35, 0.975])
        sigma = 0.02
        gauss = lambda t: 2 * (special.ndtr(t / sigma) - special.ndtr((t - 0.4) / sigma) + special.ndtr((t - 1) / sigma)) - 1
        yield "gaussian", n, line(gauss, n, [-0.3, -0.1, 0, 0.1, 0.3, 0.4, 0.5, 0.7])
        tau = 0.01
        rc = lambda t, at: 0.0 if t < at else 1 - math.exp(-(t - at) / tau)
        yield "exponential", n, line(lambda t: 2 * (rc(t, 0) - rc(t, 0.5)) - 1, n, [0, 0.02, 0.05, 0.1, 0.5, 0.52, 0.55, 0.6, 1])
        yield "half-wave", n, line(lambda t: max(0.0, math.sin(2 * math.pi * t)), n, [0, 0.25, 0.5, 1])
        yield "burst", n, line(lambda t: math.sin(2 * math.pi * 12 * t) if t < 3 / 12 else 0.0, n, [0, 1 / 24, 1 / 12, 1 / 8, 1 / 6, 5 / 24, 0.25, 1])


if __name__ == "__main__":
    with open(f"{TESTS}/Responses/scipy-responses.csv", "w", newline="\n") as out:
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow(["response", "what", "at", "value"])
        for name, what, at, value in [*rows(), *gaussian_cascade()]:
            writer.writerow([name, what, repr(float(at)), repr(float(value))])
    with open(f"{TESTS}/Signals/scipy-signals.csv", "w", newline="\n") as out:
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow(["signal", "harmonic", "peak"])
        for name, n, value in signals():
            writer.writerow([name, n, repr(float(value))])
