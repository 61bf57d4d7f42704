"""Rows of the benches, as `tests/src/bench_row.rs` writes them too: `./dev bench` gathers them into its table."""

import re
import subprocess
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
UNITS = {"ns": 1e-6, "µs": 1e-3, "us": 1e-3, "ms": 1.0, "s": 1e3}
COLUMNS = ("fastest", "slowest", "median", "mean")


def row(name, ours, goal, held, peer="-", ratio=None):
    """Prints one row; held is None without a goal."""
    outcome = "noted" if held is None else "held" if held else "missed"
    print("bench", name, ours, peer, "-" if ratio is None else f"{ratio:.2f}", goal, outcome, sep="\t", flush=True)


def ms(value):
    """Milliseconds in the unit that suits them."""
    if value < 1:
        return f"{value * 1e3:.2f} us"
    return f"{value:.3f} ms" if value < 1e3 else f"{value / 1e3:.2f} s"


def divan(bench, *arguments):
    """What a bench of core/*/benches prints."""
    command = ["cargo", "bench", "-q", "-p", f"restwater-{bench}", "--bench", bench, "--", *arguments]
    return subprocess.run(command, cwd=ROOT, check=True, capture_output=True, text=True).stdout


def times(bench, column):
    """One of divan's columns in milliseconds, by (name, argument)."""
    found, name, at = {}, None, COLUMNS.index(column)
    for line in divan(bench).splitlines():
        head = re.match(r"[├╰]─ (\w+)", line)
        if head:
            name = head.group(1)
        line = re.match(r"[│ ]\s+[├╰]─ (\w+)\s+(.*)", line)
        if line and name:
            value, unit = line.group(2).split("│")[at].split()
            found[name, line.group(1)] = float(value) * UNITS[unit]
    return found
