#!/usr/bin/env python3
"""Reference values for the tests of the Uncertainty area, by SciPy and by implementations of their own.

Run: /usr/bin/python3 tests/scripts/uncertainty/make_reference.py
Writes tests/Acquisition.Core.Tests/Uncertainty/reference.json; the versions used are stored in it.
"""
import json
import math
import os
import platform

import numpy as np
import scipy
from scipy import integrate, optimize, special, stats

MASK = (1 << 64) - 1


def mix(z):
    """The finaliser of SplitMix64 (Steele, Lea, Flood 2014)."""
    z = ((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9) & MASK
    z = ((z ^ (z >> 27)) * 0x94D049BB133111EB) & MASK
    return z ^ (z >> 31)


def random_stream(seed, source, block, count):
    """xoshiro256++ 1.0 (Blackman and Vigna 2019, public domain description), seeded per source and block."""
    golden = 0x9E3779B97F4A7C15
    state = mix((seed + golden) & MASK)
    state = mix(state ^ (((source << 32 | block) + 0xD1B54A32D192ED03) & MASK))
    s = [mix((state + golden * (i + 1)) & MASK) for i in range(4)]
    rotl = lambda x, k: ((x << k) | (x >> (64 - k))) & MASK
    words = []
    for _ in range(count):
        words.append(format((rotl((s[0] + s[3]) & MASK, 23) + s[0]) & MASK, "016x"))
        t = (s[1] << 17) & MASK
        s[2] ^= s[0]
        s[3] ^= s[1]
        s[1] ^= s[2]
        s[0] ^= s[3]
        s[2] ^= t
        s[3] = rotl(s[3], 45)
    return words


def normal_draws(seed, source, block, count):
    """Marsaglia and Tsang's ziggurat of 256 layers: bits 0 to 7 of a word give the layer, bit 8 the sign, bits 12 to 63 the place in it. Returns sums of the draws, and the word that follows."""
    words = iter(random_stream(seed, source, block, 2 * count))
    word = lambda: int(next(words), 16)
    unit = lambda: (word() >> 11) / 2 ** 53
    density = lambda x: math.exp(-x * x / 2)
    start, area = 3.6541528853610088, 4.92867323399e-3
    # Right ends of the layers, the top one first; the base layer is as wide as its area asks, tail included.
    edges = [0.0] * 257
    edges[256], edges[255] = area / density(start), start
    for i in range(254, 0, -1):
        edges[i] = math.sqrt(-2 * math.log(area / edges[i + 1] + density(edges[i + 1])))

    def draw():
        while True:
            bits = word()
            layer, sign, place = bits & 255, -1 if bits & 256 else 1, (bits >> 12) / 2 ** 52
            right, left = (edges[256], start) if layer == 0 else (edges[layer], edges[layer - 1] if layer > 1 else 0.0)
            x = place * right
            if x < left:
                return sign * x
            if layer == 0:
                while True:
                    a, b = -math.log(1 - unit()) / start, -math.log(1 - unit())
                    if 2 * b > a * a:
                        return sign * (start + a)
            low, high = density(right), density(left)
            if low + unit() * (high - low) < density(x):
                return sign * x

    draws = [draw() for _ in range(count)]
    return {
        "sum": math.fsum(draws), "sum_of_squares": math.fsum(x * x for x in draws), "sum_of_cubes": math.fsum(x ** 3 for x in draws),
        "in_the_tail": sum(abs(x) > start for x in draws), "next": word() / 2 ** 64,
    }


def t_quantiles():
    rows = []
    for nu in (1, 1.5, 2, 2.7, 3, 4, 5.5, 9, 17, 42.3, 100, 1234, 1e6):
        for p in (0.5, 0.6827, 0.9, 0.95, 0.9545, 0.99, 0.9973, 0.999999):
            # scipy.special.stdtrit is good to ten digits only, so the incomplete beta function is inverted here.
            tail = (1 - p) / 2
            excess = lambda t: special.betainc(nu / 2, 0.5, nu / (nu + t * t)) / 2 / tail - 1
            rows.append([nu, p, optimize.brentq(excess, 1e-3, 1e7, xtol=1e-14, rtol=1e-14)])
    return rows


def global_risks():
    """Direct two-dimensional integrals over product and reading, normal both; acceptance limits given."""
    rows = []
    for mean, spread, u, low, high, guard in (
            (1500.0, 0.12, 0.04, 1499.8, 1500.2, 0.0),
            (1500.0, 0.12, 0.04, 1499.8, 1500.2, 0.08),
            (1500.05, 0.12, 0.04, 1499.8, 1500.2, 0.0658),
            (0.0, 1.0, 0.25, -math.inf, 1.645, 0.0),
            (0.0, 1.0, 0.25, -math.inf, 1.645, 0.5),
            (0.0, 1.0, 0.5, -2.0, 2.0, -0.5),
            (10.0, 0.3, 0.01, 9.5, 10.5, 0.02)):
        a, b = low + guard, high - guard
        density = lambda x: stats.norm.pdf(x, mean, spread)
        accept = lambda x: stats.norm.cdf((b - x) / u) - stats.norm.cdf((a - x) / u)
        lo, hi = mean - 12 * spread, mean + 12 * spread
        quad = lambda f, p, q: 0.0 if q <= p else integrate.quad(f, p, q, epsabs=1e-14, epsrel=1e-12, limit=2000, points=[x for x in (a, b, mean) if p < x < q] or None)[0]
        fa = quad(lambda x: density(x) * accept(x), max(high, lo), hi) if math.isfinite(high) else 0.0
        fa += quad(lambda x: density(x) * accept(x), lo, min(low, hi)) if math.isfinite(low) else 0.0
        fr = quad(lambda x: density(x) * (1 - accept(x)), max(low, lo), min(high, hi))
        ok = stats.norm.cdf((high - mean) / spread) - stats.norm.cdf((low - mean) / spread)
        rows.append([mean, spread, u, low if math.isfinite(low) else None, high, guard, fa, fr, ok])
    return rows


def straight_line():
    rng = np.random.default_rng(5)
    x = np.arange(12) * 1e6 + 24e6
    y = 0.3 - 2e-8 * (x - 24e6) + rng.normal(0, 0.01, 12)
    fit = stats.linregress(x, y)
    return {"x": x.tolist(), "y": y.tolist(), "slope": fit.slope, "slope_u": fit.stderr, "intercept": fit.intercept, "intercept_u": fit.intercept_stderr}


def product_quantiles():
    """Quantiles of V^2/R by numerical integration: V normal 5 V, u 0.3 V; R rectangular 50 ohm +- 10 ohm."""
    def cdf(y):
        f = lambda r: (stats.norm.cdf((math.sqrt(y * r) - 5) / 0.3) - stats.norm.cdf((-math.sqrt(y * r) - 5) / 0.3)) / 20
        return integrate.quad(f, 40, 60, epsabs=1e-13, epsrel=1e-12)[0]
    quantile = lambda p: optimize.brentq(lambda y: cdf(y) - p, 1e-6, 3, xtol=1e-13)
    mean = (25 + 0.09) * math.log(60 / 40) / 20
    second = (5**4 + 6 * 25 * 0.09 + 3 * 0.09**2) * (1 / 40 - 1 / 60) / 20
    return {"mean": mean, "u": math.sqrt(second - mean * mean), "p": [0.005, 0.025, 0.5, 0.975, 0.995], "y": [quantile(p) for p in (0.005, 0.025, 0.5, 0.975, 0.995)]}


def main():
    values = {
        "made_with": f"python {platform.python_version()}, numpy {np.__version__}, scipy {scipy.__version__}",
        "random_stream": random_stream(1, 2, 3, 5),
        "normal_draws": normal_draws(1, 2, 4, 50000),
        "t_quantiles": t_quantiles(),
        "global_risks": global_risks(),
        "straight_line": straight_line(),
        "product_quantiles": product_quantiles(),
    }
    here = os.path.dirname(os.path.abspath(__file__))
    path = os.path.join(here, "..", "..", "Acquisition.Core.Tests", "Uncertainty", "reference.json")
    with open(path, "w", encoding="utf-8") as file:
        json.dump(values, file, indent=1)
        file.write("\n")


if __name__ == "__main__":
    main()
