"""club.py FOLDER [--spark] [--out FILE]: fits a club's start for advice over FOLDER/*club-days*.csv, by the SQL of docs/pooling.md.

In DuckDB, or with --spark in Spark's local-cluster mode (a master, and workers in processes of their own). If FOLDER has
club.json, the core's own fit, every figure is compared with it. --out writes the file for the phones.
"""

import csv
import hashlib
import json
import pathlib
import re
import sys
import time

STEPS = 20
# Figures are sums over days in an order that the engine chooses.
TOLERANCE = 1e-9


def sql():
    """The blocks of the page, by name."""
    page = (pathlib.Path(__file__).parents[2] / "docs" / "pooling.md").read_text()
    return dict(re.findall(r"```sql\n-- club: (\w+)\n(.*?)```", page, re.S))


class DuckDb:
    def __init__(self, folder):
        import duckdb

        self.engine = duckdb.connect()
        files = f"{folder}/*club-days*.csv"
        self.keep("club_row", f"SELECT * FROM read_csv('{files}', header = true, all_varchar = true, filename = true)")

    def keep(self, name, text):
        self.engine.execute(f"CREATE OR REPLACE TABLE kept AS {text}")
        self.engine.execute(f"DROP TABLE IF EXISTS {name}")
        self.engine.execute(f"ALTER TABLE kept RENAME TO {name}")

    def rows(self, name, columns):
        return self.engine.execute(f"SELECT {', '.join(columns)} FROM {name}").fetchall()


class Spark:
    def __init__(self, folder):
        from pyspark.sql import SparkSession
        from pyspark.sql.functions import input_file_name

        # Two workers of one core each, in processes of their own. A shuffle into more parts than there are cores costs more
        # than it brings.
        builder = SparkSession.builder.master("local-cluster[2,1,1024]").appName("club")
        builder = builder.config("spark.sql.shuffle.partitions", "4").config("spark.ui.enabled", "false")
        builder = builder.config("spark.executor.memory", "1g").config("spark.driver.memory", "1g")
        self.engine = builder.getOrCreate()
        self.engine.sparkContext.setLogLevel("ERROR")
        table = self.engine.read.option("header", "true").csv(f"{folder}/*club-days*.csv")
        table.withColumn("filename", input_file_name()).createOrReplaceTempView("club_row")

    def keep(self, name, text):
        table = self.engine.sql(text)
        if name == "weight":
            # Small, and remade at each step. It is collected to rows, so that Spark does not keep the earlier steps in its
            # plan.
            table = self.engine.createDataFrame(table.collect(), table.schema)
        else:
            table = table.cache()
            table.count()
        table.createOrReplaceTempView(name)

    def rows(self, name, columns):
        return [tuple(row) for row in self.engine.table(name).select(*columns).collect()]


def fitted(engine):
    """Anglers, days and waters of each area, and the weight of each kind there."""
    blocks = sql()
    for name in ("day_kind", "area_day", "area", "weight"):
        engine.keep(name, blocks[name])
    weights = {}
    for begin in (None, "weight_of_some"):
        if begin:
            engine.keep("weight", blocks[begin])
        for _ in range(STEPS):
            engine.keep("weight", blocks["step"])
        for area, which, kind, weight in engine.rows("weight", ["area", "which", "kind", "weight"]):
            weights.setdefault((area, which), {})[kind] = weight
    areas = {(a, w): tuple(n) for a, w, *n in engine.rows("area", ["area", "which", "anglers", "days", "waters"])}
    return areas, weights


def compare(areas, weights, core):
    """Prints what differs from the core's fit; how many figures agree, and how many don't."""
    passed = failed = 0
    worst = 0.0
    if {(line["area"], line["which"]) for line in core} != set(areas):
        failed += 1
        print(f"areas: {sorted(areas)}, the core has {sorted((line['area'], line['which']) for line in core)}")
    for line in core:
        key = (line["area"], line["which"])
        theirs = [*areas.get(key, ()), *(weights.get(key, {}).get(kind) for kind in line["weights"])]
        ours = [line["anglers"], line["days"], line["waters"], *line["weights"].values()]
        for a, b in zip(theirs, ours, strict=True):
            right = a is not None and abs(a - b) <= TOLERANCE
            worst = max(worst, abs(a - b)) if a is not None else worst
            passed, failed = passed + right, failed + (not right)
            if not right:
                print(f"{key}: {a}, the core has {b}")
    print(f"largest difference {worst:.1e}")
    return passed, failed


def days_of(area, which):
    """What the weights were fitted to, as the file says it."""
    if area == "water":
        return {"of": area, "water": which}
    if area == "month":
        return {"of": area, "month": int(which)}
    if area == "water_temperature":
        low, high = which.split()
        return {"of": area, "from": int(low), "until": int(high)}
    return {"of": area}


def file_of(areas, weights, kinds):
    """The file for the phones. Weights go in the order in which a table of days has the kinds."""
    some = []
    for (area, which), (anglers, days, _) in sorted(areas.items()):
        of = weights[(area, which)]
        some.append({"anglers": anglers, "days": days, **days_of(area, which), "weights": [round(of[kind], 6) for kind in kinds]})
    anglers, days, waters = areas[("all", "")]
    club = {"anglers": anglers, "days": days, "fitted": some, "shapes": 1, "waters": waters}
    text = json.dumps(club, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
    digest = hashlib.sha256(text.encode()).hexdigest()
    return f'\x1e{{"format":"restwater-club","version":1}}\n\x1e{{"club":{text},"sha256":"{digest}"}}\n'


def kinds_of(folder):
    """The kinds in the order of a table of days: those of the first day there is. A phone may have sent a table without one."""
    kinds = []
    for path in sorted(folder.glob("*club-days*.csv")):
        with open(path, newline="", encoding="utf-8") as rows:
            for row in csv.DictReader(rows):
                if row["kind"] in kinds:
                    break
                kinds.append(row["kind"])
        if kinds:
            break
    return kinds


def main():
    folder = pathlib.Path(sys.argv[1]).resolve()
    if not any(folder.glob("*club-days*.csv")):
        sys.exit(f"{folder}: there is no table of days for a club (a file named ...club-days...csv)")
    begun = time.monotonic()
    engine = (Spark if "--spark" in sys.argv else DuckDb)(folder)
    ready = time.monotonic()
    areas, weights = fitted(engine)
    done = time.monotonic()
    if ("all", "") not in areas:
        sys.exit("No water has days of five anglers: no start is fitted, so that nobody's days can be told from it.")
    print(f"{areas[('all', '')]} anglers, days, waters; {len(areas)} areas; {ready - begun:.1f} s to read or begin, {done - ready:.1f} s to fit")
    if "--out" in sys.argv:
        pathlib.Path(sys.argv[sys.argv.index("--out") + 1]).write_text(file_of(areas, weights, kinds_of(folder)), encoding="utf-8")
    passed = failed = 0
    if (folder / "club.json").exists():
        passed, failed = compare(areas, weights, json.loads((folder / "club.json").read_text()))
        print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
