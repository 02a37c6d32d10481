import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { Swim } from '#core/swim-file/swim-schema';
import type { HostClient } from '../../../renderer/host/host-client';
import { createAutosave } from '../../../renderer/open-swim/autosave';
import { addEvent, moveEvent, placeEventAt } from '../../../renderer/open-swim/event-commands';
import { openSwim } from '../../../renderer/open-swim/load-swim';
import { createSwimDocument } from '../../../renderer/open-swim/swim-document';
import { createSwimJournal } from '../../../renderer/open-swim/swim-journal';
import { aStorage } from '../a-storage';
import { aMark, aSwim } from '../a-swim';

/** A disk in memory that keeps the contract: writes need the revision last read, refused ones are kept beside. */
function aDisk(start: Swim) {
  const disk = {
    swim: start,
    revision: 'rev-0',
    writes: 0,
    beside: [] as Swim[],
    fails: null as Result<never> | null,
  };
  const call = (async (name: string, input: { swim: Swim; baseRevision: string }) => {
    if (name === 'swim/read')
      return success({
        swim: disk.swim,
        revision: disk.revision,
        written: [],
        clipStatus: 'present' as const,
      });
    if (disk.fails) return disk.fails;
    if (input.baseRevision !== disk.revision) {
      disk.beside.push(input.swim);
      return failure('conflict');
    }
    disk.writes += 1;
    disk.swim = input.swim;
    disk.revision = `rev-${disk.writes}`;
    return success({ revision: disk.revision });
  }) as HostClient['call'];
  return Object.assign(disk, { call });
}

