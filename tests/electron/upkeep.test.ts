import { createHash } from 'node:crypto';
import { existsSync, readdirSync } from 'node:fs';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { storageSchema } from '#core/host-contract/operations/upkeep-operations';
import { createHost } from '#electron/host/create-host';
import { manifestName } from '#electron/host/upkeep/archive-manifest';
import { partsInside } from '#electron/host/upkeep/parts-inside';
import { restoreLibrary } from '#electron/host/upkeep/restore-library';
import { aPractice } from '#tests/shared-core/practice/a-practice';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { rawZip } from '#tests/fuzz/raw-zip';
import { must } from './a-host';
import { filesUnder, libraryUnderUpkeep } from './library-under-upkeep';

const { under, beside, inLibrary, ended, resultOf, swimOf } = libraryUnderUpkeep();

describe('a back-up', () => {
  beforeEach(async () => {
    await swimOf('one', 'Rowan', null);
    await swimOf('two', 'Ada', null);
    await writeFile(inLibrary('exports', 'a still.png'), Buffer.alloc(3000, 7));
  });

  it('holds the whole library, and a new library made of it is the same to the last byte', async () => {
    const file = path.join(beside(), 'back-up.zip');
    const done = await resultOf(must(await under().ask('library/back-up', { file })));
    expect(done).toMatchObject({ path: file, files: filesUnder(under().library).length, outside: [] });
    const folder = path.join(beside(), 'restored');
    const made = await resultOf(must(await under().ask('library/restore', { archive: file, folder })));
    expect(made).toMatchObject({ swims: 2 });
    expect(filesUnder(folder)).toEqual(filesUnder(under().library));
    for (const name of filesUnder(folder))
      expect((await readFile(path.join(folder, name))).equals(await readFile(inLibrary(name))), name).toBe(
        true,
      );
    const second = must(await createHost({ libraryPath: folder, samplesPath: null }));
    expect(must(await second.run('library/open', {}))).toMatchObject({
      swims: [{ clipStatus: 'present' }, { clipStatus: 'present' }],
    });
    expect(readdirSync(beside()).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('leads nowhere but into its folder, whatever its files are called', async () => {
    const outward = ['..', '../out', 'a/../../out', '/out', 'a//b', './b', 'a/./b', 'a\\..\\b', 'a\0b'];
    const onWindows = ['C:/out', 'a/con', 'swims/NUL.json', 'a:stream', 'a/b.', 'a/b '];
    for (const name of outward)
      expect([partsInside(name, false), partsInside(name, true)], name).toEqual([null, null]);
    for (const name of onWindows) expect(partsInside(name, true), name).toBeNull();
    for (const windows of [true, false])
      expect(partsInside('swims/one/.generations/swim.json.00000001', windows)).toHaveLength(4);
    const file = path.join(beside(), 'bent.zip');
    const bytes = Buffer.from('{}');
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    for (const name of outward) {
      const manifest = {
        ...{ format: 'submark-archive', version: 1, createdAt: '2026-01-01T00:00:00Z', outside: [] },
        files: [name, 'library.json'].map((each) => ({ path: each, bytes: 2, sha256 })),
      };
      const zip = rawZip([
        { name, bytes },
        { name: 'library.json', bytes },
        { name: manifestName, bytes: Buffer.from(JSON.stringify(manifest)) },
      ]);
      await writeFile(file, zip);
      const made = { archive: file, folder: path.join(beside(), 'restored') };
      expect(await ended(must(await under().ask('library/restore', made))), name).toMatchObject({
        state: 'failed',
        error: { code: 'archive-damaged' },
      });
      expect(readdirSync(beside()).sort(), name).toEqual(['bent.zip', 'library']);
    }
  });

  it('is not unpacked where it says it needs more room than there is', async () => {
    const file = path.join(beside(), 'back-up.zip');
    await resultOf(must(await under().ask('library/back-up', { file })));
    const folder = path.join(beside(), 'restored');
    const signal = new AbortController().signal;
    const small = await restoreLibrary(
      file,
      folder,
      'id',
      signal,
      () => undefined,
      async () => 2000,
    );
    expect(small).toMatchObject({ ok: false, error: { code: 'disk-full' } });
    expect(readdirSync(beside()).filter((name) => name.startsWith('restored'))).toEqual([]);
    const enough = await restoreLibrary(
      file,
      folder,
      'id',
      signal,
      () => undefined,
      async () => 1e9,
    );
    expect(enough.ok).toBe(true);
  });

  it('never goes over a file, into the library itself, or over a folder that holds anything', async () => {
    const file = path.join(beside(), 'taken.zip');
    await writeFile(file, 'mine');
    const failed = async (started: { jobId: string }) => {
      const look = await ended(started);
      return look.state === 'failed' ? look.error.code : look.state;
    };
    expect(await failed(must(await under().ask('library/back-up', { file })))).toBe('already-there');
    expect(await readFile(file, 'utf8')).toBe('mine');
    const inside = inLibrary('exports', 'back-up.zip');
    expect(await failed(must(await under().ask('library/back-up', { file: inside })))).toBe('not-allowed');
    const good = path.join(beside(), 'good.zip');
    await resultOf(must(await under().ask('library/back-up', { file: good })));
    const full = path.join(beside(), 'full');
    await mkdir(full);
    await writeFile(path.join(full, 'mine.txt'), 'mine');
    const over = must(await under().ask('library/restore', { archive: good, folder: full }));
    expect(await failed(over)).toBe('already-there');
    expect(readdirSync(full)).toEqual(['mine.txt']);
  });

  it('that was cut short, changed in one byte or is no archive is refused whole', async () => {
    const file = path.join(beside(), 'good.zip');
    await resultOf(must(await under().ask('library/back-up', { file })));
    const bytes = await readFile(file);
    const clip = bytes.indexOf('hello video');
    expect(clip).toBeGreaterThan(0);
    const changed = Buffer.from(bytes);
    changed.write('hellO', clip);
    const bad = path.join(beside(), 'bad.zip');
    for (const each of [bytes.subarray(0, bytes.length - 200), changed, Buffer.from('no archive at all')]) {
      await writeFile(bad, each);
      const folder = path.join(beside(), 'restored');
      const look = await ended(must(await under().ask('library/restore', { archive: bad, folder })));
      expect(look).toMatchObject({ state: 'failed', error: { code: 'archive-damaged' } });
      expect(existsSync(folder)).toBe(false);
    }
  });

  it('stops when it is told to, and leaves nothing', async () => {
    await writeFile(inLibrary('exports', 'large.png'), Buffer.alloc(60_000_000, 3));
    const file = path.join(beside(), 'stopped.zip');
    const { jobId } = must(await under().ask('library/back-up', { file }));
    must(await under().ask('job/cancel', { jobId }));
    expect(await ended({ jobId })).toEqual({ state: 'cancelled' });
    expect(readdirSync(beside()).filter((name) => name.includes('stopped'))).toEqual([]);
  });
});

describe('missing clips', () => {
  it('are found by what they hold when folders move, whatever they are called now', async () => {
    const outside = path.join(beside(), 'stick', 'film.mp4');
    await mkdir(path.dirname(outside));
    await writeFile(outside, 'film of the pool');
    const clip = must(await under().ask('clip/refer', { path: outside }));
    must(await under().ask('swim/create', { swim: aSwim({ id: 'far' }), clipId: clip.clipId }));
    await swimOf('near', 'Rowan', null);
    const moved = path.join(beside(), 'other', 'deep', 'down');
    await mkdir(moved, { recursive: true });
    await rename(outside, path.join(moved, 'renamed.mp4'));
    await rename(inLibrary('swims', 'near', 'clip.mp4'), path.join(moved, 'taken out.mp4'));
    // of the same size, but another film
    await writeFile(path.join(moved, 'a decoy.mp4'), 'film of the sea ');
    const done = await resultOf(
      must(await under().ask('clips/find', { folder: path.join(beside(), 'other') })),
    );
    expect(done).toMatchObject({ stillMissing: 0, looked: 3, failed: [] });
    const swims = must(await under().ask('library/open', {})).swims;
    expect(swims.map(({ clipStatus }) => clipStatus)).toEqual(['present', 'present']);
    const { swim } = must(await under().ask('swim/read', { id: 'far' }));
    expect(swim.clip.place).toEqual({ kind: 'outside', path: path.join(moved, 'renamed.mp4') });
    const nowhere = must(await under().ask('clips/find', { folder: path.join(beside(), 'no such') }));
    expect(await ended(nowhere)).toMatchObject({ state: 'failed', error: { code: 'not-found' } });
  });
});

describe('room', () => {
  it('is added up by what takes it, and given back from the bin and the exports', async () => {
    await swimOf('one', 'Rowan', null);
    await swimOf('two', 'Ada', null);
    await writeFile(inLibrary('swims', 'one', 'thumb.jpg'), Buffer.alloc(500));
    await writeFile(inLibrary('exports', 'a.png'), Buffer.alloc(700));
    must(await under().ask('swim/remove', { id: 'two' }));
    must(await under().ask('practice/write', { practice: aPractice({ id: 'p' }), baseRevision: null }));
    must(await under().ask('practice/remove', { id: 'p' }));
    const look = async () =>
      storageSchema.parse(await resultOf(must(await under().ask('storage/look', {})))).kinds;
    const before = await look();
    expect([before.clips, before.thumbnails, before.exports]).toEqual([
      { files: 1, bytes: 11 },
      { files: 1, bytes: 500 },
      { files: 1, bytes: 700 },
    ]);
    expect(before.bin.files).toBe(3);
    const bin = must(await under().ask('bin/list', {}));
    expect(bin.swims.map(({ id, card }) => [id, card?.swimmerName])).toEqual([['two', 'Ada']]);
    expect(bin.plans).toMatchObject([{ kind: 'practice', id: 'p' }]);
    must(await under().ask('bin/empty', { swims: ['two'], practices: ['p'], trials: [] }));
    must(await under().ask('storage/clean', { what: 'exports' }));
    // earlier versions and thumbnails go from the swims; the swims, and what a clash kept, stay
    const read = must(await under().ask('swim/read', { id: 'one' }));
    const written = { ...read.swim, card: { ...read.swim.card, drill: 'other' } };
    must(await under().ask('swim/write', { swim: written, baseRevision: read.revision }));
    await under().ask('swim/write', { swim: read.swim, baseRevision: '0'.repeat(64) });
    const full = await look();
    expect([full.generations.files > 0, full.thumbnails.files, full.copies.files]).toEqual([true, 1, 1]);
    const gone = must(await under().ask('storage/clean', { what: 'generations' }));
    expect(gone.files).toBe(full.generations.files);
    must(await under().ask('storage/clean', { what: 'thumbnails' }));
    const after = await look();
    expect([after.generations.files, after.thumbnails.files, after.copies.files]).toEqual([0, 0, 1]);
    const [swim] = must(await under().ask('library/open', {})).swims;
    expect([swim?.card.drill, swim?.hasThumbnail]).toEqual(['other', false]);
    expect([after.bin.files, after.exports.files, after.clips.files]).toEqual([0, 0, 1]);
  });
});
