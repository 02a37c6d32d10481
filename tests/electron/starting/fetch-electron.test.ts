import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type ElectronPackage, makeElectronPackage, type Server } from './electron-package';

const commands = new URL('../../../electron/commands/starting/', import.meta.url);
const load = async <T>(name: string): Promise<T> => (await import(new URL(name, commands).href)) as T;

interface Progress {
  readonly doing: string;
  readonly received?: number;
  readonly total?: number;
}
type Wait = (ms: number, act: () => void) => () => void;
const { fetchElectron } = await load<{
  fetchElectron(options: {
    electronPackage: string;
    env: NodeJS.ProcessEnv;
    onProgress?: (progress: Progress) => void;
    wait?: Wait;
  }): Promise<null | { code: string; [fact: string]: unknown }>;
}>('fetch-electron.mjs');
const { findElectron } = await load<{
  findElectron(options: { electronPackage: string; env: NodeJS.ProcessEnv; platform?: string }): {
    program?: string;
    missing?: string;
  };
}>('find-electron.mjs');

/** A clock of the test's own: nothing falls due until it is told. */
function ownClock() {
  const due = new Map<number, { ms: number; act: () => void }>();
  let next = 0;
  const wait: Wait = (ms, act) => {
    const id = next++;
    due.set(id, { ms, act });
    return () => due.delete(id);
  };
  return { wait, waiting: () => [...due.values()] };
}

const leftovers = () =>
  readdirSync(tmpdir()).filter((name) => /^(submark-electron-(?!package)|electron-download-)/.test(name));

// the installer's program is a shell script here, and only this system's programs are named so
describe.skipIf(process.platform !== 'linux')('fetching Electron’s program', () => {
  let electron: ElectronPackage;
  beforeEach(async () => {
    electron = await makeElectronPackage();
  });
  afterEach(() => electron.remove());
  const fetched = (server: Server, more: { onProgress?: (progress: Progress) => void; wait?: Wait } = {}) =>
    fetchElectron({ electronPackage: electron.folder, env: electron.env(server), ...more });
  const found = () => findElectron({ electronPackage: electron.folder, env: {} });

  it('fetches it once with its progress, checks it, unpacks it, and finds it from then on', async () => {
    expect(found()).toEqual({ missing: 'not-fetched' });
    const told: Progress[] = [];
    expect(await fetched('gives it', { onProgress: (progress) => told.push(progress) })).toBeNull();
    expect(found()).toEqual({ program: path.join(electron.folder, 'dist', 'electron') });
    expect(told.map(({ doing }) => doing)).toEqual(
      expect.arrayContaining(['asked', 'receiving', 'received']),
    );
    const last = told.at(-1);
    expect(last?.received).toBe(last?.total);
    expect(last?.total).toBeGreaterThan(300_000);
    expect(await fetched('is not there')).toBeNull();
    expect(readFileSync(path.join(electron.parent, 'asked.txt'), 'utf8').trim().split('\n')).toHaveLength(1);
  });

  it('takes it from the installer’s cache without the network', async () => {
    await fetched('gives it');
    const second = await makeElectronPackage();
    try {
      const env = {
        ...second.env('is not there'),
        electron_config_cache: path.join(electron.parent, 'cache'),
      };
      expect(await fetchElectron({ electronPackage: second.folder, env })).toBeNull();
      expect(existsSync(path.join(second.parent, 'asked.txt'))).toBe(false);
    } finally {
      await second.remove();
    }
  });

  it('asks the mirror that is named', async () => {
    const env = { ...electron.env('gives it'), ELECTRON_MIRROR: 'https://mirror.example/electron/' };
    expect(await fetchElectron({ electronPackage: electron.folder, env })).toBeNull();
    expect(readFileSync(path.join(electron.parent, 'asked.txt'), 'utf8')).toMatch(
      /^https:\/\/mirror\.example\/electron\/v[\d.]+\/electron-v/,
    );
  });

  it.each([
    ['is not there', { code: 'unreachable', fault: 'ENOTFOUND' }],
    ['says 404', { code: 'refused', status: 404 }],
    ['breaks off', { code: 'cut', fault: 'ECONNRESET' }],
    ['gives another file', { code: 'wrong-checksum' }],
  ] as const)(
    'says why when the server %s, and leaves nothing that passes for the program',
    async (server, why) => {
      expect(await fetched(server)).toEqual(why);
      expect(found()).toEqual({ missing: 'not-fetched' });
      expect(
        existsSync(path.join(electron.parent, 'cache')) &&
          readdirSync(path.join(electron.parent, 'cache')).length > 0,
      ).toBe(false);
    },
  );

  it.each(['says nothing', 'stops half-way'] as const)(
    'gives up after 15 s without a byte when the server %s, and leaves no half file',
    async (server) => {
      const before = leftovers();
      const clock = ownClock();
      const silence = { code: 'silent', seconds: 15 };
      let waitedOn: Progress | undefined;
      const done = fetched(server, {
        wait: clock.wait,
        onProgress: (progress) => {
          waitedOn = progress;
          const armed = clock.waiting();
          expect(armed.map(({ ms }) => ms)).toEqual([15_000]);
          if (server === 'says nothing' || progress.doing === 'receiving') armed[0]?.act();
        },
      });
      expect(await done).toEqual(silence);
      expect(waitedOn?.doing).toBe(server === 'says nothing' ? 'asked' : 'receiving');
      expect(clock.waiting()).toEqual([]);
      expect(found()).toEqual({ missing: 'not-fetched' });
      expect(leftovers().filter((name) => !before.includes(name))).toEqual([]);
    },
  );

  it('does not count what another version’s installer or a cut unpacking has left', async () => {
    const file = (name: string) => path.join(electron.folder, name);
    for (const spoil of [
      () => writeFileSync(file('dist/version'), '1.0.0'),
      () => rmSync(file('path.txt')),
      () => rmSync(file('dist/electron')),
    ]) {
      await electron.install('');
      expect(found()).toEqual({ program: file('dist/electron') });
      spoil();
      expect(found()).toEqual({ missing: 'not-fetched' });
    }
  });

  it('takes the folder that ELECTRON_OVERRIDE_DIST_PATH names', async () => {
    await electron.install('');
    const named = path.join(electron.folder, 'dist');
    const look = (folder: string, platform = 'linux') =>
      findElectron({
        electronPackage: electron.folder,
        env: { ELECTRON_OVERRIDE_DIST_PATH: folder },
        platform,
      });
    expect(look(named)).toEqual({ program: path.join(named, 'electron') });
    expect(look(named, 'darwin')).toEqual({ missing: 'not-in-folder' });
    expect(look(electron.parent)).toEqual({ missing: 'not-in-folder' });
  });
});
