import { describe, expect, it } from 'vitest';
import type { FromSeer, ToSeer } from '../../../renderer/see/see-message';
import { createSeer, type SeerWorker } from '../../../renderer/see/seer';

const files = { runtime: 'r', program: 'p', landmarks: 'l', detector: 'd' };
const picture = () => ({ width: 1, height: 1, rgba: new Uint8Array(4), step: 1 });

/** A worker that answers as told; null: not at all. */
function scripted(answer: (message: ToSeer) => FromSeer | null): SeerWorker & { ended: boolean } {
  const worker: SeerWorker & { ended: boolean } = {
    onmessage: null,
    onerror: null,
    ended: false,
    postMessage(message) {
      const said = answer(message);
      if (said) queueMicrotask(() => worker.onmessage?.({ data: said } as MessageEvent<FromSeer>));
    },
    terminate() {
      worker.ended = true;
    },
  };
  return worker;
}

const willing = (message: ToSeer): FromSeer =>
  message.kind === 'open'
    ? { kind: 'opened', runsOn: 'processor' }
    : message.kind === 'begin'
      ? { kind: 'begun', id: message.id }
      : message.kind === 'look'
        ? { kind: 'looked', id: message.id, glance: { kind: 'seen' } }
        : { kind: 'laid', id: message.id, frames: [] };

describe('the seer', () => {
  it('loads its networks once, looks, and lays', async () => {
    const opened: string[] = [];
    const seer = createSeer(
      () =>
        scripted((message) => {
          opened.push(message.kind);
          return willing(message);
        }),
      files,
    );
    expect(await seer.begin(null)).toBe('processor');
    expect(await seer.look(0, 0, picture())).toEqual({ kind: 'seen' });
    expect(await seer.lay()).toEqual([]);
    await seer.begin(null);
    expect(opened).toEqual(['open', 'begin', 'look', 'lay', 'begin']);
  });

  it('says why it failed, ends that worker, and starts another for the next swim', async () => {
    const made: (SeerWorker & { ended: boolean })[] = [];
    const seer = createSeer(() => {
      const failing = made.length === 0;
      const worker = scripted((message) =>
        failing && message.kind === 'look' ? { kind: 'failed', reason: 'no memory' } : willing(message),
      );
      made.push(worker);
      return worker;
    }, files);
    await seer.begin(null);
    await expect(seer.look(0, 0, picture())).rejects.toThrow('no memory');
    expect(made[0]?.ended).toBe(true);
    await seer.begin(null);
    expect(await seer.look(0, 0, picture())).toEqual({ kind: 'seen' });
    expect(made).toHaveLength(2);
  });

  it('takes a worker that says nothing for dead', async () => {
    const worker = scripted((message) => (message.kind === 'open' ? null : willing(message)));
    const seer = createSeer(() => worker, files, { checkMs: 5, silentChecks: 4 });
    await expect(seer.begin(null)).rejects.toThrow('no sign of life');
    expect(worker.ended).toBe(true);
  });

  it('lets nobody wait once it is ended', async () => {
    const seer = createSeer(
      () => scripted((message) => (message.kind === 'look' ? null : willing(message))),
      files,
    );
    await seer.begin(null);
    const looking = seer.look(0, 0, picture());
    seer.end();
    await expect(looking).rejects.toThrow('ended');
    await expect(seer.look(1, 0, picture())).rejects.toThrow('ended');
  });
});
