import type { Sighting, Sightings } from './blend-sightings';
import type { Expected } from './body-priors';
import type { GreyLevel } from './grey-pyramid';
import { layTogether, type StretchPicture, type StretchRound } from './lay-together';
import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import { ownPlace, shownPlace } from './grey-picture';
import { markedShare, type Piece } from './piece';

/** A landmark that is not between two of its marks is kept near the next one: share of the body length. */
const looseShare = 0.1;
/** Known points beside a piece are not better known than this, pixels. */
const leastSd = 1;

/**
 * Lays the bodies of all pictures once more, together, from where both ways put them. `camera` is how far what lies
 * behind the swimmer has moved in the picture by each picture.
 */
export function settleBodies(
  piece: Piece,
  pyramids: readonly (readonly GreyLevel[])[],
  camera: readonly Point[],
  placeOn: (index: number, landmark: LandmarkName) => Point | null,
  plan: readonly StretchRound[],
): readonly Sightings[] {
  const { pictures, times, bodyLength } = piece;
  const names = piece.landmarks();
  const before = knownPictures(piece, names, (frame) => frame < (pictures[0]?.frame ?? 0));
  const after = knownPictures(piece, names, (frame) => frame > (pictures.at(-1)?.frame ?? 0), camera.at(-1));
  const width = 2 * names.length;
  const start = new Float64Array(width * (before.length + pictures.length + after.length));
  [...before, ...pictures.map(() => null), ...after].forEach((known, i) => {
    if (known) start.set(known.start, i * width);
  });
  const stretch = pictures.map((picture, i): StretchPicture => {
    const pinned = new Map<LandmarkName, Expected>();
    const between = new Set(piece.landmarksOn(i));
    names.forEach((name, n) => {
      const mark = piece.mark(i, name);
      const there = mark ?? placeOn(i, name) ?? piece.nearestMark(i, name);
      const own = ownPlace(picture, there);
      const at = (before.length + i) * width + 2 * n;
      start[at] = own.x;
      start[at + 1] = own.y;
      if (mark) pinned.set(name, { at: own, sd: markedShare * bodyLength });
      else if (!between.has(name)) pinned.set(name, { at: own, sd: looseShare * bodyLength });
    });
    return {
      time: times[i] as number,
      pyramid: pyramids[i] ?? [],
      templates: piece.templatesFor(i),
      lengths: piece.lengthsOn(i),
      pinned,
      originX: picture.x - (camera[i]?.x ?? 0),
      originY: picture.y - (camera[i]?.y ?? 0),
    };
  });
  const whole = [...before.map((known) => known.picture), ...stretch, ...after.map((known) => known.picture)];
  const laid = layTogether(whole, names, start, piece.jerkSd(), plan);
  return pictures.map((picture, own) => {
    const i = before.length + own;
    const residualAt = (name: LandmarkName): number => {
      let most = 0;
      for (const [limb, value] of laid.residuals[i] ?? [])
        if (limb.from === name || limb.to === name) most = Math.max(most, value);
      return most;
    };
    return new Map(
      names.map((name, n): [LandmarkName, Sighting] => {
        const k = i * names.length + n;
        return [
          name,
          {
            at: shownPlace(picture, { x: laid.places[2 * k] as number, y: laid.places[2 * k + 1] as number }),
            variance: laid.variances[k] ?? Number.POSITIVE_INFINITY,
            residual: residualAt(name),
          },
        ];
      }),
    );
  });
}

/** Frames beside the piece: no picture is looked at there, but what is known on them tells how the body moves on. */
function knownPictures(
  piece: Piece,
  names: readonly LandmarkName[],
  isThere: (frame: number) => boolean,
  camera: Point = { x: 0, y: 0 },
): readonly { readonly picture: StretchPicture; readonly start: Float64Array }[] {
  const frames = [...new Set(piece.around.map(({ frame }) => frame).filter(isThere))];
  return frames.flatMap((frame) => {
    const own = piece.around.filter((each) => each.frame === frame);
    // a frame on which only some landmarks are known would need guesses for the others
    if (!names.every((name) => own.some(({ landmark }) => landmark === name))) return [];
    const start = new Float64Array(2 * names.length);
    const pinned = new Map<LandmarkName, Expected>();
    names.forEach((name, n) => {
      const known = own.find(({ landmark }) => landmark === name);
      if (!known) return;
      start[2 * n] = known.x - 0.5;
      start[2 * n + 1] = known.y - 0.5;
      const sd = Math.min(1e4, Math.max(leastSd, known.sd));
      pinned.set(name, { at: { x: known.x - 0.5, y: known.y - 0.5 }, sd });
    });
    const time = own[0]?.time ?? 0;
    const picture = {
      time,
      pyramid: [],
      templates: [],
      lengths: [],
      pinned,
      originX: -camera.x,
      originY: -camera.y,
    };
    return [{ picture, start }];
  });
}
