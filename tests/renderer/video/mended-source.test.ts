import { afterEach, describe, expect, it, vi } from 'vitest';
import { failure, success } from '#core/host-contract/host-error';
import type { FramePicture, FrameSource } from '../../../renderer/video/frame-source';
import { mendedSource } from '../../../renderer/video/mended-source';
import { PictureLost } from '../../../renderer/video/picture-lost';

const starts = Array.from({ length: 10 }, (_, n) => n);
const facts = { width: 4, height: 2, table: { ticksPerSecond: 1, starts, endTick: 10 } };

/** A film of ten frames of which some can't be decoded here; frame 9 can't be read at all. */
const damaged = (lost: readonly number[]): FrameSource =>
  ({
    facts,
    held: () => null,
    show: async (frame: number) => {
      if (frame === 9) throw new PictureLost(frame, 'gone', true);
      if (lost.includes(frame)) throw new PictureLost(frame, 'it is damaged');
      return { frame, from: 'window' } as unknown as FramePicture;
    },
    close: () => undefined,
  }) as unknown as FrameSource;

describe('a film that this window can’t decode everywhere', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('takes the pictures that are lost from the host, counts each once, and leaves the others alone', async () => {
    vi.stubGlobal('createImageBitmap', async () => ({ width: 4, height: 2, close: () => undefined }));
    const asked: number[] = [];
    const counts: number[] = [];
    const source = mendedSource(damaged([3, 4]), {
      ask: async (frame) => {
        asked.push(frame);
        return success([{ frame, jpeg: '' }]);
      },
      onBroken: (frames) => counts.push(frames),
    });
    for (const frame of [2, 3, 4, 3, 5]) expect((await source.show(frame, 1)).frame).toBe(frame);
    expect(asked).toEqual([3, 4]);
    expect(counts).toEqual([1, 2]);
    expect(source.held(4)?.frame).toBe(4);
    // a file that is gone is another matter
    await expect(source.show(9, 1)).rejects.toMatchObject({ unreadable: true });
    expect(asked).toEqual([3, 4]);
  });

  it('says that a frame is lost where the host can’t show it either', async () => {
    const source = mendedSource(damaged([3]), { ask: async () => failure('truncated') });
    await expect(source.show(3, 0)).rejects.toMatchObject({ frame: 3, unreadable: false });
    expect((await source.show(4, 0)).frame).toBe(4);
  });
});
