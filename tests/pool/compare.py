"""compare.py FOLDER: what DuckDB makes of the tables in FOLDER/files against core.json, the core's own figures.

The SQL is read from the blocks of docs/pooling.md, so what is shown there is what is tested.
"""

import json
import pathlib
import re
import sys

import duckdb

folder = pathlib.Path(sys.argv[1])
page = (pathlib.Path(__file__).parents[2] / "docs" / "pooling.md").read_text()
# A club's start has a runner of its own: club.py.
blocks = re.findall(r"```sql\n(?!-- club)(.*?)```", page, re.S)
engine = duckdb.connect()
for block in blocks:
    engine.execute(block.replace("'files/", f"'{folder}/files/"))

passed = failed = 0


def same(what, theirs, ours, tolerance):
    global passed, failed
    if theirs is None or ours is None:
        right = theirs is None and ours is None
    else:
        right = abs(theirs - ours) <= tolerance * max(1.0, abs(ours))
    if right:
        passed += 1
    else:
        failed += 1
        print(f"{what}: {theirs}, the core has {ours}")


core = json.loads((folder / "core.json").read_text())
rates = {(w, m): row for w, m, *row in engine.execute("SELECT water, month, waits, bites, bites_per_rod_hour FROM rates").fetchall()}
curves = {}
for water, month, minutes, without in engine.execute("SELECT water, month, minutes, without FROM survival").fetchall():
    curves.setdefault((water, month), []).append((minutes, without))

same("waters and months", len(rates), len(core), 0)
for line in core:
    key = (line["water"], line["month"])
    waits, bites, per_hour = rates.get(key, (None, None, None))
    same(f"{key} waits", waits, line["waits"], 0)
    same(f"{key} bites", bites, line["bites"], 0)
    same(f"{key} bites per rod-hour", per_hour, line["bites_per_rod_hour"], 1e-9)
    steps = sorted(curves.get(key, []))
    for at, ours in zip((5, 10, 15, 20), line["still_without"]):
        if ours is None:
            continue
        theirs = 1.0
        for minutes, without in steps:
            if minutes <= at:
                theirs = without
        same(f"{key} still without a bite at {at} min", theirs, ours, 1e-9)
print(f"{passed} passed, {failed} failed")
sys.exit(1 if failed else 0)
