"""The rival of ReconstructionBenchmarks: scipy.signal.resample_poly, ten times as many points, one million samples of the same two sines.

Run in the same session as the benchmark, on the same quiet machine:  /usr/bin/python3 benchmarks/scipy_resample.py
"""
import statistics
import time

import numpy
import scipy
from scipy.signal import resample_poly

n = numpy.arange(1_000_000)
samples = numpy.sin(0.1 * n) + 0.5 * numpy.sin(0.37 * n)

resample_poly(samples, 10, 1)
times = []
for _ in range(15):
    start = time.perf_counter()
    resampled = resample_poly(samples, 10, 1)
    times.append(time.perf_counter() - start)

inside = slice(1000, -1000)
fine = numpy.arange(resampled.size) / 10
error = numpy.abs(resampled - (numpy.sin(0.1 * fine) + 0.5 * numpy.sin(0.37 * fine)))[inside].max()
print(f"scipy {scipy.__version__}, numpy {numpy.__version__}: resample_poly x10 of 1 M samples")
print(f"median {1e3 * statistics.median(times):.1f} ms, fastest {1e3 * min(times):.1f} ms, largest error inside {error:.2e}")
