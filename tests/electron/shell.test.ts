import { EventEmitter } from 'node:events';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path, { isAbsolute } from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { MenuItemConstructorOptions, Rectangle } from 'electron';
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';

// A stand-in of the electron module: it records what the shell asks of Electron, and lets tests play the page's part.
const standIn = vi.hoisted(() => ({
  handled: new Map<string, (event: unknown, ...args: unknown[]) => unknown>(),
  protocols: new Map<string, (request: Request) => Promise<Response>>(),
  privileged: [] as { scheme: string; privileges: Record<string, boolean> }[],
  windows: [] as { options: Record<string, unknown>; address: string }[],
  permission: {
    request: null as
      | null
      | ((
          contents: unknown,
          permission: string,
          answer: (granted: boolean) => void,
          details: { requestingUrl: string },
        ) => void),
    check: null as null | ((contents: unknown, permission: string, origin: string) => boolean),
  },
  downloads: null as null | ((event: { preventDefault(): void }, item: Record<string, unknown>) => void),
  paths: new Map<string, string>(),
  switches: new Set<string>(),
  menus: [] as MenuItemConstructorOptions[][],
  theme: { themeSource: 'system' },
  progress: [] as number[],
  blockers: new Set<number>(),
  window: null as unknown as EventEmitter & { destroyed: boolean },
  power: null as unknown as EventEmitter,
  relaunches: 0,
  exposed: new Map<string, Record<string, (...args: unknown[]) => unknown>>(),
  invoked: [] as unknown[][],
  app: null as unknown as EventEmitter,
  quits: 0,
  exits: [] as number[],
  firstInstance: true,
  userData: '',
  picked: {} as object,
  answers: [] as number[],
}));

