import { success } from '#core/host-contract/host-error';
import { type Practice, practiceSchema } from '#core/practice/practice-schema';
import type { OperationOutput } from '#core/host-contract/operations';
import type { KeptKind } from '../state/open-kept';
import type { ListedKind } from '../state/use-kept-list';

/** Practices, as the host keeps them. */
export const practiceKind: KeptKind<Practice> = {
  prefix: 'submark-unsaved-practice-',
  schema: practiceSchema,
  read: async (host, id) => {
    const read = await host.call('practice/read', { id });
    return read.ok ? success({ value: read.value.practice, revision: read.value.revision }) : read;
  },
  write: (host, practice, baseRevision) => host.call('practice/write', { practice, baseRevision }),
};

/** All of them, with their bin. */
export const practiceListing: ListedKind<OperationOutput<'practice/list'>> = {
  list: (host) => host.call('practice/list', {}),
  remove: (host, id) => host.call('practice/remove', { id }),
  restore: (host, id) => host.call('practice/restore', { id }),
  backWords: 'The practice is back.',
};
