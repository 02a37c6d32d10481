import { type HostError, type Result, success } from '#core/host-contract/host-error';
import type {
  CardChange,
  manySwimsOperations,
  SharedCard,
} from '#core/host-contract/operations/many-swims-operations';
import type { Swim } from '#core/swim-file/swim-schema';
import type { HandlersOf, HostParts } from './handlers';
import { hostJobsWords } from '#core/words/host-jobs';

type Failed = { id: string; error: HostError }[];

/** The fields of `card` that `asked` names, as they are. */
function sameFields(card: Swim['card'], asked: SharedCard): SharedCard {
  return Object.fromEntries(
    (Object.keys(asked) as (keyof SharedCard)[]).map((key) => [key, card[key]]),
  ) as SharedCard;
}

export function manySwimsHandlers({ shelf, jobs }: HostParts): HandlersOf<typeof manySwimsOperations> {
  const change = async ({ id, card }: CardChange): Promise<Result<CardChange>> => {
    const read = await shelf.read(id);
    if (!read.ok) return read;
    const { swim, revision } = read.value;
    const changed: Swim = {
      ...swim,
      changedAt: new Date().toISOString(),
      card: { ...swim.card, ...card } as Swim['card'],
    };
    const written = await shelf.write(changed, revision);
    return written.ok ? success({ id, card: sameFields(swim.card, card) }) : written;
  };
  const move = async (
    ids: readonly string[],
    one: (id: string) => Promise<Result<unknown>>,
  ): Promise<Result<{ done: string[]; failed: Failed }>> => {
    const done: string[] = [];
    const failed: Failed = [];
    for (const id of ids) {
      const moved = await one(id);
      if (moved.ok) done.push(id);
      else failed.push({ id, error: moved.error });
    }
    return success({ done, failed });
  };
  return {
    'swims/change': async ({ changes }) =>
      success({
        jobId: jobs.start(async (signal, report) => {
          const before: CardChange[] = [];
          const failed: Failed = [];
          for (const [at, asked] of changes.entries()) {
            // what is done is told, so that it can be undone; stopping half-way loses nothing
            if (signal.aborted) break;
            const done = await change(asked);
            if (done.ok) before.push(done.value);
            else failed.push({ id: asked.id, error: done.error });
            report(
              (at + 1) / changes.length,
              hostJobsWords('swims', { at: at + 1, changes: changes.length }),
            );
          }
          return success({ before, failed });
        }),
      }),
    'swims/remove': ({ ids }) => move(ids, (id) => shelf.remove(id)),
    'swims/restore': ({ ids }) => move(ids, (id) => shelf.restore(id)),
  };
}
