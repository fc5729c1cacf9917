"""Outside values for sine fits, spectra and sweep fits: SciPy on records that both sides make by formula.

Runs with Debian's /usr/bin/python3 (tested with Python 3.11, numpy 1.24.2, scipy 1.10.1); writes
tests/Acquisition.Core.Tests/Records/Sine/scipy-cases.json, which the tests read.

Noise: the minimal standard generator (Park and Miller 1988) x <- 16807 x mod (2^31 - 1), u = x / (2^31 - 1);
twelve u summed, less six, is one value of unit variance.
"""
import json
import math
import os

import numpy as np
from scipy import optimize, signal


def noise(seed, count):
    x, out = seed, []
    for _ in range(count):
        s = 0.0
        for _ in range(12):
            x = 16807 * x % 2147483647
            s += x / 2147483647
        out.append(s - 6)
    return np.array(out)


def sine(n, cycles, amplitude, phase, offset, sigma, seed):
    return offset + amplitude * np.cos(2 * np.pi * cycles * np.arange(n) + phase) + sigma * noise(seed, n)


def model(t, a, f, p, c):
    return a * np.cos(2 * np.pi * f * t + p) + c


cases = {"made_by": "tests/scripts/sine/scipy_cases.py, numpy %s, scipy " % np.__version__ + __import__("scipy").__version__, "fits": [], "spectra": [], "sweeps": []}
for n, cycles, amplitude, phase, offset, sigma, seed in (
        (64, 0.11, 1.0, 0.5, 0.0, 0.05, 1), (500, 0.0371, 0.8, -2.0, 0.1, 0.2, 2), (1000, 0.4567, 2.5, 3.0, -1.0, 0.01, 3),
        (777, 0.25123, 0.1, 1.0, 5.0, 0.003, 4), (3000, 0.0021, 1.0, 0.1, 0.0, 0.3, 5), (200, 0.015, 1.0, 2.2, 0.3, 0.01, 6)):
    x = sine(n, cycles, amplitude, phase, offset, sigma, seed)
    t = np.arange(n)
    p, c = optimize.curve_fit(model, t, x, p0=[amplitude, cycles, phase, offset], xtol=1e-14, ftol=1e-14, gtol=1e-14)
    r = x - model(t, *p)
    u = np.sqrt(np.diag(c))
    cases["fits"].append({
        "n": n, "cycles": cycles, "amplitude": amplitude, "phase": phase, "offset": offset, "sigma": sigma, "seed": seed,
        "fit": [p[0], p[1], math.remainder(p[2], 2 * math.pi), p[3]], "u": list(u), "rms": float(np.sqrt(np.mean(r ** 2)))})

for n, window, name, seed in ((256, "hann", "Hann", 11), (1000, "boxcar", "rectangular", 12), (1024, "blackmanharris", "Blackman-Harris", 13), (333, "hamming", "Hamming", 14)):
    x = sine(n, 0.123, 1.0, 0.4, 0.2, 0.1, seed)
    fs = 1e6
    f, d = signal.periodogram(x, fs, window=window, detrend=False, scaling="density")
    f, s = signal.periodogram(x, fs, window=window, detrend=False, scaling="spectrum")
    bins = [0, 1, n // 10, int(round(0.123 * n)), n // 3, len(f) - 1]
    cases["spectra"].append({"n": n, "window": name, "seed": seed, "rate": fs, "bins": bins, "density": [float(d[k]) for k in bins], "spectrum": [float(s[k]) for k in bins]})
x = sine(4000, 0.123, 1.0, 0.4, 0.2, 0.1, 15)
f, d = signal.welch(x, 1e6, window="hann", nperseg=500, noverlap=250, detrend=False, scaling="density")
cases["welch"] = {"seed": 15, "bins": [5, 61, 62, 200], "density": [float(d[k]) for k in (5, 61, 62, 200)]}

SHAPES = {"single pole": lambda x: -10 * np.log10(1 + x ** 2), "gaussian": lambda x: -10 * np.log10(2) * x ** 2, "butterworth 4": lambda x: -10 * np.log10(1 + x ** 8)}
for name, seed in (("single pole", 21), ("gaussian", 22), ("butterworth 4", 23)):
    f = 1e7 * np.arange(1, 41)
    levels = -0.7 + SHAPES[name](f / 2.3e8) + 0.05 * noise(seed, 40)
    p, c = optimize.curve_fit(lambda f, g, b: g + SHAPES[name](f / (b * 1e8)), f, levels, p0=[0, 2], sigma=np.full(40, 0.05), absolute_sigma=True, xtol=1e-14, ftol=1e-14)
    cases["sweeps"].append({"model": name, "seed": seed, "gain": p[0], "bandwidth": p[1] * 1e8, "u_gain": math.sqrt(c[0, 0]), "u_bandwidth": math.sqrt(c[1, 1]) * 1e8})

here = os.path.dirname(os.path.abspath(__file__))
with open(os.path.join(here, "..", "..", "Acquisition.Core.Tests", "Records", "Sine", "scipy-cases.json"), "w") as out:
    json.dump(cases, out, indent=1)
    out.write("\n")
