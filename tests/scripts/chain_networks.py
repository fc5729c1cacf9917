#!/usr/bin/env python3
"""Loaded networks of a measuring chain by ngspice: gains by .ac, steps by .tran.

Writes ../Acquisition.Core.Tests/Chain/ngspice-gains.csv and ngspice-steps.csv. Made with ngspice 39 (Debian) and Python 3.11.7; any version should give the same to
the digits the test asks for. Run: python3 chain_networks.py
"""
import os
import subprocess
import tempfile

OUT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "Acquisition.Core.Tests", "Chain")

# A 10:1 probe of 10 Mohm beside 10 pF on 1 Mohm beside 15 pF: 9 Mohm beside 11.111.. pF, then 85 pF of cable and trimmer.
PROBE = "R1 {a} {b} 9meg\nC1 {a} {b} {c1}\nC2 {b} 0 85p\nRin {b} 0 1meg\nCin {b} 0 15p\n"
C1 = 100e-12 / 9

NETWORKS = {
    # name: (netlist from 'src' to 'out', nominal factor)
    "ground-lead": ("Rs src n1 50\nLg n1 tip 150n\n" + PROBE.format(a="tip", b="out", c1=repr(C1)), 10),
    "damped-lead": ("Rs src n1 50\nRd n1 n2 120\nLg n2 tip 150n\n" + PROBE.format(a="tip", b="out", c1=repr(C1)), 10),
    "overcompensated": ("Rs src tip 1k\n" + PROBE.format(a="tip", b="out", c1=repr(1.1 * C1)), 10),
    "undercompensated": ("Rs src tip 1k\n" + PROBE.format(a="tip", b="out", c1=repr(0.9 * C1)), 10),
    "feed-through": ("Rs src n1 50\nT1 n1 0 out 0 Z0=50 TD=5n\nRt out 0 50\nRin out 0 1meg\nCin out 0 15p\n", 1),
    "mismatched-line": ("Rs src n1 25\nT1 n1 0 out 0 Z0=75 TD=5n\nRin out 0 50\nCin out 0 3p\n", 1),
    "pi-pad": ("Rs src n1 50\nRa n1 0 150.476023753725\nRb n1 out 37.3518770335402\nRc out 0 150.476023753725\nRin out 0 50\nCin out 0 5p\n", 1.99526231496888),
    "low-impedance": ("Rs src n1 25\nCp n1 0 0.5p\nRp n1 n2 450\nT1 n2 0 out 0 Z0=50 TD=6n\nRin out 0 50\n", 10),
    "node-with-capacitance": ("Rs src n1 200\nCs src n1 20p\n" + PROBE.format(a="n1", b="out", c1=repr(C1)), 10),
}


def run(deck):
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, "deck.cir")
        with open(path, "w") as f:
            f.write(deck.format(data=os.path.join(folder, "data.txt")))
        subprocess.run(["ngspice", "-b", path], check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        with open(os.path.join(folder, "data.txt")) as f:
            return [[float(x) for x in line.split()] for line in f if line.strip()]


def gains():
    rows = []
    for name, (net, factor) in NETWORKS.items():
        deck = f"* {name}\nV1 src 0 dc 0 ac 1\n{net}.options reltol=1e-9\n.control\nset numdgt=12\nac dec 4 1k 1g\nwrdata {{data}} v(out)\nquit 0\n.endc\n.end\n"
        for line in run(deck):
            rows.append(f"{name},{line[0]!r},{line[1] * factor!r},{line[2] * factor!r}")
    with open(os.path.join(OUT, "ngspice-gains.csv"), "w") as f:
        f.write("network,hertz,real,imaginary\n" + "\n".join(rows) + "\n")


def steps():
    """Steps behind a buffer and one pole of 500 MHz (a front end), so that the reference and the library see the same smooth edge."""
    rows = []
    for name, stop, step in (("ground-lead", 60e-9, 5e-12), ("feed-through", 40e-9, 2e-12), ("mismatched-line", 80e-9, 2e-12), ("overcompensated", 600e-6, 20e-9), ("undercompensated", 600e-6, 20e-9)):
        net, factor = NETWORKS[name]
        pole = "E1 buf 0 out 0 1\nRf buf disp 50\nCf disp 0 6.36619772367581p\n"
        deck = (f"* {name}\nV1 src 0 pwl(0 0 1f 1)\n{net}{pole}.options reltol=1e-7 abstol=1e-15 vntol=1e-9 method=gear maxord=2\n.control\nset numdgt=12\n"
                f"tran {step} {stop} 0 {step}\nlinearize v(disp)\nwrdata {{data}} v(disp)\nquit 0\n.endc\n.end\n")
        lines = run(deck)
        every = max(1, len(lines) // 60)
        for line in lines[every::every]:
            rows.append(f"{name},{line[0]!r},{line[1] * factor!r}")
    with open(os.path.join(OUT, "ngspice-steps.csv"), "w") as f:
        f.write("network,seconds,value\n" + "\n".join(rows) + "\n")


if __name__ == "__main__":
    gains()
    steps()
