/**
 * A stand-in for the electron module that shows the shell's window in Chromium: the shell's bundle, its preload bundle
 * and the host run as they are; what is missing is Electron itself. The window's origin, a scheme of our own there, is an
 * address on 127.0.0.1 here that hands every request to the scheme's handler. Not a proof of Electron's own walls.
 */
import { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { serve } from '@hono/node-server';
import { type BrowserContext, chromium } from '@playwright/test';
import { chromiumOptions } from '../../browser/harness/chromium';

type Handler = (request: Request) => Promise<Response>;
type Listener = (event: unknown, ...args: unknown[]) => unknown;

const schemes = new Map<string, Handler>();
const listeners = new Map<string, Listener>();
const userData = process.env['SUBMARK_USER_DATA'] ?? mkdtempSync(path.join(tmpdir(), 'submark-shell-'));
const closing: (() => Promise<unknown>)[] = [];

const nothing = (): void => undefined;

class StandInApp extends EventEmitter {
  requestSingleInstanceLock(): boolean {
    return true;
  }
  whenReady(): Promise<void> {
    return Promise.resolve();
  }
  readonly setPath = nothing;
  readonly setAboutPanelOptions = nothing;
  readonly commandLine = { hasSwitch: (): boolean => true };
  getPath(): string {
    return userData;
  }
  getName(): string {
    return 'Submark';
  }
  getVersion(): string {
    return '0';
  }
  quit(): void {
    let prevented = false;
    this.emit('before-quit', {
      preventDefault: () => {
        prevented = true;
      },
    });
    if (prevented) return;
    void Promise.all(closing.map((close) => close())).finally(() => this.exit(0));
  }
  exit(code: number): void {
    process.exit(code);
  }
}
export const app = new StandInApp();
process.on('SIGTERM', () => app.quit());

export const protocol = {
  registerSchemesAsPrivileged: (): void => undefined,
  handle: (scheme: string, handler: Handler): void => {
    schemes.set(scheme, handler);
  },
};
export const nativeTheme = { themeSource: 'system' };
export const powerMonitor = new EventEmitter();
export const powerSaveBlocker = { start: (): number => 1, stop: (): boolean => true };
export const Menu = {
  buildFromTemplate: (template: unknown): unknown => template,
  setApplicationMenu: (): void => undefined,
};
export const session = {
  defaultSession: {
    on: (): void => undefined,
    protocol,
    setPermissionRequestHandler: (): void => undefined,
    setPermissionCheckHandler: (): void => undefined,
  },
};
export const screen = {
  getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1440, height: 900 } }],
};
export const dialog = {
  showErrorBox: (title: string, words: string): void => console.error(`${title}: ${words}`),
};
export const ipcMain = {
  handle: (channel: string, listener: Listener): void => {
    listeners.set(channel, listener);
  },
};
// the preload bundle gets its own three in the page; the shell never uses them
export const contextBridge = {};
export const webUtils = {};
export const ipcRenderer = {};

interface WindowOptions {
  readonly width: number;
  readonly height: number;
  readonly webPreferences: { readonly preload: string };
}

/** What a sandboxed preload may require, made from one function that the page's owner gives it. */
const preloadWorld = (script: string): string => `(() => {
  const ipcRenderer = { invoke: (channel, ...args) => window.submarkInvoke(channel, args) };
  const contextBridge = {
    exposeInMainWorld: (name, value) => Object.defineProperty(window, name, { value: Object.freeze(value) }),
  };
  const require = (name) => {
    if (name !== 'electron') throw new Error('a sandboxed preload may not load ' + name);
    return { contextBridge, ipcRenderer, webUtils: { getPathForFile: () => "" } };
  };
  ${script}
})();`;

export class BrowserWindow extends EventEmitter {
  private context: BrowserContext | null = null;

  constructor(private readonly options: WindowOptions) {
    super();
  }

  async loadURL(address: string): Promise<void> {
    const asked = new URL(address);
    const origin = `${asked.protocol}//${asked.host}`;
    const handler = schemes.get(asked.protocol.slice(0, -1));
    if (!handler) throw new Error(`nothing serves ${asked.protocol}`);
    const forward = (request: Request): Promise<Response> => {
      const url = new URL(request.url);
      const { method, headers, body } = request;
      const init = body ? { method, headers, body, duplex: 'half' as const } : { method, headers };
      return handler(new Request(`${origin}${url.pathname}${url.search}`, init));
    };
    const port = await new Promise<number>((resolve) => {
      const server = serve({ fetch: forward, hostname: '127.0.0.1', port: 0 }, (info) => resolve(info.port));
      closing.push(() => new Promise((done) => server.close(done)));
    });
    const { args = [], ...launch } = chromiumOptions();
    const profile = mkdtempSync(path.join(tmpdir(), 'submark-window-'));
    this.context = await chromium.launchPersistentContext(profile, {
      ...launch,
      args: [...args, '--remote-debugging-port=0'],
      viewport: { width: this.options.width, height: this.options.height },
    });
    closing.unshift(() => this.context?.close() ?? Promise.resolve());
    await this.context.exposeBinding(
      'submarkInvoke',
      async ({ frame }, channel: string, args: readonly unknown[]) => {
        const listener = listeners.get(channel);
        if (!listener) throw new Error(`no handler for ${channel}`);
        const url = frame.url().replace(`http://127.0.0.1:${port}`, origin);
        return listener({ senderFrame: { url, parent: frame.parentFrame() } }, ...args);
      },
    );
    const { preload } = this.options.webPreferences;
    await this.context.addInitScript({ content: preloadWorld(readFileSync(preload, 'utf8')) });
    const page = this.context.pages()[0] ?? (await this.context.newPage());
    page.on('close', () => app.emit('window-all-closed'));
    await page.goto(`http://127.0.0.1:${port}${asked.pathname}`);
    const [debugPort] = readFileSync(path.join(profile, 'DevToolsActivePort'), 'utf8').split('\n');
    console.log(`window: http://127.0.0.1:${debugPort}`);
  }

  readonly show = nothing;
  readonly maximize = nothing;
  readonly setPosition = nothing;
  readonly setProgressBar = nothing;
  readonly setBackgroundColor = nothing;
  isFullScreen(): boolean {
    return false;
  }
  isMinimized(): boolean {
    return false;
  }
  isMaximized(): boolean {
    return false;
  }
  isDestroyed(): boolean {
    return false;
  }
  getNormalBounds(): { x: number; y: number; width: number; height: number } {
    return { x: 0, y: 0, width: this.options.width, height: this.options.height };
  }
  focus(): void {
    this.emit('focus');
  }
}
