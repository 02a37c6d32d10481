import { describe, expect, it } from 'vitest';
import { failure, success } from '#core/host-contract/host-error';
import type { FramePicture, FrameSource, ShownAs } from '../../../renderer/video/frame-source';
import { createGrowingSource } from '../../../renderer/video/growing-source';

const table = { ticksPerSecond: 10, starts: Array.from({ length: 400 }, (_, n) => n), endTick: 400 };

/** A source that answers with the frame asked for and its own name, at once or when told to. */
function aSource(
  name: string,
  state: { closed: string[]; waits?: boolean; broken?: boolean; budgets?: Map<string, number> },
) {
  const source = {
    facts: { width: 64, height: 36, table },
    resolution: { width: 64, height: 36 },
    held: () => null,
    show: (frame: number): Promise<FramePicture> => {
      if (state.waits) return new Promise(() => undefined);
      if (state.broken) return Promise.reject(new Error('gone'));
      return Promise.resolve({ frame, from: name } as unknown as FramePicture);
    },
    memory: () => ({ heldBytes: 1, budgetBytes: state.budgets?.get(name) ?? 512, pictures: 1 }),
    limitTo: (bytes: number) => state.budgets?.set(name, bytes),
    close: () => {
      state.closed.push(name);
      state.budgets?.delete(name);
    },
  };
  return source as unknown as FrameSource;
}

describe('a working copy that is being made', () => {
  it('shows a frame from its piece where there is one, under its own number, and from beyond elsewhere', async () => {
    const closed: string[] = [];
    const stood: ShownAs[] = [];
    const source = createGrowingSource({
      beyond: aSource('beyond', { closed }),
      open: async ({ first }, standsFor) => {
        stood.push(standsFor);
        return success(aSource(`piece ${first}`, { closed }));
      },
    });
    expect(await source.show(12, 1)).toEqual({ frame: 12, from: 'beyond' });
    source.grow([{ first: 10, last: 29 }]);
    expect(await source.show(12, 1)).toEqual({ frame: 12, from: 'piece 10' });
    expect(stood[0]?.table).toEqual({ ticksPerSecond: 10, starts: table.starts.slice(10, 30), endTick: 30 });
    expect(await source.show(30, 1)).toEqual({ frame: 30, from: 'beyond' });
    expect([source.covers(29), source.covers(30)]).toEqual([true, false]);
    source.close();
    await Promise.resolve();
    expect(closed.sort()).toEqual(['beyond', 'piece 10']);
    await expect(source.show(12, 1)).rejects.toMatchObject({ name: 'AbortError' });
  });

  it('gives a frame that is waited for from the piece that comes meanwhile', async () => {
    const closed: string[] = [];
    const source = createGrowingSource({
      beyond: aSource('beyond', { closed, waits: true }),
      open: async ({ first }) => success(aSource(`piece ${first}`, { closed })),
    });
    const shown = source.show(12, 0);
    source.grow([{ first: 0, last: 19 }]);
    expect(await shown).toEqual({ frame: 12, from: 'piece 0' });
    // a newer request ends an older one
    const older = source.show(50, 1);
    const newer = source.show(13, 1);
    await expect(older).rejects.toMatchObject({ name: 'AbortError' });
    expect(await newer).toMatchObject({ frame: 13 });
  });

  it('falls back on what is beyond when a piece is taken away or can’t be opened', async () => {
    const closed: string[] = [];
    const source = createGrowingSource({
      beyond: aSource('beyond', { closed }),
      open: async ({ first }) =>
        first === 0 ? success(aSource('piece 0', { closed, broken: true })) : failure('not-found'),
    });
    source.grow([
      { first: 0, last: 19 },
      { first: 20, last: 39 },
    ]);
    expect(await source.show(5, 1)).toEqual({ frame: 5, from: 'beyond' });
    expect(await source.show(25, 1)).toEqual({ frame: 25, from: 'beyond' });
    expect(closed).toEqual(['piece 0']);
  });

  it('keeps two pieces open at most, those where the coach is and goes, all within one budget', async () => {
    const closed: string[] = [];
    const budgets = new Map([['beyond', 512]]);
    let [opened, most, mostBytes] = [0, 0, 0];
    const source = createGrowingSource({
      beyond: aSource('beyond', { closed, budgets }),
      open: async ({ first }, _standsFor, bytes) => {
        opened += 1;
        budgets.set(`piece ${first}`, bytes);
        most = Math.max(most, opened - closed.length);
        mostBytes = Math.max(mostBytes, sum());
        return success(aSource(`piece ${first}`, { closed, budgets }));
      },
    });
    const sum = (): number => [...budgets.values()].reduce((total, each) => total + each, 0);
    source.grow([0, 100, 200, 300].map((first) => ({ first, last: first + 99 })));
    for (let frame = 0; frame < 400; frame++) {
      expect(await source.show(frame, 1)).toMatchObject({ frame });
      mostBytes = Math.max(mostBytes, sum());
    }
    // each opened once on the way
    expect([opened, closed.length, most]).toEqual([4, 2, 2]);
    expect([mostBytes, source.memory().budgetBytes]).toEqual([512, 512]);
    // the copy that is to stand in takes a part of it
    source.limitTo(448);
    expect(sum()).toBe(448);
    source.grow([]);
  });
});
