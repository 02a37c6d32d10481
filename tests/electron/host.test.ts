import { cp, mkdir, readFile, readdir, rename, rm, stat, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { emptySquad } from '#core/swim-file/squad-file';
import { parseSwim } from '#core/swim-file/swim-file';
import { swimFileVersion } from '#core/swim-file/swim-schema';
import { createHost } from '#electron/host/create-host';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { aHost, type HostUnderTest, must, streamOf } from './a-host';

let under: HostUnderTest;
beforeEach(async () => {
  under = await aHost();
});
afterEach(() => under.close());

const inLibrary = (...parts: string[]): string => path.join(under.library, ...parts);

describe('adding and keeping a swim', () => {
  it('moves the sent clip into the swim’s folder and reads the same swim again', async () => {
    const { swim, revision } = await under.addSwim();
    expect(await readdir(inLibrary('swims', 'swim-1'))).toEqual(
      expect.arrayContaining(['clip.mp4', 'swim.json']),
    );
    expect(await readdir(inLibrary('.arriving'))).toEqual([]);
    expect(must(await under.ask('swim/read', { id: 'swim-1' }))).toEqual({
      swim,
      revision,
      written: [],
      clipStatus: 'present',
    });
    expect(swim.clip.fingerprint.bytes).toBe('hello video'.length);
  });

  it('shows it on the shelf with its counts and a headline reading', async () => {
    await under.addSwim();
    const opened = must(await under.ask('library/open', {}));
    expect(opened.problems).toEqual([]);
    expect(opened.swims[0]).toMatchObject({
      id: 'swim-1',
      eventCount: 3,
      postureCount: 1,
      clipStatus: 'present',
      hasThumbnail: false,
      clip: { frames: 120 },
    });
  });

  it('refuses a second swim of the same id and leaves the first and the clip alone', async () => {
    await under.addSwim();
    const before = await readFile(inLibrary('swims', 'swim-1', 'swim.json'), 'utf8');
    const clip = must(await under.host.clips.arrive('b.mp4', streamOf('other')));
    expect(await under.ask('swim/create', { swim: aSwim(), clipId: clip.clipId })).toMatchObject({
      ok: false,
      error: { code: 'already-there' },
    });
    expect(await readFile(inLibrary('swims', 'swim-1', 'swim.json'), 'utf8')).toBe(before);
    expect(under.host.clips.fileOf(clip.clipId)).not.toBeNull();
  });

  it('uses a referred clip where it lies', async () => {
    const file = path.join(path.dirname(under.library), 'own.mp4');
    await writeFile(file, 'my own film');
    const clip = must(await under.ask('clip/refer', { path: file }));
    const { swim } = must(await under.ask('swim/create', { swim: aSwim(), clipId: clip.clipId }));
    expect(swim.clip.place).toEqual({ kind: 'outside', path: file });
    await under.ask('swim/remove', { id: 'swim-1' });
    expect(await readFile(file, 'utf8')).toBe('my own film');
  });

  it('says when a clip is empty, no file, or not there', async () => {
    const folder = path.dirname(under.library);
    await writeFile(path.join(folder, 'empty.mp4'), '');
    const code = async (file: string) => {
      const answer = await under.ask('clip/refer', { path: file });
      return answer.ok ? 'ok' : answer.error.code;
    };
    expect(await code(path.join(folder, 'empty.mp4'))).toBe('empty-file');
    expect(await code(folder)).toBe('not-a-video');
    expect(await code(path.join(folder, 'no.mp4'))).toBe('not-found');
    expect(await code('relative.mp4')).toBe('not-allowed');
    expect(await under.host.clips.arrive('e.mp4', streamOf(''))).toMatchObject({
      error: { code: 'empty-file' },
    });
    expect(await readdir(inLibrary('.arriving'))).toEqual([]);
  });
});

describe('the clip’s status', () => {
  it('is missing when moved away, changed when another file is in its place, and found again by relinking', async () => {
    await under.addSwim();
    const clip = inLibrary('swims', 'swim-1', 'clip.mp4');
    const away = path.join(path.dirname(under.library), 'found.mp4');
    const status = async () => must(await under.ask('library/open', {})).swims[0]?.clipStatus;
    const looked = async () => must(await under.ask('swim/clip-status', { id: 'swim-1' })).clipStatus;
    expect(await looked()).toBe('present');
    await rename(clip, away);
    expect([await status(), await looked()]).toEqual(['missing', 'missing']);
    await writeFile(clip, 'other video');
    expect([await status(), await looked()]).toEqual(['changed', 'changed']);
    expect(await under.ask('swim/relink', { id: 'swim-1', path: clip })).toMatchObject({
      error: { code: 'clip-changed' },
    });
    must(await under.ask('swim/relink', { id: 'swim-1', path: away }));
    expect([await status(), await looked()]).toEqual(['present', 'present']);
  });

  it('is missing when the clip’s name is a link out of the folder', async () => {
    await under.addSwim();
    const clip = inLibrary('swims', 'swim-1', 'clip.mp4');
    const outside = path.join(path.dirname(under.library), 'secret.mp4');
    await rename(clip, outside);
    await symlink(outside, clip);
    expect(must(await under.ask('swim/read', { id: 'swim-1' })).clipStatus).toBe('missing');
  });
});

describe('writing', () => {
  it('gives a new revision, and keeps the last five good versions', async () => {
    let { swim, revision } = await under.addSwim();
    for (let i = 0; i < 8; i++) {
      swim = { ...swim, card: { ...swim.card, note: `note ${i}` } };
      const written = must(await under.ask('swim/write', { swim, baseRevision: revision }));
      expect(written.revision).not.toBe(revision);
      revision = written.revision;
    }
    const folder = inLibrary('swims', 'swim-1', '.generations');
    const kept = (await readdir(folder)).sort();
    expect(kept).toHaveLength(5);
    const newest = parseSwim(await readFile(path.join(folder, kept.at(-1) ?? ''), 'utf8'));
    expect(newest.ok && newest.value.card.note).toBe('note 6');
  });

  it('keeps both when two windows save over the same version', async () => {
    const { swim, revision } = await under.addSwim();
    const mine = { ...swim, card: { ...swim.card, note: 'mine' } };
    const theirs = { ...swim, card: { ...swim.card, note: 'theirs' } };
    const answers = await Promise.all(
      [mine, theirs].map((each) => under.ask('swim/write', { swim: each, baseRevision: revision })),
    );
    const lost = answers.find((each) => !each.ok);
    expect(answers.filter((each) => each.ok)).toHaveLength(1);
    if (!lost || lost.ok) throw new Error('one of the two must lose');
    expect(lost.error.code).toBe('conflict');
    const texts = [String(lost.error.detail.kept), 'swim.json'].map((name) =>
      readFile(inLibrary('swims', 'swim-1', name), 'utf8'),
    );
    const notes = (await Promise.all(texts)).map((text) => {
      const parsed = parseSwim(text);
      return parsed.ok ? parsed.value.card.note : 'damaged';
    });
    expect(notes.sort()).toEqual(['mine', 'theirs']);
  });

  it('opens the newest good version when swim.json is damaged, says so, and never discards the damaged text', async () => {
    const { swim, revision } = await under.addSwim();
    const marked = { ...swim, card: { ...swim.card, note: 'last' } };
    must(await under.ask('swim/write', { swim: marked, baseRevision: revision }));
    const file = inLibrary('swims', 'swim-1', 'swim.json');
    const half = (await readFile(file, 'utf8')).slice(0, 400);
    await writeFile(file, half);
    const opened = must(await under.ask('library/open', {}));
    expect(opened.swims).toHaveLength(1);
    expect(opened.problems).toMatchObject([{ folder: 'swim-1', code: 'swim-damaged' }]);
    const read = must(await under.ask('swim/read', { id: 'swim-1' }));
    expect(read.swim).toEqual(swim);
    must(await under.ask('swim/write', { swim: marked, baseRevision: read.revision }));
    const names = await readdir(inLibrary('swims', 'swim-1'));
    const aside = names.find((each) => each.startsWith('swim.damaged-'));
    expect(await readFile(inLibrary('swims', 'swim-1', aside ?? ''), 'utf8')).toBe(half);
  });

  it('leaves a swim of a newer version alone and names the version', async () => {
    await under.addSwim();
    const file = inLibrary('swims', 'swim-1', 'swim.json');
    const newer = (await readFile(file, 'utf8')).replace(`"version": ${swimFileVersion}`, '"version": 9');
    await writeFile(file, newer);
    expect(await under.ask('swim/read', { id: 'swim-1' })).toMatchObject({
      error: { code: 'swim-newer-version', detail: { needs: 9 } },
    });
    expect(must(await under.ask('library/open', {})).problems).toMatchObject([
      { code: 'swim-newer-version' },
    ]);
    expect(await under.ask('swim/write', { swim: aSwim(), baseRevision: 'f'.repeat(64) })).toMatchObject({
      error: { code: 'conflict' },
    });
    expect(await readFile(file, 'utf8')).toBe(newer);
  });

  it('keeps a damaged coach file aside, says so with every reading of it, and lets a good one take its place', async () => {
    const file = path.join(under.library, 'coach.json');
    const damaged = '{"format":"submark-coach","version":2,"remarkings":"lost"}';
    await writeFile(file, damaged);
    const read = must(await under.ask('coach/read', {}));
    expect(read.coach.remarkings).toEqual([]);
    expect(read.setAside).toMatch(/^coach\.damaged-[0-9a-f]{8}\.json$/);
    const aside = path.join(under.library, read.setAside ?? '');
    expect(await readFile(aside, 'utf8')).toBe(damaged);
    expect(must(await under.ask('coach/read', {})).setAside).toBe(read.setAside);
    must(await under.ask('coach/write', { coach: read.coach, baseRevision: read.revision }));
    expect(must(await under.ask('coach/read', {})).setAside).toBeNull();
    expect(await readFile(aside, 'utf8')).toBe(damaged);
  });

  it('keeps squad and coach files with their revisions', async () => {
    const empty = must(await under.ask('coach/read', {}));
    expect(empty.revision).toBeNull();
    const { revision } = must(await under.ask('coach/write', { coach: empty.coach, baseRevision: null }));
    expect(must(await under.ask('coach/read', {})).revision).toBe(revision);
    const squad = emptySquad;
    must(await under.ask('squad/write', { squad: { ...squad, swimmers: [] }, baseRevision: null }));
    expect(must(await under.ask('library/open', {})).squadRevision).toMatch(/^[0-9a-f]{64}$/);
  });
});

describe('bin', () => {
  it('takes a swim off the shelf whole and brings it back whole', async () => {
    const { swim } = await under.addSwim();
    must(await under.ask('swim/remove', { id: 'swim-1' }));
    expect(must(await under.ask('library/open', {})).swims).toEqual([]);
    must(await under.ask('swim/restore', { id: 'swim-1' }));
    const read = must(await under.ask('swim/read', { id: 'swim-1' }));
    expect(read).toMatchObject({ swim, clipStatus: 'present' });
    expect(await under.ask('swim/restore', { id: 'swim-1' })).toMatchObject({ ok: false });
  });
});

describe('input from the window', () => {
  it.each([
    ['no/such', {}],
    ['constructor', {}],
    ['__proto__', {}],
    ['swim/read', { id: '../swim-1' }],
    ['swim/read', { id: 'a\0b' }],
    ['swim/read', { id: '..%2f' }],
    ['swim/read', null],
    ['swim/remove', { id: '' }],
    ['swim/read', { id: 'x', extra: 1 }],
  ])('%s with %j is a bad request', async (name, input) => {
    expect(await under.host.run(name, input)).toMatchObject({ ok: false, error: { code: 'bad-request' } });
  });
});

describe('the library', () => {
  it('is said to be gone when its folder disappears, and answers again when it is back', async () => {
    await under.addSwim();
    await rename(under.library, `${under.library}-away`);
    expect(await under.ask('library/open', {})).toMatchObject({ error: { code: 'library-gone' } });
    await rename(`${under.library}-away`, under.library);
    expect(must(await under.ask('library/open', {})).swims).toHaveLength(1);
  });

  it('starts with the sample swims once, and never brings removed ones back', async () => {
    await under.addSwim();
    const samples = path.join(path.dirname(under.library), 'samples');
    await mkdir(samples);
    await cp(inLibrary('swims'), path.join(samples, 'swims'), { recursive: true });
    await writeFile(path.join(samples, 'squad.json'), '{"format":"submark-squad","version":1,"swimmers":[]}');
    const libraryPath = path.join(path.dirname(under.library), 'second');
    const first = must(await createHost({ libraryPath, samplesPath: samples }));
    expect(must(await first.run('library/open', {}))).toMatchObject({ swims: [{ id: 'swim-1' }] });
    await rm(path.join(libraryPath, 'swims', 'swim-1'), { recursive: true });
    const again = must(await createHost({ libraryPath, samplesPath: samples }));
    expect(must(await again.run('library/open', {}))).toMatchObject({ swims: [] });
    expect((await stat(path.join(samples, 'swims', 'swim-1'))).isDirectory()).toBe(true);
  });
});
