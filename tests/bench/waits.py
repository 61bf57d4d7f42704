#!/usr/bin/env python3
"""Times of the waits against their goals: `python3 tests/bench/waits.py` from the root of the repository.

They come from `cargo bench -p restwater-waits --bench waits` (divan), the middle one of its runs. R and lifelines are
beside the survival curve in `./dev bench stats`.
"""

from rows import ms, row, times

GOALS = [
    ("advice_and_curves", "500", "waits: advice and curves of 500 casts", 50.0),
    ("one_more_cast", "500", "waits: advice for one more cast after 500", 5.0),
    ("advice", "10", "waits: advice after 10 casts", 1.0),
    ("advice", "30", "waits: advice after 30 casts", 1.0),
    ("spots", "60", "waits: where and how long, 60 casts on 40 cells", 8.0),
]
NOTED = [
    ("kaplan_meier", "1000000", "waits: Kaplan-Meier of 1000000"),
]

if __name__ == "__main__":
    found = times("waits", "median")
    for bench, argument, name, goal in GOALS:
        mine = found[bench, argument]
        row(name, ms(mine), f"<= {goal:g} ms", mine <= goal)
    for bench, argument, name in NOTED:
        row(name, ms(found[bench, argument]), "-", None)
