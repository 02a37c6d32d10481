import { describe, expect, it } from 'vitest';
import { failure, success } from '#core/host-contract/host-error';
import { landmarkNames } from '#core/marks/landmark';
import type { SeenFrame } from '#core/see/seen-runs';
import type { Swim } from '#core/swim-file/swim-schema';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { aSwim } from '../../shared-core/swim-file/a-swim';
import { addToQueue, createSeeQueue, emptyQueue } from '../../../renderer/see/see-queue';
import { runSeeQueue, type QueueTools } from '../../../renderer/see/run-see-queue';
import type { Seer } from '../../../renderer/see/seer';

/** What a window remembers, as plain words by key. */
function aMemory(kept = new Map<string, string>()) {
  return {
    kept,
    ready: Promise.resolve(),
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => void kept.set(key, text),
    removeItem: (key: string) => void kept.delete(key),
  };
}

const unmarked = (id: string): Swim => ({ ...aSwim(), id, postures: [], events: [], seen: [], followed: [] });
const points = Object.fromEntries(
  landmarkNames.map((name, i) => [name, { x: 900 - 60 * i, y: 300, sd: 4 }]),
) as unknown as SeenFrame['points'];

/** A host with three swims, and a seer that sees a body on every picture of them. */
function tools(swims: Map<string, Swim>, several: string | null = null): QueueTools {
  let opened = '';
  const seer: Seer = {
    begin: async () => 'processor',
    look: async () => (opened === several ? { kind: 'several', squares: [] } : { kind: 'seen' }),
    lay: async () => [0, 1, 2].map((frame) => ({ frame, points })),
    end: () => undefined,
  };
  return {
    now: () => new Date('2026-01-02T03:04:05Z'),
    startSeer: () => seer,
    openFilm: (async (_host: unknown, swim: Swim) => {
      opened = swim.id;
      const { starts } = tableFromRecord(swim.clip.frameTimes);
      const show = async (frame: number) => ({
        ...{ frame, width: 2, height: 2, table: starts },
        draw: () => undefined,
      });
      return success({ from: 'clip', source: { show, close: () => undefined } });
    }) as unknown as NonNullable<QueueTools['openFilm']>,
    host: {
      clipAddress: () => '',
      copyAddress: () => '',
      call: async (operation: string, input: { id?: string; swim?: Swim }) => {
        const swim = swims.get(input.id ?? input.swim?.id ?? '');
        if (!swim) return failure('not-found', { name: 'The swim' });
        if (operation === 'swim/write' && input.swim) swims.set(swim.id, input.swim);
        return success({ swim, revision: 'r', written: 0, clipStatus: 'present' });
      },
    } as unknown as QueueTools['host'],
  };
}

describe('the queue of swims to see', () => {
  it('survives closing, keeps its order, and forgets nothing but what is done', async () => {
    const memory = aMemory();
    const first = createSeeQueue(memory);
    await memory.ready;
    addToQueue(first, ['a', 'b', 'a', 'c']);
    const again = createSeeQueue(aMemory(memory.kept));
    await Promise.resolve();
    expect(again.getState().waiting).toEqual(['a', 'b', 'c']);
    emptyQueue(again);
    expect(memory.kept.size).toBe(0);
    // what can't be read is as good as never kept
    const odd = createSeeQueue(aMemory(new Map([['submark.see-queue', '{"x']])));
    await Promise.resolve();
    expect(odd.getState().waiting).toEqual([]);
  });
});

describe('a swim that waits', () => {
  const seenSwim = {
    ...unmarked('seen'),
    seen: [{ landmark: 'hip' as const, frame: 0, points: [[1, 1, 1] as [number, number, number]] }],
  };

  it('is left alone where it was seen already, and refused in words where it is gone', async () => {
    const queue = createSeeQueue(aMemory());
    await Promise.resolve();
    const swims = new Map([['seen', seenSwim]]);
    addToQueue(queue, ['seen', 'gone']);
    await runSeeQueue(queue, tools(swims), new AbortController().signal);
    expect(queue.getState()).toMatchObject({ waiting: [], now: null });
    expect([...queue.getState().refused.keys()]).toEqual(['gone']);
    expect(swims.get('seen')).toBe(seenSwim);
  });

  it('is begun again the next time when the window goes on to film meanwhile', async () => {
    const queue = createSeeQueue(aMemory());
    await Promise.resolve();
    addToQueue(queue, ['a']);
    const stopped = new AbortController();
    stopped.abort();
    await runSeeQueue(queue, tools(new Map([['a', unmarked('a')]])), stopped.signal);
    expect(queue.getState().waiting).toEqual(['a']);
  });
});
