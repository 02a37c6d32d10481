import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { firstDrillBook } from '#core/practice/drill-file';
import type { Trial } from '#core/practice/trial-schema';
import { aPractice } from '#tests/shared-core/practice/a-practice';
import { aHost, type HostUnderTest, must } from './a-host';

let under: HostUnderTest;
beforeEach(async () => {
  under = await aHost();
});
afterEach(() => under.close());
const inLibrary = (...parts: string[]): string => path.join(under.library, ...parts);

describe('practices on disk', () => {
  it('are one file each, listed latest day first, and read back as written', async () => {
    expect(must(await under.ask('practice/list', {}))).toEqual({ practices: [], problems: [] });
    const may = aPractice({ id: 'may', date: '2026-05-02' });
    const june = aPractice({ id: 'june', date: '2026-06-01' });
    const { revision } = must(await under.ask('practice/write', { practice: may, baseRevision: null }));
    must(await under.ask('practice/write', { practice: june, baseRevision: null }));
    const { practices } = must(await under.ask('practice/list', {}));
    expect(practices.map(({ practice }) => practice.id)).toEqual(['june', 'may']);
    expect(must(await under.ask('practice/read', { id: 'may' }))).toEqual({
      practice: may,
      revision,
      written: [],
    });
    expect((await readdir(inLibrary('practices'))).sort()).toEqual(['june.json', 'may.json']);
  });

  it('keeps both when the same one was changed in two places, and an earlier generation of it', async () => {
    const mine = aPractice({ title: 'mine' });
    const first = must(await under.ask('practice/write', { practice: aPractice(), baseRevision: null }));
    must(await under.ask('practice/write', { practice: mine, baseRevision: first.revision }));
    const late = await under.ask('practice/write', {
      practice: aPractice({ title: 'theirs' }),
      baseRevision: first.revision,
    });
    expect(late).toMatchObject({ ok: false, error: { code: 'conflict' } });
    const files = await readdir(inLibrary('practices'));
    const aside = files.find((name) => name.includes('.conflict-')) ?? '';
    expect(await readFile(inLibrary('practices', aside), 'utf8')).toContain('theirs');
    expect(await readdir(inLibrary('practices', '.generations'))).toHaveLength(1);
    const { practices, problems } = must(await under.ask('practice/list', {}));
    expect(practices.map(({ practice }) => practice.title)).toEqual(['mine']);
    expect(problems).toEqual([]);
  });

  it('says which file is damaged and opens an earlier good copy of it', async () => {
    const first = must(await under.ask('practice/write', { practice: aPractice(), baseRevision: null }));
    must(
      await under.ask('practice/write', {
        practice: aPractice({ title: 'later' }),
        baseRevision: first.revision,
      }),
    );
    await writeFile(inLibrary('practices', 'practice-1.json'), '{"half":');
    await writeFile(inLibrary('practices', 'lost.json'), 'nothing');
    const { practices, problems } = must(await under.ask('practice/list', {}));
    expect(practices.map(({ practice }) => practice.title)).toEqual([aPractice().title]);
    expect(problems.map(({ name, code }) => [name, code]).sort()).toEqual([
      ['lost.json', 'file-damaged'],
      ['practice-1.json', 'file-damaged'],
    ]);
  });

  it('goes to the bin and comes back as it was', async () => {
    must(await under.ask('practice/write', { practice: aPractice(), baseRevision: null }));
    must(await under.ask('practice/remove', { id: 'practice-1' }));
    expect(must(await under.ask('practice/list', {})).practices).toEqual([]);
    expect(await under.ask('practice/read', { id: 'practice-1' })).toMatchObject({
      ok: false,
      error: { code: 'not-found' },
    });
    must(await under.ask('practice/restore', { id: 'practice-1' }));
    expect(must(await under.ask('practice/read', { id: 'practice-1' })).practice).toEqual(aPractice());
  });
});

