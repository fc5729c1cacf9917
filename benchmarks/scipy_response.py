"""100 000 frequencies of a four-stage cascade with SciPy: the rival of ResponseBenchmarks.Bulk, run in the same session.

Gaussian 200 MHz > single pole 500 MHz > Butterworth 4, 350 MHz > Bessel 3, 1 GHz. SciPy has no Gaussian: it is multiplied on with NumPy.
Each way is timed as the best of 20 repetitions. Run: /usr/bin/python3 benchmarks/scipy_response.py
"""
import sys
import time

import numpy
import scipy
from scipy import signal

f = numpy.geomspace(1e5, 1e10, 100_000)
w = 2 * numpy.pi * f
gaussian = 200e6
stages = [
    signal.butter(1, 2 * numpy.pi * 500e6, analog=True),
    signal.butter(4, 2 * numpy.pi * 350e6, analog=True),
    signal.bessel(3, 2 * numpy.pi * 1e9, analog=True, norm="mag"),
]
whole = numpy.array([1.0]), numpy.array([1.0])
for b, a in stages:
    whole = numpy.polymul(whole[0], b), numpy.polymul(whole[1], a)


def one_by_one():
    h = numpy.exp(-0.5 * numpy.log(2) * (f / gaussian) ** 2).astype(complex)
    for b, a in stages:
        h *= signal.freqs(b, a, w)[1]
    return h


def multiplied_out():
    return signal.freqs(*whole, w)[1] * numpy.exp(-0.5 * numpy.log(2) * (f / gaussian) ** 2)


def best(function):
    times = []
    for _ in range(20):
        start = time.perf_counter()
        function()
        times.append(time.perf_counter() - start)
    return min(times)


if __name__ == "__main__":
    print(f"Python {sys.version.split()[0]}, NumPy {numpy.__version__}, SciPy {scipy.__version__}")
    print(f"scipy.signal.freqs, stage by stage   {best(one_by_one) * 1e3:8.3f} ms")
    print(f"scipy.signal.freqs, multiplied out   {best(multiplied_out) * 1e3:8.3f} ms")
