"""Expected values of wait_shapes.json: the posterior over the shapes of the wait, by SciPy from the definitions alone.

The shapes and their weights are a choice of the app (common practice, no source; record 18, docs/advice.md), so they are
written out here once more. All that follows from them is computed by another route than in the core: the laws are those of
scipy.stats, each wait adds its logarithm, right-censored waits that of the share still waiting, and the weights are
normalised by scipy.special.logsumexp. No shape is left out and nothing is in single precision. A bite counts in two ways:

  minutes    by the probability of the half minute (beyond half an hour: the minute) in which it came, as in the core
  density    by the density at the bite itself, which shows what the half minutes cost

Bites an hour of a leave time are 60 F / (integral of S + c + d F) of each shape (renewal-reward theorem; Ross), averaged by the
posterior; the best leave time, the band within 0.95 of the best and the end of a cast in vain are found by
scipy.optimize in continuous time.

Run with scipy 1.17.1 and numpy 2.3.5: python3 wait_shapes.py > wait_shapes.json
"""

import json
import math
import sys

import numpy as np
from scipy import sparse
from scipy.optimize import brentq, minimize_scalar
from scipy.special import logsumexp
from scipy.stats import expon, gamma, lognorm, uniform

FORMS = ["constant", "broad", "bunch", "even", "two"]
WEIGHTS = {"constant": 0.5, "broad": 0.1, "bunch": 0.158, "even": 0.092, "two": 0.15}
PLACE, PACE = (10.5, 0.7), (15.0, 0.7)  # median and sd of ln of when a bunch comes, and of the mean wait at a constant rate
STRAY = 0.01  # share of casts with a bite that no shape accounts for, even over an hour
SHARES = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.97]
TWO_SHARES = [(0.2, 0.2), (0.2, 0.5), (0.4, 0.2), (0.4, 0.5), (0.6, 0.3)]
EDGES = [*range(9), *range(10, 21, 2), 23, 26, 30, 35, 40]
CHANGING, MOVES = 0.2, 0.01  # chance that a day changes; share of a shape's weight that moves to its neighbours in a minute
TURN, EXTRA = 2.0, 3.0  # minutes: turn-round, and the extra time of a bite
HORIZON, NEAR = 60.0, 0.95
CREDIT, DAY, LONGEST = 0.3, 300.0, 60.0  # of exploring: credited share, minutes of a day, longest leave time
CLOCK = [0.5 * i for i in range(60)] + list(range(30, 61)) + [62.5 + 2.5 * i for i in range(12)] + [95 + 5 * i for i in range(18)]


def bell(minutes, typical):
    return math.exp(-0.5 * (math.log(minutes / typical[0]) / typical[1]) ** 2)


def bunch(place, sd):
    return lognorm(s=sd / place, scale=place)


