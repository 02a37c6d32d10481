import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { failure, success } from '#core/host-contract/host-error';
import { aPractice } from '../../shared-core/practice/a-practice';
import { practiceKind } from '../../../renderer/sets/practice-kind';
import { setFacts } from '../../../renderer/sets/practice-steps';
import { openKept } from '../../../renderer/documents/open-kept';
import { aStorage } from '../a-storage';

/** A disk with one practice on it, and a window storage. */
function aPlace() {
  const storage = aStorage();
  const disk = { practice: aPractice(), revision: 'r1', full: false };
  const host = {
    call: async (name: string, input: { practice?: typeof disk.practice; baseRevision?: string }) => {
      if (name === 'practice/read')
        return success({ practice: disk.practice, revision: disk.revision, written: [] });
      if (disk.full) return failure('disk-full');
      if (input.baseRevision !== disk.revision) return failure('conflict');
      if (input.practice) disk.practice = input.practice;
      disk.revision = `r${Number(disk.revision.slice(1)) + 1}`;
      return success({ revision: disk.revision });
    },
  };
  const open = async () => {
    const read = await openKept(practiceKind, host as never, storage, 'practice-1', () => new Date());
    if (!read.ok) throw new Error(read.error.code);
    return read.value;
  };
  return { disk, texts: storage.texts, open };
}

describe('a document of the library on screen', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('is written by itself soon after a change, undo too', async () => {
    const { disk, open } = aPlace();
    const kept = await open();
    kept.document.run(setFacts('name', { title: 'one' }));
    await vi.advanceTimersByTimeAsync(2000);
    expect(disk.practice.title).toBe('one');
    kept.document.undo();
    await vi.advanceTimersByTimeAsync(2000);
    expect(disk.practice.title).toBe(aPractice().title);
    expect(kept.autosave.status.getState().status.kind).toBe('saved');
  });

  it('keeps in the window what the disk can’t take, and brings it back at the next opening', async () => {
    const { disk, texts, open } = aPlace();
    disk.full = true;
    const kept = await open();
    kept.document.run(setFacts('name', { title: 'unsaved' }));
    await kept.close();
    expect(texts.size).toBe(1);
    disk.full = false;
    const again = await open();
    expect(again.replayed).toBe(true);
    expect(again.document.current().title).toBe('unsaved');
    await vi.advanceTimersByTimeAsync(2000);
    expect(disk.practice.title).toBe('unsaved');
    expect(texts.size).toBe(0);
  });

  it('asks which to go on with when it was changed elsewhere meanwhile', async () => {
    const { disk, open } = aPlace();
    const kept = await open();
    disk.practice = aPractice({ title: 'theirs' });
    disk.revision = 'r7';
    kept.document.run(setFacts('name', { title: 'mine' }));
    await vi.advanceTimersByTimeAsync(2000);
    expect(kept.autosave.status.getState().status.kind).toBe('conflict');
    kept.autosave.takeTheirs();
    expect(kept.document.current().title).toBe('theirs');
  });
});
