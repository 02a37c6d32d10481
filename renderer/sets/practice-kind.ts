import { success } from '#core/host-contract/host-error';
import { type Practice, practiceSchema } from '#core/practice/practice-schema';
import type { KeptKind } from '../state/open-kept';

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
