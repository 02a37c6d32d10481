import { EventEmitter } from 'node:events';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { BrowserWindow, MenuItemConstructorOptions } from 'electron';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

const said = vi.hoisted(() => ({ boxes: [] as unknown[][], answer: 1, over: null as unknown }));
vi.mock('electron', () => ({
  dialog: {
    showErrorBox: (...words: unknown[]) => said.boxes.push(words),
    // over a window, or alone
    showMessageBox: async (...asked: unknown[]) => {
      said.boxes.push([asked.at(-1)]);
      said.over = asked.length > 1 ? asked[0] : null;
      return { response: said.answer };
    },
  },
}));

import { closeBeforeQuit } from '#electron/shell/close-before-quit';
import { filesNamed, filesSent } from '#electron/shell/files-to-open';
import { helpHungPage } from '#electron/shell/hung-page';
import { acceleratorOf, menuItems } from '#electron/shell/menu';
import { sayNoLibrary } from '#electron/shell/open-some-library';
import { endWithSystem, quitOnSignal } from '#electron/shell/system-shutdown';
import { TaskBar } from '#electron/shell/task-bar';
import { endOnBug, sayStartFailed } from '#electron/shell/unexpected';
import { WindowLink } from '#electron/shell/window-link';
import { keepWindowState, placeToAsk, readWindowState } from '#electron/shell/window-state';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-shell-'));
  said.boxes.length = 0;
});
afterEach(async () => {
  vi.useRealTimers();
  await rm(folder, { recursive: true, force: true });
});

const anApp = () =>
  Object.assign(new EventEmitter(), { quit: vi.fn(), exit: vi.fn(), relaunch: vi.fn(), isReady: () => true });

describe('the end', () => {
  const save = async () => undefined;
  it('does not wait for ever for work that does not stop: what would outlast the program is ended', async () => {
    vi.useFakeTimers();
    const app = anApp();
    const giveUp = vi.fn();
    closeBeforeQuit(app as never, {
      save,
      close: () => new Promise(() => undefined),
      giveUp,
      withinMs: 5000,
    });
    const event = { preventDefault: vi.fn() };
    app.emit('before-quit', event);
    await vi.advanceTimersByTimeAsync(4999);
    expect([app.quit, giveUp].map((each) => each.mock.calls.length)).toEqual([0, 0]);
    await vi.advanceTimersByTimeAsync(1);
    expect([app.quit, giveUp].map((each) => each.mock.calls.length)).toEqual([1, 1]);
    app.emit('before-quit', event);
    expect(event.preventDefault).toHaveBeenCalledOnce();
  });

  it('is begun once, however often it is asked for, and gives nothing up when work stops in time', async () => {
    const app = anApp();
    const close = vi.fn(async () => undefined);
    const giveUp = vi.fn();
    const { begin } = closeBeforeQuit(app as never, { save, close, giveUp });
    const event = { preventDefault: vi.fn() };
    app.emit('before-quit', event);
    app.emit('before-quit', event);
    await begin();
    expect(close).toHaveBeenCalledOnce();
    expect(giveUp).not.toHaveBeenCalled();
    await vi.waitFor(() => expect(app.quit).toHaveBeenCalledOnce());
  });

  it('comes when the window is closed, which stays until its page has saved', async () => {
    const app = anApp();
    const window = new EventEmitter();
    let saved: () => void = () => undefined;
    const saving = () => new Promise<void>((resolve) => (saved = resolve));
    closeBeforeQuit(app as never, { save: saving, close: save, giveUp: vi.fn() }).holdOpen(window as never);
    const event = { preventDefault: vi.fn() };
    window.emit('close', event);
    expect(app.quit).toHaveBeenCalledOnce();
    app.emit('before-quit', { preventDefault: vi.fn() });
    window.emit('close', event);
    expect(event.preventDefault).toHaveBeenCalledTimes(2);
    expect(app.quit).toHaveBeenCalledOnce();
    saved();
    await vi.waitFor(() => expect(app.quit).toHaveBeenCalledTimes(2));
    window.emit('close', event);
    expect(event.preventDefault).toHaveBeenCalledTimes(2);
  });

  it('saves again what was marked after a bug had ended the work', async () => {
    const app = anApp();
    const steps: string[] = [];
    const { begin } = closeBeforeQuit(app as never, {
      save: async () => void steps.push('save'),
      close: async () => void steps.push('close'),
      giveUp: vi.fn(),
    });
    await begin();
    app.quit.mockImplementation(() => steps.push('quit'));
    app.emit('before-quit', { preventDefault: vi.fn() });
    await vi.waitFor(() => expect(app.quit).toHaveBeenCalled());
    expect(steps).toEqual(['save', 'close', 'save', 'quit']);
  });

  it('comes with the system’s: Windows is not kept waiting, the others wait until we have quit', () => {
    const app = anApp();
    const window = new EventEmitter();
    const power = new EventEmitter();
    const end = { inOrder: vi.fn(async () => undefined), atOnce: vi.fn() };
    endWithSystem(app as never, window as never, power as never, end);
    window.emit('session-end', {});
    expect(end.inOrder).toHaveBeenCalledOnce();
    expect(end.atOnce).toHaveBeenCalledOnce();
    const event = { preventDefault: vi.fn() };
    power.emit('shutdown', event);
    expect(event.preventDefault).toHaveBeenCalledOnce();
    expect(app.quit).toHaveBeenCalledOnce();
  });

  it('comes in order when it is asked for by a signal', () => {
    const app = anApp();
    const process = new EventEmitter();
    quitOnSignal(app as never, process as never);
    for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP']) process.emit(signal);
    expect(app.quit).toHaveBeenCalledTimes(3);
  });

  it.each([
    [0, 1],
    [1, 0],
  ])(
    'after a bug of the host ends the work, says so once over the window, saves and opens again when asked (answer %i)',
    async (answer, opened) => {
      said.answer = answer;
      const app = anApp();
      const process = new EventEmitter();
      const end = vi.fn(async () => undefined);
      const log = vi.spyOn(console, 'error').mockImplementation(() => undefined);
      const saved = vi.fn(async () => expect(said.boxes).toHaveLength(1));
      const window = { isDestroyed: () => false } as BrowserWindow;
      endOnBug(app as never, process as never, { end, save: saved, window: () => window });
      process.emit('uncaughtException', new Error('a bug'));
      process.emit('unhandledRejection', new Error('another'));
      await vi.waitFor(() => expect(app.exit).toHaveBeenCalledWith(1));
      expect(end).toHaveBeenCalledOnce();
      expect(saved).toHaveBeenCalledOnce();
      expect(said.over).toBe(window);
      expect(app.relaunch).toHaveBeenCalledTimes(opened);
      expect(said.boxes).toHaveLength(1);
      expect(JSON.stringify(said.boxes)).toContain('a bug');
      expect(log).toHaveBeenCalledTimes(2);
      log.mockRestore();
    },
  );

  it('says in a box of its own why a start failed', () => {
    const log = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    sayStartFailed(new Error('no preload'));
    expect(said.boxes).toEqual([['Submark can’t start', expect.stringContaining('no preload')]]);
    log.mockRestore();
  });
});

