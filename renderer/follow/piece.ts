import type { ExpectedLength } from '#core/follow/body-priors';
import type { WeighedTemplate } from '#core/follow/limb-looks';
import type { GreyLevel } from '#core/follow/grey-pyramid';
import { type Limb, limbs } from '#core/follow/limb';
import { type LimbTemplate, limbTemplate } from '#core/follow/limb-template';
import type { MarkedPoint } from '#core/follow/marked-points';
import type { LandmarkName } from '#core/marks/landmark';
import type { Point } from '#core/units/brand';
import type { WholePicture } from './camera-moves';
import type { ColourPicture } from './colour-picture';
import type { GreyPicture } from './grey-picture';

/** Consecutive pictures with the marks on them, to be followed as one. */
export interface PieceTask {
  /** Whole pictures, small, some frames apart, first and last among them: for what the camera does. */
  readonly wholes?: readonly WholePicture[];
  readonly pictures: readonly ColourPicture[];
  /** Real seconds of each picture. */
  readonly times: readonly number[];
  readonly marks: readonly MarkedPoint[];
  /** Fingertip to toe along the body, pixels. */
  readonly bodyLength: number;
}

export interface Piece extends Omit<PieceTask, 'pictures'> {
  readonly pictures: readonly GreyPicture[];
  mark(index: number, landmark: LandmarkName): Point | null;
  /** Landmarks that are marked on this picture, or on pictures before and after it. */
  landmarksOn(index: number): readonly LandmarkName[];
  /** Every landmark between each two of its neighbouring marks, by index, both marked. */
  spans(): readonly { readonly landmark: LandmarkName; readonly from: number; readonly to: number }[];
  /** How strongly a landmark is hurried, for smoothing: px per s^1.5. */
  acceleration(landmark: LandmarkName): number;
  templatesFor(index: number): readonly WeighedTemplate[];
  lengthsOn(index: number): readonly ExpectedLength[];
  /** Standard deviation of how far a landmark may be from where its last step leads, px. */
  freedom(landmark: LandmarkName): number;
  /** Step from one picture to the next in the given direction, as a landmark's marks before and after tell it. */
  stepAt(index: number, way: 1 | -1, landmark: LandmarkName): Point;
}

/**
 * How far a landmark's step can differ from its last one in a sixtieth of a second, share of the body length: hands
 * and feet turn quickest. Set on the sample clips.
 */
const freedoms: Readonly<Record<LandmarkName, number>> = {
  fingertip: 0.008,
  wrist: 0.008,
  elbow: 0.0064,
  shoulder: 0.0032,
  ear: 0.0032,
  hip: 0.0032,
  knee: 0.0048,
  ankle: 0.0064,
  toe: 0.008,
};

/** A marked point does not move: next to nothing, but more than nothing so that sums stay finite. */
export const markedSd = 0.05;
/** A rigid limb's seen length strays by this share of the body length. Our default. */
const lengthSd = 0.006;
/** An arm swings out of the picture's plane and back between two marks: so much of its length may go, set on the sample clips. */
const armTurn = 0.1;
const arms: ReadonlySet<LandmarkName> = new Set(['elbow', 'wrist', 'fingertip']);
/** Pictures from a mark after which a limb may have turned as far as it can. */
const turnPictures = 12;

/** How much shorter or longer a limb may look between marks than they tell, pixels. */
function turning(limb: Limb, length: number, since: number, until: number): number {
  if (!arms.has(limb.to) || since + until === 0) return 0;
  return armTurn * length * Math.min(1, (2 * since * until) / (since + until) / turnPictures);
}

