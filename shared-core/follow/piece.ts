import type { ExpectedLength } from './body-priors';
import type { GreyLevel } from './grey-pyramid';
import { type Limb, limbs } from './limb';
import type { WeighedTemplate } from './limb-looks';
import { type LimbTemplate, limbTemplate } from './limb-template';
import type { MarkedPoint } from './marked-points';
import type { KnownPoint } from './points-around';
import { type LandmarkName, landmarkNames } from '../marks/landmark';
import type { Point } from '../units/point';
import type { WholePicture } from './whole-picture';
import { agreedPlaces, type FoundBefore, type KnownPlaces } from './agreed-places';
import type { ColourPicture } from './colour-picture';
import { type GreyPicture, ownPlace } from './grey-picture';
import { limbExpectations } from './limb-expectations';
import { around } from './marks-around';

/** Consecutive pictures with the marks on them, to be followed as one. */
export interface PieceTask {
  /** Whole pictures, small, some frames apart, first and last among them: for what the camera does. */
  readonly wholes?: readonly WholePicture[];
  readonly pictures: readonly ColourPicture[];
  /** Real seconds of each picture. */
  readonly times: readonly number[];
  readonly marks: readonly MarkedPoint[];
  /** What is known on the frames just before and after, with their real seconds. */
  readonly around: readonly (KnownPoint & { readonly time: number })[];
  /** Fingertip to toe along the body, pixels of the film. */
  readonly bodyLength: number;
  /** Every how manyth pixel of the film the pictures hold, across and down. */
  readonly step: 1 | 2;
}

/** A landmark between two of its marks, by their indexes. */
export interface LandmarkSpan {
  readonly landmark: LandmarkName;
  readonly from: number;
  readonly to: number;
}

export interface Piece extends Omit<PieceTask, 'pictures'> {
  readonly pictures: readonly GreyPicture[];
  /** Where landmarks lie on pictures that have a mark, once all those were compared; by landmark and index. */
  readonly known: KnownPlaces;
  /** Where a mark is thought to lie truly, given all others. */
  mark(index: number, landmark: LandmarkName): Point | null;
  /** Landmarks that are marked on this picture, or on pictures before and after it. */
  landmarksOn(index: number): readonly LandmarkName[];
  /** Every landmark between each two of its neighbouring marks, by index, both marked. */
  spans(): readonly LandmarkSpan[];
  /** How strongly a landmark is hurried, for smoothing: px per s^1.5. */
  acceleration(landmark: LandmarkName): number;
  templatesFor(index: number): readonly WeighedTemplate[];
  lengthsOn(index: number): readonly ExpectedLength[];
  /** Pictures on which a landmark is marked, ascending. */
  markIndexes(landmark: LandmarkName): readonly number[];
  /** The body on the straight way between its marks. */
  roughly(index: number): ReadonlyMap<LandmarkName, Point>;
  /** Every landmark that is marked somewhere. */
  landmarks(): readonly LandmarkName[];
  /** The mark that is nearest in time, of a landmark that has one. */
  nearestMark(index: number, landmark: LandmarkName): Point;
  /** How fast the acceleration of each landmark changes, px/s³ over a sixtieth of a second. */
  jerkSd(): Readonly<Record<LandmarkName, number>>;
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

/**
 * How fast a landmark's acceleration changes, body lengths/s³ over a sixtieth of a second. About one and a half times
 * what the drawn swims do.
 */
const jerks: Readonly<Record<LandmarkName, number>> = {
  fingertip: 400,
  wrist: 260,
  elbow: 280,
  shoulder: 40,
  ear: 60,
  hip: 60,
  knee: 110,
  ankle: 200,
  toe: 250,
};

/** How well a mark is known once it was compared with all others: share of the body length. Set on the sample clips. */
export const markedShare = 0.0007;

export function makePiece(
  task: PieceTask,
  pictures: readonly GreyPicture[],
  pyramids: readonly (readonly GreyLevel[])[],
  before: FoundBefore | null = null,
): Piece {
  const { times, bodyLength } = task;
  const { marked, known } = agreedPlaces(task, pictures, pyramids, before);
  const markFrames = new Map([...marked].map(([name, own]) => [name, [...own.keys()].sort((p, q) => p - q)]));
  const anchors = limbs.flatMap((limb) => {
    const both = (markFrames.get(limb.from) ?? []).filter((frame) => marked.get(limb.to)?.has(frame));
    const seen = [...(known.get(limb.from)?.keys() ?? [])]
      .filter((frame) => known.get(limb.to)?.has(frame))
      .sort((p, q) => p - q);
    return both.length > 0
      ? [{ seen, looks: looksOf(limb, seen, known, pictures, pyramids, bodyLength) }]
      : [];
  });
  const lengths = limbExpectations(marked, times, bodyLength);
  return {
    ...task,
    pictures,
    known,
    mark: (index, landmark) => marked.get(landmark)?.get(index) ?? null,
    landmarksOn(index) {
      return [...markFrames].flatMap(([name, frames]) => {
        const { before, after } = around(frames, index);
        return before !== null && after !== null ? [name] : [];
      });
    },
    markIndexes: (landmark) => markFrames.get(landmark) ?? [],
    roughly(index) {
      const places = new Map<LandmarkName, Point>();
      for (const [name, frames] of markFrames) {
        const { before, after, share } = around(frames, index);
        const a = marked.get(name)?.get(before ?? after ?? 0);
        const b = marked.get(name)?.get(after ?? before ?? 0);
        if (!a || !b) continue;
        places.set(name, { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) });
      }
      return places;
    },
    landmarks: () => landmarkNames.filter((name) => markFrames.has(name)),
    nearestMark(index, landmark) {
      const frames = markFrames.get(landmark) ?? [];
      const nearest = [...frames].sort((p, q) => Math.abs(p - index) - Math.abs(q - index))[0];
      const at = nearest === undefined ? undefined : marked.get(landmark)?.get(nearest);
      if (!at) throw new RangeError(`no mark of ${landmark} in this piece`);
      return at;
    },
    jerkSd: () =>
      Object.fromEntries(landmarkNames.map((name) => [name, jerks[name] * bodyLength])) as Record<
        LandmarkName,
        number
      >,
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
      return anchors.flatMap(({ seen, looks }) => {
        const { before, after, share } = around(seen, index);
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
    lengthsOn: lengths,
  };
}

/** How a limb looks on each picture where both its ends are known. */
function looksOf(
  limb: Limb,
  frames: readonly number[],
  known: KnownPlaces,
  pictures: readonly GreyPicture[],
  pyramids: readonly (readonly GreyLevel[])[],
  bodyLength: number,
): ReadonlyMap<number, LimbTemplate> {
  const looks = new Map<number, LimbTemplate>();
  for (const frame of frames) {
    const picture = pictures[frame];
    const pyramid = pyramids[frame];
    const a = known.get(limb.from)?.get(frame);
    const b = known.get(limb.to)?.get(frame);
    if (!picture || !pyramid || !a || !b) continue;
    const template = limbTemplate(pyramid, limb, ownPlace(picture, a), ownPlace(picture, b), bodyLength);
    if (template) looks.set(frame, template);
  }
  return looks;
}
