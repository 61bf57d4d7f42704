#!/usr/bin/env python3
"""Times of the swim beside GEOS, in one run: `python3 tests/bench/swim.py` from the root of the repository.

Ours come from `cargo bench -p restwater-swim --bench swim` (divan), the peer's from shapely on the discs and
the swim that the bench hands out, areas compared first: GEOS computes the fresh water alone, ours all figures of
the swim, its cells included. Both sides give the fastest of their runs: the time
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
    """The fresh water by GEOS; stops where the areas differ."""
    import shapely

    given = json.loads(divan("swim", "--discs", str(casts)))
    swim = shapely.Polygon(given["swim"])

    def fresh(corners):
        """The area, with discs of 4 * corners corners."""
        discs = [shapely.Point(x, y).buffer(radius, quad_segs=corners) for x, y, radius in given["discs"]]
        return lambda: shapely.difference(swim, shapely.union_all(discs)).area

    # Ours is exact; the area of a polygon of 1 024 corners is 6e-6 below that of its disc.
    ours, theirs = given["fresh_m2"], fresh(256)()
    if abs(theirs - ours) > 1e-5 * swim.area:
        sys.exit(f"fresh water of {casts} casts: ours {ours}, GEOS {theirs}")
    return fastest(fresh(8))


def main():
    ours = times("swim", "fastest")
    for casts, goal in [(60, 2.0), (500, 8.0)]:
        mine = ours["frame", str(casts)]
        row(f"swim: scene of {casts} casts", ms(mine), f"<= {goal:g} ms", mine <= goal)
    for casts in (60, 500):
        mine, other = ours["figures", str(casts)], peer(casts)
        row(f"swim: figures of {casts} casts", ms(mine), "< 1 x", mine < other, f"{ms(other)} GEOS", mine / other)


if __name__ == "__main__":
    if "--inside" in sys.argv:
        main()
    else:
        in_venv()