export function makePiece(
  task: PieceTask,
  pictures: readonly GreyPicture[],
  pyramids: readonly (readonly GreyLevel[])[],
): Piece {
  const { times, marks, bodyLength } = task;
  const first = pictures[0]?.frame ?? 0;
  const marked = new Map<LandmarkName, Map<number, Point>>();
  for (const { frame, landmark, x, y } of marks) {
    const own = marked.get(landmark) ?? new Map<number, Point>();
    own.set(frame - first, { x, y });
    marked.set(landmark, own);
  }
  const markFrames = new Map([...marked].map(([name, own]) => [name, [...own.keys()].sort((p, q) => p - q)]));
  const around = (frames: readonly number[], index: number): readonly [number | null, number | null] => [
    frames.findLast((each) => each <= index) ?? null,
    frames.find((each) => each >= index) ?? null,
  ];
  const anchors = limbs.flatMap((limb) => {
    const both = (markFrames.get(limb.from) ?? []).filter((frame) => marked.get(limb.to)?.has(frame));
    return both.length > 0
      ? [{ limb, frames: both, looks: looksOf(limb, both, marked, pictures, pyramids, bodyLength) }]
      : [];
  });
  const lengthAt = (limb: Limb, index: number): number => {
    const a = marked.get(limb.from)?.get(index);
    const b = marked.get(limb.to)?.get(index);
    return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
  };
  const span = Math.max(1, pictures.length - 1);
  const interval = ((times.at(-1) ?? 0) - (times[0] ?? 0)) / span || 1 / 60;
  const pace = Math.min(4, (60 * interval) ** 2);
  return {
    ...task,
    pictures,
    mark: (index, landmark) => marked.get(landmark)?.get(index) ?? null,
    landmarksOn(index) {
      return [...markFrames].flatMap(([name, frames]) => {
        const [before, after] = around(frames, index);
        return before !== null && after !== null ? [name] : [];
      });
    },
    spans: () =>
      [...markFrames].flatMap(([landmark, frames]) =>
        frames.slice(1).flatMap((to, k) => {
          const from = frames[k] ?? to;
          return to - from > 1 ? [{ landmark, from, to }] : [];
        }),
      ),
    // a step may differ by `freedom` from one sixtieth of a second to the next: q·dt³/3 = freedom²
    acceleration: (landmark) => freedoms[landmark] * bodyLength * Math.sqrt(3 * 60 ** 3),
    templatesFor(index) {
      return anchors.flatMap(({ frames, looks }) => {
        const [before, after] = around(frames, index);
        const share =
          before !== null && after !== null && after > before ? (index - before) / (after - before) : 0;
        const out: WeighedTemplate[] = [];
        const add = (frame: number | null, weight: number): void => {
          const template = frame === null ? null : looks.get(frame);
          if (template && weight > 0) out.push({ template, weight });
        };
        if (before === null || after === null || before === after) add(before ?? after, 1);
        else {
          add(before, 1 - share);
          add(after, share);
        }
        return out;
      });
    },
    lengthsOn(index) {
      return anchors.map(({ limb, frames }) => {
        const [before, after] = around(frames, index);
        const a = lengthAt(limb, before ?? after ?? 0);
        const b = lengthAt(limb, after ?? before ?? 0);
        const share =
          before !== null && after !== null && after > before ? (index - before) / (after - before) : 0;
        return {
          from: limb.from,
          to: limb.to,
          length: a + share * (b - a),
          // a limb that looks longer on one mark than on the next turns toward the camera: then it may be anything between
          sd:
            lengthSd * bodyLength +
            (Math.abs(b - a) +
              turning(limb, Math.max(a, b), index - (before ?? index), (after ?? index) - index)) *
              Math.sqrt(share * (1 - share)),
        };
      });
    },
    freedom: (landmark) => freedoms[landmark] * bodyLength * pace,
    stepAt(index, way, landmark) {
      const frames = markFrames.get(landmark) ?? [];
      const at = frames.indexOf(index);
      const slope = (p: number | undefined, q: number | undefined): Point | null => {
        const a = p === undefined ? undefined : marked.get(landmark)?.get(p);
        const b = q === undefined ? undefined : marked.get(landmark)?.get(q);
        if (p === undefined || q === undefined || !a || !b || q <= p) return null;
        return { x: (b.x - a.x) / (q - p), y: (b.y - a.y) / (q - p) };
      };
      const past = slope(frames[at - 1], index);
      const coming = slope(index, frames[at + 1]);
      const one = past ?? coming ?? { x: 0, y: 0 };
      const other = coming ?? one;
      // the parabola through three marks: the nearer one weighs more
      const near = index - (frames[at - 1] ?? index);
      const far = (frames[at + 1] ?? index) - index;
      const share = near + far > 0 && past && coming ? near / (near + far) : 0.5;
      return {
        x: way * (one.x + share * (other.x - one.x)),
        y: way * (one.y + share * (other.y - one.y)),
      };
    },
  };
}

function looksOf(
  limb: Limb,
  frames: readonly number[],
  marked: ReadonlyMap<LandmarkName, ReadonlyMap<number, Point>>,
  pictures: readonly GreyPicture[],
  pyramids: readonly (readonly GreyLevel[])[],
  bodyLength: number,
): ReadonlyMap<number, LimbTemplate> {
  const looks = new Map<number, LimbTemplate>();
  for (const frame of frames) {
    const picture = pictures[frame];
    const pyramid = pyramids[frame];
    const a = marked.get(limb.from)?.get(frame);
    const b = marked.get(limb.to)?.get(frame);
    if (!picture || !pyramid || !a || !b) continue;
    const own = ({ x, y }: Point): Point => ({ x: x - picture.x - 0.5, y: y - picture.y - 0.5 });
    const template = limbTemplate(pyramid, limb, own(a), own(b), bodyLength);
    if (template) looks.set(frame, template);
  }
  return looks;
}