describe('a library that can’t be opened', () => {
  it.each(['cannot-write', 'disk-full', 'cannot-read'] as const)(
    'is named, with what to do, and no word of marks in a window that isn’t there (%s)',
    (code) => {
      sayNoLibrary({ code, detail: { name: 'library' } }, { path: '/disk/club' });
      const words = String(said.boxes[0]?.[1]);
      expect(words).toContain('/disk/club');
      expect(words).not.toMatch(/marks|window/);
      expect(words).toMatch(/[Tt]hen (start Submark|try) again/);
    },
  );
});

describe('the task bar', () => {
  it('shows long work, not short work, and keeps the computer awake meanwhile', () => {
    vi.useFakeTimers();
    const shown: number[] = [];
    const window = { isDestroyed: () => false, setProgressBar: (share: number) => void shown.push(share) };
    const power = { start: vi.fn(() => 7), stop: vi.fn(() => true) };
    const bar = new TaskBar(window as never, power as never);
    bar.tell('host', [null]);
    vi.advanceTimersByTime(100);
    bar.tell('host', []);
    vi.advanceTimersByTime(5000);
    expect([shown.length, power.start.mock.calls.length]).toEqual([0, 0]);

    bar.tell('host', [null]);
    vi.advanceTimersByTime(1000);
    bar.tell('host', [0.2]);
    bar.tell('page', [0.6, null]);
    expect(shown).toEqual([2, 0.2, 0.4]);
    expect(power.start).toHaveBeenCalledOnce();
    bar.tell('host', []);
    expect(power.stop).not.toHaveBeenCalled();
    bar.tell('page', []);
    expect(shown.at(-1)).toBe(-1);
    expect(power.stop).toHaveBeenCalledWith(7);
  });
});

