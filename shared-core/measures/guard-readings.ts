import type { EventKind } from '../marks/event-kind';
import type { BodyContext } from './body/context/body-context';
import { bodyWave } from './body/wave/body-wave-speed';
import { exchangedTurns } from './body/context/exchanged-turns';
import { type Doubt, joinedDoubts } from './doubt';
import { eventsOf } from './events/event-list';
import type { KickPlaces } from './events/kick-places';
import type { KindDoubt } from './events/used-marks';
import { kickPeriod } from './events/kick-period';
import { halfKicksMissing } from './events/kick-rhythm';
import { strokePlaces } from './events/stroke-places';
import { strokesOf } from './events/strokes';
import { downSeconds, downShare } from './events/usual-kick';
import { keptWith } from '../units/kept-with';
import { amplitudeUnusual, isOutside, plausible, timesUnusual } from './plausible';
import type { ComputedReading, MissingReason, Reading, ReadingUnit } from './reading';
import { type LeansOn, leansOn } from './reading-leans-on';

/** A doubt, and the readings it falls on. */
interface ScopedDoubt extends Doubt {
  readonly on: (reading: Reading) => boolean;
}

/** Units that hang on how fast the film is taken to run. */
const timed: ReadonlySet<ReadingUnit> = new Set(['Hz', '1/min', 's', 'ms', 'm/s', 'L/s', 'px/s', 'm²/s']);

const isTimed = (reading: Reading): boolean => reading.status === 'computed' && timed.has(reading.unit);

const leaning =
  (...what: readonly LeansOn[]) =>
  ({ id }: Reading): boolean =>
    what.some((each) => leansOn(id, each));

/**
 * The readings of a swim with what is doubted of them, and without those that its marks contradict. A reading about which
 * there is nothing to say stays the same object.
 */
export function guardReadings(context: BodyContext, readings: readonly Reading[]): readonly Reading[] {
  const refusals = refusalsOf(context);
  const doubts = doubtsOf(context, new Map(readings.map((each) => [each.id, each])));
  if (refusals.length === 0 && doubts.length === 0) return readings;
  return readings.map((reading) => {
    if (reading.status === 'missing') return reading;
    const refusal = refusals.find(({ on }) => on(reading));
    if (refusal) return { status: 'missing', id: reading.id, reasons: [refusal.reason] };
    const own = doubts.filter(({ on }) => on(reading)).map(({ code, frames }) => ({ code, frames }));
    return own.length === 0 ? reading : doubtedReading(reading, own);
  });
}

const keptDoubted = keptWith((_: ComputedReading) => new Map<string, ComputedReading>());

/** A reading with doubts beside its own; the same object for the same doubts, as the reading itself would be. */
function doubtedReading(reading: ComputedReading, own: readonly Doubt[]): ComputedReading {
  const known = keptDoubted(reading);
  const key = JSON.stringify(own);
  const made = known.get(key) ?? { ...reading, doubts: joinedDoubts(reading.doubts, own) };
  known.clear();
  known.set(key, made);
  return made;
}

interface Refusal {
  readonly reason: MissingReason;
  readonly on: (reading: Reading) => boolean;
}

function refusalsOf(context: BodyContext): readonly Refusal[] {
  const { marks, throughout } = turnsOf(context);
  if (!throughout) return [];
  const frames = marks.map(({ event }) => event.frame);
  return [
    { reason: { code: 'marks-contradict', what: 'tops-below-bottoms', frames }, on: leaning('kickEnds') },
  ];
}

const turnsOf = (context: BodyContext): ReturnType<typeof exchangedTurns> => {
  const kick = kickPeriod(context);
  return kick ? exchangedTurns(context, kick.seconds) : { marks: [], throughout: false };
};

function doubtsOf(context: BodyContext, readings: ReadonlyMap<string, Reading>): readonly ScopedDoubt[] {
  return [
    ...markDoubts(context),
    ...handDoubts(context),
    ...strokeDoubts(context),
    ...kickDoubts(context),
    ...endDoubts(context),
    ...partOfBodyDoubts(context),
    ...timesDoubts(readings),
    { code: 'marking-error-large', frames: [], on: isRough },
    ...(amplitudeUnusual(readings)
      ? [{ code: 'amplitude-unusual' as const, frames: [], on: leaning('kickSize') }]
      : []),
  ];
}

/** Times no person swims: all that is counted in them, and where the kick is too quick or slow all that is made of kicks. */
function timesDoubts(readings: ReadonlyMap<string, Reading>): readonly ScopedDoubt[] {
  if (!timesUnusual(readings)) return [];
  const kick = readings.get('kick-frequency');
  const ofKicks = leaning('kickRhythm');
  const isKick = isOutside(kick, plausible['kick-frequency']);
  const on = (reading: Reading): boolean => isTimed(reading) || (isKick && ofKicks(reading));
  return [{ code: 'times-unusual', frames: [], on }];
}

/** A wave known to no better than this share of its size says so. Our default. */
const roughly = 0.1;

