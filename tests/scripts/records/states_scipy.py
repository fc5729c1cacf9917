"""Pulses whose states move, with noise that NumPy drew: the expected values of StateNoiseTests and StateMotionTests.

Two channels of 0 V to 1 V with Gaussian edges, a period of 1000 samples:
  droop    behind a first-order high-pass (scipy.signal.lfilter, bilinear), time constant 10 000 samples, with white noise of 2 mV
  tail     with an overshoot of 0.5 % that dies away exponentially, with noise behind a Butterworth low-pass of 0.05 of the sample rate (scipy.signal.butter)
Expected: the standard deviation of the noise itself, of all samples; how far the droop moves either state, from the signal without noise, from the first sample after the edge to the last before the next.

Run from the repository root with Debian's python3-numpy and python3-scipy:  /usr/bin/python3 tests/scripts/records/states_scipy.py
Writes tests/Acquisition.Core.Tests/Records/Data/scipy-states.csv and scipy-states.json.
"""
import json
import os

import numpy
import scipy
from scipy import signal
from scipy.special import ndtr

OUT = os.path.join("tests", "Acquisition.Core.Tests", "Records", "Data")
rng = numpy.random.default_rng(20261128)
half, cycles, sigma, tau = 500, 5, 2.0, 10_000.0
n = numpy.arange(2 * half * cycles)
edges = numpy.arange(half, n.size, half) + 0.3
square = sum((1 if k % 2 == 0 else -1) * ndtr((n - e) / sigma) for k, e in enumerate(edges))

# s / (s + 1/tau), bilinear, settled before the record: the mean of the square is taken off first.
b, a = signal.bilinear([1, 0], [1, 1 / tau], fs=1)
settled = numpy.tile(square, 40)
droop = signal.lfilter(b, a, settled - settled.mean())[-n.size:]
white = rng.normal(0, 2e-3, n.size)

tail = square + sum((1 if k % 2 == 0 else -1) * numpy.where(n > e, 0.005 * numpy.exp(-(n - e) / 60), 0) for k, e in enumerate(edges))
sos = signal.butter(2, 0.05, fs=1, output="sos")
limited = signal.sosfilt(sos, rng.normal(0, 1, n.size + 1000))[1000:]
limited *= 2e-3 / limited.std()

tops = [droop[int(r) + 12:int(r) + half - 11] for r in edges[2:-1:2]]
bases = [droop[int(f) + 12:int(f) + half - 11] for f in edges[1:-1:2]]
values = {
    "made_by": f"numpy {numpy.__version__}, scipy {scipy.__version__}",
    "white_noise": float(white.std()),
    "limited_noise": float(limited.std()),
    "top_falls": float(numpy.mean([t[0] - t[-1] for t in tops])),
    "base_rises": float(numpy.mean([b[-1] - b[0] for b in bases])),
    "corner": float(1 / (2 * numpy.pi * tau)),
}
with open(os.path.join(OUT, "scipy-states.csv"), "w", newline="\n") as file:
    file.write("index,droop,tail\n")
    file.writelines(f"{i},{d:.5f},{t:.5f}\n" for i, d, t in zip(n, droop + white, tail + limited))
with open(os.path.join(OUT, "scipy-states.json"), "w", newline="\n") as file:
    json.dump(values, file, indent=2)
    file.write("\n")
