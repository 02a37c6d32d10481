import type { BodyContext } from '../measures/body/context/body-context';
import { computeReadings } from '../measures/compute-readings';
import { onlyStrokes, strokesOf, type Stroke } from '../measures/events/strokes';
import { timingReadings } from '../measures/events/timing';
import { catalogue } from '../measures/families';
import type { ComputedReading, Reading, ReadingDefinition } from '../measures/reading';
import { neverCompared } from '../measures/never-compared';
import type { Scene } from '../swim-file/swim-schema';
import { type ReadingDifference, readingDifference } from './difference';
import { forbidVerdict, type Unlike, unlikeCards } from './like-with-like';
import { keptWith } from '../units/kept-with';
import { comparisonWords } from '../words/comparison';

/** Which strokes a row is of: breathing strokes are compared with breathing ones, others with others. */
export type StrokeChoice = 'all' | 'breathing' | 'not-breathing';

export type PairVerdict =
  /** The difference is real, or it may be the marking. */
  | 'clear'
  | 'within-error'
  /** Not like with like: no verdict. */
  | 'unlike'
  /** Measured in different units, as in metres and in pixels. */
  | 'other-unit'
  /** One of the two can't be computed. */
  | 'missing';

export interface PairRow {
  readonly definition: ReadingDefinition;
  readonly strokes: StrokeChoice;
  readonly first: Reading;
  readonly second: Reading;
  /** Second minus first; null when there is none to be had. */
  readonly difference: ReadingDifference | null;
  readonly verdict: PairVerdict;
  /** Why there is no verdict, when it is `unlike`. */
  readonly because: readonly Unlike[];
}

export interface PairTable {
  /** In what the two are not alike, to be said whatever the rows show. */
  readonly unlike: readonly Unlike[];
  /** Whether the scale of both is one measurement, whose error falls out of a difference. */
  readonly sameSetUp: boolean;
  /** In the catalogue's order; rows that neither swim has are left out. */
  readonly rows: readonly PairRow[];
}

/** Timing is of single strokes, where a breath changes what is swum. */
const splitByBreath = (definition: ReadingDefinition): boolean =>
  definition.group === 'timing' && !/breathing/.test(definition.id);

/** A phase goes round: it has no difference on a line. */
const isPhase = ({ id }: ReadingDefinition): boolean => id.startsWith('harmonic-phase-');

interface Measured {
  readonly context: BodyContext;
  readonly all: ReadonlyMap<string, Reading>;
  readonly strokes: readonly Stroke[];
}

/**
 * Two swims reading by reading: second minus first with its 95 % interval from marking. Like with like is enforced:
 * where aids, drill, arms or side differ there is no verdict, another view gives none on lengths and angles, and timing
 * compares breathing strokes with breathing ones, never a mix. What only measures how long or how far a swimmer stays
 * under water is not compared at all.
 */
export function pairTable(firstContext: BodyContext, secondContext: BodyContext): PairTable {
  const first = measured(firstContext);
  const second = measured(secondContext);
  const cards = unlikeCards(firstContext.input.swim.card, secondContext.input.swim.card);
  const choices = strokeChoices(first.strokes, second.strokes);
  const breath = choices.length === 0 ? [unlikeBreathing(first.strokes)] : [];
  const sameSetUp = isSameSetUp(firstContext.input.swim.scene, secondContext.input.swim.scene);
  const rows = catalogue.flatMap((definition): PairRow[] => {
    if (neverCompared(definition.id) || isPhase(definition)) return [];
    const split = splitByBreath(definition);
    return (split && choices.length > 0 ? choices : ['all' as const]).flatMap((strokes) => {
      const a = readingOf(first, definition.id, strokes);
      const b = readingOf(second, definition.id, strokes);
      if (!a || !b || (a.status === 'missing' && b.status === 'missing')) return [];
      const unlike = [...cards, ...(split ? breath : [])];
      return [{ definition, strokes, first: a, second: b, ...judged(a, b, sameSetUp, unlike) }];
    });
  });
  return { unlike: [...cards, ...breath], sameSetUp, rows };
}

function judged(
  first: Reading,
  second: Reading,
  sameSetUp: boolean,
  unlike: readonly Unlike[],
): Pick<PairRow, 'difference' | 'verdict' | 'because'> {
  if (first.status === 'missing' || second.status === 'missing')
    return { difference: null, verdict: 'missing', because: [] };
  const difference = readingDifference(first, second, sameSetUp);
  if (!difference) return { difference, verdict: 'other-unit', because: [] };
  const because = forbidVerdict(unlike, leansOnBodyLines(first) || leansOnBodyLines(second));
  return { difference, verdict: because.length > 0 ? 'unlike' : difference.verdict, because };
}

const leansOnBodyLines = (reading: ComputedReading): boolean => reading.from.postureFrames.length > 0;

function measured(context: BodyContext): Measured {
  const all = new Map(computeReadings(context).map((reading) => [reading.id, reading]));
  return { context, all, strokes: strokesOf(context.events) };
}

const breathes = (stroke: Stroke): boolean => stroke.breath !== null;

/**
 * The kinds of stroke both swims have, to be compared one by one. One choice, `all`, where neither has a breath marked or
 * neither has strokes; none where one swim has only breathing strokes and the other only others.
 */
function strokeChoices(first: readonly Stroke[], second: readonly Stroke[]): readonly StrokeChoice[] {
  const both = [...first, ...second];
  if (first.length === 0 || second.length === 0) return ['all'];
  if (both.every((stroke) => !breathes(stroke)) || both.every(breathes)) return ['all'];
  const choices: StrokeChoice[] = [];
  if (first.some(breathes) && second.some(breathes)) choices.push('breathing');
  if (!first.every(breathes) && !second.every(breathes)) choices.push('not-breathing');
  return choices;
}

function unlikeBreathing(first: readonly Stroke[]): Unlike {
  const words = [comparisonWords('breathingStrokes'), comparisonWords('strokesWithoutBreath')] as const;
  const [a, b] = first.every(breathes) ? words : ([words[1], words[0]] as const);
  return { kind: 'breathing', first: a, second: b };
}

const chosen = keptWith((_: BodyContext) => new Map<StrokeChoice, ReadonlyMap<string, Reading>>());

function readingOf({ context, all }: Measured, id: string, strokes: StrokeChoice): Reading | undefined {
  if (strokes === 'all') return all.get(id);
  const known = chosen(context);
  const found = known.get(strokes);
  if (found) return found.get(id);
  const events = onlyStrokes(context.events, (stroke) => breathes(stroke) === (strokes === 'breathing'));
  const readings = new Map(
    timingReadings({ ...context, events }).map((reading) => [reading.id, reading] as const),
  );
  known.set(strokes, readings);
  return readings.get(id);
}

/** Whether two scenes hold the very same measured length, as copied from swim to swim or of one swim. */
function isSameSetUp(first: Scene, second: Scene): boolean {
  if (!first.scale || !second.scale) return false;
  const text = ({ line, metres, metresSd }: NonNullable<Scene['scale']>): string =>
    JSON.stringify([line.a.x, line.a.y, line.b.x, line.b.y, metres, metresSd]);
  return text(first.scale) === text(second.scale);
}
