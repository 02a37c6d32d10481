import { z } from 'zod';
import { eventKinds } from '../marks/event-kind';
import { landmarkNames } from '../marks/landmark';
import { idSchema, type SwimCard, views } from '../swim-file/swim-schema';
import { definitionOn } from './definition-on';
import { doubtCodes } from './doubt';
import { doubtWords } from './doubt-words';
import { isDoubtful } from './doubtful';
import { catalogue } from './families';
import {
  contradictions,
  type MissingReason,
  neededReadings,
  type Reading,
  type ReadingNote,
  type ReadingUnit,
  readingGroups,
  type SceneItem,
} from './reading';
import { noteWords, reasonWords } from './reason-words';
import { measuresWords } from '../words/measures';

/** Version of what the readings command writes as JSON. It goes up when a field changes its meaning or goes. */
const readingsDocumentVersion = 2;

const units = [
  'Hz',
  '1/min',
  's',
  'ms',
  '%',
  'm',
  'L',
  'px',
  '%L',
  'm/s',
  'L/s',
  'px/s',
  '°',
  'count',
  'ratio',
  'm²/s',
] as const satisfies readonly ReadingUnit[];

const sceneItems = [
  'travel',
  'level',
  'surface',
  'scale',
  'plane',
  'straights',
] as const satisfies readonly SceneItem[];

const notes = [
  'few-cycles',
  'few-pictures',
  'marking-error-assumed',
  'marking-error-part-assumed',
  'kick-pairing-uneven',
  'slowdown-assumed',
  'implausible-for-a-human',
  'approximate-for-children',
  'short-ends',
  'hip-not-centre-of-mass',
  'level-assumed',
  'beyond-15-m',
  'few-pairs',
  'sparse-trace',
  'points-outside-picture',
  'not-reviewed',
  'scale-off-plane',
  'scale-across-lane',
  'off-plane-corrected',
  'size-changes',
  'camera-carried',
  'camera-turned',
  'camera-not-looked-at',
  'camera-loose',
  'straights-unfit',
  'plane-unfit',
] as const satisfies readonly ReadingNote[];

const degenerate = [
  'equal-times',
  'zero-speed',
  'collinear',
  'zero-length',
  'speed-above-wave',
  'other-way',
] as const;
const counts = { have: z.number().int().nonnegative(), need: z.number().int().positive(), words: z.string() };
const words = { words: z.string() };

const reasonSchema = z.discriminatedUnion('code', [
  z.strictObject({ code: z.literal('needs-events'), kind: z.enum(eventKinds), ...counts }),
  z.strictObject({ code: z.literal('needs-landmark'), landmark: z.enum(landmarkNames), ...counts }),
  z.strictObject({
    code: z.literal('needs-scene'),
    item: z.enum(['travel', 'level', 'surface', 'scale']),
    ...words,
  }),
  z.strictObject({
    code: z.literal('needs-landmark-at'),
    landmark: z.enum(landmarkNames),
    kind: z.enum(eventKinds),
    ...words,
  }),
  z.strictObject({ code: z.literal('needs-body-length'), ...words }),
  z.strictObject({ code: z.literal('needs-still-thing'), ...words }),
  z.strictObject({ code: z.literal('camera-turned'), ...words }),
  z.strictObject({ code: z.literal('seen-not-proved'), ...words }),
  z.strictObject({ code: z.literal('view-cannot-show'), view: z.enum(views), ...words }),
  z.strictObject({ code: z.literal('lies-on-side'), ...words }),
  z.strictObject({ code: z.literal('needs-full-cycles'), ...counts }),
  z.strictObject({ code: z.literal('not-for-this-drill'), ...words }),
  z.strictObject({ code: z.literal('needs-denser-trace'), landmark: z.enum(landmarkNames), ...words }),
  z.strictObject({ code: z.literal('needs-reading'), reading: z.enum(neededReadings), ...words }),
  z.strictObject({
    code: z.literal('outside-picture'),
    landmark: z.enum(landmarkNames),
    frames: z.number().int().positive(),
    ...words,
  }),
  z.strictObject({
    code: z.literal('needs-event-beside'),
    kind: z.enum(eventKinds),
    side: z.enum(['before', 'after']),
    of: z.enum(eventKinds),
    ...words,
  }),
  z.strictObject({
    code: z.literal('marks-contradict'),
    what: z.enum(contradictions),
    frames: z.array(z.number().int().nonnegative()).describe('of the marks to look at'),
    ...words,
  }),
  z.strictObject({ code: z.literal('degenerate'), what: z.enum(degenerate), ...words }),
]);

