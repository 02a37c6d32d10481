import { afterEach, describe, expect, it, vi } from 'vitest';
import { createStore } from 'zustand/vanilla';
import type { OpenSwim } from '../../../renderer/open-swim/open-swim';
import { startPlayback } from '../../../renderer/open-swim/playback';
import { createSwimDocument } from '../../../renderer/open-swim/swim-document';
import { createViewStore } from '../../../renderer/open-swim/view-store';
import { aSwim } from '../a-swim';

afterEach(() => vi.unstubAllGlobals());

describe('playing', () => {
  it('does not take the frame a coach went to, when a picture asked for before comes after', async () => {
    vi.stubGlobal('requestAnimationFrame', () => 1);
    vi.stubGlobal('cancelAnimationFrame', () => undefined);
    let come: (picture: { frame: number }) => void = () => undefined;
    const table = { ticksPerSecond: 50, starts: Array.from({ length: 100 }, (_, at) => at), endTick: 100 };
    const source = { facts: { table }, show: () => new Promise((resolve) => (come = resolve)) };
    const view = createViewStore({ frame: 3, playing: true });
    const parts: unknown = {
      view,
      document: createSwimDocument(aSwim()),
      film: createStore(() => ({ source })),
      say: () => undefined,
    };
    const stop = startPlayback(parts as OpenSwim);
    view.setState({ playing: false, frame: 7 });
    come({ frame: 4 });
    await Promise.resolve();
    await Promise.resolve();
    expect(view.getState().frame).toBe(7);
    stop();
  });
});
