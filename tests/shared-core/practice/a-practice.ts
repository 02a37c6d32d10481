import type { LogEntry, Practice, PracticeItem } from '#core/practice/practice-schema';

/** Six 25s of plain butterfly on the front, on a send-off of a minute. */
export function anItem(change: Partial<PracticeItem> = {}): PracticeItem {
  return {
    id: 'item-1',
    repeats: 6,
    distanceMetres: 25,
    stroke: 'butterfly',
    drillId: null,
    words: '',
    sideUp: 'front',
    arms: 'stroking',
    aids: [],
    underwater: false,
    tags: { head: null, hips: null, depth: null, free: [] },
    kickBetween: null,
    pause: { kind: 'send-off', seconds: 60 },
    pattern: null,
    breathingEvery: null,
    targetCount: null,
    effort: 'steady',
    ladder: null,
    swimmerIds: null,
    note: '',
    ...change,
  };
}

export function anEntry(change: Partial<LogEntry> = {}): LogEntry {
  return {
    id: 'log-1',
    itemId: 'item-1',
    repeat: 0,
    swimmerId: 'swimmer-1',
    count: 8,
    timeSeconds: 18.4,
    effort: null,
    note: '',
    swimId: null,
    ...change,
  };
}

/** A practice of an invented squad. */
export function aPractice(change: Partial<Practice> = {}): Practice {
  return {
    format: 'submark-practice',
    version: 2,
    id: 'practice-1',
    createdAt: '2026-05-01T10:00:00.000Z',
    changedAt: '2026-05-01T10:05:00.000Z',
    date: '2026-05-01',
    title: 'Kick goes in with the hands',
    poolMetres: 25,
    swimmerIds: ['swimmer-1'],
    pace: null,
    note: '',
    invented: true,
    items: [anItem()],
    log: [],
    ...change,
  };
}
