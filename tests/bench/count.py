"""Holds counted instructions against the table of the tree: `count.py COUNTS.json`, a line of JSON for each benchmark.

A count is the same on every run with one compiler and one C library, but for what depends on addresses and hash seeds (well
below 1 %). Another compiler or C library asks for a new table: RESTWATER_KEEP=1 writes it."""

import json
import os
import sys
from pathlib import Path

from rows import row

TABLE = Path(__file__).with_name("counts.tsv")
MOST = 1.03


def counted(path):
    """Instructions by name, from gungraun's summaries."""
    counts = {}
    for line in Path(path).read_text().splitlines():
        summary = json.loads(line)
        counts[f"{summary['function_name']} {summary['id']}".replace("_", " ")] = instructions(summary)
    return counts


def instructions(summary):
    """The event `Ir` of the new run (schema v6 and later of gungraun's summaries)."""
    callgrind = next(profile for profile in summary["profiles"] if profile["tool"] == "Callgrind")
    return callgrind["data"]["total"]["metrics"]["Ir"]["values"]["new"]


def main():
    counts = counted(sys.argv[1])
    if os.environ.get("RESTWATER_KEEP") == "1":
        TABLE.write_text("".join(f"{name}\t{count}\n" for name, count in sorted(counts.items())))
    kept = dict(line.split("\t") for line in TABLE.read_text().splitlines())
    for name in sorted(counts.keys() | kept.keys()):
        if name not in counts or name not in kept:
            row(f"count: {name}", "not counted" if name not in counts else "not in the table", "in both", False)
            continue
        now, then = counts[name], int(kept[name])
        row(f"count: {name}", f"{now:,} instructions", f"<= {MOST} x", now <= MOST * then, f"{then:,} in the table", now / then)


if __name__ == "__main__":
    main()
