import { z } from 'zod';
import {
  aids,
  armPositions,
  efforts,
  idSchema,
  isoDaySchema,
  sidesUp,
  strokes,
} from '../swim-file/swim-schema';
import { conditionTagsSchema } from '../swim-file/condition-tags';

/** Version written by this build. A file with a larger number was written by a newer Submark. */
export const practiceFileVersion = 2;

const metres = z.number().positive().max(10_000);
/** Longest practice part that is timed here: six hours. Our own limit, against slips of the pen. */
const seconds = z.number().positive().max(21_600);
/** Of 100 m; our own limits, against slips of the pen. */
const paceSeconds = z.number().min(40).max(600);
const aidsSchema = z
  .array(z.enum(aids))
  .max(aids.length)
  .refine((list) => new Set(list).size === list.length, 'names an aid twice');

/** What is swum: the film's two strokes, or anything else (warm-up, loosening), which is only counted in metres. */
export const practiceStrokes = [...strokes, 'other'] as const;
export const patternArms = ['right', 'left', 'both'] as const;
export type PatternArm = (typeof patternArms)[number];

/** Runs of strokes in order: two right, two left, four both. */
export const patternRunsSchema = z
  .array(z.strictObject({ arm: z.enum(patternArms), count: z.number().int().min(1).max(50) }))
  .min(1)
  .max(12);

export const strokePatternSchema = z.strictObject({
  runs: patternRunsSchema,
  /** The pattern is swum once in so many metres; null: over and over until the wall, so that it implies no count. */
  perMetres: metres.nullable(),
});
export type StrokePattern = z.infer<typeof strokePatternSchema>;

/** Rungs, in the order swum. */
const ladderSchema = z.discriminatedUnion('of', [
  /** Rung n is one repeat of n × `stepMetres`: 1-2-3 by 25 is 25, 50, 75. */
  z.strictObject({
    of: z.literal('lengths'),
    rungs: z.array(z.number().int().min(1).max(40)).min(1).max(20),
    stepMetres: metres,
  }),
  /** Rung n is one repeat of n strokes right, n left, n both in the pattern's distance. */
  z.strictObject({
    of: z.literal('pattern'),
    rungs: z.array(z.number().int().min(1).max(50)).min(1).max(20),
  }),
  /** Rung n is one repeat at the item's target count plus n strokes. */
  z.strictObject({
    of: z.literal('count'),
    rungs: z.array(z.number().int().min(-20).max(50)).min(1).max(20),
  }),
]);
export type Ladder = z.infer<typeof ladderSchema>;

export const kickBetweenSchema = z.strictObject({
  metres,
  aids: aidsSchema,
  arms: z.enum(armPositions),
  sideUp: z.enum(sidesUp),
});

export const practiceItemSchema = z
  .strictObject({
    id: idSchema,
    /** Times through the repeat, or times through the whole ladder when there is one. */
    repeats: z.number().int().min(1).max(200),
    distanceMetres: metres,
    stroke: z.enum(practiceStrokes),
    /** A drill of the library or the coach's own; null for the plain stroke. */
    drillId: idSchema.nullable(),
    /** What the coach calls it, in the coach's own words. */
    words: z.string().max(200),
    sideUp: z.enum(sidesUp),
    arms: z.enum(armPositions),
    aids: aidsSchema,
    /** Goes under water beyond a plain push-off. Brings cautions; how far or how long is never written down. */
    underwater: z.boolean(),
    /** Position words for trials. */
    tags: conditionTagsSchema,
    /** Kick swum between one repeat and the next, so once less than there are repeats. */
    kickBetween: kickBetweenSchema.nullable(),
    /** Rest after each repeat, or the time from one start to the next; null when the coach says it on deck. */
    pause: z
      .discriminatedUnion('kind', [
        z.strictObject({ kind: z.literal('rest'), seconds }),
        z.strictObject({ kind: z.literal('send-off'), seconds }),
      ])
      .nullable(),
    pattern: strokePatternSchema.nullable(),
    /** A breath in every n strokes; null when it is left free. Said, never scored: fewer breaths are no aim. */
    breathingEvery: z.number().int().min(1).max(8).nullable(),
    /** Strokes to hold in one repeat. */
    targetCount: z.number().int().min(1).max(500).nullable(),
    effort: z.enum(efforts).nullable(),
    ladder: ladderSchema.nullable(),
    /** Who swims it; null for everyone of the practice. */
    swimmerIds: z.array(idSchema).max(200).nullable(),
    note: z.string().max(2000),
  })
  .refine((item) => !(item.underwater && item.ladder?.of === 'lengths'), {
    message: 'an underwater item can not grow its distance',
    path: ['ladder'],
  })
  .refine((item) => item.ladder?.of !== 'count' || item.targetCount !== null, {
    message: 'a ladder of counts needs a target count to start from',
    path: ['targetCount'],
  })
  .refine(
    (item) =>
      item.ladder?.of !== 'count' || item.ladder.rungs.every((rung) => rung + (item.targetCount ?? 1) > 0),
    { message: 'a rung asks for less than one stroke', path: ['ladder'] },
  );
export type PracticeItem = z.infer<typeof practiceItemSchema>;

/** What was logged of one repeat of one swimmer. */
const logEntrySchema = z.strictObject({
  id: idSchema,
  itemId: idSchema,
  /** Place among the item's repeats with ladders unfolded, from 0. */
  repeat: z.number().int().nonnegative().max(100_000),
  swimmerId: idSchema.nullable(),
  /** Strokes counted over the whole repeat. */
  count: z.number().int().nonnegative().max(2000).nullable(),
  timeSeconds: seconds.nullable(),
  effort: z.enum(efforts).nullable(),
  note: z.string().max(1000),
  /** The film of this repeat. */
  swimId: idSchema.nullable(),
});
export type LogEntry = z.infer<typeof logEntrySchema>;

const distinct = (list: readonly { readonly id: string }[]): boolean =>
  new Set(list.map(({ id }) => id)).size === list.length;

export const practiceSchema = z
  .strictObject({
    format: z.literal('submark-practice'),
    version: z.literal(practiceFileVersion),
    id: idSchema,
    createdAt: z.iso.datetime(),
    changedAt: z.iso.datetime(),
    date: isoDaySchema,
    title: z.string().max(200),
    /** Length of the pool, metres. */
    poolMetres: z.number().positive().max(200),
    swimmerIds: z.array(idSchema).max(200),
    /** Seconds for 100 m that repeats without a send-off are reckoned at; null: the assumed ones. */
    pace: z.strictObject({ swim: paceSeconds, kick: paceSeconds }).nullable(),
    note: z.string().max(4000),
    /** True for demo practices of an invented squad. */
    invented: z.boolean(),
    items: z.array(practiceItemSchema).max(200),
    log: z.array(logEntrySchema).max(20_000),
  })
  .refine((practice) => distinct(practice.items), { message: 'two items share an id', path: ['items'] })
  .refine((practice) => distinct(practice.log), { message: 'two log entries share an id', path: ['log'] });
export type Practice = z.infer<typeof practiceSchema>;