function aBench() {
  const disk = aDisk(aSwim());
  const storage = aStorage();
  const journal = createSwimJournal(storage);
  const document = createSwimDocument(disk.swim);
  const autosave = createAutosave({
    document,
    host: disk,
    journal,
    revision: 'rev-0',
    now: () => new Date(),
  });
  return { disk, storage, journal, document, autosave };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('autosave', () => {
  it('writes a change within a second', async () => {
    const { disk, document, autosave } = aBench();
    document.run(addEvent(aMark('entry-1', 'entry', 7)));
    await vi.advanceTimersByTimeAsync(1000);
    expect(disk.swim.events).toHaveLength(3);
    expect(autosave.status.getState().status.kind).toBe('saved');
  });

  it('writes within a second even when changes keep coming', async () => {
    const { disk, document } = aBench();
    for (let frame = 0; frame < 20; frame++) {
      document.run(moveEvent(aMark('top-1', 'kick-top', 20), frame));
      await vi.advanceTimersByTimeAsync(100);
      if (frame === 10) expect(disk.writes).toBeGreaterThanOrEqual(1);
    }
  });

  it('writes within a second when the clock jumps back while changes keep coming', async () => {
    const disk = aDisk(aSwim());
    const document = createSwimDocument(disk.swim);
    let hours = 12;
    createAutosave({
      document,
      host: disk,
      journal: createSwimJournal(aStorage()),
      revision: 'rev-0',
      now: () => new Date(Date.UTC(2026, 4, 1, hours)),
    });
    for (let frame = 0; frame < 12; frame++) {
      document.run(moveEvent(aMark('top-1', 'kick-top', 20), frame));
      hours = 3;
      await vi.advanceTimersByTimeAsync(100);
    }
    expect(disk.writes).toBeGreaterThanOrEqual(1);
  });

  it('does not write a drag under way', async () => {
    const { disk, document } = aBench();
    document.begin('move kick top');
    document.during(placeEventAt('top-1', 40));
    await vi.advanceTimersByTimeAsync(3000);
    expect(disk.writes).toBe(0);
    document.commit();
    await vi.advanceTimersByTimeAsync(1000);
    expect(disk.swim.events[0]?.frame).toBe(40);
  });

  it('keeps trying when the disk is full, says so, and loses nothing', async () => {
    const { disk, document, autosave, storage } = aBench();
    disk.fails = failure('disk-full');
    document.run(moveEvent(aMark('top-1', 'kick-top', 20), 41));
    await vi.advanceTimersByTimeAsync(1000);
    expect(autosave.status.getState().status).toMatchObject({
      kind: 'failed',
      error: { code: 'disk-full' },
      journalled: true,
    });
    expect(storage.texts.size).toBe(1);
    disk.fails = null;
    await vi.advanceTimersByTimeAsync(3000);
    expect(autosave.status.getState().status.kind).toBe('saved');
    expect(disk.swim.events[0]?.frame).toBe(41);
    expect(storage.texts.size).toBe(0);
  });

  it('brings unsaved changes back at the next opening and writes them', async () => {
    const { disk, document, autosave, journal } = aBench();
    disk.fails = failure('disk-full');
    document.run(moveEvent(aMark('top-1', 'kick-top', 20), 42));
    autosave.leave();
    await vi.advanceTimersByTimeAsync(0);
    disk.fails = null;
    const opened = await openSwim(disk, journal, 'swim-1');
    expect(opened).toMatchObject({ ok: true, value: { replayed: true, revision: 'rev-0' } });
    expect(opened.ok && opened.value.swim.events[0]?.frame).toBe(42);
  });

  it('forgets a journal whose changes did reach the disk', async () => {
    const { disk, journal } = aBench();
    journal.keep({
      baseRevision: 'rev-older',
      keptAt: new Date().toISOString(),
      value: disk.swim,
      writer: 'gone',
      step: 3,
      grewFrom: [],
    });
    const opened = await openSwim(disk, journal, 'swim-1');
    expect(opened).toMatchObject({ ok: true, value: { replayed: false, revision: 'rev-0' } });
    expect(journal.read('swim-1')).toEqual([]);
  });

  it('keeps both versions when the file was changed elsewhere, whichever the coach goes on with', async () => {
    for (const choice of ['mine', 'theirs'] as const) {
      const { disk, document, autosave } = aBench();
      const theirs = { ...aSwim(), events: [] };
      disk.swim = theirs;
      disk.revision = 'rev-theirs';
      document.run(moveEvent(aMark('top-1', 'kick-top', 20), 43));
      await vi.advanceTimersByTimeAsync(1000);
      expect(autosave.status.getState().status.kind).toBe('conflict');
      if (choice === 'mine') await autosave.keepMine();
      else autosave.takeTheirs();
      await vi.advanceTimersByTimeAsync(1000);
      const everywhere = [disk.swim, ...disk.beside];
      expect(everywhere.some((each) => each.events[0]?.frame === 43)).toBe(true);
      expect(everywhere.some((each) => each.events.length === 0)).toBe(true);
      expect(document.swim().events.length).toBe(choice === 'mine' ? 2 : 0);
      expect(autosave.status.getState().status.kind).toBe('saved');
    }
  });

  it('sees its own write, landed after the window had gone, as its own and not as a conflict', async () => {
    const disk = aDisk(aSwim());
    const left = { ...aSwim(), events: [aMark('top-1', 'kick-top', 50)] };
    const document = createSwimDocument(left);
    const autosave = createAutosave({
      document,
      host: disk,
      journal: createSwimJournal(aStorage()),
      revision: 'rev-0',
      now: () => new Date(),
      unsavedFromStart: true,
    });
    // the last window's write arrives now, and the coach goes on marking
    disk.swim = { ...left, changedAt: '2024-05-14T10:00:00.000Z' };
    disk.revision = 'rev-late';
    document.run(addEvent(aMark('entry-1', 'entry', 7)));
    await vi.advanceTimersByTimeAsync(2000);
    expect(autosave.status.getState().status.kind).toBe('saved');
    expect(disk.swim.events).toHaveLength(2);
  });

  it('says so when not even the window’s storage takes the changes', async () => {
    const disk = aDisk(aSwim());
    disk.fails = failure('disk-full');
    const full = {
      ...aStorage(),
      setItem: () => {
        throw new DOMException('full', 'QuotaExceededError');
      },
    };
    const document = createSwimDocument(disk.swim);
    const autosave = createAutosave({
      document,
      host: disk,
      journal: createSwimJournal(full),
      revision: 'rev-0',
      now: () => new Date(),
    });
    document.run(addEvent(aMark('entry-1', 'entry', 7)));
    await vi.advanceTimersByTimeAsync(1000);
    expect(autosave.status.getState().status).toMatchObject({ kind: 'failed', journalled: false });
  });
});
