import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { type Trial, trialFileVersion } from '#core/practice/trial-schema';

/** Readings a trial asks about to begin with: how fast, how far a kick, and the posture behind it. Our choice. */
const firstReadings = [
  'speed-hip',
  'distance-per-kick',
  'kick-frequency',
  'head-offset',
  'trunk-pitch',
  'hip-height',
  'frontal-thickness',
];

/** A trial with no repeats yet, asking about the head. */
export function newTrial(id: string, now: string): Trial {
  return {
    format: 'submark-trial',
    version: trialFileVersion,
    id,
    createdAt: now,
    changedAt: now,
    title: '',
    factor: { of: 'head' },
    readings: firstReadings,
    rows: [],
    plan: null,
    note: '',
    invented: false,
  };
}

/** Rows with these swims put at the end, by day, in the order given; one already there stays as it is. */
export function withSwims(rows: Trial['rows'], swims: readonly SwimSummary[]): Trial['rows'] {
  const have = new Set(rows.map(({ swimId }) => swimId));
  const added = swims
    .filter(({ id }) => !have.has(id))
    .sort((a, b) => a.card.date.localeCompare(b.card.date));
  const from = rows.reduce((most, { order }) => Math.max(most, order + 1), 0);
  return [
    ...rows,
    ...added.map(({ id, card }, i) => ({ swimId: id, order: from + i, tags: card.conditions })),
  ];
}

/** The rows in the order swum, with one moved; orders are then counted from 0. */
export function movedRow(rows: Trial['rows'], swimId: string, by: -1 | 1): Trial['rows'] {
  const inOrder = [...rows].sort((a, b) => a.order - b.order);
  const from = inOrder.findIndex((each) => each.swimId === swimId);
  const row = inOrder[from];
  const to = from + by;
  if (row && to >= 0 && to < inOrder.length) {
    inOrder.splice(from, 1);
    inOrder.splice(to, 0, row);
  }
  return inOrder.map((each, order) => ({ ...each, order }));
}