class Shapes:
    """Every shape as the sum of shares of one law or two, its prior, and its neighbours on a day that changes."""

    def __init__(self):
        self.laws, self.made_of, self.form, self.prior, self.links = [], [], [], [], []
        for form in FORMS:
            first = len(self.prior)
            getattr(self, form)()
            self.form += [form] * (len(self.prior) - first)
            weights = np.array(self.prior[first:])
            self.prior[first:] = WEIGHTS[form] * weights / weights.sum()
        self.prior = np.array(self.prior)
        cells = [(shape, law, share) for shape, made in enumerate(self.made_of) for law, share in made]
        rows, columns, shares = zip(*cells)
        self.shares = sparse.csr_matrix((shares, (rows, columns)), shape=(len(self.prior), len(self.laws)))

    def add(self, weight, made_of):
        self.prior.append(weight)
        self.made_of.append(made_of)
        return len(self.prior) - 1

    def law(self, law):
        self.laws.append(law)
        return len(self.laws) - 1

    def shared(self, weight, law):
        """The same law for each share of casts that get a bite at all."""
        number = self.law(law)
        return [self.add(weight, [(number, share)]) for share in SHARES]

    def track(self, places):
        """Places in a row: each shape's neighbours have the same share."""
        for here, there in zip(places, places[1:]):
            self.links += zip(here, there)

    def constant(self):
        means = [3.0 * 1.1**i for i in range(43)]
        row = [[self.add(bell(m, PACE), [(self.law(expon(scale=m)), 1.0)])] for m in means]
        for start in range(4):
            self.track(row[start::4])  # four steps of a tenth change a rate by nearly a half

    def broad(self):
        means = [3.0 * 1.25**i for i in range(14)]
        self.track([self.shared(bell(m, PLACE), expon(scale=m)) for m in means])
        self.track([self.shared(bell(m, PLACE), gamma(a=2.0, scale=m / 2.0)) for m in means])

    def bunch(self):
        for sd in [0.7, 1.2, 2.0, 3.5, 6.0]:
            step, place, row = max(0.8 * sd, 0.5), max(1.0, sd), []
            while place < 42.0:
                row.append(self.shared(bell(place, PLACE) * step / place * sd**-0.7, bunch(place, sd)))
                place += step
            self.track(row)

    def even(self):
        rows = {}
        for i, start in enumerate(EDGES):
            for j, end in enumerate(EDGES):
                if 1.5 < end - start <= 16.0:
                    weight = bell(0.5 * (start + end), PLACE) / (i + 3.0)
                    rows.setdefault(j - i, {})[i] = self.shared(weight, uniform(loc=start, scale=end - start))
        for row in rows.values():
            for i in row:
                if i + 1 in row:
                    self.track([row[i], row[i + 1]])

    def two(self):
        few = []
        for sd in [1.2, 3.0]:
            place = max(1.5, sd)
            while place < 36.0:
                few.append((bell(place, PLACE) * 1.5 * sd / place, place, sd, self.law(bunch(place, sd))))
                place += 1.5 * sd
        for weight, place, sd, first in few:
            for other, then, wide, second in few:
                if then - place >= 1.5 * (sd + wide):
                    for p, q in TWO_SHARES:
                        self.add(weight * other, [(first, p), (second, q)])

    def mixed(self, of):
        """Each shape's sum of shares of a figure of its laws."""
        return self.shares @ np.array([of(law) for law in self.laws])

    def bitten(self, t):
        return self.mixed(lambda law: law.cdf(t))

    def neighbours(self):
        """What leaves each shape for its neighbours, for a unit of moving weight: Metropolis moves on the prior."""
        n = len(self.prior)
        pairs = self.links + [(b, a) for a, b in self.links]
        a, b = np.array(pairs).T
        rate = np.minimum(self.prior[b] / self.prior[a], 1.0)
        flow = sparse.csr_matrix((rate, (b, a)), shape=(n, n))
        return flow - sparse.diags(np.asarray(flow.sum(axis=0)).ravel())


SHAPES = Shapes()
FLOW = SHAPES.neighbours()


def ln_likelihood(minutes, bite, exact):
    if not bite:
        stray = max(1.0 - minutes / 60.0, 0.0)
        if exact:
            bitten = SHAPES.bitten(minutes)
        else:
            (a, b), part = step_of(minutes)
            bitten = (1.0 - part) * SHAPES.bitten(a) + part * SHAPES.bitten(b)
        return np.log(np.maximum((1.0 - STRAY) * (1.0 - bitten) + STRAY * stray, 1e-6))
    if exact:
        density = SHAPES.mixed(lambda law: law.pdf(minutes))
    else:
        (a, b), _ = step_of(minutes)
        density = (SHAPES.bitten(b) - SHAPES.bitten(a)) / (b - a)
    return np.log((1.0 - STRAY) * density + STRAY / 60.0)


def step_of(minutes):
    """The step of the core's clock in which a wait ends, and how far into it."""
    after = next(i for i, t in enumerate(CLOCK) if t > minutes)
    a, b = CLOCK[after - 1], CLOCK[after]
    return (a, b), (minutes - a) / (b - a)


