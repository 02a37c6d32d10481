import { type Result, success } from '#core/host-contract/host-error';
import type { DrillBook } from '#core/practice/drill-file';
import type { HostClient } from '../host/host-client';

/**
 * Changes the coach's drills on disk: reads them fresh, so that what another window wrote meanwhile stays, and tries
 * once more when they changed between reading and writing.
 */
export async function changeDrills(
  host: Pick<HostClient, 'call'>,
  change: (book: DrillBook) => DrillBook,
): Promise<Result<DrillBook>> {
  for (let tries = 0; ; tries++) {
    const read = await host.call('drills/read', {});
    if (!read.ok) return read;
    const book = change(read.value.book);
    const written = await host.call('drills/write', { book, baseRevision: read.value.revision });
    if (written.ok) return success(book);
    if (written.error.code !== 'conflict' || tries > 0) return written;
  }
}
