"""What a user with pandas and scipy would write for the wide export of make-wide.ts, as the benchmark's reference.

Usage: python3 peer_pandas.py [--read] EXPORT. Steps: read; leave out defrosts and the hour after; daily medians;
Theil-Sen slope a probe; each probe against the mean of the other two; starts and run lengths of what switches; recovery
after each defrost. With --read only the first. Prints one line of JSON with what it used.
"""

import json
import re
import resource
import sys
import time

started = time.perf_counter()

import numpy
import pandas

only_read = sys.argv[1] == "--read"
read_from = time.perf_counter()
frame = pandas.read_csv(sys.argv[-1])
stamp = frame.columns[0]
frame[stamp] = pandas.to_datetime(frame[stamp], format="%Y-%m-%d %H:%M:%S")
read_seconds = time.perf_counter() - read_from


def settled(frame, circuit, probes):
    defrosting = frame[f"{circuit} defrost"].fillna(0) > 0
    near = defrosting.rolling(61, min_periods=1).max() > 0
    return frame[probes].mask(near)


def switching(values):
    on = values.fillna(0).to_numpy() > 0
    edges = numpy.flatnonzero(on[1:] != on[:-1]) + 1
    runs = numpy.diff(edges)
    return int(on[edges].sum()), float(numpy.median(runs)) if len(runs) else None


def recoveries(defrost, air, usual):
    on = defrost.to_numpy() > 0
    minutes = []
    for end in numpy.flatnonzero(on[:-1] & ~on[1:]) + 1:
        back = numpy.flatnonzero(air[end : end + 240] <= usual + 1)
        minutes.append(int(back[0]) if len(back) else None)
    return minutes


result = {}
if not only_read:
    from scipy import stats

    frame = frame.set_index(stamp)
    for circuit in sorted({name[:3] for name in frame.columns if re.match(r"C\d\d ", name)}):
        probes = [f"{circuit} probe {number}" for number in (1, 2, 3)]
        air = settled(frame, circuit, probes)
        daily = air.resample("1D").median()
        for probe in probes:
            known = daily[probe].dropna()
            slope = stats.theilslopes(known.to_numpy(), numpy.arange(len(known)), 0.95)
            others = [other for other in probes if other != probe]
            apart = air[probe] - air[others].mean(axis=1)
            result[probe] = (slope[0], slope[2], apart.median(), *apart.resample("1D").median().iloc[[0, -1]])
        middle = frame[probes].median(axis=1).to_numpy()
        usual = numpy.nanmedian(air.median(axis=1).to_numpy())
        result[circuit] = recoveries(frame[f"{circuit} defrost"], middle, usual)
    for name in frame.columns:
        if re.search(r"(valve|comp \d|fan \d)$", name):
            result[name] = switching(frame[name])

used = resource.getrusage(resource.RUSAGE_SELF)
print(
    json.dumps(
        {
            "seconds": time.perf_counter() - started,
            "readSeconds": read_seconds,
            "cpuSeconds": used.ru_utime + used.ru_stime,
            "megabytes": used.ru_maxrss / 1024,
            "results": len(result),
        }
    )
)
