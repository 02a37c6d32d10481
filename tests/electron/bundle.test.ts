import { createHash } from 'node:crypto';
import { cp, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ZipFile } from 'yazl';
import type { Result } from '#core/host-contract/host-error';
import type { ArrivedBundle } from '#core/host-contract/operations/bundle-operations';
import { createHost, type Host } from '#electron/host/create-host';

const samples = fileURLToPath(new URL('../../sample-clips/library', import.meta.url));
const id = 'sample-phone-portrait';

let folder: string;
let here: Host;
let there: Host;
let zip: string;

async function hostOn(name: string, withSwim: boolean): Promise<Host> {
  const library = path.join(folder, name);
  await mkdir(path.join(library, 'swims'), { recursive: true });
  await writeFile(path.join(library, 'library.json'), '{"format":"submark-library","version":1}');
  if (withSwim)
    await cp(path.join(samples, 'swims', id), path.join(library, 'swims', id), { recursive: true });
  const host = await createHost({ libraryPath: library, samplesPath: null });
  if (!host.ok) throw new Error(host.error.code);
  return host.value;
}

const valueOrThrow = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
};

async function madeBundle(host: Host): Promise<string> {
  const { jobId } = valueOrThrow(await host.run('bundle/make', { id })) as { jobId: string };
  for (;;) {
    const look = valueOrThrow(await host.run('job/look', { jobId })) as {
      state: string;
      result?: { path: string };
    };
    if (look.state === 'done' && look.result) return look.result.path;
    if (look.state !== 'running') throw new Error(JSON.stringify(look));
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

const arrive = (host: Host, bytes: Uint8Array): Promise<Result<ArrivedBundle>> =>
  host.bundles.arrive(new Blob([new Uint8Array(bytes)]).stream());

/** Packs files as a bundle would be, manifest included, after `bend` has bent it. */
async function packed(
  files: Readonly<Record<string, Uint8Array>>,
  bend: {
    readonly manifest?: (manifest: Record<string, unknown>) => void;
    readonly extra?: (zip: ZipFile) => void;
  } = {},
): Promise<Buffer> {
  const manifest = {
    format: 'submark-bundle',
    version: 1,
    madeAt: '2026-05-14T09:00:00.000Z',
    swimId: id,
    files: Object.entries(files).map(([name, bytes]) => ({
      name,
      bytes: bytes.length,
      sha256: createHash('sha256').update(bytes).digest('hex'),
    })),
  };
  bend.manifest?.(manifest);
  const made = new ZipFile();
  made.addBuffer(Buffer.from(JSON.stringify(manifest)), 'manifest.json');
  for (const [name, bytes] of Object.entries(files)) made.addBuffer(Buffer.from(bytes), name);
  bend.extra?.(made);
  made.end();
  const chunks: Buffer[] = [];
  for await (const chunk of made.outputStream) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-bundle-'));
  here = await hostOn('here', true);
  there = await hostOn('there', false);
  zip = await madeBundle(here);
});
afterAll(async () => {
  await here.close();
  await there.close();
  await rm(folder, { recursive: true, force: true });
});

describe('a swim bundle', () => {
  it('is a zip that any tool opens, with clip, marks and a manifest of fingerprints', async () => {
    const listed = await execa('unzip', ['-Z1', zip]);
    expect(listed.stdout.split('\n').sort()).toEqual(
      ['manifest.json', 'phone-portrait.mp4', 'swim.json', 'thumb.jpg'].sort(),
    );
    expect((await execa('unzip', ['-tq', zip])).stdout).toMatch(/No errors detected/);
    const clip = await execa('unzip', ['-p', zip, 'phone-portrait.mp4'], { encoding: 'buffer' });
    const original = await readFile(path.join(samples, 'swims', id, 'phone-portrait.mp4'));
    expect(Buffer.from(clip.stdout).equals(original)).toBe(true);
  });

  it('opens on another coach’s shelf; a second time both are kept or the first goes to the bin, as asked', async () => {
    const bytes = await readFile(zip);
    const first = valueOrThrow(await arrive(there, bytes));
    expect(first).toMatchObject({ swimId: id, there: null, clipName: 'phone-portrait.mp4' });
    valueOrThrow(await there.run('bundle/keep', { bundleId: first.bundleId, as: 'new' }));
    const read = valueOrThrow(await there.run('swim/read', { id }));
    expect(read).toMatchObject({ clipStatus: 'present', swim: { id } });

    const second = valueOrThrow(await arrive(there, bytes));
    expect(second.there).toMatchObject({ same: true });
    const refused = await there.run('bundle/keep', { bundleId: second.bundleId, as: 'new' });
    expect(refused).toMatchObject({ ok: false, error: { code: 'already-there' } });
    const both = valueOrThrow(await there.run('bundle/keep', { bundleId: second.bundleId, as: 'both' })) as {
      swimId: string;
    };
    expect(both.swimId).not.toBe(id);
    expect(valueOrThrow(await there.run('swim/read', { id: both.swimId }))).toMatchObject({
      clipStatus: 'present',
      swim: { id: both.swimId },
    });

    for (let round = 0; round < 2; round++) {
      const again = valueOrThrow(await arrive(there, bytes));
      valueOrThrow(await there.run('bundle/keep', { bundleId: again.bundleId, as: 'replace' }));
    }
    // both swims that made room lie in the bin
    expect(await readdir(there.folder.bin)).toHaveLength(2);
    expect(await readdir(there.folder.arriving)).toEqual([]);
  });

  it('is refused whole, and leaves nothing, when anything in it is not what it says', async () => {
    const swim = await readFile(path.join(samples, 'swims', id, 'swim.json'));
    const clip = await readFile(path.join(samples, 'swims', id, 'phone-portrait.mp4'));
    const good = { 'swim.json': swim, 'phone-portrait.mp4': clip };
    const bomb = Buffer.alloc(30 * 1024 * 1024);
    const cases: readonly [string, Uint8Array, RegExp][] = [
      ['no zip', Buffer.from('not a zip at all'), /./],
      ['cut off', (await readFile(zip)).subarray(0, 5000), /./],
      ['no manifest', await packed(good, { manifest: (m) => delete m['format'] }), /format/],
      [
        'a file nobody named',
        await packed(good, { extra: (z) => z.addBuffer(Buffer.from('x'), 'more.txt') }),
        /does not name/,
      ],
      [
        'a changed byte',
        await packed(
          { ...good, 'swim.json': Buffer.from(swim) },
          {
            manifest: (m) => {
              const [file] = m['files'] as { sha256: string }[];
              if (file) file.sha256 = '0'.repeat(64);
            },
          },
        ),
        /changed after packing/,
      ],
      ['a bomb', await packed({ ...good, 'thumb.jpg': bomb }), /far more/],
      [
        'a link',
        await packed(good, {
          manifest: (m) =>
            (m['files'] as unknown[]).push({ name: 'link', bytes: 11, sha256: '0'.repeat(64) }),
          extra: (z) => z.addBuffer(Buffer.from('/etc/passwd'), 'link', { mode: 0o120777 }),
        }),
        /no file/,
      ],
      ['another swim', await packed(good, { manifest: (m) => Object.assign(m, { swimId: 'x' }) }), /another/],
      ['another clip', await packed({ ...good, 'phone-portrait.mp4': Buffer.from('film') }), /not the one/],
      ['its clip missing', await packed({ 'swim.json': swim }), /clip is not in it/],
    ];
    for (const [name, bytes, words] of cases) {
      const refused = await arrive(there, bytes);
      expect(refused.ok, name).toBe(false);
      if (!refused.ok) {
        expect(refused.error.code, name).toBe('bundle-damaged');
        expect(JSON.stringify(refused.error.detail), name).toMatch(words);
      }
    }
    expect(await readdir(there.folder.arriving)).toEqual([]);
  });

  it('can’t write outside its own folder, whatever its names say', async () => {
    const swim = await readFile(path.join(samples, 'swims', id, 'swim.json'));
    for (const way of ['aa/escape.json', 'xx.escape.json']) {
      const plain = await packed({ 'swim.json': swim, [way]: Buffer.from('{}') });
      // a zip writer refuses such names, so the bytes are bent by hand, lengths kept
      const bent = Buffer.from(
        plain
          .toString('latin1')
          .replaceAll('aa/escape.json', '../escape.json')
          .replaceAll('xx.escape.json', '..\\escape.json'),
        'latin1',
      );
      const refused = await arrive(there, bent);
      expect(refused.ok, way).toBe(false);
    }
    const all = await readdir(folder, { recursive: true });
    expect(all.filter((name) => name.includes('escape'))).toEqual([]);
  });
});
