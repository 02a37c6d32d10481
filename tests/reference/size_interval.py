#!/usr/bin/env python3
"""95 % intervals for the size of a vector seen with noise, from SciPy (Debian: python3-scipy).

Run: python3 tests/reference/size_interval.py. Writes size_interval.json beside this file and prints the rows of
shared-core/signal/size-interval.ts. A size nu seen as r = |nu + noise of unit variance in each of k directions| has the
noncentral chi density (Rice's for k = 2). For each nu, r is accepted in order of its likelihood against that of the nu
that suits it best, until 95 % are in (Feldman and Cousins 1998, Phys Rev D 57:3873); the interval of an r holds each nu
that accepts it.
"""
import json
import pathlib

import numpy as np
import scipy
from scipy.special import gammaln, ive
from scipy.stats import chi

step = 0.0025
seen = np.arange(step / 2, 14, step)
true = np.arange(0, 10.0001, 0.005)
until = {2: 6, 4: 7}


def log_density(nu, k):
    if nu == 0:
        return (k - 1) * np.log(seen) - seen**2 / 2 - (k / 2 - 1) * np.log(2) - gammaln(k / 2)
    order = k / 2 - 1
    return (k / 2) * np.log(seen) - order * np.log(nu) - (seen - nu) ** 2 / 2 + np.log(ive(order, seen * nu))


def tabled(k):
    table = np.array([log_density(nu, k) for nu in true])
    best = table.max(axis=0)
    low = np.full(len(seen), np.inf)
    high = np.full(len(seen), -np.inf)
    for row, nu in zip(table, true):
        order = np.argsort(best - row, kind="stable")
        inside = order[: np.searchsorted(np.cumsum(np.exp(row[order]) * step), 0.95) + 1]
        low[inside] = np.minimum(low[inside], nu)
        high[inside] = np.maximum(high[inside], nu)
    # the lower bound leaves 0 at the 95 % point of the noise alone
    knots = np.sort(np.append(np.arange(0, until[k] + 0.01, 0.25), chi.ppf(0.95, k)))
    at = lambda column, r: float(np.interp(r, seen, column))
    rows = [[round(float(r), 3), round(at(low, r), 3), round(at(high, r), 3)] for r in knots]
    covered = []
    for nu in np.arange(0, 9.01, 0.5):
        density = np.exp(log_density(nu, k)) * step
        # bounds as the table gives them, straight between its rows, and beyond it by the normal law
        size = np.sqrt(np.maximum(seen**2 - (k - 1), 0))
        lower = np.where(seen < until[k], np.interp(seen, knots, [row[1] for row in rows]), size - 1.96)
        upper = np.where(seen < until[k], np.interp(seen, knots, [row[2] for row in rows]), size + 1.96)
        covered.append([float(nu), float(density[(lower <= nu) & (nu <= upper)].sum())])
    return {"directions": k, "rows": rows, "covered": covered}


out = {"made_with": {"scipy": scipy.__version__, "numpy": np.__version__}, "tables": [tabled(2), tabled(4)]}
pathlib.Path(__file__).with_suffix(".json").write_text(json.dumps(out, indent=1) + "\n")
for table in out["tables"]:
    for row in table["rows"]:
        print(row)
    print([round(c, 4) for _, c in table["covered"]])
