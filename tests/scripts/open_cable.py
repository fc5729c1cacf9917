#!/usr/bin/env python3
"""Overshoot and ringing of a cable with an open end, by ngspice: .tran with a straight edge of 2.5 ns in all (2 ns from 10 % to 90 %), .ac for the frequency of the largest gain.

Prints what CableTerminationTests holds. Made with ngspice 39 (Debian) and Python 3.11.7. Run: python3 open_cable.py
"""
from chain_networks import run

POLE = "E1 buf 0 out 0 1\nRf buf disp 50\nCf disp 0 6.36619772367581p\n"
LINE = "T1 {a} 0 {b} 0 Z0=50 TD=5n\n"
INPUT = "Rin out 0 1meg\nCin out 0 14p\n"

NETWORKS = {
    "open": "Rs src n1 10\n" + LINE.format(a="n1", b="out") + INPUT,
    "feed-through": "Rs src n1 10\n" + LINE.format(a="n1", b="out") + "Rt out 0 50\n" + INPUT,
    "series 39 ohm": "Rs src n1 49\n" + LINE.format(a="n1", b="out") + INPUT,
}

for name, net in NETWORKS.items():
    options = ".options reltol=1e-6 abstol=1e-15 vntol=1e-9 method=gear maxord=2\n"
    rows = run(f"* {name}\nV1 src 0 pwl(0 0 1n 0 3.5n 1)\n{net}{POLE}{options}.control\nset numdgt=12\ntran 5p 60n 0 5p\nlinearize v(disp)\nwrdata {{data}} v(disp)\nquit 0\n.endc\n.end\n")
    # Nothing but resistances is left at DC.
    final = 1e6 / (1e6 + 10) if name == "open" else 1e6 / (1e6 + 49) if name.startswith("series") else 1 / (1 + 10 * (1 / 50 + 1e-6))
    print(f"{name}: overshoot {max(row[1] for row in rows) / final - 1:.5f}, at DC {final:.5f}")
rows = run(f"* gain\nV1 src 0 dc 0 ac 1\n{NETWORKS['open']}.control\nset numdgt=12\nac lin 4001 30meg 50meg\nwrdata {{data}} vm(out)\nquit 0\n.endc\n.end\n")
print("rings at", max(rows, key=lambda row: row[1])[0])
