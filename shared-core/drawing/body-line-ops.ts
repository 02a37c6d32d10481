import { bodyChain, type LandmarkName, landmarkNames } from '../marks/landmark';
import type { Posture, Swim } from '../swim-file/swim-schema';
import type { Point } from '../units/point';
import type { DrawingOp, MeasureWords } from './drawing-op';
import { angleLabels } from './joint-angles';
import { bodyPartOf, casing, partColour, type PartShape, partShape } from './landmark-look';
import { labelsWithRoom } from './mark-size';
import { placeLabels, pointsAlong } from './place-labels';
import { type ShownLine, withoutSeen } from './shown-line';

/** Laid landmarks of the chain in order, fingertip to toe. */
export const chainOf = (posture: Posture): readonly Point[] =>
  bodyChain.flatMap((name) => posture.points[name] ?? []);

/**
 * The line in its pieces. A coach who leaves a landmark out knows how the body runs there; where the machine is not sure of
 * one, a line past it would be no limb, so it ends there.
 */
export function chainPieces(
  posture: Posture,
  followed: readonly LandmarkName[],
): readonly (readonly Point[])[] {
  if (followed.length === 0) return [chainOf(posture)];
  const pieces: Point[][] = [[]];
  for (const name of bodyChain) {
    const at = posture.points[name];
    if (at) pieces.at(-1)?.push(at);
    else pieces.push([]);
  }
  return pieces.filter((piece) => piece.length > 1);
}

/** Neighbouring landmarks in runs, and between two runs the way over the hidden ones. */
function runsOf(
  posture: Posture,
): readonly { readonly points: readonly Point[]; readonly hidden: boolean }[] {
  const laid = bodyChain.flatMap((name, place) => {
    const at = posture.points[name];
    return at ? [{ at, place }] : [];
  });
  const runs: { points: Point[]; hidden: boolean }[] = [];
  laid.forEach(({ at, place }, i) => {
    const before = laid[i - 1];
    if (before && place - before.place === 1) runs.at(-1)?.points.push(at);
    else {
      if (before) runs.push({ points: [before.at, at], hidden: true });
      runs.push({ points: [at], hidden: false });
    }
  });
  return runs.filter(({ points }) => points.length > 1);
}

/**
 * A posture's line with its landmarks by shape and colour. `unit` is the size letters have beside it. With followed
 * landmarks the line is dashed and they are hollow, never to be taken for the coach's own; seen ones are rings on a dotted
 * line. `past` says how the line goes past landmarks that the coach hid: `whole` in what is saved, `broken` where a coach
 * who lays it has to see what is left out.
 */
export function bodyLineOps(
  posture: Posture,
  unit: number,
  followed: readonly LandmarkName[] = [],
  past: 'whole' | 'broken' = 'whole',
  seen: readonly LandmarkName[] = [],
): readonly DrawingOp[] {
  const dashes = seen.length > 0 ? [unit * 0.12, unit * 0.3] : [unit * 0.4, unit * 0.36];
  const dashed = { dash: dashes, cap: 'butt' as const };
  const byMachine = [...followed, ...seen];
  const pieces =
    past === 'broken'
      ? runsOf(posture).map(({ points, hidden }) => ({
          points,
          dash: hidden ? { dash: [unit * 0.13, unit * 0.52] } : {},
        }))
      : chainPieces(posture, byMachine).map((points) => ({
          points,
          dash: byMachine.length > 0 ? dashed : {},
        }));
  return [
    ...pieces.map(({ points }): DrawingOp => ({ op: 'line', points, colour: casing, width: unit * 0.42 })),
    ...pieces.map(
      ({ points, dash }): DrawingOp => ({
        op: 'line',
        points,
        colour: '#ffffff',
        width: unit * 0.16,
        ...dash,
      }),
    ),
    ...landmarkNames.flatMap((name): DrawingOp[] => {
      const at = posture.points[name];
      if (!at) return [];
      const part = bodyPartOf(name);
      if (seen.includes(name)) return [...ringOps(at, unit, partColour[part])];
      const mark = (radius: number, fill: string) =>
        landmarkOp(partShape[part], at, unit * radius, fill, unit * 0.13);
      if (!followed.includes(name)) return [mark(0.34, partColour[part])];
      return [mark(0.32, partColour[part]), mark(0.15, casing)];
    }),
  ];
}