def posterior(record, changing, exact):
    """Weights of the shapes: days that stay as they are, and days whose weight moves on after each cast."""
    days = [np.log1p(-changing) + np.log(SHAPES.prior)]
    if changing:
        days.append(np.log(changing) + np.log(SHAPES.prior))
    for minutes, bite in record:
        likely = ln_likelihood(minutes, bite, exact)
        days = [day + likely for day in days]
        if changing:
            top = days[1].max()
            moved = np.exp(days[1] - top)
            moved = moved + 0.5 * MOVES * min(minutes, LONGEST) * (FLOW @ moved)
            days[1] = top + np.log(np.maximum(moved, 1e-300))
    ln = logsumexp(days, axis=0)
    return np.exp(ln - logsumexp(ln))


def by_form(weights):
    return {form: float(weights[[f == form for f in SHAPES.form]].sum()) for form in FORMS}


def waited(law, t):
    """The integral of the share bitten up to t, t F(t) less the partial expectation, in closed form."""
    name = law.dist.name
    if t <= 0.0:
        return 0.0
    if name == "expon":
        m = law.kwds["scale"]
        return t - m * -math.expm1(-t / m)
    if name == "gamma":
        a, s = law.kwds["a"], law.kwds["scale"]
        return t * law.cdf(t) - a * s * gamma.cdf(t, a + 1.0, scale=s)
    if name == "lognorm":
        s, m = law.kwds["s"], law.kwds["scale"]
        return t * law.cdf(t) - m * math.exp(0.5 * s * s) * lognorm.cdf(t, s, scale=m * math.exp(s * s))
    low, width = law.kwds["loc"], law.kwds["scale"]
    inside = min(max(t - low, 0.0), width)
    return 0.5 * inside * inside / width + max(t - low - width, 0.0)


