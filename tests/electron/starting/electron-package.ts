import { createHash } from 'node:crypto';
import { copyFile, mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { buffer } from 'node:stream/consumers';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { ZipFile } from 'yazl';

const modules = fileURLToPath(new URL('../../../node_modules', import.meta.url));

/** What the server in the place of Electron's does. */
export type Server =
  | 'gives it'
  | 'gives another file'
  | 'breaks off'
  | 'says 404'
  | 'is not there'
  | 'says nothing'
  | 'stops half-way';

export interface ElectronPackage {
  readonly folder: string;
  readonly parent: string;
  /** The environment in which the installer fetches from the given server and keeps its cache to itself. */
  env(server: Server): NodeJS.ProcessEnv;
  /** Puts a program where the installer would have put it. */
  install(program: string): Promise<void>;
  remove(): Promise<void>;
}

/** Electron's own package with its own installer, but with a small program and a fetch that asks no network. */
export async function makeElectronPackage(): Promise<ElectronPackage> {
  const parent = await mkdtemp(path.join(tmpdir(), 'submark-electron-package-'));
  const folder = path.join(parent, 'node_modules', 'electron');
  await mkdir(folder, { recursive: true });
  for (const file of ['package.json', 'install.js'])
    await copyFile(path.join(modules, 'electron', file), path.join(folder, file));
  for (const scope of ['@electron', '@electron-internal'])
    await symlink(path.join(modules, scope), path.join(parent, 'node_modules', scope), 'junction');
  const { version } = JSON.parse(await readFile(path.join(folder, 'package.json'), 'utf8')) as {
    version: string;
  };
  const zip = new ZipFile();
  // the same bytes each time, so that one package's cache serves another's
  const mtime = new Date(2020, 0, 1);
  zip.addBuffer(Buffer.from('#!/bin/sh\nexit 0\n'), 'electron', { mode: 0o755, mtime });
  zip.addBuffer(Buffer.from(version), 'version', { mtime });
  // larger than one chunk, so that it can break off in the middle
  zip.addBuffer(Buffer.alloc(300_000, 1), 'resources.pak', { compress: false, mtime });
  zip.end();
  const bytes = await buffer(zip.outputStream as NodeJS.ReadableStream & AsyncIterable<Buffer>);
  await writeFile(path.join(parent, 'program.zip'), bytes);
  await writeFile(
    path.join(folder, 'checksums.json'),
    JSON.stringify({
      [`electron-v${version}-${process.platform}-${process.arch}.zip`]: createHash('sha256')
        .update(bytes)
        .digest('hex'),
    }),
  );
  const fake = path.join(parent, 'fake-fetch.mjs');
  await writeFile(fake, fakeFetch(path.join(parent, 'program.zip'), path.join(parent, 'asked.txt')));
  return {
    folder,
    parent,
    env: (server) => ({
      ...process.env,
      electron_config_cache: path.join(parent, 'cache'),
      FAKE_SERVER: server,
      NODE_OPTIONS: `--import ${pathToFileURL(fake).href}`,
    }),
    install: async (program) => {
      await mkdir(path.join(folder, 'dist'), { recursive: true });
      await writeFile(path.join(folder, 'dist', 'electron'), program, { mode: 0o755 });
      await writeFile(path.join(folder, 'dist', 'version'), version);
      await writeFile(path.join(folder, 'path.txt'), 'electron');
    },
    remove: () => rm(parent, { recursive: true, force: true }),
  };
}

const fakeFetch = (zip: string, asked: string): string => `
import { appendFileSync, readFileSync } from 'node:fs';
const bytes = readFileSync(${JSON.stringify(zip)});
const never = () => new Promise(() => setInterval(() => undefined, 1e6));
const half = bytes.subarray(0, 150_000);
const body = {
  'gives it': async function* () { yield half; yield bytes.subarray(150_000); },
  'gives another file': async function* () { yield half; yield new Uint8Array(bytes.length - half.length); },
  'breaks off': async function* () { yield half; throw Object.assign(new TypeError('terminated'), { code: 'ECONNRESET' }); },
  'stops half-way': async function* () { yield half; await never(); },
};
globalThis.fetch = async (address) => {
  appendFileSync(${JSON.stringify(asked)}, address + '\\n');
  const server = process.env.FAKE_SERVER;
  if (server === 'is not there') throw new TypeError('fetch failed', { cause: { code: 'ENOTFOUND' } });
  if (server === 'says 404') return new Response('none', { status: 404 });
  if (server === 'says nothing') await never();
  return new Response(ReadableStream.from(body[server]()), { headers: { 'content-length': bytes.length } });
};
`;
