import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { failure, type Result } from '#core/host-contract/host-error';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { type Disk, realDisk } from '#electron/disk/atomic-file';
import { aStorage } from '#tests/renderer/a-storage';
import { aMark } from '#tests/renderer/a-swim';
import type { HostClient } from '../../renderer/host/host-client';
import { createAutosave } from '../../renderer/open-swim/autosave';
import { addEvent } from '../../renderer/open-swim/event-commands';
import { openSwim } from '../../renderer/open-swim/load-swim';
import { createSwimDocument } from '../../renderer/open-swim/swim-document';
import { createSwimJournal } from '../../renderer/open-swim/swim-journal';
import { aHost, type HostUnderTest, must } from './a-host';

/** How the way between window and host is: both ways open, answers lost, or nothing arrives. */
type Way = 'open' | 'answers lost' | 'cut';

let under: HostUnderTest;
let storage: ReturnType<typeof aStorage>;
let full = false;
/** How long the disk takes for a write, ms. */
let slow = 0;
let wrote = 0;
/** The ways of this test's windows. */
let lines: { way: Way }[] = [];

const disk: Disk = {
  ...realDisk,
  writeWhole: async (file, text) => {
    if (full && path.basename(file) === 'swim.json')
      throw Object.assign(new Error('ENOSPC: injected'), { code: 'ENOSPC' });
    await new Promise((resolve) => setTimeout(resolve, slow));
    return realDisk.writeWhole(file, text);
  },
};

beforeEach(async () => {
  full = false;
  slow = 0;
  wrote = 0;
  storage = aStorage();
  under = await aHost({ disk });
  await under.addSwim({ events: [] });
});
afterEach(() => {
  // a window tries again by itself: it must not reach the next test's library
  for (const line of lines) line.way = 'cut';
  lines = [];
  return under.close();
});

const folder = (...parts: string[]): string => path.join(under.library, 'swims', 'swim-1', ...parts);
const onDisk = async (name = 'swim.json'): Promise<Swim> => {
  const parsed = parseSwim(await readFile(folder(name), 'utf8'));
  if (!parsed.ok) throw new Error(parsed.fault.code);
  return parsed.value;
};
const marksOf = (swim: Swim): string[] => swim.events.map(({ id }) => id).sort();
const asides = async (): Promise<string[]> =>
  (await readdir(folder())).filter((name) => name.startsWith('swim.conflict-'));

/** One window on the swim, as the bench opens it; `now` runs one second a write, so that each revision is new. */
async function aWindow(kept = storage) {
  const line = { way: 'open' as Way };
  lines.push(line);
  const call = (async (name: string, input: unknown): Promise<Result<unknown>> => {
    if (line.way === 'cut') return failure('host-unreachable');
    const answer = await under.host.run(name, input);
    return line.way === 'answers lost' ? failure('host-unreachable') : answer;
  }) as HostClient['call'];
  const journal = createSwimJournal(kept);
  const opened = must(await openSwim({ call }, journal, 'swim-1'));
  const document = createSwimDocument(opened.swim);
  const autosave = createAutosave({
    document,
    host: { call },
    journal,
    revision: opened.revision,
    unsavedFromStart: opened.replayed,
    grewFrom: opened.grewFrom,
    now: () => new Date(Date.UTC(2026, 4, 1) + 1000 * wrote++),
    quiet: 60_000,
    longest: 60_000,
  });
  const kind = (): string => autosave.status.getState().status.kind;
  return {
    line,
    document,
    autosave,
    kind,
    mark: (id: string) =>
      document.run(addEvent(aMark(id, 'entry', 1 + (Number.parseInt(id.slice(1), 10) % 90)))),
    /** Marks and has it written. */
    async save(id: string) {
      document.run(addEvent(aMark(id, 'entry', 1 + (Number.parseInt(id.slice(1), 10) % 90))));
      await autosave.flush();
    },
  };
}

/** Another computer that keeps the same folder puts its version there. */
async function elsewhere(id: string): Promise<void> {
  const swim = await onDisk();
  await writeFile(
    folder('swim.json'),
    serialiseSwim({ ...swim, events: [aMark(id, 'entry', 50)], changedAt: '2026-06-01T00:00:00.000Z' }),
  );
}

