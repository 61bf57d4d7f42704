#!/usr/bin/env python3
"""Times of the swim beside GEOS, in one run: `python3 tests/bench/swim.py` from the root of the repository.

Ours come from `cargo bench -p restwater-core --bench swim` (divan), the peer's from shapely on the very
rings that the bench hands out, areas compared first. Both sides give the fastest of their runs: the time
that neighbours on the machine disturbed least. Shapely goes into a venv under target/.
"""

import json
import re
import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
VENV = ROOT / "target" / "swim-venv"
SHAPELY = "shapely==2.2.0"
UNITS = {"ns": 1e-6, "µs": 1e-3, "us": 1e-3, "ms": 1.0, "s": 1e3}


def in_venv():
    """Runs this file again with a Python that has shapely."""
    python = VENV / "bin" / "python"
    if not python.exists():
        subprocess.run([sys.executable, "-m", "venv", str(VENV)], check=True)
    subprocess.run([str(python), "-m", "pip", "install", "-q", SHAPELY], check=True)
    sys.exit(subprocess.run([str(python), __file__, "--inside"]).returncode)


def bench(*arguments):
    command = ["cargo", "bench", "-q", "-p", "restwater-core", "--bench", "swim", "--", *arguments]
    done = subprocess.run(command, cwd=ROOT, check=True, capture_output=True, text=True)
    return done.stdout


def ours():
    """Fastest run of each bench in milliseconds, by (name, casts)."""
    found, name = {}, None
    for line in bench().splitlines():
        head = re.match(r"[├╰]─ (\w+)", line)
        if head:
            name = head.group(1)
        row = re.match(r"[│ ]\s+[├╰]─ (\d+)\s+([\d.]+) (\S+)", line)
        if row and name:
            found[name, int(row.group(1))] = float(row.group(2)) * UNITS[row.group(3)]
    return found


def fastest(work, times=40):
    best = float("inf")
    for _ in range(times):
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best * 1e3


def peer(casts):
    """GEOS on the same rings; stops where the areas differ."""
    import shapely

    given = json.loads(bench("--rings", str(casts)))
    discs = [shapely.Polygon(ring) for ring in given["discs"]]
    swim = shapely.Polygon(given["swim"])
    union = shapely.union_all(discs)
    difference = shapely.difference(swim, union)
    for what, shape in [("union_m2", union), ("difference_m2", difference)]:
        if abs(shape.area - given[what]) > 1e-6 * given[what] + 1e-3:
            sys.exit(f"{what} of {casts} casts: ours {given[what]}, GEOS {shape.area}")
    return {
        "union": fastest(lambda: shapely.union_all(discs)),
        "difference": fastest(lambda: shapely.difference(swim, union)),
    }


def main():
    times = ours()
    rows = []
    for casts, goal in [(60, 2.0), (500, 8.0)]:
        mine = times["frame", casts]
        rows.append((f"scene of {casts} casts", mine, None, f"<= {goal:g} ms", mine <= goal))
    for casts in (60, 500):
        theirs = peer(casts)
        for name in ("union", "difference"):
            mine = times[name, casts]
            rows.append((f"{name} of {casts} casts", mine, theirs[name], "ratio < 1", mine < theirs[name]))
    print(f"{'name':<26}{'ours ms':>10}{'GEOS ms':>10}{'ratio':>8}  {'goal':<10} outcome")
    for name, mine, theirs, goal, held in rows:
        other = f"{theirs:10.3f}{mine / theirs:8.2f}" if theirs else f"{'-':>10}{'-':>8}"
        print(f"{name:<26}{mine:10.3f}{other}  {goal:<10} {'held' if held else 'MISSED'}")
    held = sum(row[4] for row in rows)
    print(f"{held} held, {len(rows) - held} missed")
    return 0 if held == len(rows) else 1


if __name__ == "__main__":
    if "--inside" in sys.argv:
        sys.exit(main())
    in_venv()
