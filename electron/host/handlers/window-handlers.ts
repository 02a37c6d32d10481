import { failure, success } from '#core/host-contract/host-error';
import type { windowOperations } from '#core/host-contract/operations/window-operations';
import type { HandlersOf, HostParts } from './handlers';
import { hostJobsWords } from '#core/words/host-jobs';

/** Where the page is in a browser's window, there is no window of ours to tell. */
export function windowHandlers({ surroundings: { window } }: HostParts): HandlersOf<typeof windowOperations> {
  const none = failure('not-allowed', { name: hostJobsWords('window') });
  return {
    'window/show': async (face) => {
      if (!window) return none;
      window.show(face);
      return success({});
    },
    'window/next': async ({ after }) =>
      window ? success({ requests: [...(await window.next(after))] }) : none,
  };
}
