import { z } from 'zod';
import { eventKinds } from '#core/marks/event-kind';
import { landmarkNames } from '#core/marks/landmark';
import type { RemarkingAnswer } from '#core/uncertainty/remarking-entries';
import type { RemarkingItem } from '#core/uncertainty/remarking-plan';
import { createKeyedJournal, type KeyedJournal, type KeyedText } from '../documents/keyed-journal';

const frame = z.number().int().nonnegative();
const point = z.object({ x: z.number(), y: z.number() });
const itemSchema = z.discriminatedUnion('of', [
  z.object({
    of: z.literal('event'),
    eventId: z.string(),
    kind: z.enum(eventKinds),
    hand: z.enum(['left', 'right']).nullable(),
    frame,
    first: frame,
    last: frame,
  }),
  z.object({
    of: z.enum(['marked', 'followed']),
    frame,
    points: z.array(point.extend({ landmark: z.enum(landmarkNames) })),
  }),
]);
const answerSchema = z.union([
  z.object({ frame }),
  z.object({ points: z.partialRecord(z.enum(landmarkNames), point) }),
]);
const passSchema = z.object({
  swimId: z.string(),
  items: z.array(itemSchema),
  answers: z.array(z.object({ answer: answerSchema, on: z.iso.datetime() }).nullable()),
});

/** A pass under way: what is to be marked again, and what was said so far, in the same order; null: skipped. */
export interface RemarkingPass {
  readonly swimId: string;
  readonly items: readonly RemarkingItem[];
  readonly answers: readonly ({ readonly answer: RemarkingAnswer; readonly on: string } | null)[];
}

/** Keeps a pass that was left, so that it can go on another day; one a swim, in the window's own storage. */
export const createRemarkingJournal = (storage: KeyedText): KeyedJournal<RemarkingPass> =>
  createKeyedJournal<RemarkingPass>(storage, 'submark-remarking-', passSchema, ({ swimId }) => swimId);
