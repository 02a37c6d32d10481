import { createHash } from 'node:crypto';
import { existsSync, readdirSync } from 'node:fs';
import { readFile, rm, utimes, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createHost } from '#electron/host/create-host';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { aHost, type HostUnderTest, must } from './a-host';

let under: HostUnderTest;
beforeEach(async () => {
  under = await aHost();
});
afterEach(() => under.close());

const cache = (): string => path.join(under.library, '.cache');
/** Beside it lie the working copies. */
const indexFile = (): string =>
  path.join(cache(), readdirSync(cache()).find((name) => name.startsWith('shelf-')) ?? 'none');
/** The index with the seal its changed body needs. */
const resealed = (text: string): string => {
  const [seal = '', body = ''] = text.split('\n');
  const hash = createHash('sha256').update(body).digest('hex');
  return `${seal.split(' ').slice(0, 2).join(' ')} ${hash}\n${body}`;
};
const swimFile = (id: string): string => path.join(under.library, 'swims', id, 'swim.json');
const drills = async (host = under.host): Promise<Record<string, string>> => {
  const opened = must(await host.run('library/open', {})) as {
    swims: { id: string; card: { drill: string } }[];
  };
  return Object.fromEntries(opened.swims.map(({ id, card }) => [id, card.drill]));
};
const another = async () => must(await createHost({ libraryPath: under.library, samplesPath: null }));

describe('the shelf’s index', () => {
  beforeEach(async () => {
    for (const id of ['one', 'two'])
      await under.addSwim({ id, card: { ...aSwim().card, drill: `drill of ${id}` } });
    await drills();
    await under.host.close();
  });

  it('is what a second opening reads instead of the swims', async () => {
    expect(existsSync(indexFile())).toBe(true);
    // a summary that only the index can have told
    const text = await readFile(indexFile(), 'utf8');
    await writeFile(indexFile(), resealed(text.replace('drill of one', 'told by the index')));
    expect(await drills(await another())).toEqual({ one: 'told by the index', two: 'drill of two' });
  });

  it('is made again, the same, when it is deleted, damaged or of another build', async () => {
    const whole = { one: 'drill of one', two: 'drill of two' };
    await rm(cache(), { recursive: true });
    const fresh = await another();
    expect(await drills(fresh)).toEqual(whole);
    await fresh.close();
    const text = await readFile(indexFile(), 'utf8');
    const stale = text.replace('drill of one', 'stale');
    const other = resealed(stale).replace(/^(\S+) \S+/, '$1 another-build');
    for (const bad of ['{"format":', '', text.slice(0, 200), stale, other]) {
      await writeFile(indexFile(), bad);
      expect(await drills(await another())).toEqual(whole);
    }
  });

  it('never hides a change to a swim’s file, also one of the same size', async () => {
    const text = await readFile(swimFile('one'), 'utf8');
    await writeFile(swimFile('one'), text.replace('drill of one', 'drill of ONE'));
    // far from the time before, whatever the disk's clock can tell apart
    await utimes(swimFile('one'), new Date(), new Date(Date.now() + 5000));
    expect(await drills(await another())).toEqual({ one: 'drill of ONE', two: 'drill of two' });
    await rm(path.dirname(swimFile('two')), { recursive: true });
    expect(await drills(await another())).toEqual({ one: 'drill of ONE' });
  });

  it('sees a clip go, change and come back without the swim’s file changing', async () => {
    const clip = path.join(under.library, 'swims', 'one', 'clip.mp4');
    const host = await another();
    const status = async () =>
      (
        must(await host.run('library/open', {})) as { swims: { id: string; clipStatus: string }[] }
      ).swims.find(({ id }) => id === 'one')?.clipStatus;
    const bytes = await readFile(clip);
    expect(await status()).toBe('present');
    await rm(clip);
    expect(await status()).toBe('missing');
    await writeFile(clip, 'hello VIDEO');
    expect(await status()).toBe('changed');
    await writeFile(clip, bytes);
    await utimes(clip, new Date(), new Date(Date.now() + 5000));
    expect(await status()).toBe('present');
  });

  it('lets a window show what is known while the rest is being read, and tells all in the end', async () => {
    const host = await another();
    const partly = must(await host.run('library/open', { partly: true })) as {
      swims: unknown[];
      pending: number;
    };
    expect(partly.swims.length + partly.pending).toBe(2);
    expect(await drills(host)).toEqual({ one: 'drill of one', two: 'drill of two' });
  });
});

