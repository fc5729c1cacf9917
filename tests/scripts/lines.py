#!/usr/bin/env python3
"""Long lines that match at neither end, driven by a ramp: lossless by ngspice, lossy by a numerical inverse Laplace transform.

Writes ../Acquisition.Core.Tests/Chain/lines-lossless.csv and lines-lossy.csv. Run: python3 lines.py
Made with ngspice 39 (Debian), Python 3.11, numpy; the versions that were used stand in the first line of each table.

ngspice's lossy line (LTRA) knows a constant series resistance only, not the skin effect, so it is no reference for a cable whose loss grows with the root of frequency. The lossy lines are
therefore inverted here: the whole network is solved at complex frequencies s = c + jw (no echo is told from another), times the spectrum of the ramp and of a Gaussian front end, and the
Bromwich integral is summed by the trapezoidal rule. With a window of W and c W = 30 the wrapped-around part is e^-30 of the signal; the Gaussian ends the integrand.
"""
import os
import subprocess
import sys
import tempfile

import numpy as np

OUT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "Acquisition.Core.Tests", "Chain")

# name: source ohms, line ohms, delay s, load ohms, load farads, rise of the ramp from end to end s, end of the run s
LOSSLESS = {
    "open-end": (25, 50, 20e-9, 1e6, 0, 2e-9, 400e-9),
    "low-source": (20, 50, 50e-9, 150, 0, 5e-9, 1000e-9),
    "capacitive-end": (30, 75, 20e-9, 1e6, 15e-12, 2e-9, 400e-9),
}


def version():
    first = subprocess.run(["ngspice", "--version"], capture_output=True, text=True).stdout
    return next(line.strip(" *") for line in first.splitlines() if "ngspice-" in line).split(":")[0].strip()


def lossless():
    rows = []
    for name, (rs, z, td, rl, cl, ramp, stop) in LOSSLESS.items():
        with tempfile.TemporaryDirectory() as folder:
            data, path = os.path.join(folder, "data.txt"), os.path.join(folder, "deck.cir")
            load = f"Rl out 0 {rl}\n" + (f"Cl out 0 {cl!r}\n" if cl else "")
            with open(path, "w") as f:
                f.write(f"* {name}\nV1 src 0 pwl(0 0 {ramp!r} 1)\nRs src n1 {rs}\nT1 n1 0 out 0 Z0={z} TD={td!r}\n{load}.options reltol=1e-7 abstol=1e-15 vntol=1e-9 method=trap\n"
                        f".control\nset numdgt=12\ntran {ramp / 200!r} {stop!r} 0 {ramp / 200!r}\nlinearize v(out)\nwrdata {data} v(out)\nquit 0\n.endc\n.end\n")
            subprocess.run(["ngspice", "-b", path], check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            with open(data) as f:
                lines = [[float(x) for x in line.split()] for line in f if line.strip()]
        # Every tenth of the ramp through the first edge, then spread over all plateaus.
        times = np.array([line[0] for line in lines])
        wanted = np.concatenate([td + ramp * np.arange(-1, 21) / 10, np.linspace(td, stop * 0.999, 60)])
        for index in sorted({int(np.argmin(np.abs(times - t))) for t in wanted}):
            rows.append(f"{name},{lines[index][0]!r},{lines[index][1]!r}")
    with open(os.path.join(OUT, "lines-lossless.csv"), "w") as f:
        f.write(f"# {version()}\nline,seconds,value\n" + "\n".join(rows) + "\n")


def loss(decibels, hertz, skin_share):
    """Skin and dielectric coefficients, Np/sqrt(Hz) and Np/Hz, of a loss at one frequency of which a share is skin effect."""
    nepers = decibels * np.log(10) / 20
    return skin_share * nepers / np.sqrt(hertz), (1 - skin_share) * nepers / hertz


def line(s, z, delay, skin, dielectric, reference):
    """Chain matrix of a line: gamma l = s T + a sqrt(s/pi) - (b/pi) (1/pi) s ln(s/w0), whose real part at s = jw is a sqrt(f) + b f."""
    gamma = s * delay + skin / np.sqrt(np.pi) * np.sqrt(s)
    if dielectric:
        gamma = gamma - dielectric / np.pi ** 2 * s * np.log(s / (2 * np.pi * reference))
    return np.array([[np.cosh(gamma), z * np.sinh(gamma)], [np.sinh(gamma) / z, np.cosh(gamma)]])


def series(z):
    return np.array([[np.ones_like(z), z], [np.zeros_like(z), np.ones_like(z)]])


def shunt(y):
    return np.array([[np.ones_like(y), np.zeros_like(y)], [y, np.ones_like(y)]])


def product(*matrices):
    whole = matrices[0]
    for matrix in matrices[1:]:
        whole = np.einsum("ijn,jkn->ikn", whole, matrix)
    return whole


LOSSY = {
    # name: (network of s, end of the run, Gaussian bandwidth)
    "one-line": lambda s: product(series(25 + 0 * s), line(s, 50, 100e-9, *loss(6, 1e9, 1), 1e9), shunt(1e-6 + s * 14e-12)),
    "with-dielectric": lambda s: product(series(75 + 0 * s), line(s, 50, 100e-9, *loss(9, 1e9, 0.7), 1e9), shunt(1e-6 + s * 14e-12)),
    "two-lines": lambda s: product(series(40 + 0 * s), line(s, 50, 60e-9, *loss(4, 1e9, 1), 1e9), shunt(s * 10e-12), line(s, 75, 25e-9, *loss(1, 1e9, 1), 1e9), shunt(1 / 50 + s * 5e-12)),
}
RAMP, BANDWIDTH, STOP = 2e-9, 200e6, 2000e-9


def lossy():
    rows = []
    sigma = np.sqrt(np.log(2)) / (2 * np.pi * BANDWIDTH)
    window = 4 * STOP
    c = 30 / window
    step = 2 * np.pi / window
    omega = (np.arange(int(9.5 / sigma / step)) + 0.5) * step
    s = c + 1j * omega
    for name, network in LOSSY.items():
        gain = 1 / network(s)[0, 0]
        spectrum = gain * np.exp(0.5 * (s * sigma) ** 2) * (1 - np.exp(-s * RAMP)) / (s * RAMP) / s
        times = np.concatenate([np.arange(90, 160, 2.5), np.arange(163.7, STOP * 1e9, 37.1)]) * 1e-9
        for t in times:
            value = np.exp(c * t) / np.pi * step * np.sum((spectrum * np.exp(1j * omega * t)).real)
            rows.append(f"{name},{t!r},{value!r}")
    with open(os.path.join(OUT, "lines-lossy.csv"), "w") as f:
        f.write(f"# Python {sys.version.split()[0]}, numpy {np.__version__}\nline,seconds,value\n" + "\n".join(rows) + "\n")


if __name__ == "__main__":
    lossless()
    lossy()
