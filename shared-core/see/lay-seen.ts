import type { Expected, ExpectedLength } from '../follow/body-priors';
import { layTogether, type StretchPicture } from '../follow/lay-together';
import { landmarkNames, type LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import type { BodySighting } from './body-sighting';
import { seenLengths, type SeenLengths } from './seen-lengths';

/** What was seen on one picture. */
export interface TimedSighting {
  /** Real seconds. */
  readonly time: number;
  readonly body: BodySighting;
}

/** A body laid on a picture: places, and how far each may be off along one axis, pixels of the shown picture. */
export type SeenPoints = Readonly<Record<LandmarkName, Point & { readonly sd: number }>>;

/**
 * How far the network's points and the outline's ends lie off, one axis, shares of the body length: root mean squares on the sample
 * butterfly and streamlined kick (tests/bench/see/see.ts), before anything is laid.
 */
const seenSd: Readonly<Record<LandmarkName, number>> = {
  fingertip: 0.012,
  wrist: 0.03,
  elbow: 0.022,
  shoulder: 0.013,
  ear: 0.013,
  hip: 0.01,
  knee: 0.012,
  ankle: 0.014,
  toe: 0.012,
};
/**
 * How far laid points still lie off where laying did not move them, one axis, shares of the body length: bias and spread together,
 * root mean squares on the same two clips.
 */
const laidSd: Readonly<Record<LandmarkName, number>> = {
  fingertip: 0.057,
  wrist: 0.043,
  elbow: 0.026,
  shoulder: 0.011,
  ear: 0.011,
  hip: 0.0066,
  knee: 0.01,
  ankle: 0.01,
  toe: 0.01,
};
/** Where the outline shows no end, the base of the finger or toe is carried on, and may be off by so much. */
const carriedSd = { fingertip: 0.08, toe: 0.03 } as const;
/** What lies so many spreads from where it is laid counts half: the network takes another limb for it now and then. */
const strange = 2;
/** Weighing and laying are done so often. */
const rounds = 4;
/** How much the change of acceleration of a landmark usually is, body lengths/s³ over a sixtieth of a second. Set on those clips. */
const jerks: Readonly<Record<LandmarkName, number>> = {
  fingertip: 900,
  wrist: 600,
  elbow: 400,
  shoulder: 120,
  ear: 150,
  hip: 120,
  knee: 250,
  ankle: 400,
  toe: 600,
};
/** Pictures laid at once, and how many of them are laid again with the next: it keeps the seam out of the points. */
const atOnce = 150;
const again = 20;

/** A hole longer than this, real seconds, parts what is laid together: bodies are not carried over where nobody was seen. */
const longestHole = 0.25;

/** Lays all that was seen, stretch by stretch; one body for each sighting. */
export function layStretches(seen: readonly TimedSighting[]): readonly SeenPoints[] {
  const lengths = seenLengths(seen.map(({ body }) => body));
  if (!lengths) return [];
  const stretches: TimedSighting[][] = [];
  for (const each of seen) {
    const last = stretches.at(-1)?.at(-1);
    if (last && each.time - last.time <= longestHole) stretches.at(-1)?.push(each);
    else stretches.push([each]);
  }
  return stretches.flatMap((stretch) => laySeen(stretch, lengths));
}

/**
 * Lays the nine points on pictures that follow each other: where the network and its outline put them, limbs about as long as
 * they usually look, and moving as bodies do, in one least squares. Points come back one for each sighting.
 */
function laySeen(seen: readonly TimedSighting[], lengths: SeenLengths): readonly SeenPoints[] {
  const laid: SeenPoints[] = [];
  for (let first = 0; first < seen.length; first += atOnce) {
    const from = Math.max(0, first - again);
    const to = Math.min(seen.length, first + atOnce + again);
    const piece = layPiece(seen.slice(from, to), lengths);
    laid.push(...piece.slice(first - from, first - from + atOnce));
  }
  return laid;
}

function layPiece(seen: readonly TimedSighting[], lengths: SeenLengths): readonly SeenPoints[] {
  const { bodyLength } = lengths;
  const names = landmarkNames;
  const width = 2 * names.length;
  const observed = seen.map(({ body }) => observations(body, lengths));
  let places = new Float64Array(width * seen.length);
  observed.forEach((row, i) => {
    names.forEach((name, n) => {
      places[i * width + 2 * n] = row[name].at.x;
      places[i * width + 2 * n + 1] = row[name].at.y;
    });
  });
  const jerkSd = Object.fromEntries(names.map((name) => [name, jerks[name] * bodyLength])) as Record<
    LandmarkName,
    number
  >;
  const expectedLengths = limbLengths(lengths);
  const off = observed.map(() => names.map(() => 0));
  for (let round = 0; round < rounds; round++) {
    const pictures = seen.map(({ time }, i): StretchPicture => {
      const pinned = new Map<LandmarkName, Expected>();
      names.forEach((name, n) => {
        const { at, sd } = observed[i]?.[name] ?? { at: { x: 0, y: 0 }, sd: 1e6 };
        pinned.set(name, { at, sd: sd * Math.sqrt(1 + ((off[i]?.[n] ?? 0) / (strange * sd)) ** 2) });
      });
      return { time, pyramid: [], templates: [], lengths: expectedLengths, pinned, originX: 0, originY: 0 };
    });
    const out = layTogether(pictures, names, places, jerkSd, [{ level: 4, rounds: 3 }]);
    places = Float64Array.from(out.places);
    observed.forEach((row, i) => {
      names.forEach((name, n) => {
        const own = off[i];
        if (own)
          own[n] = Math.hypot(
            (places[i * width + 2 * n] as number) - row[name].at.x,
            (places[i * width + 2 * n + 1] as number) - row[name].at.y,
          );
      });
    });
  }
  const times = seen.map(({ time }) => time);
  const spreads = names.map((name, n) =>
    laidSpread(
      times,
      off.map((own) => own[n] as number),
    ).map((moved) => Math.hypot(laidSd[name] * bodyLength, moved)),
  );
  return seen.map(
    (_, i) =>
      Object.fromEntries(
        names.map((name, n) => [
          name,
          {
            x: places[i * width + 2 * n] as number,
            y: places[i * width + 2 * n + 1] as number,
            sd: spreads[n]?.[i] ?? 0,
          },
        ]),
      ) as SeenPoints,
  );
}

/** What is seen and what is laid differ alike for so long, real seconds. Our choice. */
const alikeSeconds = 0.05;

/** How far laying moved a landmark, root mean square over the pictures around, one axis. */
function laidSpread(times: readonly number[], off: readonly number[]): readonly number[] {
  let from = 0;
  return times.map((time) => {
    while ((times[from] as number) < time - alikeSeconds) from += 1;
    let [sum, count] = [0, 0];
    for (let i = from; i < times.length && (times[i] as number) <= time + alikeSeconds; i++) {
      sum += (off[i] as number) ** 2 / 2;
      count += 1;
    }
    return Math.sqrt(sum / Math.max(1, count));
  });
}

/** Where the nine landmarks seem to be on a picture, and how far off that may be, pixels. */
function observations(
  body: BodySighting,
  { bodyLength, hand, foot }: SeenLengths,
): Readonly<Record<LandmarkName, Expected>> {
  const sdOf = (name: LandmarkName, apart: number): number =>
    Math.hypot(seenSd[name] * bodyLength, apartShare * apart);
  const own = (name: keyof BodySighting['landmarks']): Expected => {
    const { at, apart } = body.landmarks[name];
    return { at, sd: sdOf(name, apart) };
  };
  const end = (
    name: 'fingertip' | 'toe',
    joint: BodySighting['indexBase'],
    base: BodySighting['indexBase'],
    tip: Point | null,
    length: number,
  ): Expected => {
    if (tip) return { at: tip, sd: sdOf(name, base.apart) };
    const [dx, dy] = [base.at.x - joint.at.x, base.at.y - joint.at.y];
    const now = Math.hypot(dx, dy);
    const on = now > 0 ? length / now : 0;
    return {
      at: { x: joint.at.x + on * dx, y: joint.at.y + on * dy },
      sd: Math.hypot(carriedSd[name] * bodyLength, apartShare * base.apart),
    };
  };
  return {
    fingertip: end('fingertip', body.landmarks.wrist, body.indexBase, body.handEnd, hand),
    wrist: own('wrist'),
    elbow: own('elbow'),
    shoulder: own('shoulder'),
    ear: own('ear'),
    hip: own('hip'),
    knee: own('knee'),
    ankle: own('ankle'),
    toe: end('toe', body.landmarks.ankle, body.toeBase, body.footEnd, foot),
  };
}

/** Left and right apart: the middle is off by so much of it. */
const apartShare = 0.15;

/** Trunk and legs keep their lengths; arms turn out of the picture's plane and only look no longer than they are. */
function limbLengths({ bodyLength, limbs }: SeenLengths): readonly ExpectedLength[] {
  return limbs.map(({ from, to, usual, most }) => {
    const arm = to === 'fingertip' || to === 'wrist' || to === 'elbow';
    return {
      from,
      to,
      length: usual,
      sd: (arm ? 0.06 : 0.012) * bodyLength,
      most,
      mostSd: 0.01 * bodyLength,
    };
  });
}
