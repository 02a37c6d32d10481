import { useEffect } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import { openedFiles, takeOpenedFiles } from '../ui/opened-files';
import type { Say } from '../ui/notices';
import type { HostClient } from '../host/host-client';
import type { AddQueue } from './use-adding';
import { type BundleAtPlace, isBundle } from './use-bundles';

const nameOf = (path: string): string => path.split(/[/\\]/).at(-1) ?? path;

/** Takes the files that were opened with Submark: bundles are checked, clips are looked at where they lie and copied. */
export function useOpenedFiles(
  host: HostClient,
  takeBundles: (bundles: readonly BundleAtPlace[]) => void,
  addClip: AddQueue['addReferred'],
  say: Say,
): void {
  useEffect(() => {
    const take = async (): Promise<void> => {
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
    };
    void take();
    return openedFiles.subscribe(() => void take());
  }, [host, takeBundles, addClip, say]);
}