vi.mock('electron', async () => {
  const { EventEmitter: Emitter } = await import('node:events');
  const protocol = {
    registerSchemesAsPrivileged: (schemes: typeof standIn.privileged) => standIn.privileged.push(...schemes),
    handle: (scheme: string, handler: (request: Request) => Promise<Response>) =>
      standIn.protocols.set(scheme, handler),
  };
  standIn.app = Object.assign(new Emitter(), {
    requestSingleInstanceLock: (sent: unknown) => {
      standIn.invoked.push(['lock', sent]);
      return standIn.firstInstance;
    },
    commandLine: { hasSwitch: (name: string) => standIn.switches.has(name) },
    setPath: (name: string, place: string) => standIn.paths.set(name, place),
    getName: () => 'Submark',
    getVersion: () => '1.0.0',
    setAboutPanelOptions: () => undefined,
    isReady: () => true,
    relaunch: () => {
      standIn.relaunches += 1;
    },
    whenReady: () => Promise.resolve(),
    quit: () => {
      standIn.quits += 1;
    },
    exit: (code: number) => standIn.exits.push(code),
    getPath: () => standIn.userData,
  });
  standIn.power = new Emitter();
  let blockers = 0;
  class BrowserWindow extends Emitter {
    destroyed = false;
    constructor(private readonly options: Record<string, unknown>) {
      super();
      standIn.window = this;
    }
    async loadURL(address: string): Promise<void> {
      standIn.windows.push({ options: this.options, address });
    }
    private alive(): void {
      if (this.destroyed) throw new TypeError('Object has been destroyed');
    }
    isDestroyed(): boolean {
      return this.destroyed;
    }
    isMinimized(): boolean {
      this.alive();
      return false;
    }
    isMaximized(): boolean {
      return false;
    }
    isFullScreen(): boolean {
      return false;
    }
    maximize(): void {
      standIn.invoked.push(['maximise']);
    }
    show(): void {
      this.alive();
      standIn.invoked.push(['show']);
    }
    setProgressBar(share: number): void {
      standIn.progress.push(share);
    }
    setBackgroundColor(ground: string): void {
      standIn.invoked.push(['ground', ground]);
    }
    getNormalBounds(): Rectangle {
      return { x: 0, y: 0, width: 1440, height: 900 };
    }
    focus(): void {
      standIn.invoked.push(['focus']);
    }
  }
  return {
    app: standIn.app,
    BrowserWindow,
    dialog: {
      showErrorBox: (...words: unknown[]) => standIn.invoked.push(words),
      showOpenDialog: async (...asked: unknown[]) => {
        standIn.invoked.push(['open', ...asked]);
        return standIn.picked;
      },
      showSaveDialog: async (...asked: unknown[]) => {
        standIn.invoked.push(['save', ...asked]);
        return standIn.picked;
      },
      showMessageBox: async (asked: unknown) => {
        standIn.invoked.push(['message', asked]);
        return { response: standIn.answers.shift() ?? 2 };
      },
    },
    protocol,
    Menu: {
      buildFromTemplate: (template: MenuItemConstructorOptions[]) => template,
      setApplicationMenu: (menu: MenuItemConstructorOptions[]) => standIn.menus.push(menu),
    },
    nativeTheme: standIn.theme,
    powerMonitor: standIn.power,
    powerSaveBlocker: {
      start: () => {
        blockers += 1;
        standIn.blockers.add(blockers);
        return blockers;
      },
      stop: (blocker: number) => standIn.blockers.delete(blocker),
    },
    screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] },
    session: {
      defaultSession: {
        protocol,
        on: (_name: string, handler: typeof standIn.downloads) => {
          standIn.downloads = handler;
        },
        setPermissionRequestHandler: (handler: typeof standIn.permission.request) => {
          standIn.permission.request = handler;
        },
        setPermissionCheckHandler: (handler: typeof standIn.permission.check) => {
          standIn.permission.check = handler;
        },
      },
    },
    ipcMain: {
      handle: (channel: string, handler: (event: unknown, ...args: unknown[]) => unknown) =>
        standIn.handled.set(channel, handler),
    },
    contextBridge: {
      exposeInMainWorld: (name: string, value: Record<string, (...args: unknown[]) => unknown>) =>
        standIn.exposed.set(name, value),
    },
    ipcRenderer: {
      invoke: (...args: unknown[]) => {
        standIn.invoked.push(args);
        return Promise.resolve('answer');
      },
    },
    webUtils: { getPathForFile: ({ name }: File) => `/film/${name}` },
  };
});

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-shell-'));
  standIn.userData = folder;
  vi.stubEnv('SUBMARK_LIBRARY', path.join(folder, 'library'));
  vi.stubEnv('SUBMARK_SAMPLES', 'few');
  await import('#electron/shell/main');
  // as long as a busy machine may take to prepare a library
  await vi.waitFor(() => expect(standIn.windows).toHaveLength(1), { timeout: 20_000 });
});
afterAll(async () => {
  vi.unstubAllEnvs();
  // threads that read the shelf may still be writing its index
  await rm(folder, { recursive: true, force: true, maxRetries: 10 });
});
beforeEach(() => {
  standIn.invoked.length = 0;
});

const operation = (event: unknown, ...args: unknown[]): unknown => {
  const handler = standIn.handled.get('submark:operation');
  if (!handler) throw new Error('no handler for operations');
  return handler(event, ...args);
};
const ours = { senderFrame: { parent: null, url: 'submark://app/index.html' } };