describe('one change of many swims', () => {
  const job = async (jobId: string) => {
    for (;;) {
      const look = must(await under.ask('job/look', { jobId }));
      if (look.state !== 'running') return look;
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  };

  it('says the same of all cards, tells what each said before, and given back undoes it to the letter', async () => {
    for (const id of ['one', 'two', 'three'])
      await under.addSwim({ id, card: { ...aSwim().card, drill: `of ${id}`, aids: ['fins'] } });
    const before = await Promise.all(
      ['one', 'two'].map(async (id) => must(await under.ask('swim/read', { id }))),
    );
    const changes = ['one', 'two', 'gone'].map((id) => ({ id, card: { drill: 'same', date: '2026-06-01' } }));
    const { jobId } = must(await under.ask('swims/change', { changes }));
    const done = await job(jobId);
    if (done.state !== 'done') throw new Error(done.state);
    const result = done.result as { before: never[]; failed: { id: string; error: { code: string } }[] };
    expect(result.failed).toMatchObject([{ id: 'gone', error: { code: 'not-found' } }]);
    expect(await drills()).toEqual({ one: 'same', two: 'same', three: 'of three' });
    const undo = must(await under.ask('swims/change', { changes: result.before }));
    await job(undo.jobId);
    for (const each of before) {
      const after = must(await under.ask('swim/read', { id: each.swim.id })).swim;
      expect({ ...after, changedAt: '' }).toEqual({ ...each.swim, changedAt: '' });
    }
  });

  it('moves many to the bin and back, and says which could not be moved', async () => {
    for (const id of ['one', 'two']) await under.addSwim({ id });
    const gone = must(await under.ask('swims/remove', { ids: ['one', 'two', 'three'] }));
    expect(gone).toMatchObject({ done: ['one', 'two'], failed: [{ id: 'three' }] });
    expect(await drills()).toEqual({});
    expect(must(await under.ask('swims/restore', { ids: gone.done })).done).toEqual(['one', 'two']);
    expect(Object.keys(await drills())).toEqual(['one', 'two']);
  });
});

describe('a swim changed on two computers that share a folder', () => {
  const withDrill = async (base: string, drill: string) => {
    const { swim } = must(await under.ask('swim/read', { id: 'swim-1' }));
    return under.ask('swim/write', { swim: { ...swim, card: { ...swim.card, drill } }, baseRevision: base });
  };

  it('keeps both, says so on the shelf, and lets the coach choose without losing the other', async () => {
    const { revision } = await under.addSwim();
    must(await withDrill(revision, 'mine'));
    expect(await withDrill(revision, 'theirs')).toMatchObject({ ok: false, error: { code: 'conflict' } });
    expect(must(await under.ask('library/open', {})).swims[0]?.copies).toBe(1);
    const { versions } = must(await under.ask('swim/versions', { id: 'swim-1' }));
    expect(versions.map(({ card }) => card.drill)).toEqual(['mine', 'theirs']);
    const copy = versions[1]?.name ?? '';
    const base = versions[0]?.revision ?? '';
    expect(
      await under.ask('swim/settle', { id: 'swim-1', copy, take: 'copy', baseRevision: revision }),
    ).toMatchObject({ error: { code: 'conflict' } });
    must(await under.ask('swim/settle', { id: 'swim-1', copy, take: 'copy', baseRevision: base }));
    const [swim] = must(await under.ask('library/open', {})).swims;
    expect([swim?.card.drill, swim?.copies]).toEqual(['theirs', 0]);
    const kept = path.join(under.library, 'swims', 'swim-1', '.generations');
    const texts = await Promise.all(readdirSync(kept).map((name) => readFile(path.join(kept, name), 'utf8')));
    expect(texts.some((text) => text.includes('"mine"'))).toBe(true);
  });

  it('sees a copy that a folder service laid beside it under a name of its own; different swims never clash', async () => {
    const first = await under.addSwim();
    await under.addSwim({ id: 'swim-2' });
    const text = await readFile(swimFile('swim-1'), 'utf8');
    await writeFile(swimFile('swim-1').replace('.json', ' (copy of the other computer).json'), text);
    const swims = must(await under.ask('library/open', {})).swims;
    expect(swims.map(({ id, copies }) => [id, copies])).toEqual([
      ['swim-1', 1],
      ['swim-2', 0],
    ]);
    const { versions } = must(await under.ask('swim/versions', { id: 'swim-1' }));
    must(
      await under.ask('swim/settle', {
        id: 'swim-1',
        copy: versions[1]?.name ?? '',
        take: 'shelf',
        baseRevision: first.revision,
      }),
    );
    expect(must(await under.ask('swim/versions', { id: 'swim-1' })).versions).toHaveLength(1);
    // a second host on the same folder, as on another computer
    const other = await another();
    const theirs = must(await other.run('swim/read', { id: 'swim-2' })) as { swim: never; revision: string };
    must(await other.run('swim/write', { swim: theirs.swim, baseRevision: theirs.revision }));
    must(await withDrill(first.revision, 'mine'));
    expect(must(await under.ask('library/open', {})).swims.every(({ copies }) => copies === 0)).toBe(true);
  });

  it('takes no file for a copy that is none, and none outside the swim’s folder', async () => {
    const { revision } = await under.addSwim();
    for (const copy of ['swim.json', '../swim-1/swim.conflict-1.json', 'thumb.jpg', 'swim.damaged-1.json'])
      expect(
        await under.ask('swim/settle', { id: 'swim-1', copy, take: 'shelf', baseRevision: revision }),
      ).toMatchObject({ error: { code: 'not-allowed' } });
  });
});
