import { success } from '#core/host-contract/host-error';
import { type Trial, trialSchema } from '#core/practice/trial-schema';
import type { KeptKind } from '../state/open-kept';

/** Trials, as the host keeps them. */
export const trialKind: KeptKind<Trial> = {
  prefix: 'submark-unsaved-trial-',
  schema: trialSchema,
  read: async (host, id) => {
    const read = await host.call('trial/read', { id });
    return read.ok ? success({ value: read.value.trial, revision: read.value.revision }) : read;
  },
  write: (host, trial, baseRevision) => host.call('trial/write', { trial, baseRevision }),
};
