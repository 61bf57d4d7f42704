"""Expected values of over_days.json: evidence over days for one pair of values, by scipy's quadrature from the definitions alone.

Run with scipy 1.17.1: python3 over_days.py > over_days.json
"""

import json
import math
import random

from scipy.integrate import quad

TURN = 3.0  # minutes between two casts
SLABS = [0.4, 1.2]
SPELL_SD, SPELL_MIN = 0.5, 40.0


def normal(u, sd):
    return math.exp(-0.5 * (u / sd) ** 2) / (sd * math.sqrt(2 * math.pi))


def minutes(day):
    """ln L(u) - ln L(0) of the binomial with odds r T_A : T_B."""
    x = [sum(e for s, _, e in day if s == side) for side in "AB"]
    t = [sum(w for s, w, _ in day if s == side) for side in "AB"]
    return lambda u: x[0] * u + sum(x) * math.log((t[0] + t[1]) / (math.exp(u) * t[0] + t[1]))


def waits(day):
    """ln partial likelihood, ties by Efron, less that at u = 0."""

    def at(u):
        r, total = math.exp(u), 0.0
        for moment in sorted({w for _, w, e in day if e}):
            risk = [sum(1 for s, w, _ in day if s == side and w >= moment) for side in "AB"]
            dead = [sum(1 for s, w, e in day if s == side and w == moment and e) for side in "AB"]
            if not all(risk):
                continue
            d = sum(dead)
            total += dead[0] * u
            for i in range(d):
                total -= math.log(r * risk[0] + risk[1] - i / d * (r * dead[0] + dead[1]))
        return total

    zero = at(0.0)
    return lambda u: at(u) - zero


def e_value(curves):
    def f(u):
        return normal(u, 1.0) * math.exp(sum(c(u) for c in curves))

    return quad(f, -6, 6, epsabs=0, epsrel=1e-10, limit=400)[0]


def pairs(day):
    a = [e for s, _, e in day if s == "A"]
    b = [e for s, _, e in day if s == "B"]
    return list(zip(a, b))


def e_casts(days):
    blocks, bites, casts = [], 0.5, 1.0
    for pair in (p for day in days for p in pairs(day)):
        blocks.append((pair, bites / (casts - bites)))
        bites += sum(pair)
        casts += 2.0

    def product(u):
        out = normal(u, 1.0)
        for (ya, yb), odds in blocks:
            pa = odds * math.exp(u / 2) / (1 + odds * math.exp(u / 2))
            pb = odds * math.exp(-u / 2) / (1 + odds * math.exp(-u / 2))
            m = (pa + pb) / 2
            of = lambda p, y: p if y else 1 - p
            out *= of(pa, ya) * of(pb, yb) / (of(m, ya) * of(m, yb))
        return out

    return quad(product, -6, 6, epsabs=0, epsrel=1e-10, limit=400)[0]


def spell_variance(day):
    """Variance of the difference of the two sides' means of a process that fades with time, straight from its covariance."""
    t = {side: sum(w for s, w, _ in day if s == side) for side in "AB"}
    at, mids = 0.0, []
    for s, w, _ in day:
        mids.append((at + w / 2, w / t[s] * (1 if s == "A" else -1)))
        at += w + TURN
    return SPELL_SD**2 * sum(x * y * math.exp(-abs(p - q) / SPELL_MIN) for p, x in mids for q, y in mids)


def belief(days, of):
    curves = [(of(day), math.sqrt(spell_variance(day))) for day in days]

    def off(curve, sd, u):
        f = lambda z: normal(z, 1.0) * math.exp(curve(u + sd * z))
        return quad(f, -6, 6, epsabs=0, epsrel=1e-7, limit=100)[0]

    def at(u):
        return math.prod(off(curve, sd, u) for curve, sd in curves)

    none = 0.5 * at(0.0)

    def side(low, high):
        f = lambda u: sum(0.25 * normal(u, sd) for sd in SLABS) * at(u)
        return quad(f, low, high, epsabs=1e-9, epsrel=1e-6, limit=100)[0]

    a, b = side(0, 5.5), side(-5.5, 0)
    return [a / (a + b + none), b / (a + b + none)]


def fish(seed, means, plan="ABBA" * 5, leave=20.0):
    rng = random.Random(seed)
    day = []
    for s in plan:
        wait = round(rng.expovariate(1 / means["AB".index(s)]), 2)
        day.append((s, min(wait, leave), int(wait <= leave)))
    return day


def case(name, source, days, notes):
    both = [belief(days, of) for of in (minutes, waits)]
    return {
        "id": name,
        "source": source,
        "from_memory": False,
        "verified_by": "scipy 1.17.1 integrate.quad over ln r, and over the error of each day; over_days.py",
        "input": {
            "between": TURN,
            "days": [{"side": "".join(s for s, _, _ in d), "time": [w for _, w, _ in d], "event": [e for _, _, e in d]} for d in days],
        },
        "expected": {
            "e_minutes": e_value([minutes(d) for d in days]),
            "e_waits": e_value([waits(d) for d in days]),
            "e_casts": e_casts(days),
            "belief": [min(both[0][0], both[1][0]), min(both[0][1], both[1][1])],
        },
        "tolerance": {"rel": 1e-4, "abs": 5e-4},
        "notes": notes,
    }


# Remission of leukaemia in weeks (Freireich and others 1963): the pairs as they entered, placebo and drug by turns here.
DRUG = [(6, 1), (6, 1), (6, 1), (6, 0), (7, 1), (9, 0), (10, 1), (10, 0), (11, 0), (13, 1), (16, 1), (17, 0), (19, 0), (20, 0), (22, 1), (23, 1), (25, 0), (32, 0), (32, 0), (34, 0), (35, 0)]
PLACEBO = [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23]

if __name__ == "__main__":
    leukaemia = [x for p, (w, e) in zip(PLACEBO, DRUG) for x in (("A", p, 1), ("B", w, e))]
    constructed = "constructed: exponential waits, alternated A B B A, left for 20 min"
    cases = [
        case("leukaemia_one_day", "Freireich et al., Blood 21:699-716 (1963); in Cox, JRSS B 34:187-220 (1972)", [leukaemia], "one stratum, with ties; the order within each arm is that of the weeks"),
        case("three_days_of_one_rate", constructed, [fish(s, (6, 12)) for s in (1, 2, 3)], "the ratio is two"),
        case("four_days_of_four_rates", constructed, [fish(10 + i, (m, 2 * m)) for i, m in enumerate((4, 8, 12, 20))], "every day has a rate of its own, the ratio is two on each"),
        case("three_days_alike", constructed, [fish(s, (10, 10)) for s in (21, 22, 23)], "no difference"),
        case("days_that_disagree", constructed, [fish(31, (5, 15)), fish(32, (15, 5))], "what one day says the other takes back"),
        case("changed_by_long_blocks", constructed, [fish(s, (6, 12), "AAABBBAAABBBAAA") for s in (41, 42)], "spells count for more: four switches a day"),
    ]
    print(json.dumps({"format": 1, "topic": "over_days", "cases": cases}, indent=1))
