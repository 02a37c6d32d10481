import type { LandmarkName } from '../marks/landmark';
import type { Posture } from '../swim-file/swim-schema';
import type { Point } from '../units/point';
import type { Rect } from './composition';

/**
 * Lengths of the body's parts as shares of its height: Drillis and Contini 1966, as biomechanics books give them; from
 * memory, and used only to leave room.
 */
const parts: readonly (readonly [LandmarkName, LandmarkName, number])[] = [
  ['ear', 'shoulder', 0.118],
  ['shoulder', 'hip', 0.288],
  ['hip', 'knee', 0.245],
  ['knee', 'ankle', 0.246],
  ['ankle', 'toe', 0.152],
];
/** Shoulder to fingertip. Either arm may be anywhere it reaches, whatever is marked: the body line knows one of two. */
const armReach = 0.44;
/** The head goes so far beyond the ear, and flesh, a cap or a fin so far beyond any point. Our defaults, in body heights. */
const headReach = 0.13;
const margin = 0.08;

/** Parts that together tell how tall the swimmer looks; one alone is too short to go by. */
const tellingParts = parts.filter(([from]) => from !== 'ear' && from !== 'ankle');

/** How tall a posture shows the swimmer, pixels; null unless trunk, thigh and shank are all there. */
function shownHeight({ points }: Posture): number | null {
  let length = 0;
  let share = 0;
  for (const [from, to, own] of tellingParts) {
    const [a, b] = [points[from], points[to]];
    if (!a || !b) return null;
    length += Math.hypot(a.x - b.x, a.y - b.y);
    share += own;
  }
  return length / share;
}

/**
 * The part of a frame's picture that surely holds the whole swimmer, head, hands and feet, with a margin; it may reach out
 * of the picture. Null where the frame's line lacks the ear or both ankle and toe, or where no line of the swim shows how
 * tall the swimmer is: then only the whole picture is sure. Points between that are missing are where their neighbours
 * allow. Cost: one look at all lines, then a constant each frame.
 */
export function swimmerRooms(lines: ReadonlyMap<number, Posture>): (frame: number) => Rect | null {
  const tall = Math.max(0, ...[...lines.values()].map((line) => shownHeight(line) ?? 0));
  return (frame) => {
    const line = lines.get(frame);
    return line && tall > 0 ? roomOf(line, tall) : null;
  };
}

function roomOf({ points }: Posture, tall: number): Rect | null {
  const { ear, shoulder } = points;
  if (!ear || !(points.ankle || points.toe)) return null;
  const held: { readonly at: Point; readonly reach: number }[] = Object.values(points).map((at) => ({
    at,
    reach: 0,
  }));
  held.push({ at: ear, reach: headReach });
  const neck = parts[0]?.[2] ?? 0;
  held.push(shoulder ? { at: shoulder, reach: armReach } : { at: ear, reach: neck + armReach });
  // a point that is missing lies no farther from a known neighbour than the parts between them are long
  parts.forEach(([, missing], index) => {
    if (points[missing]) return;
    let reach = 0;
    for (let back = index; back >= 0; back--) {
      reach += parts[back]?.[2] ?? 0;
      const at = points[parts[back]?.[0] ?? 'ear'];
      if (!at) continue;
      held.push({ at, reach });
      return;
    }
  });
  const around = margin * tall;
  const edge = (value: (each: { at: Point; reach: number }) => number, side: 1 | -1): number =>
    side * Math.max(...held.map((each) => side * value(each) + each.reach * tall)) + side * around;
  const [left, right] = [edge(({ at }) => at.x, -1), edge(({ at }) => at.x, 1)];
  const [top, bottom] = [edge(({ at }) => at.y, -1), edge(({ at }) => at.y, 1)];
  return { x: left, y: top, width: right - left, height: bottom - top };
}
