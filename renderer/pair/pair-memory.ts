import { z } from 'zod';
import { layPoints } from '#core/compare/lay-body-line';
import { pairModes } from '#core/compare/pair-clock';
import { idSchema, type Swim } from '#core/swim-file/swim-schema';
import { frameCount } from '#core/timeline/frame-table';
import { clockOf } from '../open-swim/open-swim';
import { createKeyedJournal, type KeyedText } from '../documents/keyed-journal';
import type { Each, PairView, PairViewStore } from './pair-view';

const frame = z.number().int().nonnegative();
const each = <T extends z.ZodType>(one: T) => z.tuple([one, one]);
const lock = z.discriminatedUnion('on', [
  z.strictObject({ on: z.literal('event'), id: idSchema }),
  z.strictObject({ on: z.literal('frame'), frame }),
]);

/** How a pair was last looked at on this computer: what the two swims are locked on, and how they run. */
const pairMemorySchema = z.strictObject({
  ids: each(idSchema),
  mode: z.enum(pairModes),
  locks: each(lock),
  stretches: each(z.strictObject({ first: frame, last: frame })),
  mirrored: each(z.boolean()),
  sameLength: z.boolean(),
  lay: z.enum(layPoints).nullable(),
  /** The frames shown. */
  frames: each(frame),
});
type PairMemory = z.infer<typeof pairMemorySchema>;

const journal = (storage: KeyedText) =>
  createKeyedJournal(storage, 'submark-pair-', pairMemorySchema, ({ ids }) => ids.join(' '));

/** A lock or stretch that the swim does not have any more gives way to the one to begin with. */
function stillThere(memory: PairMemory, swims: Each<Swim>, begin: Pick<PairView, 'locks' | 'stretches'>) {
  const of = <T>(make: (which: 0 | 1) => T): Each<T> => [make(0), make(1)];
  const last = (which: 0 | 1): number => frameCount(clockOf(swims[which]).table) - 1;
  return {
    locks: of((which) => {
      const kept = memory.locks[which];
      const there =
        kept.on === 'frame'
          ? kept.frame <= last(which)
          : swims[which].events.some(({ id }) => id === kept.id);
      return there ? kept : begin.locks[which];
    }),
    stretches: of((which) => {
      const kept = memory.stretches[which];
      return kept.first < kept.last && kept.last <= last(which) ? kept : begin.stretches[which];
    }),
    frames: of((which) => Math.min(memory.frames[which], last(which))),
  };
}

/** What is to be shown of a pair opened again; null when it was never open here. */
export function rememberedPair(
  storage: KeyedText,
  swims: Each<Swim>,
  begin: Pick<PairView, 'locks' | 'stretches'>,
):
  | (Pick<PairView, 'mode' | 'locks' | 'stretches' | 'mirrored' | 'sameLength' | 'lay'> & {
      readonly frames: Each<number>;
    })
  | null {
  const memory = journal(storage).read(`${swims[0].id} ${swims[1].id}`);
  if (!memory) return null;
  const { mode, mirrored, sameLength, lay } = memory;
  return { mode, mirrored, sameLength, lay, ...stillThere(memory, swims, begin) };
}

/**
 * Keeps how a pair is looked at, so that a reload or another day begins where the coach was. It is this computer's view
 * and no mark: where the storage is full or forbidden, it is not kept.
 */
export function keepPair(
  storage: KeyedText,
  ids: Each<string>,
  view: PairViewStore,
  framesShown: () => Each<number>,
): void {
  const { mode, locks, stretches, mirrored, sameLength, lay } = view.getState();
  const [first, second] = framesShown();
  journal(storage).keep({
    ids: [...ids],
    mode,
    locks: [...locks],
    stretches: [{ ...stretches[0] }, { ...stretches[1] }],
    mirrored: [...mirrored],
    sameLength,
    lay,
    frames: [first, second],
  });
}
