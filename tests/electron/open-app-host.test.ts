import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { chooseLibrary, type WantedLibrary, wantedLibrary } from '#electron/host/chosen-library';
import { type AppHost, openAppHost } from '#electron/host/open-app-host';

let parent: string;
let opened: AppHost[];
beforeEach(async () => {
  vi.stubEnv('SUBMARK_SAMPLES', 'none');
  opened = [];
  parent = await mkdtemp(path.join(tmpdir(), 'submark-places-'));
});
afterEach(async () => {
  vi.unstubAllEnvs();
  for (const { host } of opened) await host.close();
  await rm(parent, { recursive: true, force: true });
});

const wanted = (name: string, why: WantedLibrary['why']): WantedLibrary => ({
  path: path.join(parent, name),
  why,
  windowFolder: path.join(parent, 'window'),
});

async function open(library: WantedLibrary, remembered: string[] = []): Promise<AppHost> {
  const app = await openAppHost(library, {
    remember: async (chosen) => {
      remembered.push(chosen);
    },
  });
  if (!app.ok) throw new Error(app.error.code);
  opened.push(app.value);
  return app.value;
}

/** Which library the app's own origin answers from. */
async function served({ handler }: AppHost): Promise<string> {
  const answer = await handler(
    new Request('http://127.0.0.1/op/library/open', { method: 'POST', body: '{}' }),
  );
  const { value } = (await answer.json()) as { value: { path: string } };
  return value.path;
}

describe('going over to another library', () => {
  it('serves the other one from then on, and remembers it for the next start', async () => {
    const remembered: string[] = [];
    const app = await open(wanted('one', 'usual'), remembered);
    const other = path.join(parent, 'two');
    expect(await app.host.run('library/switch', { path: other })).toEqual({
      ok: true,
      value: { path: other, made: true, remembered: true },
    });
    expect(await served(app)).toBe(other);
    expect(app.host.folder.root).toBe(other);
    expect(remembered).toEqual([other]);
    expect(await app.host.run('library/switch', { path: path.join(parent, 'one') })).toMatchObject({
      value: { made: false },
    });
    expect(await served(app)).toBe(path.join(parent, 'one'));
  });

  it('does not remember one when the library was named at the start', async () => {
    const remembered: string[] = [];
    const app = await open(wanted('one', 'named'), remembered);
    expect(await app.host.run('library/switch', { path: path.join(parent, 'two') })).toMatchObject({
      value: { remembered: false },
    });
    expect(remembered).toEqual([]);
  });

  it('refuses a folder that holds anything else, writes nothing into it, and stays', async () => {
    const app = await open(wanted('one', 'usual'));
    const photos = path.join(parent, 'photos');
    await mkdir(photos);
    await writeFile(path.join(photos, 'a.jpg'), 'a');
    expect(await app.host.run('library/switch', { path: photos })).toMatchObject({
      error: { code: 'not-a-library' },
    });
    expect(await app.host.run('library/switch', { path: path.join(photos, 'a.jpg') })).toMatchObject({
      ok: false,
    });
    for (const strange of ['photos', `${photos}\0`])
      expect(await app.host.run('library/switch', { path: strange })).toMatchObject({
        error: { code: 'not-allowed' },
      });
    expect(await readdir(photos)).toEqual(['a.jpg']);
    expect(await served(app)).toBe(path.join(parent, 'one'));
  });
});

describe('the library of the next start', () => {
  it('is the one named, else the one chosen, else the usual place', async () => {
    const file = path.join(parent, 'settings', 'library.json');
    expect(wantedLibrary('', file).why).toBe('usual');
    await chooseLibrary(path.join(parent, 'club'), file);
    expect(wantedLibrary('', file)).toMatchObject({ path: path.join(parent, 'club'), why: 'chosen' });
    expect(wantedLibrary(parent, file)).toMatchObject({ path: parent, why: 'named' });
  });

  it.each(['', 'no JSON', '{"library":7}', '{"library":"relative"}'])(
    'is the usual place when what was remembered is %j',
    async (text) => {
      const file = path.join(parent, 'library.json');
      await writeFile(file, text);
      expect(wantedLibrary('', file).why).toBe('usual');
      expect(await readFile(file, 'utf8')).toBe(text);
    },
  );

  it('is not made anew where the disk of the chosen one is not connected', async () => {
    const gone = wanted('disk/library', 'chosen');
    expect(await openAppHost(gone)).toMatchObject({ error: { code: 'library-gone' } });
    expect(existsSync(path.dirname(gone.path))).toBe(false);
  });
});
