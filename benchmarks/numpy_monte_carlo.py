#!/usr/bin/env python3
"""One million trials of the model of UncertaintyBenchmarks in NumPy: draws, model, mean, standard deviation, symmetric and shortest 95 % interval.

Run in the same session as the benchmark: /usr/bin/python3 benchmarks/numpy_monte_carlo.py
"""
import time

import numpy as np

TRIALS = 1_000_000


def evaluate(seed, shortest):
    rng = np.random.default_rng(seed)
    v = rng.normal(5, 0.03, TRIALS)
    r1 = rng.uniform(8910, 9090, TRIALS)
    r2 = rng.uniform(990, 1010, TRIALS)
    z = rng.normal(50, 0.3, TRIALS)
    cable = rng.normal(0.89, 0.01, TRIALS)
    at = v * r2 / (r1 + r2) * cable
    y = at * at / z
    mean, u = y.mean(), y.std(ddof=1)
    if not shortest:
        return mean, u, np.quantile(y, (0.025, 0.975))
    y.sort()
    q = int(0.95 * TRIALS)
    widths = y[q:] - y[:TRIALS - q]
    r = widths.argmin()
    return mean, u, (y[25_000], y[975_000 - 1]), (y[r], y[r + q])


def main():
    for shortest in (False, True):
        times = []
        for seed in range(15):
            start = time.perf_counter()
            evaluate(seed, shortest)
            times.append(time.perf_counter() - start)
        times.sort()
        print(f"numpy {np.__version__}, {'symmetric and shortest interval (sort)' if shortest else 'symmetric interval only (partition)'}: median {times[7] * 1e3:.1f} ms, best {times[0] * 1e3:.1f} ms")


if __name__ == "__main__":
    main()
