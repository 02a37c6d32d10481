import { describe, expect, it } from 'vitest';
import {
  afterSaveEvent,
  beginSaving,
  hasNothingToWrite,
  isSaved,
  type SaveEvent,
  type SaveStatus,
  type Saving,
} from '../../../renderer/documents/save-machine';

interface Note {
  readonly id: string;
  readonly changedAt: string;
  readonly text: string;
}
const note = (text: string): Note => ({ id: 'note-1', changedAt: '2026-05-01T08:00:00.000Z', text });
const first = note('first');
const mine = note('mine');
const theirs = note('theirs');
const at = new Date('2026-05-01T09:00:00.000Z');

const begun = (unsaved = false): Saving<Note> =>
  beginSaving({ current: first, revision: 'rev-0', unsaved, writer: 'window-1', grewFrom: [] });

const events = {
  changed: { kind: 'changed' },
  'needs-saving': { kind: 'needs-saving' },
  'write-began': { kind: 'write-began', value: mine },
  'written, all of it': { kind: 'written', value: mine, revision: 'rev-1', current: mine, at },
  'written, but changed since': {
    kind: 'written',
    value: mine,
    revision: 'rev-1',
    current: note('later'),
    at,
  },
  'write-failed': { kind: 'write-failed', error: { code: 'disk-full', detail: {} }, journalled: true },
  'file-differs, by somebody else': { kind: 'file-differs', sent: mine, theirs, theirRevision: 'rev-theirs' },
  'mine-chosen': { kind: 'mine-chosen' },
  'theirs-chosen': { kind: 'theirs-chosen', writer: 'window-1b' },
} satisfies Record<string, SaveEvent<Note>>;

const states: Record<SaveStatus<Note>['kind'], Saving<Note>> = {
  saved: begun(),
  unsaved: begun(true),
  saving: afterSaveEvent(begun(), events['write-began']),
  failed: afterSaveEvent(begun(), events['write-failed']),
  conflict: afterSaveEvent(begun(), events['file-differs, by somebody else']),
};

/** For every event: the state after it, from saved, unsaved, saving, failed and conflict. */
const table: Record<keyof typeof events, readonly SaveStatus<Note>['kind'][]> = {
  changed: ['saved', 'unsaved', 'saving', 'failed', 'conflict'],
  'needs-saving': ['unsaved', 'unsaved', 'unsaved', 'failed', 'conflict'],
  'write-began': ['saving', 'saving', 'saving', 'saving', 'conflict'],
  'written, all of it': ['saved', 'saved', 'saved', 'saved', 'saved'],
  'written, but changed since': ['unsaved', 'unsaved', 'unsaved', 'unsaved', 'unsaved'],
  'write-failed': ['failed', 'failed', 'failed', 'failed', 'conflict'],
  'file-differs, by somebody else': ['conflict', 'conflict', 'conflict', 'conflict', 'conflict'],
  'mine-chosen': ['saved', 'unsaved', 'saving', 'failed', 'unsaved'],
  'theirs-chosen': ['saved', 'unsaved', 'saving', 'failed', 'saved'],
};

describe('the states of saving', () => {
  it('follow each other as the table says', () => {
    for (const [name, ends] of Object.entries(table))
      for (const [at, state] of Object.values(states).entries()) {
        const after = afterSaveEvent(state, events[name as keyof typeof events] as SaveEvent<Note>);
        expect(after.status.kind, `${name} while ${state.status.kind}`).toBe(ends[at]);
      }
  });

  it('know the file as their own when it holds what this window sent', () => {
    const sent = afterSaveEvent(begun(), { kind: 'write-began', value: mine });
    const stampedByDisk = { ...mine, changedAt: '2026-05-01T08:30:00.000Z' };
    const after = afterSaveEvent(sent, {
      ...events['file-differs, by somebody else'],
      theirs: stampedByDisk,
    });
    expect(after).toMatchObject({ status: { kind: 'unsaved' }, revision: 'rev-theirs' });
    expect(hasNothingToWrite(after, mine)).toBe(false);
  });

  it('remember the last few values sent, and none once one has landed', () => {
    const all = ['a', 'b', 'c', 'd', 'e'].map(note);
    const sent = all.reduce(
      (saving, value) => afterSaveEvent(saving, { kind: 'write-began', value }),
      begun(),
    );
    expect(sent.sent).toEqual(all.slice(1));
    expect(afterSaveEvent(sent, events['written, all of it']).sent).toEqual([]);
  });

  it('count failures in a row', () => {
    const twice = afterSaveEvent(states.failed, events['write-failed']);
    expect(twice.failures).toBe(2);
    expect(afterSaveEvent(twice, events['written, all of it']).failures).toBe(0);
  });

  it('have nothing to write in a conflict once what is on the screen is kept beside the file', () => {
    expect(hasNothingToWrite(states.conflict, mine)).toBe(true);
    expect(hasNothingToWrite(states.conflict, note('later'))).toBe(false);
    expect(isSaved(states.conflict, mine)).toBe(false);
  });

  it('go on as other work after theirs was chosen, and as the same work after mine', () => {
    const changed = afterSaveEvent(states.conflict, events.changed);
    expect(changed.lineage).toEqual({ writer: 'window-1', step: 1, grewFrom: [] });
    expect(afterSaveEvent(changed, events['theirs-chosen'])).toMatchObject({
      lineage: { writer: 'window-1b', step: 0 },
      saved: theirs,
      revision: 'rev-theirs',
    });
    expect(afterSaveEvent(changed, events['mine-chosen'])).toMatchObject({
      lineage: { writer: 'window-1', step: 1 },
      saved: null,
      revision: 'rev-theirs',
    });
  });
});