/** A ring through which the picture shows: of many short lines, as a disc always has a fill. */
function ringOps(at: Point, unit: number, colour: string): readonly DrawingOp[] {
  const points = Array.from({ length: 17 }, (_, i) => ({
    x: at.x + unit * 0.38 * Math.cos((i * Math.PI) / 8),
    y: at.y + unit * 0.38 * Math.sin((i * Math.PI) / 8),
  }));
  return [
    { op: 'line', points, colour: casing, width: unit * 0.24 },
    { op: 'line', points, colour, width: unit * 0.14 },
  ];
}

function landmarkOp(shape: PartShape, at: Point, radius: number, fill: string, edge: number): DrawingOp {
  const cased = { fill, edge: { colour: casing, width: edge } };
  const corner = (x: number, y: number): Point => ({ x: at.x + x * radius, y: at.y + y * radius });
  switch (shape) {
    case 'circle':
      return { op: 'disc', at, radius, ...cased };
    case 'square':
      return {
        op: 'area',
        points: [corner(-0.9, -0.9), corner(0.9, -0.9), corner(0.9, 0.9), corner(-0.9, 0.9)],
        ...cased,
      };
    case 'diamond':
      return {
        op: 'area',
        points: [corner(0, -1.25), corner(1.25, 0), corner(0, 1.25), corner(-1.25, 0)],
        ...cased,
      };
    case 'triangle':
      return { op: 'area', points: [corner(0, -1.3), corner(1.15, 0.8), corner(-1.15, 0.8)], ...cased };
  }
}

/** Another swim's line laid over: dashed and named, so that it is never taken for this one's own. */
export function laidLineOps(posture: Posture, unit: number, name: string): readonly DrawingOp[] {
  const points = chainOf(posture);
  const end = points.at(-1);
  return [
    { op: 'line', points, colour: casing, width: unit * 0.42, opacity: 0.7 },
    {
      op: 'line',
      points,
      colour: partColour.hands,
      width: unit * 0.17,
      dash: [unit * 0.6, unit * 0.4],
      cap: 'butt',
    },
    ...(end ? [casedWords(name, { x: end.x, y: end.y + unit * 1.4 }, unit, 600, 'centre')] : []),
  ];
}

/**
 * The angles of a posture beside their joints; `size` is that of the letters. `drawn` is the same posture where it is
 * drawn, when that is not the picture's own place and size: angles are always the picture's. `height` is how tall the swimmer is where it is drawn: beside a small one only the first are
 * said.
 */
export function angleOps(
  posture: Posture & Partial<Pick<ShownLine, 'seen'>>,
  swim: Pick<Swim, 'scene' | 'card'>,
  size: number,
  measure: MeasureWords,
  drawn: Posture = posture,
  height: number | null = null,
): readonly DrawingOp[] {
  // no angle is told of points nobody has reviewed
  const labels = labelsWithRoom(angleLabels(withoutSeen(posture), swim), height, size).flatMap((label) => {
    const joint = drawn.points[label.at];
    return joint ? [{ ...label, joint }] : [];
  });
  const boxes = labels.map(({ joint, words }) => ({
    at: joint,
    width: measure(words, size, 400),
    height: size * 1.2,
  }));
  const marks = landmarkNames.flatMap((name) => drawn.points[name] ?? []);
  const clear = [...marks, ...pointsAlong(chainOf(drawn), size * 0.5)];
  return placeLabels(boxes, clear, size * 0.8).map((centre, index) =>
    casedWords(labels[index]?.words ?? '', { x: centre.x, y: centre.y + size * 0.35 }, size, 400, 'centre'),
  );
}

/** White letters with a dark edge: legible on any water. */
export function casedWords(
  words: string,
  at: Point,
  size: number,
  weight: 400 | 600 = 400,
  align: 'left' | 'centre' | 'right' = 'left',
): DrawingOp {
  return { op: 'words', words, at, size, weight, colour: '#ffffff', casing, align };
}

/** Shortens words to a width with an ellipsis. */
export function fittedWords(
  words: string,
  width: number,
  size: number,
  weight: 400 | 600,
  measure: MeasureWords,
): string {
  if (measure(words, size, weight) <= width) return words;
  let cut = words;
  while (cut.length > 1 && measure(`${cut}…`, size, weight) > width) cut = cut.slice(0, -1);
  return `${cut.trimEnd()}…`;
}