describe('the window', () => {
  it('opens the app’s own origin, sandboxed and isolated', () => {
    expect(standIn.windows[0]).toMatchObject({
      address: 'submark://app/index.html',
      options: {
        minWidth: 1024,
        minHeight: 640,
        webPreferences: {
          contextIsolation: true,
          sandbox: true,
          nodeIntegration: false,
          nodeIntegrationInWorker: false,
          allowRunningInsecureContent: false,
          webSecurity: true,
          webviewTag: false,
        },
      },
    });
  });

  it('is shown again by a second start', () => {
    standIn.app.emit('second-instance', {}, [], '/', { files: [] });
    expect(standIn.invoked).toEqual([['show'], ['focus']]);
    // one that comes while the first is ending finds no window to show
    standIn.window.destroyed = true;
    expect(() => standIn.app.emit('second-instance', {}, [], '/', undefined)).not.toThrow();
    standIn.window.destroyed = false;
  });

  it('ends only after what is at work has stopped, and then does end', async () => {
    let prevented = 0;
    const event = {
      preventDefault: () => {
        prevented += 1;
      },
    };
    const quitsBefore = standIn.quits;
    standIn.app.emit('open-file', { preventDefault: () => undefined }, '/early.mp4');
    expect(await operation(ours, 'window/next', { after: 0 })).toMatchObject({
      value: { requests: [{ kind: 'files', number: 1 }] },
    });
    const wanted = operation(ours, 'window/next', { after: 1 });
    standIn.window.emit('close', event);
    expect([prevented, standIn.quits]).toEqual([1, quitsBefore + 1]);
    prevented = 0;
    standIn.app.emit('before-quit', event);
    expect(prevented).toBe(1);
    // the page saves first, and says so by asking what else is wanted
    expect(await wanted).toMatchObject({ value: { requests: [{ kind: 'save', number: 2 }] } });
    expect(standIn.quits).toBe(quitsBefore + 1);
    void operation(ours, 'window/next', { after: 2 });
    await vi.waitFor(() => expect(standIn.quits).toBe(quitsBefore + 2), { timeout: 20_000 });
    standIn.app.emit('before-quit', event);
    expect(prevented).toBe(1);
  });

  it('is loaded again when its page was ended by the system, and not for ever when that goes on', () => {
    const contents = Object.assign(new EventEmitter(), {
      setWindowOpenHandler: () => undefined,
      reload: vi.fn(),
    });
    standIn.app.emit('web-contents-created', {}, contents);
    contents.emit('render-process-gone', {}, { reason: 'clean-exit' });
    expect(contents.reload).not.toHaveBeenCalled();
    for (let times = 1; times <= 3; times++) {
      contents.emit('render-process-gone', {}, { reason: 'crashed' });
      expect(contents.reload).toHaveBeenCalledTimes(times);
    }
    contents.emit('render-process-gone', {}, { reason: 'oom' });
    expect(contents.reload).toHaveBeenCalledTimes(3);
    expect(standIn.invoked).toEqual([
      [expect.stringContaining('window'), expect.stringContaining('marks are safe')],
    ]);
  });

  it('is granted no permission but to put cleaned text on the clipboard, for our own page alone', () => {
    const asks = (permission: string, from: string): (boolean | undefined)[] => {
      const answers: (boolean | undefined)[] = [];
      standIn.permission.request?.(null, permission, (granted) => answers.push(granted), {
        requestingUrl: from,
      });
      return [...answers, standIn.permission.check?.(null, permission, from)];
    };
    for (const permission of ['media', 'geolocation', 'clipboard-read', 'fullscreen'])
      expect(asks(permission, 'submark://app/index.html'), permission).toEqual([false, false]);
    expect(asks('clipboard-sanitized-write', 'submark://app/index.html')).toEqual([true, true]);
    expect(asks('clipboard-sanitized-write', 'submark://app')).toEqual([true, true]);
    for (const from of ['https://evil.example/', 'submark://app.evil.example/', 'submark://other/', ''])
      expect(asks('clipboard-sanitized-write', from), from).toEqual([false, false]);
  });

  it('fetches no dictionaries, and has the page’s own colour until it is shown with its first picture', () => {
    expect(standIn.windows[0]).toMatchObject({
      options: { show: false, backgroundColor: '#0d171c', webPreferences: { spellcheck: false } },
    });
    standIn.window.emit('ready-to-show');
    expect(standIn.invoked).toEqual([['show']]);
  });

  it('hears of files that a second start opens with Submark', async () => {
    const film = path.join(folder, 'film.mp4');
    standIn.app.emit('second-instance', {}, [], '/', { files: [film] });
    expect(await operation(ours, 'window/next', { after: 0 })).toMatchObject({
      value: { requests: [{ kind: 'files', number: 3, paths: [film] }] },
    });
  });

  it('goes with the page’s look, and shows its commands in the menu, which run in the page', async () => {
    const command = { id: 'mark', label: 'Hand entry', key: 'a', enabled: true };
    const face = {
      look: { dark: false, ground: '#eef4f5' },
      groups: [{ heading: 'Bench', commands: [command] }],
      work: [],
    };
    expect(await operation(ours, 'window/show', face)).toEqual({ ok: true, value: {} });
    expect(standIn.theme.themeSource).toBe('light');
    expect(standIn.invoked).toContainEqual(['ground', '#eef4f5']);
    const menus = standIn.menus.length;
    const bench = standIn.menus.at(-1)?.find(({ label }) => label === 'Bench');
    const item = (bench?.submenu as MenuItemConstructorOptions[] | undefined)?.[0];
    if (!item?.click) throw new Error('no item');
    expect(item).toMatchObject({ label: 'Hand entry', accelerator: 'A', registerAccelerator: false });
    (item.click as () => void)();
    expect(await operation(ours, 'window/next', { after: 3 })).toMatchObject({
      value: { requests: [{ kind: 'command', number: 4, id: 'mark' }] },
    });
    // the same again is no new menu, which would close the one that is open
    await operation(ours, 'window/show', { ...face, work: [0.5] });
    expect(standIn.menus).toHaveLength(menus);
  });

  it('hears of files that the system opens with it', async () => {
    const opening = { preventDefault: vi.fn() };
    standIn.app.emit('open-file', opening, '/other.mp4');
    expect(opening.preventDefault).toHaveBeenCalledOnce();
    expect(await operation(ours, 'window/next', { after: 4 })).toMatchObject({
      value: { requests: [{ kind: 'files', number: 5, paths: ['/other.mp4'] }] },
    });
  });

  it('saves a copy under its own name where downloads go, and nothing from elsewhere', () => {
    const item = (address: string) =>
      Object.assign(new EventEmitter(), {
        getURL: () => address,
        getFilename: () => 'Lea 12.png',
        setSaveDialogOptions: vi.fn(),
      });
    const event = { preventDefault: vi.fn() };
    const own = item('submark://app/stream/export?name=Lea');
    standIn.downloads?.(event, own as never);
    expect(own.setSaveDialogOptions.mock.calls[0]?.[0]).toMatchObject({
      title: 'Save a copy',
      defaultPath: path.join(folder, 'Lea 12.png'),
    });
    expect(event.preventDefault).not.toHaveBeenCalled();
    own.emit('done', {}, 'interrupted');
    expect(standIn.invoked).toEqual([['The copy could not be saved', expect.stringContaining('Lea 12.png')]]);
    standIn.downloads?.(event, item('https://evil.example/a.exe') as never);
    expect(event.preventDefault).toHaveBeenCalledOnce();
  });

  it('has a profile of its own, apart from the library', () => {
    expect(standIn.paths.get('userData')).toBe(path.join(folder, 'desktop'));
  });

  it('goes nowhere and opens nothing', () => {
    let opening: (() => { action: string }) | null = null;
    const contents = Object.assign(new EventEmitter(), {
      setWindowOpenHandler: (handler: () => { action: string }) => {
        opening = handler;
      },
    });
    standIn.app.emit('web-contents-created', {}, contents);
    for (const name of ['will-navigate', 'will-redirect', 'will-frame-navigate', 'will-attach-webview']) {
      const event = { preventDefault: vi.fn() };
      contents.emit(name, event);
      expect(event.preventDefault, name).toHaveBeenCalledOnce();
    }
    expect((opening as unknown as () => { action: string })()).toEqual({ action: 'deny' });
  });
});

