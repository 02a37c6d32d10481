import { useEffect } from 'react';
import { openedFiles } from '../ui/opened-files';
import type { Say } from '../ui/notices';
import type { HostClient } from '../host/host-client';
import { handOutOpenedFiles, type OpenedFilesGo } from './hand-out-opened-files';

/** While the shelf is shown, it takes the files that are opened with Submark, those first that waited for it. */
export function useOpenedFiles(
  host: HostClient,
  takeBundles: OpenedFilesGo['takeBundles'],
  addClip: OpenedFilesGo['addClip'],
  say: Say,
): void {
  useEffect(() => {
    const take = (): void => void handOutOpenedFiles(host, { takeBundles, addClip, say });
    take();
    return openedFiles.subscribe(take);
  }, [host, takeBundles, addClip, say]);
}