const intervalSchema = z
  .strictObject({
    low: z.number(),
    high: z.number(),
    question: z.enum(['this-swim', 'this-swimmer']).describe(measuresWords('swimMarkingScale')),
  })
  .describe('95 % interval');

const told = {
  id: z.string(),
  group: z.enum(readingGroups),
  label: z.string(),
  definition: z.string(),
  source: z.string(),
};

const computedSchema = z.strictObject({
  status: z.literal('computed'),
  ...told,
  value: z.number(),
  unit: z.enum(units).describe(measuresWords('lBodyLengths')),
  interval: intervalSchema,
  otherInterval: intervalSchema.nullable(),
  sharedVariance: z.number().nonnegative().describe(measuresWords('partVarianceEvery')),
  ownVariance: z.number().nonnegative().describe('part of the variance that is this swim’s own, unit²'),
  freedom: z.number().positive().optional().describe(measuresWords('degreesFreedomThose')),
  cycles: z.number().int().nonnegative(),
  followed: z.number().int().nonnegative().describe('points it was read from that the machine followed'),
  perCycle: z.array(
    z.strictObject({
      value: z.number(),
      fromFrame: z.number().int().nonnegative(),
      toFrame: z.number().int().nonnegative(),
    }),
  ),
  singles: z
    .strictObject({
      of: z.enum(['cycles', 'body-lines']),
      count: z.number().int().min(2),
      sd: z.number().nonnegative(),
    })
    .nullable()
    .describe(measuresWords('sampleStandardDeviation')),
  from: z.strictObject({
    eventIds: z.array(idSchema),
    postureFrames: z.array(z.number().int().nonnegative()),
    sceneItems: z.array(z.enum(sceneItems)),
  }),
  doubtful: z.boolean().describe(measuresWords('whetherAnythingSpeaks')),
  notes: z.array(z.strictObject({ code: z.enum(notes), words: z.string() })),
  doubts: z
    .array(
      z.strictObject({
        code: z.enum(doubtCodes),
        words: z.string(),
        frames: z.array(z.number().int().nonnegative()).describe('of the marks to look at'),
      }),
    )
    .describe(measuresWords('whyValueMayWrong')),
});

const missingSchema = z.strictObject({
  status: z.literal('missing'),
  ...told,
  reasons: z.array(reasonSchema).min(1),
});

/** What `npm run readings -- <swim> --json` writes. */
export const readingsDocumentSchema = z.strictObject({
  format: z.literal('submark-readings'),
  version: z.literal(readingsDocumentVersion),
  swim: idSchema,
  readings: z.array(z.discriminatedUnion('status', [computedSchema, missingSchema])),
});
export type ReadingsDocument = z.infer<typeof readingsDocumentSchema>;

/** Every reading of a swim as a document for other programs, with its words; one entry for each of the catalogue. */
export function readingsDocument(
  swim: { readonly id: string; readonly card: Pick<SwimCard, 'sideUp'> },
  readings: readonly Reading[],
): ReadingsDocument {
  const definitions = new Map(catalogue.map((each) => [each.id, definitionOn(each, swim.card)]));
  return {
    format: 'submark-readings',
    version: readingsDocumentVersion,
    swim: swim.id,
    readings: readings.map((reading) => {
      const definition = definitions.get(reading.id);
      if (!definition) throw new Error(`no definition of ${reading.id}`);
      const { id, group, label, definition: what, source } = definition;
      const told = { id, group, label, definition: what, source };
      if (reading.status === 'missing')
        return { status: 'missing', ...told, reasons: reading.reasons.map(reasonTold) };
      const { status: _, id: __, from, notes: codes, doubts, perCycle, ...rest } = reading;
      return {
        status: 'computed',
        ...told,
        ...rest,
        perCycle: perCycle.map((each) => ({ ...each })),
        from: {
          eventIds: [...from.eventIds],
          postureFrames: [...from.postureFrames],
          sceneItems: [...from.sceneItems],
        },
        doubtful: isDoubtful(reading),
        notes: codes.map((code) => ({ code, words: noteWords(code) })),
        doubts: doubts.map((doubt) => ({
          code: doubt.code,
          words: doubtWords(doubt),
          frames: [...doubt.frames],
        })),
      };
    }),
  };
}

function reasonTold(reason: MissingReason) {
  const words = reasonWords(reason);
  return reason.code === 'marks-contradict'
    ? { ...reason, frames: [...reason.frames], words }
    : { ...reason, words };
}