describe('trials and drills on disk', () => {
  const trial: Trial = {
    format: 'submark-trial',
    version: 1,
    id: 'trial-1',
    createdAt: '2026-05-01T10:00:00.000Z',
    changedAt: '2026-05-01T10:00:00.000Z',
    title: 'Head',
    factor: { of: 'head' },
    readings: ['speed'],
    rows: [],
    plan: null,
    note: '',
    invented: true,
  };

  it('keeps a trial, and refuses one that compares time under water', async () => {
    must(await under.ask('trial/write', { trial, baseRevision: null }));
    expect(must(await under.ask('trial/list', {})).trials.map((each) => each.trial)).toEqual([trial]);
    const harmful = { ...trial, readings: ['underwater-time'] };
    expect(await under.ask('trial/write', { trial: harmful, baseRevision: null })).toMatchObject({
      ok: false,
      error: { code: 'bad-request' },
    });
  });

  it('answers the usual patterns until the coach has drills of their own', async () => {
    expect(must(await under.ask('drills/read', {}))).toEqual({ book: firstDrillBook, revision: null });
    const book = { ...firstDrillBook, patterns: [] };
    const { revision } = must(await under.ask('drills/write', { book, baseRevision: null }));
    expect(must(await under.ask('drills/read', {}))).toEqual({ book, revision });
  });
});

describe('practices, drills and squad changed in two places', () => {
  it('are listed with every version and what each says otherwise, and settled without losing one', async () => {
    const practice = aPractice({ title: 'mine' });
    const { revision } = must(await under.ask('practice/write', { practice, baseRevision: null }));
    const theirs = { ...practice, title: 'theirs', changedAt: '2026-07-01T10:00:00.000Z' };
    expect(
      await under.ask('practice/write', { practice: theirs, baseRevision: '0'.repeat(64) }),
    ).toMatchObject({ error: { code: 'conflict' } });
    const { clashes } = must(await under.ask('clashes/list', {}));
    expect(clashes).toMatchObject([
      {
        kind: 'practice',
        id: practice.id,
        inUse: { title: 'mine', revision },
        copies: [{ title: 'theirs', changedAt: theirs.changedAt, differs: ['title'] }],
      },
    ]);
    const copy = clashes[0]?.copies[0]?.name ?? '';
    const settle = (take: 'copy' | 'in-use', name = copy, baseRevision: string | null = revision) =>
      under.ask('clashes/settle', { kind: 'practice', id: practice.id, copy: name, take, baseRevision });
    expect(await settle('copy', copy, '0'.repeat(64))).toMatchObject({ error: { code: 'conflict' } });
    for (const strange of [`${practice.id}.json`, `../practices/${copy}`, 'other.conflict-1.json'])
      expect(await settle('copy', strange)).toMatchObject({ error: { code: 'not-allowed' } });
    must(await settle('copy'));
    expect(must(await under.ask('practice/read', { id: practice.id })).practice.title).toBe('theirs');
    expect(must(await under.ask('clashes/list', {})).clashes).toEqual([]);
    const kept = inLibrary('practices', '.generations');
    const texts = await Promise.all(
      (await readdir(kept)).map((name) => readFile(path.join(kept, name), 'utf8')),
    );
    expect(texts.some((text) => text.includes('"mine"'))).toBe(true);
  });

  it('finds what a folder service laid beside them, keeps the one not taken, and leaves what it can’t open', async () => {
    const { revision } = must(await under.ask('drills/write', { book: firstDrillBook, baseRevision: null }));
    const text = await readFile(inLibrary('drills.json'), 'utf8');
    await writeFile(
      inLibrary('drills (other computer).json'),
      text.replace(/"patterns": \[[\s\S]*\]/, '"patterns": []'),
    );
    await writeFile(inLibrary('squad.conflict-00000000.json'), '{"format":"submark-squad","version":99}');
    await writeFile(inLibrary('drills.damaged-00000000.json'), 'torn');
    const listed = must(await under.ask('clashes/list', {}));
    expect(listed.unreadable).toEqual(['squad.conflict-00000000.json']);
    expect(listed.clashes).toMatchObject([
      { kind: 'drills', id: null, copies: [{ holds: { drills: 0, patterns: 0 }, differs: ['patterns'] }] },
    ]);
    must(
      await under.ask('clashes/settle', {
        kind: 'drills',
        id: null,
        copy: 'drills (other computer).json',
        take: 'in-use',
        baseRevision: revision,
      }),
    );
    expect(await readFile(inLibrary('drills.json'), 'utf8')).toBe(text);
    const kept = await readdir(inLibrary('.generations'));
    expect(kept.some((name) => name.startsWith('drills.json'))).toBe(true);
  });
});
