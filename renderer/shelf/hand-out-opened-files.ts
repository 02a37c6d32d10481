import { errorWords } from '#core/host-contract/error-words';
import { takeOpenedFiles } from '../ui/opened-files';
import type { Say } from '../ui/notices';
import type { HostClient } from '../host/host-client';
import type { AddQueue } from './use-adding';
import { type BundleAtPlace, isBundle } from './use-bundles';

const nameOf = (path: string): string => path.split(/[/\\]/).at(-1) ?? path;

/** Where files that were opened with Submark go. */
export interface OpenedFilesGo {
  readonly takeBundles: (bundles: readonly BundleAtPlace[]) => void;
  readonly addClip: AddQueue['addReferred'];
  readonly say: Say;
}

/**
 * Takes the files that were opened with Submark and wait: bundles are checked, clips are looked at where they lie and
 * copied. What can't be read is said.
 */
export async function handOutOpenedFiles(
  host: Pick<HostClient, 'call'>,
  { takeBundles, addClip, say }: OpenedFilesGo,
): Promise<void> {
  const all = takeOpenedFiles().map((path) => ({ path, name: nameOf(path) }));
  const bundles = all.filter(isBundle);
  if (bundles.length > 0) takeBundles(bundles);
  for (const { path } of all.filter((each) => !isBundle(each))) {
    const found = await host.call('clip/refer', { path });
    if (found.ok) addClip(found.value, true);
    else {
      const { what, todo } = errorWords(found.error);
      say(`${what} ${todo}`);
    }
  }
}
