import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

// asked for as soon as the page's parts are loaded
vi.hoisted(() => {
  const localStorage = { getItem: () => null, setItem: () => undefined, removeItem: () => undefined };
  const matchMedia = () => ({ matches: false, addEventListener: () => undefined });
  Object.assign(globalThis, { window: { localStorage, matchMedia } });
});

import { failure, success } from '#core/host-contract/host-error';
import type { WindowFace, WindowRequest } from '#core/host-contract/operations/window-operations';
import { serveWindow } from '../../../renderer/app/serve-window';
import { windowFace } from '../../../renderer/app/window-face';
import { savedOnLeaving } from '../../../renderer/documents/open-autosaves';
import type { HostClient } from '../../../renderer/host/host-client';
import { sendClip } from '../../../renderer/shelf/send-clip';
import type { Command } from '../../../renderer/ui/command';
import { registerCommands } from '../../../renderer/ui/command-registry';
import { takeOpenedFiles } from '../../../renderer/ui/opened-files';

const page = { dialog: false, ground: 'rgb(13, 23, 28)', active: null as unknown };
class Field {
  type = 'text';
}
beforeEach(() => {
  vi.useFakeTimers();
  Object.assign(page, { dialog: false, ground: 'rgb(13, 23, 28)', active: null });
  vi.stubGlobal('window', Object.assign(new EventTarget(), { location: { hash: '#/sets' } }));
  vi.stubGlobal('HTMLTextAreaElement', class {});
  vi.stubGlobal('HTMLInputElement', Field);
  vi.stubGlobal('getComputedStyle', () => ({ backgroundColor: page.ground }));
  vi.stubGlobal('document', {
    body: {},
    get activeElement() {
      return page.active;
    },
    querySelector: () => (page.dialog ? {} : null),
    execCommand: vi.fn(),
  });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const command = (id: string, more: Partial<Command> = {}): Command =>
  ({ id, label: id, keys: [], run: vi.fn(), ...more }) as Command;

/** A window that asks what it is told to, and keeps what it is shown. */
function aWindow(transport: 'ipc' | 'loopback' = 'ipc') {
  const asked: number[] = [];
  const faces: WindowFace[] = [];
  let answer: (requests: readonly WindowRequest[] | null) => void = () => undefined;
  const call = (name: string, input: unknown) => {
    if (name === 'window/show') {
      faces.push(input as WindowFace);
      return Promise.resolve(success({}));
    }
    asked.push((input as { after: number }).after);
    return new Promise((resolve) => {
      answer = (requests) => resolve(requests ? success({ requests }) : failure('host-unreachable'));
    });
  };
  const ask = async (requests: readonly WindowRequest[] | null): Promise<void> => {
    answer(requests);
    await vi.advanceTimersByTimeAsync(0);
  };
  serveWindow({ transport, call } as unknown as HostClient);
  return { asked, faces, ask };
}

describe('the page in a window of ours', () => {
  it('runs a command from the menu as its key would, and none while a dialog waits or it can’t be given', async () => {
    const mark = command('mark');
    const off = command('off', { enabled: () => false });
    const gone = registerCommands({ heading: 'Bench', commands: [mark, off] });
    const { ask, asked } = aWindow();
    await ask([
      { kind: 'command', number: 1, id: 'mark' },
      { kind: 'command', number: 2, id: 'off' },
      { kind: 'command', number: 3, id: 'nobody' },
    ]);
    page.dialog = true;
    await ask([{ kind: 'command', number: 4, id: 'mark' }]);
    expect(mark.run).toHaveBeenCalledOnce();
    expect(off.run).not.toHaveBeenCalled();
    expect(asked).toEqual([0, 3, 4]);
    gone();
  });

  it('undoes what is typed while the coach types, and else the last mark', async () => {
    const undo = command('undo', { keys: ['$mod+z'] });
    const gone = registerCommands({ heading: 'Bench', commands: [undo] });
    const { ask } = aWindow();
    page.active = new Field();
    await ask([{ kind: 'command', number: 1, id: 'undo' }]);
    expect(document.execCommand).toHaveBeenCalledWith('undo');
    expect(undo.run).not.toHaveBeenCalled();
    page.active = null;
    await ask([{ kind: 'command', number: 2, id: 'undo' }]);
    expect(undo.run).toHaveBeenCalledOnce();
    gone();
  });

  it('takes files that were opened with Submark to the shelf', async () => {
    const { ask } = aWindow();
    await ask([{ kind: 'files', number: 1, paths: ['/a.mp4', '/b.zip'] }]);
    expect(takeOpenedFiles()).toEqual(['/a.mp4', '/b.zip']);
    expect(takeOpenedFiles()).toEqual([]);
    expect(window.location.hash).toBe('#/');
  });

  it('says that it has saved only when it has', async () => {
    let end: () => void = () => undefined;
    const closed = savedOnLeaving({
      leave: () => undefined,
      flush: () => new Promise((resolve) => (end = resolve)),
    });
    const { ask, asked } = aWindow();
    await ask([{ kind: 'save', number: 1 }]);
    expect(asked).toEqual([0]);
    end();
    await vi.advanceTimersByTimeAsync(0);
    expect(asked).toEqual([0, 1]);
    closed();
  });

  it('asks again, not at once, where the window gave no answer', async () => {
    const { ask, asked } = aWindow();
    await ask(null);
    expect(asked).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(2000);
    expect(asked).toEqual([0, 0]);
  });

  it('shows its face once for many changes, and not again while it is the same', async () => {
    const { faces } = aWindow();
    await vi.advanceTimersByTimeAsync(150);
    expect(faces).toHaveLength(1);
    window.dispatchEvent(new Event('keyup'));
    await vi.advanceTimersByTimeAsync(150);
    expect(faces).toHaveLength(1);
    const gone = registerCommands({ heading: 'Bench', commands: [command('mark')] });
    await vi.advanceTimersByTimeAsync(150);
    expect(faces.at(-1)?.groups.map(({ heading }) => heading)).toEqual(['Bench']);
    gone();
  });

  it('has nothing to do with a browser’s window', () => {
    expect(aWindow('loopback').asked).toEqual([]);
  });

  it('shows the colour behind it, its commands but those read elsewhere, and long work in percent', async () => {
    const gone = registerCommands({
      heading: 'Bench',
      commands: [command('mark', { keys: ['a', 'b'] }), command('grid', { told: 'by the grid' } as never)],
    });
    const seen: WindowFace[] = [];
    const host: Pick<HostClient, 'sendClip'> = {
      sendClip: async (_file, _name, { onProgress }) => {
        onProgress(0.12345);
        seen.push(windowFace());
        return failure('cancelled');
      },
    };
    const shares: number[] = [];
    const { signal } = new AbortController();
    await sendClip(host, new File(['x'], 'a.mp4'), { signal, onProgress: (share) => shares.push(share) });
    expect(shares).toEqual([0.12345]);
    expect(seen[0]).toMatchObject({
      look: { ground: '#0d171c' },
      groups: [{ heading: 'Bench', commands: [{ id: 'mark', key: 'a', enabled: true }] }],
      work: [0.12],
    });
    expect(windowFace().work).toEqual([]);
    gone();
  });
});
