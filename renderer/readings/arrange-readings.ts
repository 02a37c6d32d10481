import type { Reading, ReadingDefinition, ReadingGroup } from '#core/measures/reading';

export interface ReadingRowData {
  readonly definition: ReadingDefinition;
  readonly reading: Reading;
  /** The same reading as a share of the stroke, printed in the same row. */
  readonly share: Extract<Reading, { status: 'computed' }> | null;
}

export interface ArrangedGroup {
  readonly group: ReadingGroup;
  /** Shown at once. */
  readonly first: readonly ReadingRowData[];
  /** Computed as well, one press away. */
  readonly more: readonly ReadingRowData[];
  /** Harmonics, behind a choice of landmark of their own: there are nine of each. */
  readonly harmonics: readonly ReadingRowData[];
  /** What can't be had yet, with the reason; the group's most wanted come first. */
  readonly missing: readonly ReadingRowData[];
}

/** Timing first: it is what the coach came for. */
export const readingOrder: readonly ReadingGroup[] = [
  'timing',
  'kick',
  'stroke',
  'body-wave',
  'posture',
  'speed',
  'course',
];

/** Readings seen without asking for more; a choice of ours, from what DESIGN's job needs first. */
const wanted: ReadonlySet<string> = new Set([
  'kick1-top-to-entry',
  'kick2-bottom-to-exit',
  'gap-t2',
  'gap-total-percent',
  'kick-frequency',
  'kick-amplitude-toe',
  'down-up-ratio',
  'foot-speed-over-swim',
  'stroke-rate',
  'undulation-toe',
  'body-wave-speed',
  'trunk-pitch',
  'head-offset',
  'knee-angle',
  'hip-height',
  'speed-marks',
  'speed-hip',
  'speed-variation',
  'distance-per-kick',
]);

/** A share of the stroke that stands beside its milliseconds. */
export const isShare = (id: string, all: ReadonlyMap<string, unknown>): boolean =>
  id.endsWith('-percent') && all.has(id.slice(0, -'-percent'.length));

/** Whether a reading is seen without asking for more. */
export const isWanted = (id: string): boolean => wanted.has(id);

/** A variant of another reading: the same at one event, or in body lengths. Missing variants say nothing new. */
export const isVariant = (id: string): boolean =>
  /-at-|-relative/.test(id) ||
  (id.endsWith('-in-glide') && id !== 'straightness-in-glide') ||
  (id.startsWith('harmonic-') && !id.endsWith('-toe'));

const isHarmonic = ({ definition }: ReadingRowData): boolean => definition.id.startsWith('harmonic-');

/** What each reading of the catalogue shows, by its id, in the catalogue's order. */
export function rowsOf(
  catalogue: readonly ReadingDefinition[],
  readings: readonly Reading[],
): ReadonlyMap<string, ReadingRowData> {
  const byId = new Map(readings.map((reading) => [reading.id, reading]));
  return new Map(
    catalogue.flatMap((definition): [string, ReadingRowData][] => {
      const reading = byId.get(definition.id);
      if (!reading) return [];
      const share = byId.get(`${definition.id}-percent`);
      return [[definition.id, { definition, reading, share: share?.status === 'computed' ? share : null }]];
    }),
  );
}

/**
 * The catalogue as a coach reads it: by group, the most wanted first, shares of the stroke beside their milliseconds,
 * the rest folded. A reading with a target of its own, or the one lit now, is always among the first.
 */
export function arrangeReadings(
  catalogue: readonly ReadingDefinition[],
  readings: readonly Reading[],
  alwaysFirst: ReadonlySet<string>,
): readonly ArrangedGroup[] {
  const byId = rowsOf(catalogue, readings);
  const rows = [...byId.values()].filter(
    ({ definition: { id } }) => !isShare(id, byId) || alwaysFirst.has(id),
  );
  const groups = readingOrder.flatMap((group): ArrangedGroup[] => {
    const own = rows.filter((row) => row.definition.group === group);
    if (own.length === 0) return [];
    const isFirst = (row: ReadingRowData): boolean =>
      wanted.has(row.definition.id) || alwaysFirst.has(row.definition.id);
    const computed = own.filter((row) => row.reading.status === 'computed');
    const missing = own.filter((row) => row.reading.status === 'missing' && !isVariant(row.definition.id));
    const first = computed.filter(isFirst);
    // a group of none of the wanted shows what it has
    const shown =
      first.length > 0 ? first : computed.filter((row) => !isVariant(row.definition.id) && !isHarmonic(row));
    return [
      {
        group,
        first: shown,
        more: computed.filter((row) => !shown.includes(row) && !isHarmonic(row)),
        harmonics: computed.filter((row) => !shown.includes(row) && isHarmonic(row)),
        missing: [...missing.filter(isFirst), ...missing.filter((row) => !isFirst(row))],
      },
    ];
  });
  // what is there comes before what is only wished for
  return [
    ...groups.filter((each) => each.first.length > 0),
    ...groups.filter((each) => each.first.length === 0),
  ];
}
