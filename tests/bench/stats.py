"""lifelines' side of `bench_stats`: best of three, reading the data not counted.

python stats.py DATA N -> lines of name, seconds and result, with tabs between
"""

import sys
import time
import warnings

import numpy as np
from lifelines import KaplanMeierFitter
from lifelines.statistics import logrank_test

warnings.simplefilter("ignore")
n = int(sys.argv[2])
minutes, bite, group = np.fromfile(sys.argv[1]).reshape(3, n)
first, second = group == 1, group == 2


def kaplan_meier():
    """The sum of the curve at all bite times, so that the whole of it has been computed."""
    fitter = KaplanMeierFitter().fit(minutes, bite)
    curve = fitter.survival_function_["KM_estimate"]
    return float(curve[fitter.event_table["observed"] > 0].sum())


def log_rank():
    return logrank_test(minutes[first], minutes[second], bite[first], bite[second]).test_statistic


for name, run in [("Kaplan-Meier", kaplan_meier), ("log-rank", log_rank)]:
    times = []
    for _ in range(3):
        start = time.perf_counter()
        value = run()
        times.append(time.perf_counter() - start)
    print(f"{name}\t{min(times):.9f}\t{value:.15g}", flush=True)
