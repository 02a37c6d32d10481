import type { LandmarkName } from '#core/marks/landmark';
import type { Posture, Scene } from '#core/swim-file/swim-schema';
import type { Point } from '#core/units/brand';

export interface AngleLabel {
  readonly at: LandmarkName;
  readonly words: string;
}

const joints: readonly (readonly [LandmarkName, LandmarkName, LandmarkName, string])[] = [
  ['wrist', 'elbow', 'shoulder', 'elbow'],
  ['elbow', 'shoulder', 'hip', 'shoulder'],
  ['shoulder', 'hip', 'knee', 'hip'],
  ['hip', 'knee', 'ankle', 'knee'],
  ['knee', 'ankle', 'toe', 'ankle'],
];

function inner(p: Point, joint: Point, q: Point): number | null {
  const ax = p.x - joint.x;
  const ay = p.y - joint.y;
  const bx = q.x - joint.x;
  const by = q.y - joint.y;
  if (Math.hypot(ax, ay) === 0 || Math.hypot(bx, by) === 0) return null;
  return (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * 180) / Math.PI;
}

/** Tilt of the scene's level line in picture radians, in −90..90°; 0 when none is set. */
function tilt(scene: Scene): number {
  const line = scene.level ?? scene.surface;
  if (!line) return 0;
  const flip = line.b.x < line.a.x ? -1 : 1;
  return Math.atan2(flip * (line.b.y - line.a.y), flip * (line.b.x - line.a.x));
}

const whole = (degrees: number): string => {
  const rounded = Math.round(degrees);
  return `${rounded < 0 ? '−' : ''}${Math.abs(rounded)}°`;
};

/**
 * Words for the angles of a posture: inner joint angles (180° is straight), and the trunk (hip to shoulder)
 * against the way of travel, positive with the shoulders higher than the hip.
 */
export function angleLabels(posture: Posture, scene: Scene): readonly AngleLabel[] {
  const labels: AngleLabel[] = [];
  for (const [before, joint, after, word] of joints) {
    const p = posture.points[before];
    const at = posture.points[joint];
    const q = posture.points[after];
    const degrees = p && at && q ? inner(p, at, q) : null;
    if (degrees !== null) labels.push({ at: joint, words: `${word} ${whole(degrees)}` });
  }
  const { shoulder, hip } = posture.points;
  if (shoulder && hip && scene.travel && Math.hypot(shoulder.x - hip.x, shoulder.y - hip.y) > 0) {
    const turn = tilt(scene);
    const dx = shoulder.x - hip.x;
    const dy = shoulder.y - hip.y;
    const along = (dx * Math.cos(turn) + dy * Math.sin(turn)) * (scene.travel === 'right' ? 1 : -1);
    const up = dx * Math.sin(turn) - dy * Math.cos(turn);
    labels.push({ at: 'shoulder', words: `trunk ${whole((Math.atan2(up, along) * 180) / Math.PI)}` });
  }
  return labels;
}
