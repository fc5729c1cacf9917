"""Noisy, jittered pulses measured by NumPy from the definitions: the expected values of OutsidePulseTests.

8-bit codes of 40 Gaussian-edged pulses. The definitions of handbook 8.2 and 8.3 are written here a second time, by other means: states by the mode of the codes, instants
by numpy.interp between the samples around each edge, no hysteresis needed because the noise is small against the edge.

Run from the repository root with Debian's python3-numpy and python3-scipy:  /usr/bin/python3 tests/scripts/records/pulses_scipy.py
Writes tests/Acquisition.Core.Tests/Records/Data/scipy-pulses.csv (codes) and scipy-pulses.json.
"""
import json
import os

import numpy
import scipy
from scipy.special import ndtr

OUT = os.path.join("tests", "Acquisition.Core.Tests", "Records", "Data")
rng = numpy.random.default_rng(20260301)
count, period, width, sigma = 40, 100.0, 37.3, 3.1
rising = 30.7 + period * numpy.arange(count) + rng.normal(0, 0.4, count)
falling = rising + width + rng.normal(0, 0.2, count)
n = numpy.arange(int(count * period + 20))
volts = sum(ndtr((n - r) / sigma) for r in rising) - sum(ndtr((n - f) / (1.5 * sigma)) for f in falling)
codes = numpy.clip(numpy.round(volts * 150 + 40 + rng.normal(0, 0.4, n.size)), 0, 255).astype(int)

counts = numpy.bincount(codes, minlength=256)
middle = (codes.min() + codes.max() + 1) // 2
low, high = counts[:middle].argmax(), middle + counts[middle:].argmax()


def instants(fraction, edges, sign):
    level, found = low + fraction * (high - low), []
    for edge in edges:
        i = numpy.arange(int(edge) - 20, int(edge) + 21)
        crossed = sign * (codes[i] - level) >= 0
        # Nearest to the edge: the last sample before, the first beyond.
        centre = 20 + numpy.argmax(crossed[20:]) if not crossed[20] else 20 - numpy.argmin(crossed[20::-1]) + 1
        a, b = codes[i[centre - 1]], codes[i[centre]]
        found.append(i[centre - 1] + (level - a) / (b - a))
    return numpy.array(found)


r50, f50 = instants(0.5, rising, 1), instants(0.5, falling, -1)
periods = numpy.diff(r50)
line = numpy.polyval(numpy.polyfit(numpy.arange(count), r50, 1), numpy.arange(count))
values = {
    "made_by": f"numpy {numpy.__version__}, scipy {scipy.__version__}",
    "low_code": int(low),
    "high_code": int(high),
    "period_mean": float(periods.mean()),
    "period_jitter": float(periods.std(ddof=1)),
    "cycle_to_cycle_rms": float(numpy.sqrt(numpy.mean(numpy.diff(periods) ** 2))),
    "tie_rms": float(numpy.sqrt(numpy.mean((r50 - line) ** 2))),
    "positive_mean": float((f50 - r50).mean()),
    "positive_deviation": float((f50 - r50).std(ddof=1)),
    "negative_mean": float((r50[1:] - f50[:-1]).mean()),
    "duty_mean": float(((f50 - r50)[:-1] / periods).mean()),
}
os.makedirs(OUT, exist_ok=True)
with open(os.path.join(OUT, "scipy-pulses.csv"), "w", newline="\n") as file:
    file.write("index,code\n")
    file.writelines(f"{i},{c}\n" for i, c in enumerate(codes))
with open(os.path.join(OUT, "scipy-pulses.json"), "w", newline="\n") as file:
    json.dump(values, file, indent=2)
    file.write("\n")