const isRough = (reading: Reading): boolean =>
  reading.status === 'computed' &&
  /^(undulation|harmonic-\d)-/.test(reading.id) &&
  (reading.interval.high - reading.interval.low) / 2 > roughly * reading.value;

/** Marks left out beside others, for all that is made from marks of their kinds. */
function markDoubts(context: BodyContext): readonly ScopedDoubt[] {
  const kindOf = new Map<string, EventKind>(context.events.map(({ event }) => [event.id, event.kind]));
  const own = context.markDoubts.map(
    (doubt): ScopedDoubt => ({
      code: doubt.code,
      frames: doubt.frames,
      on: (reading) => reading.status === 'computed' && hangsOn(doubt, kindOf)(reading),
    }),
  );
  const { marks, throughout } = turnsOf(context);
  if (throughout || marks.length === 0) return own;
  const frames = marks.map(({ event }) => event.frame);
  return [...own, { code: 'tops-bottoms-may-be-exchanged', frames, on: leaning('kickEnds') }];
}

/**
 * Which readings a mark that was left out makes doubtful. One moment marked twice is known but for the little between the two:
 * what is made of single moments hangs on which is right, a period or wave over many cycles does not. Where ends of kicks
 * may be exchanged, all that is made of them does, and of how often kicks come.
 */
function hangsOn(
  { code, kinds, isSlight }: KindDoubt,
  kindOf: ReadonlyMap<string, EventKind>,
): (reading: ComputedReading) => boolean {
  const made = ({ from }: ComputedReading): boolean =>
    from.eventIds.some((id) => kinds.includes(kindOf.get(id) as EventKind));
  if (isSlight) {
    const moments = leaning('handPhases', 'halfKicks', 'kickEnds');
    return (reading) => moments(reading) && made(reading);
  }
  if (code === 'marked-twice') return made;
  const rhythm = leaning('kickRhythm');
  return (reading) => made(reading) || rhythm(reading);
}

function handDoubts(context: BodyContext): readonly ScopedDoubt[] {
  const strokes = strokesOf(context.events);
  const wrong = strokes.flatMap(({ outOfOrder }) => outOfOrder);
  if (wrong.length === 0) return [];
  const frames = wrong.map(({ event }) => event.frame);
  return [{ code: 'hands-out-of-order', frames, on: leaning('handPhases') }];
}

/** Below this share of gaps that are whole strokes, marks of the hands are uneven. Our default. */
const evenShare = 0.6;

/** More kicks than this in a stroke: two strokes for one, most likely. Our default. */
const mostKicks = 3;

/** Hands that are in the water for less of the stroke than this: two strokes for one, most likely. Our default. */
const handsAtLeast = 0.5;

/** A stroke longer than people take, seconds, of which no more than these are marked, may be several. Our defaults. */
const longestStroke = 60 / plausible['stroke-rate'].low;
const fewStrokes = 2;

function strokeDoubts(context: BodyContext): readonly ScopedDoubt[] {
  const { card } = context.input.swim;
  const strokes = strokePlaces(context.events);
  const out: ScopedDoubt[] = [];
  if (strokes && strokes.share < evenShare)
    out.push({ code: 'marks-uneven', frames: [], on: leaning('strokeRhythm', 'kickRhythm') });
  const kicks = context.cycles?.base === 'stroke' ? context.cycles.kickHarmonic : strokes?.feet?.kicks;
  const { handsInWater = null } = strokes ?? {};
  const isLong = strokes !== null && strokes.strokes <= fewStrokes && strokes.typical > longestStroke;
  if (
    isLong ||
    strokes?.isContested ||
    (kicks !== undefined && kicks > mostKicks) ||
    (handsInWater !== null && handsInWater < handsAtLeast)
  )
    out.push({ code: 'strokes-may-be-missing', frames: [], on: leaning('strokeRhythm') });
  const isStroking = card.stroke === 'butterfly' && card.arms === 'stroking';
  if (context.cycles?.base === 'kick' && (isStroking || strokes))
    out.push({ code: 'strokes-may-be-missing', frames: [], on: leaning('cycleWaves', 'trunkLags') });
  return out;
}

