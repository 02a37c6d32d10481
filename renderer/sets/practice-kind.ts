import { success } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import { type Practice, practiceSchema } from '#core/practice/practice-schema';
import type { KeptKind } from '../documents/open-kept';
import type { ListedKind } from '../documents/use-kept-list';
import { setsWords } from '#core/words/sets';

/** Practices, as the host keeps them. */
export const practiceKind: KeptKind<Practice> = {
  prefix: 'submark-unsaved-practice-',
  schema: practiceSchema,
  read: async (host, id) => {
    const read = await host.call('practice/read', { id });
    if (!read.ok) return read;
    const { practice, ...rest } = read.value;
    return success({ value: practice, ...rest });
  },
  write: (host, practice, baseRevision, lineage) =>
    host.call('practice/write', { practice, baseRevision, ...(lineage && { lineage }) }),
};

/** All of them, with their bin. */
export const practiceListing: ListedKind<OperationOutput<'practice/list'>> = {
  list: (host) => host.call('practice/list', {}),
  remove: (host, id) => host.call('practice/remove', { id }),
  restore: (host, id) => host.call('practice/restore', { id }),
  backWords: setsWords('practiceBack'),
};
