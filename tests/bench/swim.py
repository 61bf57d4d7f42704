#!/usr/bin/env python3
"""Times of the swim beside GEOS, in one run: `python3 tests/bench/swim.py` from the root of the repository.

Ours come from `cargo bench -p restwater-swim --bench swim` (divan), the peer's from shapely on the very
rings that the bench hands out, areas compared first. Both sides give the fastest of their runs: the time
that neighbours on the machine disturbed least. Shapely goes into a venv under target/.
"""

import json
import subprocess
import sys
import time

from rows import ROOT, divan, ms, row, times

VENV = ROOT / "target" / "swim-venv"
SHAPELY = "shapely==2.2.0"


def in_venv():
    """Runs this file again with a Python that has shapely."""
    python = VENV / "bin" / "python"
    if not python.exists():
        subprocess.run([sys.executable, "-m", "venv", str(VENV)], check=True)
    subprocess.run([str(python), "-m", "pip", "install", "-q", SHAPELY], check=True)
    sys.exit(subprocess.run([str(python), __file__, "--inside"]).returncode)


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

    given = json.loads(divan("swim", "--rings", str(casts)))
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
    ours = times("swim", "fastest")
    for casts, goal in [(60, 2.0), (500, 8.0)]:
        mine = ours["frame", str(casts)]
        row(f"swim: scene of {casts} casts", ms(mine), f"<= {goal:g} ms", mine <= goal)
    for casts in (60, 500):
        theirs = peer(casts)
        for name in ("union", "difference"):
            mine, other = ours[name, str(casts)], theirs[name]
            row(f"swim: {name} of {casts} casts", ms(mine), "< 1 x", mine < other, f"{ms(other)} GEOS", mine / other)


if __name__ == "__main__":
    if "--inside" in sys.argv:
        main()
    else:
        in_venv()
