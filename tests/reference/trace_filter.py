#!/usr/bin/env python3
"""Reference values for shared-core/signal from SciPy (Debian: python3-scipy). Run: python3 tests/reference/trace_filter.py

Writes trace_filter.json beside this file. The tests read that file only; run this again when a case is added.
"""
import json
import pathlib

import numpy as np
import scipy
from scipy.interpolate import CubicSpline
from scipy.signal import butter, filtfilt, find_peaks, freqz, peak_prominences

rng = np.random.default_rng(20240611)
correction = (2**0.5 - 1) ** 0.25


def winter(cutoff, rate):
    """SciPy's bilinear Butterworth with its corner moved as Winter's two-pass correction moves it."""
    wanted = np.tan(np.pi * cutoff / rate) / correction
    return butter(2, 2 * np.arctan(wanted) / np.pi)


out = {"made_with": {"scipy": scipy.__version__, "numpy": np.__version__}, "filters": [], "gains": []}
for rate, cutoff, n in [(50, 6, 120), (60, 6, 90), (100, 6, 200), (240, 8, 300), (119.88, 8, 180)]:
    b, a = winter(cutoff, rate)
    t = np.arange(n) / rate
    x = 0.3 * np.sin(2 * np.pi * 1.9 * t + 0.4) + 0.1 * t + 0.02 * rng.standard_normal(n)
    pole = np.sqrt(abs(a[2]))
    pad = int(min(n - 1, np.ceil(np.log(1e-9) / np.log(pole))))

    def both_ways(values):
        # constant start, as ours: lfilter_zi times the first value, which filtfilt does
        return filtfilt(b, a, values, padtype="odd", padlen=pad)

    y = (both_ways(x) + both_ways(x[::-1])[::-1]) / 2
    out["filters"].append(
        {"rate": rate, "cutoff": cutoff, "b": b.tolist(), "a": a.tolist(), "in": x.tolist(), "out": y.tolist()}
    )
    w, h = freqz(b, a, worN=[cutoff, cutoff / 3, cutoff * 2], fs=rate)
    out["gains"].append({"rate": rate, "cutoff": cutoff, "hz": w.tolist(), "gain": (abs(h) ** 2).tolist()})

t = np.cumsum(rng.uniform(0.01, 0.06, 40))
y = np.cos(5 * t) + 0.3 * t
at = np.linspace(t[0], t[-1], 97)
out["spline"] = {
    "t": t.tolist(),
    "y": y.tolist(),
    "at": at.tolist(),
    "value": CubicSpline(t, y, bc_type="natural")(at).tolist(),
}

x = np.sin(np.arange(400) / 9) + 0.3 * rng.standard_normal(400)
index, _ = find_peaks(x, prominence=0.6)
out["peaks"] = {
    "x": x.tolist(),
    "index": index.tolist(),
    "prominence": peak_prominences(x, index)[0].tolist(),
    "minProminence": 0.6,
}

t = np.cumsum(rng.uniform(0.005, 0.03, 150))
period = 1.13
y = 0.4 + 0.2 * t + 0.1 * np.cos(2 * np.pi * t / period) + 0.02 * rng.standard_normal(150)
tau = t - t.mean()
w = 2 * np.pi / period
columns = [np.ones_like(t), tau]
for k in (1, 2, 3):
    columns += [np.cos(k * w * tau), np.sin(k * w * tau)]
design = np.stack(columns, axis=1)
solution, rest, _, _ = np.linalg.lstsq(design, y, rcond=None)
out["wave"] = {
    "t": t.tolist(),
    "y": y.tolist(),
    "period": period,
    "coefficients": solution.tolist(),
    "covariance": np.linalg.inv(design.T @ design).ravel().tolist(),
    "residualSd": float(np.sqrt(rest[0] / (150 - 8))),
}

pathlib.Path(__file__).with_suffix(".json").write_text(json.dumps(out) + "\n")
