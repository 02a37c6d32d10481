import { failure, success } from '#core/host-contract/host-error';
import type { placeOperations } from '#core/host-contract/operations/place-operations';
import type { HandlersOf, HostParts } from './handlers';
import { hostJobsWords } from '#core/words/host-jobs';

/** Where the program around the host can't do it, it is not allowed. */
export function placeHandlers({ surroundings }: HostParts): HandlersOf<typeof placeOperations> {
  const { pickPlace, openLibrary } = surroundings;
  return {
    'place/pick': async ({ wanted }) =>
      pickPlace
        ? success({ path: await pickPlace(wanted) })
        : failure('not-allowed', { name: hostJobsWords('systemsDialog') }),
    'library/switch': async ({ path }) =>
      openLibrary ? openLibrary(path) : failure('not-allowed', { name: path }),
  };
}
