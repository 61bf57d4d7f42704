"""Dependencies only point down: between the crates of core/, and between the modules inside each of them.

Between crates: the root Cargo.toml lists them from the bottom up, a crate may use only those above it in that list (its
tests too), and a domain uses no crate that knows a log, a store or words. Inside a crate: the top-level modules, joined by what
they import through `crate::` or `super::` and by the names that lib.rs re-exports, hold no circle. Test modules are left out.
And no file of code has more than 450 lines.
"""

import json
import pathlib
import re
import subprocess
import sys

DOMAINS = ["waits", "compare", "swim", "match-day", "bench", "sky", "caution"]
NOT_FOR_DOMAINS = ["log", "session", "kit", "store", "exchange", "screen", "report", "layout", "app"]
TESTS = {"tests", "laws", "cases"}
MOST_LINES = 450
CODE = ["*.rs", "*.kt", "*.kts", "*.swift", "*.sh", "*.py", "*.java", "dev", ":!*/generated/*"]


def crates():
    """Names of the core's crates from the bottom up, with their folders and what each depends on."""
    text = subprocess.run(
        ["cargo", "metadata", "--no-deps", "--format-version", "1"], capture_output=True, text=True, check=True
    ).stdout
    packages = {package["name"]: package for package in json.loads(text)["packages"]}
    members = re.search(r"(?ms)^members = \[(.*?)^\]", pathlib.Path("Cargo.toml").read_text()).group(1)
    for folder in re.findall(r'"(core/\w+)"', members):
        name = "restwater-" + folder.removeprefix("core/").replace("_", "-")
        yield name, pathlib.Path(folder), {d["name"] for d in packages[name]["dependencies"]}


def between(order):
    """What points up between the crates."""
    names = [name for name, _, _ in order]
    for place, (name, _, uses) in enumerate(order):
        for used in sorted(uses & set(names[place:])):
            yield f"{name} uses {used}, which is not below it"
        short = name.removeprefix("restwater-")
        for used in sorted(uses & {"restwater-" + n for n in NOT_FOR_DOMAINS}) if short in DOMAINS else []:
            yield f"{name} is a domain and uses {used}"


def code_of(text):
    """The text without comments and without its tests."""
    text = re.sub(r"(?m)^\s*//.*$", "", text)
    return re.split(r"#\[cfg\(test\)\]\s*(?:pub(?:\(crate\))? )?mod \w+ \{", text)[0]


def module_graph(src):
    """Top-level modules, and which of them each imports from."""
    library = (src / "lib.rs").read_text()
    tests_only = set(re.findall(r"#\[cfg\((?:test|any\(test[^)]*\))\)\]\s*(?:pub(?:\(crate\))? )?mod (\w+);", library))
    exports = {}
    for module, names in re.findall(r"(?m)^(?:pub(?:\(crate\))? )?use (\w+)(?:::\w+)*::(\{[^}]*\}|\w+);", library):
        exports.update({name: module for name in re.findall(r"\w+", names)})
    graph = {}
    for path in sorted(src.rglob("*.rs")):
        parts = list(path.relative_to(src).with_suffix("").parts)
        if parts == ["lib"] or TESTS & set(parts) or parts[0] in tests_only:
            continue
        up = r"(?<!super::)" + "super::" * (len(parts) - (parts[-1] == "mod"))
        names = set()
        for found in re.finditer(rf"(?:\bcrate::|{up})(?!super)(\{{[^;]*?\}}|\w+)", code_of(path.read_text())):
            names |= set(re.findall(r"\w+", found.group(1)))
        graph.setdefault(parts[0], set()).update(exports.get(name, name) for name in names)
    return {module: {used for used in uses if used in graph and used != module} for module, uses in graph.items()}


def circles(graph):
    """Groups of modules that can all reach each other."""

    def reach(start):
        seen, open_ = set(), [start]
        while open_:
            for used in graph[open_.pop()]:
                if used not in seen:
                    seen.add(used)
                    open_.append(used)
        return seen

    reached = {module: reach(module) for module in graph}
    groups = {frozenset(m for m in graph if m in reached[n] and n in reached[m]) for n in graph if n in reached[n]}
    return sorted(sorted(group) for group in groups)


def long_files():
    """Files that are too long to be read at once."""
    files = subprocess.run(["git", "ls-files", *CODE], capture_output=True, text=True, check=True).stdout.split()
    for file in files:
        path = pathlib.Path(file)
        lines = path.read_text().count("\n") if path.exists() else 0
        if lines > MOST_LINES:
            yield f"{file}: {lines} lines, of which {MOST_LINES} are allowed"


def main():
    order = list(crates())
    faults = list(between(order)) + list(long_files())
    for name, folder, _ in order:
        faults += [f"{name}: a circle of {' '.join(group)}" for group in circles(module_graph(folder / "src"))]
    print("\n".join(faults) if faults else "ok")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
