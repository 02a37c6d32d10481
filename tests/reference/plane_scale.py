#!/usr/bin/env python3
"""Reference values for shared-core/scene from OpenCV (Debian: python3-opencv). Run: python3 tests/reference/plane_scale.py

Writes plane_scale.json beside this file. The tests read that file only; run this again when a case is added.
"""
import json
import pathlib

import cv2
import numpy as np

rng = np.random.default_rng(77)
out = {"made_with": {"opencv": cv2.__version__, "numpy": np.__version__}, "homographies": []}

rectangle = np.array([[0, 0], [5, 0], [5, 2.5], [0, 2.5]], float)
corners = np.array([[212.4, 301.7], [1650.2, 255.1], [1715.8, 801.3], [160.9, 777.0]], float)
exact, _ = cv2.findHomography(corners, rectangle, 0)
probe = np.array([[[900.0, 500.0]], [[300.0, 700.0]], [[1500.0, 300.0]]])
out["homographies"].append(
    {
        "from": corners.tolist(),
        "to": rectangle.tolist(),
        "h": exact.ravel().tolist(),
        "probe": probe[:, 0].tolist(),
        "carried": cv2.perspectiveTransform(probe, exact)[:, 0].tolist(),
        "exact": True,
    }
)
grid = np.array([[x, y] for x in range(6) for y in range(4)], float)
truth = np.linalg.inv(exact)
seen = cv2.perspectiveTransform(grid[None] * [1.0, 0.8], truth)[0] + rng.normal(0, 1.0, (24, 2))
fitted, _ = cv2.findHomography(seen, grid * [1.0, 0.8], 0)
out["homographies"].append(
    {
        "from": seen.tolist(),
        "to": (grid * [1.0, 0.8]).tolist(),
        "h": fitted.ravel().tolist(),
        "probe": probe[:, 0].tolist(),
        "carried": cv2.perspectiveTransform(probe, fitted)[:, 0].tolist(),
        "exact": False,
    }
)

reach, centre = 1000.0, (960.0, 540.0)
camera = np.array([[reach, 0, centre[0]], [0, reach, centre[1]], [0, 0, 1.0]])
out["lenses"] = []
for k1, k2 in [(-0.18, 0.03), (0.06, -0.01), (-0.25, 0.0)]:
    points = rng.uniform([100, 80], [1820, 1000], (20, 2))
    flat = np.column_stack([(points - centre) / reach, np.ones(20)])
    bent, _ = cv2.projectPoints(flat, np.zeros(3), np.zeros(3), camera, np.array([k1, k2, 0, 0, 0.0]))
    lines = []
    for a, b in [((100, 120), (1800, 160)), ((90, 950), (1830, 900)), ((300, 60), (330, 1020)), ((1500, 60), (1560, 1010))]:
        along = np.linspace(a, b, 11)
        flat_line = np.column_stack([(along - centre) / reach, np.ones(11)])
        bent_line, _ = cv2.projectPoints(flat_line, np.zeros(3), np.zeros(3), camera, np.array([k1, k2, 0, 0, 0.0]))
        lines.append(bent_line[:, 0].tolist())
    out["lenses"].append(
        {
            "k1": k1,
            "k2": k2,
            "centre": centre,
            "reach": reach,
            "straight": points.tolist(),
            "bent": bent[:, 0].tolist(),
            "lines": lines,
        }
    )

pathlib.Path(__file__).with_suffix(".json").write_text(json.dumps(out) + "\n")