describe('operations over IPC', () => {
  it('answer our own page', async () => {
    expect(await operation(ours, 'library/open', {})).toMatchObject({
      ok: true,
      value: { swims: expect.any(Array) as unknown },
    });
  });

  it.each([
    ['no frame', { senderFrame: null }],
    ['another site', { senderFrame: { parent: null, url: 'https://evil.example/' } }],
    ['a look-alike host', { senderFrame: { parent: null, url: 'submark://app.evil.example/' } }],
    ['another host of the scheme', { senderFrame: { parent: null, url: 'submark://other/index.html' } }],
    ['a frame inside a page', { senderFrame: { parent: {}, url: 'submark://app/index.html' } }],
  ])('refuse %s', async (_name, event) => {
    expect(await operation(event, 'library/open', {})).toMatchObject({ error: { code: 'not-allowed' } });
  });

  it('refuse names and input that are not in the contract', async () => {
    expect(await operation(ours, { toString: 1 }, {})).toMatchObject({ error: { code: 'not-allowed' } });
    expect(await operation(ours, 'shell/run', {})).toMatchObject({ error: { code: 'bad-request' } });
  });
});

describe('the app’s protocol', () => {
  it('is a secure standard scheme served only for its own host', async () => {
    // nothing more: what goes round the content policy or other origins' rules is a privilege too
    expect(standIn.privileged).toEqual([
      {
        scheme: 'submark',
        privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true },
      },
    ]);
    const serve = standIn.protocols.get('submark');
    const other = await serve?.(new Request('http://x'));
    expect(other?.status).toBe(404);
    const own = await serve?.(new Request('submark://app/op/library/open', { method: 'POST', body: '{}' }));
    expect(own?.status).toBe(200);
    expect(own?.headers.get('content-security-policy')).toContain("default-src 'none'");
  });
});