describe('what the window wants of its page', () => {
  it('is kept until the page has taken it, in order', async () => {
    const link = new WindowLink();
    link.ask({ kind: 'command', id: 'a' });
    const waiting = link.next(1);
    link.ask({ kind: 'files', paths: ['/a.mp4'] });
    link.ask({ kind: 'command', id: 'b' });
    expect(await waiting).toEqual([{ kind: 'files', number: 2, paths: ['/a.mp4'] }]);
    expect(await link.next(2)).toEqual([{ kind: 'command', number: 3, id: 'b' }]);
    // loaded again: files are still to be opened, a command was for the page that is gone
    link.ask({ kind: 'files', paths: ['/b.mp4'] });
    expect(await link.next(0)).toEqual([{ kind: 'files', number: 4, paths: ['/b.mp4'] }]);
    const gone = link.next(4);
    const here = link.next(4);
    expect(await gone).toEqual([]);
    link.close();
    expect(await here).toEqual([]);
  });
});

describe('saving before the end', () => {
  const ended = (saving: Promise<void>) => {
    const seen = { ended: false };
    void saving.then(() => {
      seen.ended = true;
    });
    return seen;
  };

  it('waits until the page says that it has saved', async () => {
    const link = new WindowLink();
    const waiting = link.next(0);
    const saving = link.save(60_000);
    const seen = ended(saving);
    expect(await waiting).toEqual([{ kind: 'save', number: 1 }]);
    expect(seen.ended).toBe(false);
    void link.next(1);
    await saving;
  });

  it('does not wait for ever for a page that hangs, nor at all for one that is not there or just loaded', async () => {
    vi.useFakeTimers();
    const link = new WindowLink();
    await link.save();
    void link.next(0);
    const seen = ended(link.save());
    await vi.advanceTimersByTimeAsync(1999);
    expect(seen.ended).toBe(false);
    await vi.advanceTimersByTimeAsync(1);
    expect(seen.ended).toBe(true);
    const saving = link.save();
    void link.next(0);
    await saving;
  });
});

describe('a page that hangs', () => {
  const aWindow = () =>
    Object.assign(new EventEmitter(), {
      isDestroyed: () => false,
      webContents: { forcefullyCrashRenderer: vi.fn() },
    });
  beforeEach(() => {
    vi.spyOn(console, 'error').mockImplementation(() => undefined);
  });
  afterEach(() => {
    vi.restoreAllMocks();
  });

  it.each([
    [0, 0],
    [1, 1],
  ])('is waited for or loaded again, as the coach says (answer %i)', async (answer, ended) => {
    said.answer = answer;
    const window = aWindow();
    helpHungPage(window as never);
    window.emit('unresponsive');
    window.emit('unresponsive');
    expect(said.boxes).toHaveLength(1);
    await Promise.resolve();
    await Promise.resolve();
    expect(window.webContents.forcefullyCrashRenderer).toHaveBeenCalledTimes(ended);
    // asked again when it hangs again
    window.emit('unresponsive');
    expect(said.boxes).toHaveLength(2);
  });

  it('is no longer asked about, and not ended, when it answers again', async () => {
    said.answer = 1;
    const window = aWindow();
    helpHungPage(window as never);
    window.emit('unresponsive');
    window.emit('responsive');
    const [asked] = said.boxes[0] as [{ signal: AbortSignal }];
    expect(asked.signal.aborted).toBe(true);
    await Promise.resolve();
    await Promise.resolve();
    expect(window.webContents.forcefullyCrashRenderer).not.toHaveBeenCalled();
  });
});

describe('the menu', () => {
  const command = (id: string, key: string | null, enabled = true) => ({ id, label: id, key, enabled });
  const groups = [
    { heading: 'Everywhere', commands: [command('keys', '?'), command('go-sets', 'Shift+Digit4')] },
    { heading: 'Bench', commands: [command('undo', '$mod+z'), command('step', 'ArrowLeft')] },
  ];
  const all = (items: readonly MenuItemConstructorOptions[]): MenuItemConstructorOptions[] =>
    items.flatMap((item) => [item, ...all((item.submenu as MenuItemConstructorOptions[] | undefined) ?? [])]);

  it.each([true, false])(
    'has the system’s items and the page’s commands, and nothing that leaves the page (mac: %s)',
    (mac) => {
      const ran: string[] = [];
      const items = all(menuItems(groups, mac, (id) => ran.push(id)));
      const roles = items.map(({ role }) => role);
      for (const role of ['cut', 'copy', 'paste', 'selectAll', 'togglefullscreen', 'help'])
        expect(roles, role).toContain(role);
      for (const role of ['reload', 'forceReload', 'toggleDevTools', 'viewMenu', 'fileMenu'])
        expect(roles, role).not.toContain(role);
      for (const id of ['keys', 'go-sets', 'undo', 'step']) {
        const item = items.find((each) => each.id === id);
        if (!item?.click) throw new Error(`no item ${id}`);
        (item.click as () => void)();
        // where a key that is shown is taken, only those are shown that come here when the page left them
        expect(item.accelerator !== undefined, id).toBe(!mac || id === 'undo');
      }
      expect(ran).toEqual(['keys', 'go-sets', 'undo', 'step']);
      expect(roles.includes('undo')).toBe(false);
      const nothingToUndo = [{ heading: 'Bench', commands: [command('undo', '$mod+z', false)] }];
      expect(all(menuItems(nothingToUndo, mac, () => undefined)).map(({ role }) => role)).toContain('undo');
    },
  );

  it.each([
    ['$mod+Shift+z', 'CommandOrControl+Shift+Z'],
    ['Shift+Digit1', 'Shift+1'],
    ['ArrowLeft', 'Left'],
    [' ', 'Space'],
    ['+', 'Plus'],
    ['?', '?'],
    ['NumpadClear', null],
  ])('names the key %s as Electron does', (key, accelerator) => {
    expect(acceleratorOf(key)).toBe(accelerator);
  });
});

