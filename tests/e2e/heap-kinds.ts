import type { CDPSession } from '@playwright/test';
import { z } from 'zod';

/** The parts of a page's heap, MB: what the engine compiled, what the browser itself holds for the page, and the app's own. */
export interface HeapKinds {
  readonly compiledMb: number;
  readonly browserMb: number;
  readonly ownMb: number;
}

/** Chromium's heap snapshot, as far as it is read here. */
const snapshotSchema = z.object({
  snapshot: z.object({
    meta: z.object({
      node_fields: z.array(z.string()),
      node_types: z.tuple([z.array(z.string())]).rest(z.unknown()),
    }),
  }),
  nodes: z.array(z.number()),
});

/**
 * Looks at everything on a page's heap once, after a collection. The whole of it grows while the engine still compiles what
 * runs often: only apart can it be told whether the app keeps anything.
 */
export async function heapKinds(session: CDPSession): Promise<HeapKinds> {
  const parts: string[] = [];
  const hear = ({ chunk }: { chunk: string }): void => {
    parts.push(chunk);
  };
  session.on('HeapProfiler.addHeapSnapshotChunk', hear);
  await session.send('HeapProfiler.collectGarbage');
  await session.send('HeapProfiler.takeHeapSnapshot', { reportProgress: false });
  session.off('HeapProfiler.addHeapSnapshotChunk', hear);
  const { snapshot, nodes } = snapshotSchema.parse(JSON.parse(parts.join('')));
  const { node_fields: fields, node_types: types } = snapshot.meta;
  const [typeAt, sizeAt] = [fields.indexOf('type'), fields.indexOf('self_size')];
  const bytes = { compiled: 0, browser: 0, own: 0 };
  for (let at = 0; at < nodes.length; at += fields.length) {
    const type = types[0][nodes[at + typeAt] ?? 0];
    const kind = type === 'code' ? 'compiled' : type === 'native' ? 'browser' : 'own';
    bytes[kind] += nodes[at + sizeAt] ?? 0;
  }
  return {
    compiledMb: bytes.compiled / 2 ** 20,
    browserMb: bytes.browser / 2 ** 20,
    ownMb: bytes.own / 2 ** 20,
  };
}
