import { beforeEach, describe, expect, it, vi } from 'vitest';
import { failure, success } from '#core/host-contract/host-error';
import { handOutOpenedFiles } from '../../../renderer/shelf/hand-out-opened-files';
import { openedFiles, openFiles } from '../../../renderer/ui/opened-files';

const go = () => ({ takeBundles: vi.fn(), addClip: vi.fn(), say: vi.fn() });
/** Finds a clip at every place but those named bad. */
const call = vi.fn(async (_name: string, { path }: { readonly path: string }) =>
  path.includes('bad') ? failure('not-found', { name: path }) : success({ clipId: `clip of ${path}` }),
);
const host = { call } as never;

beforeEach(() => {
  call.mockClear();
  openedFiles.setState({ paths: [] });
});

describe('files opened with Submark', () => {
  it('are handed out by kind: bundles all at once, clips one by one and to be copied', async () => {
    openFiles(['/film/a.mp4', 'C:\\swims\\Turn.ZIP', '/film/b.mov']);
    const to = go();
    await handOutOpenedFiles(host, to);
    expect(to.takeBundles.mock.calls).toEqual([[[{ path: 'C:\\swims\\Turn.ZIP', name: 'Turn.ZIP' }]]]);
    expect(call.mock.calls).toEqual([
      ['clip/refer', { path: '/film/a.mp4' }],
      ['clip/refer', { path: '/film/b.mov' }],
    ]);
    expect(to.addClip.mock.calls).toEqual([
      [{ clipId: 'clip of /film/a.mp4' }, true],
      [{ clipId: 'clip of /film/b.mov' }, true],
    ]);
    expect(to.say).not.toHaveBeenCalled();
  });

  it('that can’t be found are named, and the others still come', async () => {
    openFiles(['/film/bad.mp4', '/film/a.mp4']);
    const to = go();
    await handOutOpenedFiles(host, to);
    expect(to.say.mock.calls).toEqual([[expect.stringContaining('/film/bad.mp4')]]);
    expect(to.addClip).toHaveBeenCalledOnce();
    expect(to.takeBundles).not.toHaveBeenCalled();
  });

  it('are handed out once, also while the first are still looked at', async () => {
    openFiles(['/film/a.mp4']);
    const to = go();
    const first = handOutOpenedFiles(host, to);
    openFiles(['/film/b.mp4']);
    await Promise.all([first, handOutOpenedFiles(host, to)]);
    expect(to.addClip).toHaveBeenCalledTimes(2);
    await handOutOpenedFiles(host, to);
    expect(to.addClip).toHaveBeenCalledTimes(2);
  });
});
