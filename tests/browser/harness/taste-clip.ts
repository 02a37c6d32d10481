import type { ClipFacts } from '../../../renderer/video/frame-source';
import { openFrameSource } from '../../../renderer/video/open-frame-source';
import { PictureLost } from '../../../renderer/video/picture-lost';
import { readClipFacts } from '../../../renderer/video/read-clip-facts';
import { newSwim } from '../../../renderer/shelf/new-swim';
import { aCard } from '../../renderer/a-summary';
import type { Result } from '#core/host-contract/host-error';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';

/** What came of a strange file; `trouble` is a promise broken. */
export interface Tasted {
  readonly facts: Result<Pick<ClipFacts, 'container' | 'codec'>>;
  readonly trouble: string | null;
  readonly took: number;
}

const never = new AbortController().signal;

/** Reads a clip's facts as the shelf does, writes and reads a swim of it, and looks at its first and last picture. */
export async function tasteClip(address: string): Promise<Tasted> {
  const began = performance.now();
  const facts = await readClipFacts({ address }, never);
  const trouble = facts.ok ? ((await troubleOf(facts.value)) ?? (await show(address, facts.value))) : null;
  const told = facts.ok
    ? { ok: true as const, value: { container: facts.value.container, codec: facts.value.codec } }
    : facts;
  return { facts: told, trouble, took: performance.now() - began };
}

function troubleOf(facts: ClipFacts): string | null {
  const clip = { clipId: 'a', name: 'a.mp4', fingerprint: { bytes: 1, edgesSha256: 'a'.repeat(64) } };
  const swim = newSwim({
    ...{
      id: 'swim-1',
      now: '2026-05-14T10:00:00Z',
      card: aCard(),
      facts,
      slowdown: { factor: 1, source: 'assumed' },
    },
    ...{ clip, originalName: 'a.mp4' },
  });
  const parsed = parseSwim(serialiseSwim(swim));
  return parsed.ok ? null : `no swim can be made of it: ${JSON.stringify(parsed.fault)}`;
}

async function show(address: string, { decodable, table }: ClipFacts): Promise<string | null> {
  if (!decodable) return null;
  const source = await openFrameSource({ address }, { signal: never });
  if (!source.ok) return null;
  try {
    for (const frame of [0, table.starts.length - 1]) await source.value.show(frame, 0);
    return null;
  } catch (problem) {
    return problem instanceof PictureLost ? null : String(problem);
  } finally {
    source.value.close();
  }
}
