"""Pulses through a ringing circuit, simulated and measured by ngspice: the expected values of OutsidePulseTests.

A 1 V pulse train of 100 ns period drives 25 ohm, 40 nH and 40 pF in series (damping 0.395, 125.8 MHz): the output rings. ngspice measures on its own, finer, time steps; the
library on the uniform samples written here.

Run from the repository root with Debian's ngspice and python3-numpy:  /usr/bin/python3 tests/scripts/records/pulses_ngspice.py
Writes tests/Acquisition.Core.Tests/Records/Data/ngspice-ringing.csv and ngspice-ringing.json.
"""
import json
import os
import re
import subprocess
import tempfile

import numpy

OUT = os.path.join("tests", "Acquisition.Core.Tests", "Records", "Data")
STEP, STOP = 0.2e-9, 300e-9

NETLIST = """ringing pulses
V1 in 0 PULSE(0 1 20n 2n 3n 47n 100n)
R1 in a 25
L1 a out 40n
C1 out 0 40p
.options reltol=1e-6 abstol=1e-15 vntol=1e-9
.tran 0.02n {stop} 0 0.02n
.control
run
meas tran rise TRIG v(out) VAL=0.1 RISE=1 TARG v(out) VAL=0.9 RISE=1
meas tran width TRIG v(out) VAL=0.5 RISE=1 TARG v(out) VAL=0.5 FALL=1
meas tran period TRIG v(out) VAL=0.5 RISE=1 TARG v(out) VAL=0.5 RISE=2
meas tran peak MAX v(out)
meas tran trough MIN v(out)
set wr_singlescale
set wr_vecnames
option numdgt=12
wrdata {data} v(out)
quit 0
.endc
.end
"""

with tempfile.TemporaryDirectory() as folder:
    data = os.path.join(folder, "out.txt")
    netlist = os.path.join(folder, "ringing.cir")
    with open(netlist, "w") as file:
        file.write(NETLIST.format(stop=STOP, data=data))
    log = subprocess.run(["ngspice", "-b", netlist], capture_output=True, text=True).stdout
    version = subprocess.run(["ngspice", "--version"], capture_output=True, text=True).stdout
    table = numpy.loadtxt(data, skiprows=1)

measured = {name: float(re.search(rf"^{name}\s*=\s*(\S+)", log, re.M).group(1)) for name in ("rise", "width", "period", "peak", "trough")}
times = numpy.arange(0, STOP - STEP / 2, STEP)
volts = numpy.interp(times, table[:, 0], table[:, 1])

os.makedirs(OUT, exist_ok=True)
with open(os.path.join(OUT, "ngspice-ringing.csv"), "w", newline="\n") as file:
    file.write("time/s,out/V\n")
    for t, v in zip(times, volts):
        file.write(f"{t:.10g},{v:.9g}\n")
with open(os.path.join(OUT, "ngspice-ringing.json"), "w", newline="\n") as file:
    json.dump({"made_by": re.search(r"ngspice-\d+", version).group(0), **measured}, file, indent=2)
    file.write("\n")
