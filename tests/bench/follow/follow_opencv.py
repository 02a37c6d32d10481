"""Plain Lucas-Kanade by OpenCV for Python on the same pictures: an independent tracker.

Reads {"file", "lines": [{"frame", "points": [[x, y], ...]}, ...]} from standard input. From each line the points are
followed forward to the next one, and backward from the next; the two are blended by distance. Writes the points of every
frame, and of the forward way alone.
"""
import json
import sys

import cv2
import numpy as np

asked = json.load(sys.stdin)
film = cv2.VideoCapture(asked["file"])
pictures = []
while True:
    there, picture = film.read()
    if not there:
        break
    pictures.append(cv2.cvtColor(picture, cv2.COLOR_BGR2GRAY))

options = dict(winSize=(31, 31), maxLevel=3, criteria=(cv2.TERM_CRITERIA_COUNT | cv2.TERM_CRITERIA_EPS, 30, 0.01))


def follow(frames, start):
    tracks = [np.array(start, dtype=np.float32).reshape(-1, 1, 2)]
    for before, after in zip(frames, frames[1:]):
        found, status, _ = cv2.calcOpticalFlowPyrLK(pictures[before], pictures[after], tracks[-1], None, **options)
        lost = status.reshape(-1) == 0
        found[lost] = tracks[-1][lost]
        tracks.append(found)
    return [track.reshape(-1, 2) for track in tracks]


blended, forward = {}, {}
for one, other in zip(asked["lines"], asked["lines"][1:]):
    frames = list(range(one["frame"], other["frame"] + 1))
    there = follow(frames, one["points"])
    back = follow(frames[::-1], other["points"])[::-1]
    for i, frame in enumerate(frames):
        share = i / (len(frames) - 1)
        blended[frame] = ((1 - share) * there[i] + share * back[i]).tolist()
        forward[frame] = there[i].tolist()
json.dump({"opencv": cv2.__version__, "blended": blended, "forward": forward}, sys.stdout)