describe('the preload script', () => {
  it('gives the page two functions: one bound to one channel, one that says where a picked file lies', async () => {
    await import('#electron/shell/preload');
    const bridge = standIn.exposed.get('submarkHost');
    expect([...standIn.exposed.keys()]).toEqual(['submarkHost']);
    expect(Object.keys(bridge ?? {})).toEqual(['run', 'pathOf']);
    expect(bridge?.pathOf?.({ name: 'a.mp4' })).toBe('/film/a.mp4');
    await bridge?.run?.('swim/read', { id: 'a' });
    expect(standIn.invoked).toEqual([['submark:operation', 'swim/read', { id: 'a' }]]);
  });
});

describe('the window’s place', () => {
  const screens = [{ x: 0, y: 0, width: 1920, height: 1080 }];
  it('is kept over a restart, and forgotten when its screen is gone or the file is strange', async () => {
    const { readWindowState } = await import('#electron/shell/window-state');
    const file = path.join(folder, 'place.json');
    const fresh = { width: 1440, height: 900 };
    expect(readWindowState(file, screens)).toEqual(fresh);
    await writeFile(file, '{"x":10,"y":20,"width":1200,"height":800}');
    expect(readWindowState(file, screens)).toEqual({ x: 10, y: 20, width: 1200, height: 800 });
    await writeFile(file, '{"x":5000,"y":20,"width":1200,"height":800}');
    expect(readWindowState(file, screens)).toEqual({ width: 1200, height: 800 });
    await writeFile(file, '{"x":1e99,"width":"');
    expect(readWindowState(file, screens)).toEqual(fresh);
  });
});

describe('places of the system', () => {
  it.each([
    ['film', 'open', 'Choose a clip', { canceled: false, filePaths: ['/film/a.mp4'] }, '/film/a.mp4'],
    ['archive', 'open', 'Choose a back-up', { canceled: true, filePaths: [] }, null],
    ['folder', 'open', 'Choose a folder', { canceled: false, filePaths: ['/film'] }, '/film'],
    ['new-archive', 'save', 'Back up the library', { canceled: false, filePath: '/b.zip' }, '/b.zip'],
    ['new-archive', 'save', 'Back up the library', { canceled: true, filePath: '' }, null],
  ] as const)(
    'a %s is asked for in the system’s own dialog, over the window',
    async (wanted, how, title, picked, path) => {
      standIn.picked = picked;
      expect(await operation(ours, 'place/pick', { wanted })).toEqual({ ok: true, value: { path } });
      expect(standIn.invoked).toEqual([[how, standIn.window, expect.objectContaining({ title })]]);
      const asked = standIn.invoked[0]?.[2] as
        | { filters?: { extensions: string[] }[]; defaultPath?: string }
        | undefined;
      // not where the program happened to be started
      if (how === 'save') expect(isAbsolute(asked?.defaultPath ?? '')).toBe(true);
      if (wanted !== 'folder')
        expect(asked?.filters?.[0]?.extensions).toContain(wanted === 'film' ? 'mov' : 'zip');
    },
  );

  it('a chosen library that is not there is looked for again, or the usual one opened, or nothing', async () => {
    const { openSomeLibrary } = await import('#electron/shell/open-some-library');
    const chosen = { path: '/disk/club', why: 'chosen', windowFolder: '/w' } as const;
    const asked: string[] = [];
    const open = async (library: { readonly why: string }): Promise<Result<string>> => {
      asked.push(library.why);
      return library.why === 'usual' ? success('opened') : failure('library-gone');
    };
    standIn.answers = [0, 1];
    expect(await openSomeLibrary(chosen, open)).toEqual({ ok: true, value: 'opened' });
    expect(asked).toEqual(['chosen', 'chosen', 'usual']);
    standIn.answers = [2];
    expect(await openSomeLibrary(chosen, open)).toBeNull();
    expect(await openSomeLibrary(chosen, async () => failure('disk-full'))).toMatchObject({ ok: false });
  });
});
