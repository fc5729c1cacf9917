"""The rival of SineFitBenchmarks: SciPy's curve_fit, four parameters, on the same 100 000 samples.

Run in the same session as `dotnet run -c Release --project benchmarks/Acquisition.Benchmarks -- --filter '*SineFit*'`
with Debian's /usr/bin/python3 (python3-numpy, python3-scipy). Prints the median and the least of 30 runs, in milliseconds:
once with the start found by NumPy's rfft (the peak bin, interpolated as handbook 9.3), once with curve_fit alone from that start.
"""
import statistics
import sys
import time

import numpy as np
import scipy
from scipy.optimize import curve_fit

N, CYCLES, AMPLITUDE, PHASE, OFFSET, SIGMA = 100_000, 0.0371234, 0.8, 0.5, 0.1, 0.01


def noise(seed, count):
    """Minimal standard generator (Park and Miller 1988), twelve values to one of unit variance: as in the benchmark."""
    x, out = seed, np.empty(count)
    for i in range(count):
        s = 0.0
        for _ in range(12):
            x = 16807 * x % 2147483647
            s += x / 2147483647
        out[i] = s - 6
    return out


t = np.arange(N)
x = OFFSET + AMPLITUDE * np.cos(2 * np.pi * CYCLES * t + PHASE) + SIGMA * noise(1, N)


def model(t, a, b, c, w):
    return a * np.cos(w * t) + b * np.sin(w * t) + c


def start():
    y = x - x.mean()
    m = np.abs(np.fft.rfft(y * np.hanning(N)))
    k = int(np.argmax(m[1:-1])) + 1
    right = m[k + 1] >= m[k - 1]
    r = (m[k + 1] if right else m[k - 1]) / m[k]
    d = (2 * r - 1) / (r + 1)
    w = 2 * np.pi * (k + d if right else k - d) / N
    c, s = np.cos(w * t), np.sin(w * t)
    return [2 * np.mean(y * c), 2 * np.mean(y * s), x.mean(), w]


def timed(work, runs=30):
    times = []
    for _ in range(runs):
        begin = time.perf_counter()
        result = work()
        times.append(1e3 * (time.perf_counter() - begin))
    return statistics.median(times), min(times), result


p0 = start()
whole = timed(lambda: curve_fit(model, t, x, p0=start()))
alone = timed(lambda: curve_fit(model, t, x, p0=p0))
p = whole[2][0]
print(f"python {sys.version.split()[0]}, numpy {np.__version__}, scipy {scipy.__version__}, {N} samples")
print(f"start and curve_fit: median {whole[0]:.2f} ms, least {whole[1]:.2f} ms")
print(f"curve_fit alone:     median {alone[0]:.2f} ms, least {alone[1]:.2f} ms")
print(f"amplitude {np.hypot(p[0], p[1]):.9f}, frequency {p[3] / 2 / np.pi:.12f} cycles/sample")