describe('a window’s own writes', () => {
  it('are no conflict when their answer never came: the next window goes on from them', async () => {
    const killed = await aWindow();
    await killed.save('m1');
    killed.line.way = 'answers lost';
    await killed.save('m2');
    killed.mark('m3');
    killed.autosave.leave();
    const next = await aWindow();
    await next.autosave.flush();
    await next.save('m4');
    expect(next.kind()).toBe('saved');
    expect(marksOf(await onDisk())).toEqual(['m1', 'm2', 'm3', 'm4']);
    expect(await asides()).toEqual([]);
    expect(storage.texts.size).toBe(0);
  });

  it('are no conflict for the same window either, once it is heard again', async () => {
    const window = await aWindow();
    window.line.way = 'answers lost';
    await window.save('m1');
    await window.save('m2');
    window.line.way = 'open';
    await window.save('m3');
    expect(window.kind()).toBe('saved');
    expect(marksOf(await onDisk())).toEqual(['m1', 'm2', 'm3']);
    expect(await asides()).toEqual([]);
  });

  it('outrank a journal that came back older than the file, as after a kill of the browser', async () => {
    const window = await aWindow();
    await window.save('m1');
    window.line.way = 'cut';
    await window.save('m2');
    const asStored = new Map(storage.texts);
    expect(asStored.size).toBe(1);
    window.line.way = 'open';
    for (let i = 3; i < 80; i++) await window.save(`m${i}`);
    expect(storage.texts.size).toBe(0);
    for (const [key, text] of asStored) storage.setItem(key, text);
    const next = await aWindow();
    expect(next.document.swim().events).toHaveLength(79);
    await next.save('m90');
    expect(next.kind()).toBe('saved');
    expect((await onDisk()).events).toHaveLength(80);
    expect(storage.texts.size).toBe(0);
  });

  it('arriving late, after the next window’s, change nothing and leave nothing about', async () => {
    const gone = await aWindow();
    gone.line.way = 'cut';
    await gone.save('m1');
    const { baseRevision, value, writer, step } = JSON.parse([...storage.texts.values()][0] ?? '{}');
    const next = await aWindow();
    await next.autosave.flush();
    await next.save('m2');
    const late = await under.host.run('swim/write', {
      swim: value,
      baseRevision,
      lineage: { writer, step, grewFrom: [] },
    });
    expect(late).toMatchObject({ ok: false, error: { code: 'conflict' } });
    expect(marksOf(await onDisk())).toEqual(['m1', 'm2']);
    expect(await asides()).toEqual([]);
  });
});

describe('a slow disk', () => {
  it('gives the next window what the last one had sent, although it had not landed when that one ended', async () => {
    const killed = await aWindow();
    await killed.save('m1');
    slow = 300;
    void killed.save('m2');
    const next = await aWindow();
    expect(marksOf(next.document.swim())).toEqual(['m1', 'm2']);
    slow = 0;
    await next.save('m3');
    expect(next.kind()).toBe('saved');
    expect(marksOf(await onDisk())).toEqual(['m1', 'm2', 'm3']);
  });

  it('holds up no marking: what is marked while a write is under way is written next', async () => {
    const window = await aWindow();
    slow = 200;
    const first = window.save('m1');
    for (const id of ['m2', 'm3', 'm4']) window.mark(id);
    await first;
    await window.autosave.flush();
    expect(window.kind()).toBe('saved');
    expect(marksOf(await onDisk())).toEqual(['m1', 'm2', 'm3', 'm4']);
  });
});

describe('a version of another computer', () => {
  it('is a conflict for what the journal kept, and both stay whichever the coach goes on with', async () => {
    for (const choice of ['mine', 'theirs'] as const) {
      const killed = await aWindow();
      const before = marksOf(await onDisk());
      killed.line.way = 'cut';
      await killed.save(`m1${choice}`);
      await elsewhere(`x${choice}`);
      const next = await aWindow();
      await next.autosave.flush();
      expect(next.kind()).toBe('conflict');
      if (choice === 'mine') await next.autosave.keepMine();
      else next.autosave.takeTheirs();
      await next.save(`m2${choice}`);
      expect(next.kind()).toBe('saved');
      const all = [await onDisk(), ...(await Promise.all((await asides()).map(onDisk)))].map(marksOf);
      expect(all[0]).toContain(`m2${choice}`);
      expect(all).toContainEqual(choice === 'mine' ? [`x${choice}`] : [...before, `m1${choice}`].sort());
    }
  });

  it('does not stop what is marked before the choice from reaching the disk, in one file beside it', async () => {
    const window = await aWindow();
    await elsewhere('x1');
    await window.save('m1');
    expect(window.kind()).toBe('conflict');
    await window.save('m2');
    await window.save('m3');
    expect(window.kind()).toBe('conflict');
    const [aside = '', ...more] = await asides();
    expect(more).toEqual([]);
    expect(marksOf(await onDisk(aside))).toEqual(['m1', 'm2', 'm3']);
    // a mark not yet written when the coach takes theirs is kept as well
    window.mark('m4');
    window.autosave.takeTheirs();
    await window.save('x2');
    expect(marksOf(await onDisk())).toEqual(['x1', 'x2']);
    expect(marksOf(await onDisk(aside))).toEqual(['m1', 'm2', 'm3', 'm4']);
    expect(storage.texts.size).toBe(0);
  });

  it('is a conflict although this window’s write was noted first: it never landed', async () => {
    const window = await aWindow();
    full = true;
    await window.save('m1');
    expect(window.kind()).toBe('failed');
    full = false;
    await elsewhere('x1');
    const next = await aWindow();
    await next.autosave.flush();
    expect(next.kind()).toBe('conflict');
    expect(marksOf(await onDisk())).toEqual(['x1']);
    expect(marksOf(await onDisk((await asides())[0] ?? ''))).toEqual(['m1']);
  });
});

describe('two windows on one swim', () => {
  it('that both lose the host lose nothing: one goes on screen, the other lies beside the file', async () => {
    const one = await aWindow();
    const other = await aWindow();
    one.line.way = 'cut';
    other.line.way = 'cut';
    await one.save('m1');
    await other.save('m2');
    const next = await aWindow();
    await next.autosave.flush();
    const all = [await onDisk(), ...(await Promise.all((await asides()).map(onDisk)))].map(marksOf);
    expect(all.sort()).toEqual([['m1'], ['m2']]);
    expect(storage.texts.size).toBe(next.kind() === 'conflict' ? 1 : 0);
  });
});
