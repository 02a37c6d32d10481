import { type EventKind, eventKinds } from '#core/marks/event-kind';
import { landmarkNames } from '#core/marks/landmark';
import { readingContext } from '#core/measures/compute-readings';
import type { BodyContext } from '#core/measures/body/context/body-context';
import { emptyScene, type EventMark, plainMark, type Posture, type Swim } from '#core/swim-file/swim-schema';
import { recordFromTable } from '#core/timeline/frame-times-record';
import type { MarkingError } from '#core/uncertainty/marking-error';
import { keptWith } from '#core/units/kept-with';
import { aSwim } from '../../../renderer/a-swim';
import { normal, seeded } from '../../../../sample-clips/model/seeded';
import { type DrawWish, drawSwum, instantsOf, placeAt, type Swum, timeAt, swumLead } from './swum';
import { swumTruths } from './truths';

export interface MarkedSwum {
  readonly swum: Swum;
  /** Marked whole: every instant once, and body lines where the swim has them. */
  readonly swim: Swim;
  readonly truth: ReadonlyMap<string, number>;
}

const ticksPerSecond = 90_000;

const keptSwums = 16;
const swums = new Map<string, MarkedSwum>();

/**
 * A swim drawn from a seed, marked whole by a coach who errs as the marking error says. The last ones are kept: many ways of
 * marking start from the same.
 */
export function markedSwum(seed: number, wish: DrawWish = {}): MarkedSwum {
  const key = `${seed} ${JSON.stringify(wish)}`;
  const made = swums.get(key) ?? markSwum(seed, wish);
  if (swums.size >= keptSwums) swums.clear();
  swums.set(key, made);
  return made;
}

function markSwum(seed: number, wish: DrawWish): MarkedSwum {
  const swum = drawSwum(seed, wish);
  const random = seeded(seed ^ 0x51ed270b);
  const err = (): number => normal(random);
  const instants = instantsOf(swum, err);
  const truth = swumTruths(swum, instants);
  const end = timeAt(swum, swum.cycles) + swumLead + 0.6 * swum.period;
  const starts = Array.from({ length: Math.ceil(end * swum.rate) }, (_, i) =>
    Math.round((ticksPerSecond * i) / swum.rate),
  );
  const frameAt = (time: number): number =>
    Math.max(0, Math.min(starts.length - 1, Math.round(time * swum.rate)));
  const events = instants.map(
    ({ kind, time }, i): EventMark => ({
      id: `e${i}`,
      kind,
      frame: frameAt(time + swum.eventSd * err()),
      ...plainMark,
      breathTo: kind === 'breath' ? 'front' : null,
    }),
  );
  const postures: Posture[] = [];
  if (swum.every > 0)
    for (let frame = 0; frame < starts.length; frame += swum.every) {
      const points: Posture['points'] = {};
      for (const name of landmarkNames) {
        const { x, y } = placeAt(swum, name, frame / swum.rate);
        points[name] = {
          x: 1000 + x * swum.pixelsPerMetre + swum.landmarkSd * err(),
          y: 4000 - y * swum.pixelsPerMetre + swum.landmarkSd * err(),
        };
      }
      postures.push({ frame, points, hidden: [] });
    }
  // the known length, how far the swimmer is from it, and the marks of its ends are off as the readings take them to be
  const scaled = 1 / ((1 + 0.01 * err()) * (1 + 0.01 * err()));
  const ends = Math.SQRT2 * err();
  const base = aSwim();
  const stroke = swum.base === 'stroke' ? ('butterfly' as const) : ('dolphin-kick' as const);
  const swim: Swim = {
    ...base,
    clip: {
      ...base.clip,
      width: 30_000,
      height: 8_000,
      frameTimes: recordFromTable({
        ticksPerSecond,
        starts,
        endTick: (starts.at(-1) ?? 0) + Math.round(ticksPerSecond / swum.rate),
      }),
      slowdown: { factor: 1, source: 'coach' },
    },
    card: { ...base.card, stroke, arms: swum.base === 'stroke' ? 'stroking' : 'stretched' },
    scene: {
      ...emptyScene,
      travel: 'right',
      level: { a: { x: 0, y: 4000 }, b: { x: 20_000, y: 4000 } },
      scale: {
        line: { a: { x: 0, y: 4600 }, b: { x: 2.5 * swum.pixelsPerMetre * scaled + ends, y: 4600 } },
        metres: 2.5,
        metresSd: 0.025,
        preset: null,
        frame: 0,
      },
    },
    events,
    postures,
  };
  return { swum, swim, truth };
}

const errorOf = keptWith(({ eventSd, landmarkSd }: Swum): MarkingError => {
  const forEach = <K extends string>(keys: readonly K[], sd: number): Record<K, number> =>
    Object.fromEntries(keys.map((key) => [key, sd])) as Record<K, number>;
  return {
    basis: 'measured',
    measured: { events: [...eventKinds], landmarks: [...landmarkNames], followed: [...landmarkNames] },
    eventSd: forEach<EventKind>(eventKinds, eventSd),
    landmarkSd: forEach(landmarkNames, landmarkSd),
    followedSd: forEach(landmarkNames, 2 * landmarkSd),
    scenePointSd: 1,
  };
});

/** A marked swim ready to be read, by a coach whose marking error is known. */
export const contextOfSwum = (swum: Swum, swim: Swim): BodyContext =>
  readingContext(swim, { swimmer: null, markingError: errorOf(swum) });
