#!/usr/bin/env python3
"""Reference values for normal and Student figures from SciPy (Debian: python3-scipy).

Run: python3 tests/reference/quantiles.py. Writes quantiles.json beside this file; the tests read that file only.
"""
import json
import pathlib

import scipy
from scipy.integrate import quad
from scipy.stats import norm, t

freedoms = list(range(1, 31)) + [40, 60, 120, 1000]


def largest(values, sd):
    """Mean of the largest of independent normal values, by quadrature of its distribution."""

    def density(x):
        total = 0.0
        for i, v in enumerate(values):
            part = norm.pdf(x, v, sd)
            for j, w in enumerate(values):
                if j != i:
                    part *= norm.cdf(x, w, sd)
            total += part
        return x * total

    low, high = min(values) - 9 * sd, max(values) + 9 * sd
    return quad(density, low, high, limit=400)[0]


cases = [([0, 0], 1), ([0, 0, 0], 1), ([0, 0.5, 1, -3], 0.7), ([5, 1], 1), ([0.2, 0.1, 0.15, 0.18, 0.05], 0.06)]
out = {
    "made_with": {"scipy": scipy.__version__},
    "student975": [[n, float(t.ppf(0.975, n))] for n in freedoms],
    "largest": [{"values": v, "sd": s, "mean": largest(v, s)} for v, s in cases],
}
pathlib.Path(__file__).with_suffix(".json").write_text(json.dumps(out) + "\n")