describe('files opened with Submark', () => {
  it('are the words of the command line that name files, from where it was given', async () => {
    await writeFile(path.join(folder, 'a b.mp4'), 'film');
    await writeFile(path.join(folder, 'main.js'), '');
    const argv = ['/electron', folder, '--flag', 'a b.mp4', 'nothing.mp4', 'main.js', folder];
    expect(filesNamed(argv, folder, 2)).toEqual([path.join(folder, 'a b.mp4')]);
    expect(filesSent({ files: ['/a', 3] })).toEqual(['/a']);
    for (const other of [undefined, null, 'x', {}, { files: '/a' }]) expect(filesSent(other)).toEqual([]);
  });
});

describe('the window’s place', () => {
  const screens = [{ x: 0, y: 0, width: 1920, height: 1080 }];
  const file = (): string => path.join(folder, 'window.json');
  const aWindow = (bounds: { x: number; y: number }, maximised = false) =>
    Object.assign(new EventEmitter(), {
      bounds: { ...bounds, width: 1200, height: 800 },
      getNormalBounds(): object {
        return this.bounds;
      },
      isMaximized: () => maximised,
      isFullScreen: () => false,
      isDestroyed: () => false,
      setPosition: vi.fn(),
    });

  it('does not creep where the window manager puts a window beside the place asked for', () => {
    const state = { x: 100, y: 120, width: 1200, height: 800 };
    // a frame of 1 to the left and 20 above
    const window = aWindow({ x: 101, y: 140 });
    keepWindowState(file(), window as unknown as BrowserWindow, state);
    window.emit('move');
    expect(window.setPosition).toHaveBeenCalledWith(99, 100);
    window.bounds = { ...window.bounds, x: 100, y: 120 };
    window.emit('close');
    const next = readWindowState(file(), screens);
    expect(next).toMatchObject({ x: 100, y: 120, lean: { x: 1, y: 20 }, maximised: false });
    expect(placeToAsk(next)).toEqual({ x: 99, y: 100 });
  });

  it('is where the coach moved it, however far', () => {
    const window = aWindow({ x: 700, y: 500 });
    keepWindowState(file(), window as unknown as BrowserWindow, { x: 100, y: 120, width: 1200, height: 800 });
    window.emit('move');
    expect(window.setPosition).not.toHaveBeenCalled();
    window.emit('close');
    expect(readWindowState(file(), screens)).toMatchObject({ x: 700, y: 500 });
  });

  it('keeps that it was maximised, the look, and fits a smaller screen', async () => {
    const window = aWindow({ x: 10, y: 20 }, true);
    const kept = keepWindowState(file(), window as unknown as BrowserWindow, { width: 1200, height: 800 });
    kept.ground('#ffffff', false);
    window.emit('close');
    expect(JSON.parse(await readFile(file(), 'utf8'))).toEqual({
      ...{ x: 10, y: 20, width: 1200, height: 800 },
      ...{ maximised: true, ground: '#ffffff', dark: false },
    });
    const small = [{ x: 0, y: 0, width: 1100, height: 700 }];
    expect(readWindowState(file(), small)).toMatchObject({ width: 1100, height: 700, maximised: true });
    // only a corner of it would be seen
    await writeFile(file(), '{"x":1900,"y":1060,"width":1200,"height":800}');
    expect(readWindowState(file(), screens)).toEqual({ width: 1200, height: 800 });
  });
});
