import { createHash } from 'node:crypto';
import { existsSync, readdirSync } from 'node:fs';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { drillLibrary } from '#core/practice/drill-library';
import { type Trial, trialFileVersion } from '#core/practice/trial-schema';
import { noTags } from '#core/swim-file/condition-tags';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  erasedSchema,
  erasePlanSchema,
  storageSchema,
} from '#core/host-contract/operations/upkeep-operations';
import { type Squad, squadFileVersion } from '#core/swim-file/squad-schema';
import { createHost } from '#electron/host/create-host';
import { manifestName } from '#electron/host/upkeep/archive-manifest';
import { partsInside } from '#electron/host/upkeep/parts-inside';
import { restoreLibrary } from '#electron/host/upkeep/restore-library';
import { aPractice } from '#tests/shared-core/practice/a-practice';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { rawZip } from '#tests/fuzz/raw-zip';
import { aHost, type HostUnderTest, must, streamOf } from './a-host';

let under: HostUnderTest;
let beside: string;
beforeEach(async () => {
  under = await aHost();
  beside = path.dirname(under.library);
});
afterEach(() => under.close());
const inLibrary = (...parts: string[]): string => path.join(under.library, ...parts);

async function ended(started: { jobId: string }) {
  for (;;) {
    const look = must(await under.ask('job/look', started));
    if (look.state !== 'running') return look;
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}
async function resultOf(started: { jobId: string }): Promise<unknown> {
  const look = await ended(started);
  if (look.state !== 'done') throw new Error(JSON.stringify(look));
  return look.result;
}
const swimOf = (id: string, name: string, swimmerId: string | null, words = '') =>
  under.addSwim({ id, card: { ...aSwim().card, swimmerId, swimmerName: name, note: words } });
const filesUnder = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map((each) => path.relative(folder, path.join(each.parentPath, each.name)))
    .filter((name) => !name.startsWith('.cache'))
    .sort();

describe('a back-up', () => {
  beforeEach(async () => {
    await swimOf('one', 'Rowan', null);
    await swimOf('two', 'Ada', null);
    await writeFile(inLibrary('exports', 'a still.png'), Buffer.alloc(3000, 7));
  });

  it('holds the whole library, and a new library made of it is the same to the last byte', async () => {
    const file = path.join(beside, 'back-up.zip');
    const done = await resultOf(must(await under.ask('library/back-up', { file })));
    expect(done).toMatchObject({ path: file, files: filesUnder(under.library).length, outside: [] });
    const folder = path.join(beside, 'restored');
    const made = await resultOf(must(await under.ask('library/restore', { archive: file, folder })));
    expect(made).toMatchObject({ swims: 2 });
    expect(filesUnder(folder)).toEqual(filesUnder(under.library));
    for (const name of filesUnder(folder))
      expect((await readFile(path.join(folder, name))).equals(await readFile(inLibrary(name))), name).toBe(
        true,
      );
    const second = must(await createHost({ libraryPath: folder, samplesPath: null }));
    expect(must(await second.run('library/open', {}))).toMatchObject({
      swims: [{ clipStatus: 'present' }, { clipStatus: 'present' }],
    });
    expect(readdirSync(beside).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('leads nowhere but into its folder, whatever its files are called', async () => {
    const outward = ['..', '../out', 'a/../../out', '/out', 'a//b', './b', 'a/./b', 'a\\..\\b', 'a\0b'];
    const onWindows = ['C:/out', 'a/con', 'swims/NUL.json', 'a:stream', 'a/b.', 'a/b '];
    for (const name of outward)
      expect([partsInside(name, false), partsInside(name, true)], name).toEqual([null, null]);
    for (const name of onWindows) expect(partsInside(name, true), name).toBeNull();
    for (const windows of [true, false])
      expect(partsInside('swims/one/.generations/swim.json.00000001', windows)).toHaveLength(4);
    const file = path.join(beside, 'bent.zip');
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
      const made = { archive: file, folder: path.join(beside, 'restored') };
      expect(await ended(must(await under.ask('library/restore', made))), name).toMatchObject({
        state: 'failed',
        error: { code: 'archive-damaged' },
      });
      expect(readdirSync(beside).sort(), name).toEqual(['bent.zip', 'library']);
    }
  });

  it('is not unpacked where it says it needs more room than there is', async () => {
    const file = path.join(beside, 'back-up.zip');
    await resultOf(must(await under.ask('library/back-up', { file })));
    const folder = path.join(beside, 'restored');
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
    expect(readdirSync(beside).filter((name) => name.startsWith('restored'))).toEqual([]);
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
    const file = path.join(beside, 'taken.zip');
    await writeFile(file, 'mine');
    const failed = async (started: { jobId: string }) => {
      const look = await ended(started);
      return look.state === 'failed' ? look.error.code : look.state;
    };
    expect(await failed(must(await under.ask('library/back-up', { file })))).toBe('already-there');
    expect(await readFile(file, 'utf8')).toBe('mine');
    const inside = inLibrary('exports', 'back-up.zip');
    expect(await failed(must(await under.ask('library/back-up', { file: inside })))).toBe('not-allowed');
    const good = path.join(beside, 'good.zip');
    await resultOf(must(await under.ask('library/back-up', { file: good })));
    const full = path.join(beside, 'full');
    await mkdir(full);
    await writeFile(path.join(full, 'mine.txt'), 'mine');
    const over = must(await under.ask('library/restore', { archive: good, folder: full }));
    expect(await failed(over)).toBe('already-there');
    expect(readdirSync(full)).toEqual(['mine.txt']);
  });

  it('that was cut short, changed in one byte or is no archive is refused whole', async () => {
    const file = path.join(beside, 'good.zip');
    await resultOf(must(await under.ask('library/back-up', { file })));
    const bytes = await readFile(file);
    const clip = bytes.indexOf('hello video');
    expect(clip).toBeGreaterThan(0);
    const changed = Buffer.from(bytes);
    changed.write('hellO', clip);
    const bad = path.join(beside, 'bad.zip');
    for (const each of [bytes.subarray(0, bytes.length - 200), changed, Buffer.from('no archive at all')]) {
      await writeFile(bad, each);
      const folder = path.join(beside, 'restored');
      const look = await ended(must(await under.ask('library/restore', { archive: bad, folder })));
      expect(look).toMatchObject({ state: 'failed', error: { code: 'archive-damaged' } });
      expect(existsSync(folder)).toBe(false);
    }
  });

  it('stops when it is told to, and leaves nothing', async () => {
    await writeFile(inLibrary('exports', 'large.png'), Buffer.alloc(60_000_000, 3));
    const file = path.join(beside, 'stopped.zip');
    const { jobId } = must(await under.ask('library/back-up', { file }));
    must(await under.ask('job/cancel', { jobId }));
    expect(await ended({ jobId })).toEqual({ state: 'cancelled' });
    expect(readdirSync(beside).filter((name) => name.includes('stopped'))).toEqual([]);
  });
});

describe('missing clips', () => {
  it('are found by what they hold when folders move, whatever they are called now', async () => {
    const outside = path.join(beside, 'stick', 'film.mp4');
    await mkdir(path.dirname(outside));
    await writeFile(outside, 'film of the pool');
    const clip = must(await under.ask('clip/refer', { path: outside }));
    must(await under.ask('swim/create', { swim: aSwim({ id: 'far' }), clipId: clip.clipId }));
    await swimOf('near', 'Rowan', null);
    const moved = path.join(beside, 'other', 'deep', 'down');
    await mkdir(moved, { recursive: true });
    await rename(outside, path.join(moved, 'renamed.mp4'));
    await rename(inLibrary('swims', 'near', 'clip.mp4'), path.join(moved, 'taken out.mp4'));
    // of the same size, but another film
    await writeFile(path.join(moved, 'a decoy.mp4'), 'film of the sea ');
    const done = await resultOf(must(await under.ask('clips/find', { folder: path.join(beside, 'other') })));
    expect(done).toMatchObject({ stillMissing: 0, looked: 3, failed: [] });
    const swims = must(await under.ask('library/open', {})).swims;
    expect(swims.map(({ clipStatus }) => clipStatus)).toEqual(['present', 'present']);
    const { swim } = must(await under.ask('swim/read', { id: 'far' }));
    expect(swim.clip.place).toEqual({ kind: 'outside', path: path.join(moved, 'renamed.mp4') });
    const nowhere = must(await under.ask('clips/find', { folder: path.join(beside, 'no such') }));
    expect(await ended(nowhere)).toMatchObject({ state: 'failed', error: { code: 'not-found' } });
  });
});

describe('room', () => {
  it('is added up by what takes it, and given back from the bin and the exports', async () => {
    await swimOf('one', 'Rowan', null);
    await swimOf('two', 'Ada', null);
    await writeFile(inLibrary('swims', 'one', 'thumb.jpg'), Buffer.alloc(500));
    await writeFile(inLibrary('exports', 'a.png'), Buffer.alloc(700));
    must(await under.ask('swim/remove', { id: 'two' }));
    must(await under.ask('practice/write', { practice: aPractice({ id: 'p' }), baseRevision: null }));
    must(await under.ask('practice/remove', { id: 'p' }));
    const look = async () =>
      storageSchema.parse(await resultOf(must(await under.ask('storage/look', {})))).kinds;
    const before = await look();
    expect([before.clips, before.thumbnails, before.exports]).toEqual([
      { files: 1, bytes: 11 },
      { files: 1, bytes: 500 },
      { files: 1, bytes: 700 },
    ]);
    expect(before.bin.files).toBe(3);
    const bin = must(await under.ask('bin/list', {}));
    expect(bin.swims.map(({ id, card }) => [id, card?.swimmerName])).toEqual([['two', 'Ada']]);
    expect(bin.plans).toMatchObject([{ kind: 'practice', id: 'p' }]);
    must(await under.ask('bin/empty', { swims: ['two'], practices: ['p'], trials: [] }));
    must(await under.ask('storage/clean', { what: 'exports' }));
    // earlier versions and thumbnails go from the swims; the swims, and what a clash kept, stay
    const read = must(await under.ask('swim/read', { id: 'one' }));
    const written = { ...read.swim, card: { ...read.swim.card, drill: 'other' } };
    must(await under.ask('swim/write', { swim: written, baseRevision: read.revision }));
    await under.ask('swim/write', { swim: read.swim, baseRevision: '0'.repeat(64) });
    const full = await look();
    expect([full.generations.files > 0, full.thumbnails.files, full.copies.files]).toEqual([true, 1, 1]);
    const gone = must(await under.ask('storage/clean', { what: 'generations' }));
    expect(gone.files).toBe(full.generations.files);
    must(await under.ask('storage/clean', { what: 'thumbnails' }));
    const after = await look();
    expect([after.generations.files, after.thumbnails.files, after.copies.files]).toEqual([0, 0, 1]);
    const [swim] = must(await under.ask('library/open', {})).swims;
    expect([swim?.card.drill, swim?.hasThumbnail]).toEqual(['other', false]);
    expect([after.bin.files, after.exports.files, after.clips.files]).toEqual([0, 0, 1]);
  });
});

describe('erasing a swimmer', () => {
  const swimmer = (id: string, name: string): Squad['swimmers'][number] => ({
    id,
    name,
    birthYear: null,
    bodyTable: null,
    streamlineMetres: null,
    consent: null,
    targets: [],
    invented: true,
  });
  const squad: Squad = {
    format: 'submark-squad',
    version: squadFileVersion,
    swimmers: [swimmer('s-ada', 'Ada'), swimmer('s-adam', 'Adam')],
  };

  beforeEach(async () => {
    const first = must(await under.ask('squad/write', { squad, baseRevision: null }));
    // a generation of the squad that knows her, too
    const swimmers = squad.swimmers.map((each) => ({ ...each, birthYear: 2010 }));
    must(await under.ask('squad/write', { squad: { ...squad, swimmers }, baseRevision: first.revision }));
    await swimOf('ada-1', 'Ada', 's-ada');
    await swimOf('ada-2', 'ada', null);
    const adam = await swimOf('adam-1', 'Adam', 's-adam', 'swims behind Ada, Adam does');
    must(await under.ask('swim/write', { swim: adam.swim, baseRevision: adam.revision }));
    await writeFile(inLibrary('swims', 'adam-1', 'clip.mp4'), 'film of Adam alone');
    const binned = await swimOf('ada-3', 'Ada', 's-ada');
    // changed in two places
    must(
      await under.ask('swim/write', {
        swim: { ...binned.swim, changedAt: '2026-01-01T00:00:00Z' },
        baseRevision: binned.revision,
      }),
    );
    await under.ask('swim/write', { swim: binned.swim, baseRevision: '0'.repeat(64) });
    must(await under.ask('swim/remove', { id: 'ada-3' }));
    const practice = aPractice({ id: 'p', swimmerIds: ['s-ada', 's-adam'], title: 'Ada and Adam' });
    const written = must(await under.ask('practice/write', { practice, baseRevision: null }));
    must(
      await under.ask('practice/write', {
        practice: { ...practice, note: 'again' },
        baseRevision: written.revision,
      }),
    );
    const trial: Trial = {
      format: 'submark-trial',
      version: trialFileVersion,
      createdAt: '2026-05-01T10:00:00.000Z',
      changedAt: '2026-05-01T10:00:00.000Z',
      title: '',
      readings: [],
      note: '',
      invented: true,
      id: 't',
      factor: { of: 'tag', tag: 'Ada' },
      rows: [{ swimId: 'adam-1', order: 0, tags: { ...noTags, free: ['Ada', 'like Ada swims'] } }],
      plan: { seed: 1, conditions: ['Ada', 'not Ada'], repeatsEach: 2 },
    };
    must(await under.ask('trial/write', { trial, baseRevision: null }));
    const { book } = must(await under.ask('drills/read', {}));
    const [usual] = drillLibrary;
    if (!usual) throw new Error('a drill was expected');
    const drills = [{ ...usual, id: 'own', name: 'Ada', watch: ['hips as high as Ada’s'] }];
    must(await under.ask('drills/write', { book: { ...book, drills }, baseRevision: null }));
    const outside = path.join(beside, 'ada on a stick.mp4');
    await writeFile(outside, 'film outside');
    const clip = must(await under.ask('clip/refer', { path: outside }));
    const card = { ...aSwim().card, swimmerId: 's-ada', swimmerName: 'Ada' };
    must(await under.ask('swim/create', { swim: aSwim({ id: 'ada-4', card }), clipId: clip.clipId }));
    await writeFile(inLibrary('exports', 'Ada - butterfly - 14 May.png'), 'picture');
    await writeFile(inLibrary('exports', 'trial.csv'), 'swim,speed\nada-1,1.2\n');
    await writeFile(inLibrary('exports', 'Adam.png'), 'picture');
    await writeFile(inLibrary('swims', 'ada-1', 'thumb.jpg'), 'thumbnail');
    must(await under.ask('library/open', {}));
    await under.host.close();
  });
  const plan = async () =>
    erasePlanSchema.parse(await resultOf(must(await under.ask('erase/plan', { swimmerId: 's-ada' }))));

  it('lists every file first and touches none of them', async () => {
    const before = filesUnder(under.library);
    const { files, swims, outside, exportsUntold } = await plan();
    expect(filesUnder(under.library)).toEqual(before);
    expect(swims).toBe(4);
    expect(outside).toEqual([path.join(beside, 'ada on a stick.mp4')]);
    expect(exportsUntold).toEqual(['exports/Adam.png']);
    const named = Object.fromEntries(files.map((each) => [each.path, `${each.does} ${each.kind}`]));
    expect(named).toMatchObject({
      'swims/ada-1/swim.json': 'remove swim',
      'swims/ada-1/clip.mp4': 'remove swim',
      'swims/ada-2/clip.mp4': 'remove swim',
      'bin/ada-3/clip.mp4': 'remove bin',
      'exports/Ada - butterfly - 14 May.png': 'remove export',
      'exports/trial.csv': 'remove export',
      'squad.json': 'change squad',
      'practices/p.json': 'change practice',
      'trials/t.json': 'change trial',
      'drills.json': 'change mention',
      'swims/adam-1/swim.json': 'change mention',
      'practices/.generations/p.json.00000001': 'remove generation',
    });
    expect(named['swims/adam-1/clip.mp4']).toBeUndefined();
    expect(named['exports/Adam.png']).toBeUndefined();
  });

  it('removes what was listed and nothing else, proves it by a look through all, and leaves Adam whole', async () => {
    const { token, files } = await plan();
    const gone = new Set(files.filter(({ does }) => does === 'remove').map((each) => each.path));
    const stays = filesUnder(under.library).filter((name) => !gone.has(name.split(path.sep).join('/')));
    const done = erasedSchema.parse(
      await resultOf(must(await under.ask('erase/do', { swimmerId: 's-ada', token }))),
    );
    expect(done.left).toEqual([]);
    expect(done.filesLooked).toBeGreaterThan(5);
    expect([...done.swimIds].sort()).toEqual(['ada-1', 'ada-2', 'ada-3', 'ada-4']);
    expect(done.outside).toEqual([path.join(beside, 'ada on a stick.mp4')]);
    expect(existsSync(path.join(beside, 'ada on a stick.mp4'))).toBe(true);
    expect(filesUnder(under.library)).toEqual(stays);
    // an independent look: no text of the library has her name as a word, her id, or one of her swims
    for (const name of filesUnder(under.library))
      expect(await readFile(inLibrary(name), 'utf8'), name).not.toMatch(/\bada\b|s-ada"|ada-[1-4]\b/i);
    const opened = must(await under.ask('library/open', {}));
    expect(opened.swims.map(({ card }) => card.note)).toEqual(['swims behind [erased], Adam does']);
    expect(opened.squad.swimmers.map(({ name }) => name)).toEqual(['Adam']);
    expect(must(await under.ask('practice/read', { id: 'p' })).practice).toMatchObject({
      title: '[erased] and Adam',
      swimmerIds: ['s-adam'],
    });
    const { trial } = must(await under.ask('trial/read', { id: 't' }));
    expect(trial.factor).toEqual({ of: 'tag', tag: '[erased]' });
    expect(trial.rows[0]?.tags.free).toEqual(['[erased]', 'like [erased] swims']);
    expect(trial.plan?.conditions).toEqual(['[erased]', 'not [erased]']);
    const { book } = must(await under.ask('drills/read', {}));
    expect(book.drills).toMatchObject([{ name: '[erased]', watch: ['hips as high as [erased]’s'] }]);
    expect(book.patterns.length).toBeGreaterThan(0);
    expect(readdirSync(inLibrary('swims'))).toEqual(['adam-1']);
    expect(readdirSync(inLibrary('bin'))).toEqual([]);
  });

  it('refuses when the library is no longer as it was shown', async () => {
    const { token } = await plan();
    await swimOf('ada-5', 'Ada', 's-ada');
    const look = await ended(must(await under.ask('erase/do', { swimmerId: 's-ada', token })));
    expect(look).toMatchObject({ state: 'failed', error: { code: 'conflict' } });
    expect(existsSync(inLibrary('swims', 'ada-1', 'clip.mp4'))).toBe(true);
  });

  it('tells what the look afterwards still finds: her film under another name, her name in a file of no known kind', async () => {
    const clip = await readFile(inLibrary('swims', 'ada-1', 'clip.mp4'));
    const adam = must(await under.host.clips.arrive('copy.mp4', streamOf(clip.toString())));
    must(
      await under.ask('swim/create', {
        swim: aSwim({ id: 'adam-2', card: { ...aSwim().card, swimmerId: 's-adam', swimmerName: 'Adam' } }),
        clipId: adam.clipId,
      }),
    );
    await rm(inLibrary('swims', 'adam-1'), { recursive: true });
    await writeFile(inLibrary('notes.txt'), 'Ada was here');
    const { token } = await plan();
    const done = erasedSchema.parse(
      await resultOf(must(await under.ask('erase/do', { swimmerId: 's-ada', token }))),
    );
    expect(done.left).toEqual([
      { path: 'notes.txt', what: 'name' },
      { path: 'swims/adam-2/copy.mp4', what: 'clip' },
    ]);
  });
});
