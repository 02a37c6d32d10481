import { EventEmitter } from 'node:events';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
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
      | ((contents: unknown, permission: string, answer: (granted: boolean) => void) => void),
    check: null as null | (() => boolean),
  },
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
    requestSingleInstanceLock: () => standIn.firstInstance,
    whenReady: () => Promise.resolve(),
    quit: () => {
      standIn.quits += 1;
    },
    exit: (code: number) => standIn.exits.push(code),
    getPath: () => standIn.userData,
  });
  class BrowserWindow extends Emitter {
    constructor(private readonly options: Record<string, unknown>) {
      super();
    }
    async loadURL(address: string): Promise<void> {
      standIn.windows.push({ options: this.options, address });
    }
    isMinimized(): boolean {
      return false;
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
      showOpenDialog: async (asked: unknown) => {
        standIn.invoked.push(['open', asked]);
        return standIn.picked;
      },
      showSaveDialog: async (asked: unknown) => {
        standIn.invoked.push(['save', asked]);
        return standIn.picked;
      },
      showMessageBox: async () => ({ response: standIn.answers.shift() ?? 2 }),
    },
    protocol,
    screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] },
    session: {
      defaultSession: {
        protocol,
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
  await rm(folder, { recursive: true, force: true });
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
    standIn.app.emit('second-instance');
    expect(standIn.invoked).toEqual([['focus']]);
  });

  it('ends only after what is at work has stopped, and then does end', async () => {
    let prevented = 0;
    const event = {
      preventDefault: () => {
        prevented += 1;
      },
    };
    const quitsBefore = standIn.quits;
    standIn.app.emit('before-quit', event);
    expect(prevented).toBe(1);
    await vi.waitFor(() => expect(standIn.quits).toBe(quitsBefore + 1), { timeout: 20_000 });
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

  it('is granted no permission', () => {
    const answers: boolean[] = [];
    for (const permission of ['media', 'geolocation', 'clipboard-read', 'fullscreen'])
      standIn.permission.request?.(null, permission, (granted) => answers.push(granted));
    expect(answers).toEqual([false, false, false, false]);
    expect(standIn.permission.check?.()).toBe(false);
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
  it('gives the page one function, bound to one channel', async () => {
    await import('#electron/shell/preload');
    const bridge = standIn.exposed.get('submarkHost');
    expect([...standIn.exposed.keys()]).toEqual(['submarkHost']);
    expect(Object.keys(bridge ?? {})).toEqual(['run']);
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
    [
      'file',
      ['open', { properties: ['openFile'] }],
      { canceled: false, filePaths: ['/film/a.mp4'] },
      '/film/a.mp4',
    ],
    [
      'folder',
      ['open', { properties: ['openDirectory', 'createDirectory'] }],
      { canceled: false, filePaths: ['/film'] },
      '/film',
    ],
    [
      'new-file',
      ['save', { properties: ['showOverwriteConfirmation'] }],
      { canceled: false, filePath: '/film/b.zip' },
      '/film/b.zip',
    ],
    [
      'new-file',
      ['save', { properties: ['showOverwriteConfirmation'] }],
      { canceled: true, filePath: '' },
      null,
    ],
    ['file', ['open', { properties: ['openFile'] }], { canceled: true, filePaths: [] }, null],
  ] as const)('a %s is asked for in the system’s own dialog', async (wanted, asked, picked, path) => {
    standIn.picked = picked;
    expect(await operation(ours, 'place/pick', { wanted })).toEqual({ ok: true, value: { path } });
    expect(standIn.invoked).toEqual([asked]);
  });

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