class Day:
    """What follows from the weights."""

    def __init__(self, record, weights):
        self.weights, self.kept = weights, {}
        self.record = record
        self.end = max(HORIZON, 1.5 * max((m for m, _ in record), default=0.0))

    def at(self, t):
        """Of each shape: share bitten by t, and the mean of the smaller of wait and t."""
        if t not in self.kept:
            self.kept[t] = (SHAPES.bitten(t), t - SHAPES.mixed(lambda law: waited(law, t)))
        return self.kept[t]

    def rates(self, t):
        bitten, waiting = self.at(t)
        return bitten / (waiting + TURN + EXTRA * bitten)

    def rate(self, t):
        return float(self.weights @ self.rates(t))

    def bitten(self, t):
        return float(self.weights @ self.at(t)[0])

    def waiting(self, t):
        return float(self.weights @ self.at(t)[1])

    def best(self):
        grid = [t for t in CLOCK[1:] if t <= self.end]
        values = [self.rate(t) for t in grid]
        top = int(np.argmax(values))
        low, high = grid[max(top - 1, 0)], grid[min(top + 1, len(grid) - 1)]
        found = minimize_scalar(lambda t: -self.rate(t), bounds=(low, high), method="bounded", options={"xatol": 1e-4})
        t = found.x if -found.fun > values[top] else grid[top]
        return t, self.rate(t), top + 1 < len(grid) and values[-1] < 0.999 * values[top]

    def band(self):
        """Best time (None if it is the end of the horizon), hold until, recast by (None if the band has no end)."""
        best, top, inside = self.best()
        level = lambda t: self.rate(t) - NEAR * top
        before = [t for t in CLOCK if t < best]
        low = next((t for t in reversed(before) if t == 0.0 or level(t) < 0.0), 0.0)
        hold = brentq(level, low, best, xtol=1e-6) if level(low) < 0.0 else low
        beyond = next((t for t in CLOCK if best < t <= self.end and level(t) < 0.0), None)
        until = None if beyond is None else brentq(level, best, beyond, xtol=1e-6)
        stop = self.in_vain(hold, best)
        if stop is not None and (until is None or stop < until):
            best, until, inside = min(best, stop), stop, True
        return (best if inside else None), hold, until, top

    def gain(self, u, best):
        """Waiting on from u, at its best, less fresh casts: bites a minute, both given that u minutes brought none."""
        bitten, waiting, still = self.bitten(u), self.waiting(u), 1.0 - self.at(u)[0]
        top = 0.0
        for s in [t for t in CLOCK if u + 0.25 <= t <= self.end]:
            more = self.bitten(s) - bitten
            top = max(top, more / (self.waiting(s) - waiting + EXTRA * more))
        fresh = float(self.weights @ (still * self.rates(best))) / (1.0 - bitten)
        return top - fresh

    def in_vain(self, hold, best):
        if self.gain(hold, best) < 0.0:
            return hold
        times = [hold] + [t for t in CLOCK if hold <= t < 0.9 * self.end]
        for a, b in zip(times, times[1:]):
            if self.gain(b, best) < 0.0:
                return brentq(lambda t: self.gain(t, best), a, b, xtol=1e-3)
        return None

    def leave(self):
        """The minutes to plan for the next cast: the knowledge gradient over the rest of the day, of which a share is credited."""
        grid = [t for t in CLOCK if t <= self.end]
        best = grid[int(np.argmax([self.rate(t) for t in grid]))]
        fine = lambda t: t % 1.0 == 0.0 if t <= 20.0 else t % 2.0 == 0.0 if t <= 30.0 else t % 5.0 == 0.0
        steps = sorted({t for t in CLOCK if 0.0 < t <= LONGEST and fine(t)} | {best})[:32]
        rates = np.array([self.rates(t) for t in steps])
        shares = [np.zeros(len(self.weights))] + [self.at(t)[0] for t in steps]
        bites = sum(bite for _, bite in self.record)
        used = sum(m for m, _ in self.record) + TURN * len(self.record) + EXTRA * bites
        top, told, found = self.rate(best), 0.0, (0.0, best)
        for i, t in enumerate(steps):
            told += (rates @ (self.weights * (shares[i + 1] - shares[i]))).max()
            none = (rates @ (self.weights * (1.0 - shares[i + 1]))).max()
            cost = (top - self.rate(t)) * (self.waiting(t) + TURN)
            net = CREDIT * max(DAY - used, 0.0) * max(told + none - top, 0.0) - cost
            if t >= best and net > found[0]:
                found = (net, t)
        return found[1]

    def quantile(self, t, share):
        """The share still waiting at t: the value at which the weights of the lower ones reach a share."""
        still = 1.0 - self.at(t)[0]
        order = np.argsort(still, kind="stable")
        return float(still[order][np.searchsorted(np.cumsum(self.weights[order]), share)])


AT = [2.0, 5.0, 10.0, 15.0, 20.0, 30.0, 45.0]
LOOKS = [5.0, 12.0, 20.0]


def chances(day):
    return {
        "bitten_by": [day.bitten(t) for t in AT],
        "bite_in_five": [(day.bitten(t + 5.0) - day.bitten(t)) / (1.0 - day.bitten(t)) for t in LOOKS],
    }


def leave_times(day):
    best, hold, until, top = day.band()
    return {
        "rate_per_hour": [60.0 * day.rate(t) for t in AT],
        "still_90": [[day.quantile(t, 0.05), day.quantile(t, 0.95)] for t in LOOKS],
        "best_rate_per_hour": 60.0 * top,
        "best_min": best,
        "hold_until_min": hold,
        "recast_by_min": until,
        "next_leave_min": day.leave(),
    }