function kickDoubts(context: BodyContext): readonly ScopedDoubt[] {
  const { cycles, events } = context;
  const missing = (...what: readonly LeansOn[]): readonly ScopedDoubt[] => [
    { code: 'kicks-may-be-missing', frames: [], on: leaning(...what) },
  ];
  const strokes = strokePlaces(events);
  if (strokes && strokes.marks.length > 0) {
    if (!strokes.feet) return [{ code: 'marks-uneven', frames: [], on: leaning('kickEnds', 'halfKicks') }];
    const { kicks } = strokes.feet;
    const halves = halfKicksMissing(context) ? missing('halfKicks') : [];
    if (cycles?.kicksToldBy !== 'toes' && areBunched(strokes.feet)) return missing('kickRhythm', 'halfKicks');
    if (cycles?.kicksToldBy === 'toes') return kicks < cycles.kickHarmonic ? missing('halfKicks') : halves;
    return kicks === 1 ? missing('kickRhythm', 'halfKicks') : halves;
  }
  if (cycles?.base === 'stroke') return cycles.kicksToldBy === 'nothing' ? missing('kickRhythm') : [];
  if (cycles?.kicksToldBy === 'toes') return [];
  const share = downShareOf(context);
  const isEven = share !== null && share >= downShare.low && share <= downShare.high;
  const gaps = (['kick-top', 'kick-bottom'] as const).map((kind) =>
    Math.max(0, eventsOf(events, kind).length - 1),
  );
  // two marks alone may have any number of kicks between them
  const isOneGap = (gaps[0] as number) + (gaps[1] as number) === 1;
  if (kickPeriod(context) === null) return loneHalfIsLong(events) ? missing('halfKicks') : [];
  if (share === null ? !isOneGap : isEven) return [];
  // cycles counted between these marks hold several kicks: waves that go once a kick are then read as another's
  return missing('kickRhythm', 'halfKicks', 'cycleWaves', 'kickSize');
}

/** Kicks of a stroke nearer to each other than this share of even distances leave room for kicks not marked. Our default. */
const evenlyApart = 0.72;

/** Whether kicks lie so near one another in the stroke that some may be missing in the rest of it. */
function areBunched({ kicks, places }: KickPlaces): boolean {
  return (['top', 'bottom'] as const).some((end) => {
    const at = places.filter((each) => each.end === end).map(({ place }) => place);
    return at.some((place, i) =>
      at.some(
        (other, j) => j > i && Math.abs(place - other - Math.round(place - other)) < evenlyApart / kicks,
      ),
    );
  });
}

/**
 * Whether a top and a bottom with no other kick beside them lie so far apart that three halves of a quick kick fit between:
 * then nothing tells that none was left out.
 */
function loneHalfIsLong(events: BodyContext['events']): boolean {
  const [top, bottom] = [eventsOf(events, 'kick-top')[0], eventsOf(events, 'kick-bottom')[0]];
  return !!top && !!bottom && Math.abs(top.time - bottom.time) > 1.5 / plausible['kick-frequency'].high;
}

/**
 * Where in the stroke the two kicks of butterfly usually begin and end, from the hands' entry on: with the hands' entry and
 * their pass under the shoulders, with the catch and shortly before the exit (gaps near zero: Chollet et al. 2006, Int J Sports Med
 * 27:322–329; places of the hands as in our drawn swims).
 */
const usualEnds = { top: [0, 0.47], bottom: [0.21, 0.69] } as const;

/** Ends of kicks must fit the other way round by this share of the stroke better, before they are doubted. Our default. */
const clearlyBetter = 0.05;

/** Tops where bottoms usually are, and the reverse, in strokes of two kicks. */
function endDoubts({ events }: BodyContext): readonly ScopedDoubt[] {
  const strokes = strokePlaces(events);
  const entry = eventsOf(events, 'entry')[0];
  if (strokes?.feet?.kicks !== 2 || !entry) return [];
  const { places } = strokes.feet;
  if (!alternate(places)) return [exchangedEnds];
  const offset = strokes.clock(entry.time);
  const far = (swapped: boolean): number => {
    const offs = places.map(({ end, place }) => {
      const usual = usualEnds[swapped === (end === 'top') ? 'bottom' : 'top'];
      return Math.min(...usual.map((at) => Math.abs(place - offset - at - Math.round(place - offset - at))));
    });
    return offs.reduce((sum, off) => sum + off, 0) / offs.length;
  };
  return far(true) > far(false) - clearlyBetter ? [] : [exchangedEnds];
}

const exchangedEnds: ScopedDoubt = {
  code: 'tops-bottoms-may-be-exchanged',
  frames: [],
  on: leaning('kickEnds'),
};

/** Whether tops and bottoms come by turns in the stroke; with more of one than of the other nothing is told. */
function alternate(places: KickPlaces['places']): boolean {
  const ends = [...places].sort((a, b) => a.place - b.place).map(({ end }) => end);
  const tops = ends.filter((end) => end === 'top').length;
  return 2 * tops !== ends.length || ends.every((end, i) => end !== ends[(i + 1) % ends.length]);
}

/** The wave down the body, where the points marked are of its lower or its upper half alone: it need not run alike there. */
function partOfBodyDoubts(context: BodyContext): readonly ScopedDoubt[] {
  if (context.input.swim.postures.length === 0) return [];
  const result = bodyWave(context);
  if (!result.ok || !result.wave.isOfHalf) return [];
  return [{ code: 'landmarks-missing-between', frames: [], on: leaning('bodyWave') }];
}

/** Share of the kick between a top and the next bottom, whole kicks between left out; null without such a pair. */
function downShareOf(context: BodyContext): number | null {
  const kick = kickPeriod(context);
  const seconds = downSeconds(eventsOf(context.events, 'kick-top'), eventsOf(context.events, 'kick-bottom'));
  return kick && !Number.isNaN(seconds) ? (seconds / kick.seconds) % 1 : null;
}
