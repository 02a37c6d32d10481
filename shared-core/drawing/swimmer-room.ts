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
/** Beyond stretched fingertips there is no flesh: half the margin does round what an arm reaches. */
const handRoom = armReach - margin / 2;

/** Parts that together tell how tall the swimmer looks; one alone is too short to go by. */
const tellingParts = parts.filter(([from]) => from !== 'ear' && from !== 'ankle');

/** How tall a posture shows the swimmer, pixels; null unless trunk, thigh and shank are all there. */
export function shownHeight({ points }: Pick<Posture, 'points'>): number | null {
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
 * The part of a picture that surely holds the whole swimmer, head, hands and feet, with a margin; it may reach out of the
 * picture. Null where the ear or both ankle and toe are missing: then only the whole picture is sure. Points between that are
 * missing are where their neighbours allow. `tall` is the swimmer's height and `off` how far each point may lie beside its
 * place, both in pixels.
 */
export function swimmerRoom(
  points: Posture['points'],
  tall: number,
  off: (name: LandmarkName) => number = () => 0,
): Rect | null {
  const { ear, shoulder } = points;
  if (!ear || !(points.ankle || points.toe)) return null;
  const held: { readonly at: Point; readonly reach: number }[] = Object.entries(points).map(([name, at]) => ({
    at,
    reach: off(name as LandmarkName),
  }));
  held.push({ at: ear, reach: headReach * tall + off('ear') });
  const neck = parts[0]?.[2] ?? 0;
  held.push(
    shoulder
      ? { at: shoulder, reach: handRoom * tall + off('shoulder') }
      : { at: ear, reach: (neck + handRoom) * tall + off('ear') },
  );
  // a point that is missing lies no farther from a known neighbour than the parts between them are long
  parts.forEach(([, missing], index) => {
    if (points[missing]) return;
    let reach = 0;
    for (let back = index; back >= 0; back--) {
      reach += parts[back]?.[2] ?? 0;
      const name = parts[back]?.[0] ?? 'ear';
      const at = points[name];
      if (!at) continue;
      held.push({ at, reach: reach * tall + off(name) });
      return;
    }
  });
  const around = margin * tall;
  const edge = (value: (point: Point) => number, side: 1 | -1): number =>
    side * (Math.max(...held.map(({ at, reach }) => side * value(at) + reach)) + around);
  const [left, right] = [edge(({ x }) => x, -1), edge(({ x }) => x, 1)];
  const [top, bottom] = [edge(({ y }) => y, -1), edge(({ y }) => y, 1)];
  return { x: left, y: top, width: right - left, height: bottom - top };
}