# Remission of leukaemia in weeks, with the drug (Freireich and others 1963).
DRUG = [(6, 1), (6, 1), (6, 1), (6, 0), (7, 1), (9, 0), (10, 1), (10, 0), (11, 0), (13, 1), (16, 1), (17, 0), (19, 0), (20, 0), (22, 1), (23, 1), (25, 0), (32, 0), (32, 0), (34, 0), (35, 0)]
CONSTRUCTED = "constructed"
RECORDS = {
    "no_casts": (CONSTRUCTED, []),
    "censored_only": (CONSTRUCTED, [(8.0, 0), (12.5, 0), (15.3, 0), (20.0, 0), (25.7, 0)]),
    "one_bite": (CONSTRUCTED, [(15.0, 0), (11.2, 1), (18.4, 0)]),
    "three_bites": (CONSTRUCTED, [(14.3, 1), (20.0, 0), (15.8, 1), (20.0, 0), (6.1, 0), (16.4, 1)]),
    "ten_bites": (CONSTRUCTED, [(7.9, 1), (15.0, 0), (8.8, 1), (8.2, 1), (7.1, 1), (15.0, 0), (9.4, 1), (8.1, 1), (15.0, 0), (7.6, 1), (8.6, 1), (12.0, 0), (9.0, 1), (6.8, 1)]),
    "two_bunches": (CONSTRUCTED, [(4.2, 1), (25.0, 0), (17.3, 1), (3.8, 1), (25.0, 0), (16.1, 1), (5.1, 1), (25.0, 0), (4.4, 1), (18.2, 1), (25.0, 0), (3.5, 1), (16.8, 1), (25.0, 0)]),
    "later_and_later": (CONSTRUCTED, [(5.2, 1), (14.0, 0), (6.3, 1), (7.1, 1), (20.0, 0), (9.4, 1), (11.6, 1), (20.0, 0), (13.3, 1), (16.2, 1)]),
    "leukaemia": ("Freireich et al., Blood 21:699-716 (1963); in Cox, JRSS B 34:187-220 (1972)", DRUG),
}


def case(name, changing, of):
    source, record = RECORDS[name]
    by = "scipy 1.17.1 stats, special.logsumexp, optimize and sparse, numpy 2.3.5; wait_shapes.py"
    given = {"time": [m for m, _ in record], "event": [e for _, e in record], "changing": changing, "at": AT, "looks": LOOKS}
    return {"source": source, "from_memory": False, "verified_by": by, "input": given, **of(name, record)}


def weights(name, record):
    both = [by_form(posterior(record, 0.0, exact)) for exact in (False, True)]
    return {
        "id": f"{name}_weights",
        "checks": "restwater_waits::Shapes::day_by_kind",
        "expected": {"minutes": both[0], "density": both[1]},
        "tolerance": {"abs": 2e-6, "abs_density": 0.025},
        "notes": "posterior weight of each form, on a day that stays as it is",
    }


def answers(changing):
    def of(name, record):
        minutes, density = [Day(record, posterior(record, changing, exact)) for exact in (False, True)]
        return {
            "id": f"{name}_{'changing' if changing else 'unchanging'}",
            "checks": "restwater_waits::WaitPosterior::advice",
            "expected": {"minutes": chances(minutes) | leave_times(minutes), "density": chances(density)},
            # The next leave time is one of a list and must be the same. Of two bunches that are worth the same, either may be
            # left for, so the leave times are not compared by density.
            "tolerance": {"abs": 1e-4, "abs_rate": 2e-3, "abs_minutes": 0.3, "abs_leave": 0.0, "abs_density": 0.015},
            "notes": f"at {AT} min; chance in five minutes and 90 % band of the share still waiting at {LOOKS} min",
        }

    return of


if __name__ == "__main__":
    cases = []
    for name in RECORDS:
        print(name, file=sys.stderr)
        cases += [case(name, 0.0, weights), case(name, CHANGING, answers(CHANGING)), case(name, 0.0, answers(0.0))]
    print(json.dumps({"format": 1, "topic": "wait_shapes", "cases": cases}, indent=1))
