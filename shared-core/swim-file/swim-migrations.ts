import type { Migration } from './parse-file';

const record = (value: unknown): Record<string, unknown> => ({ ...(value as Record<string, unknown>) });
const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/**
 * From 1 to 2: chosen video track, fields of interlaced film, conditions on the card, plane scale, straight lines and
 * camera in the scene, refined instants of events, followed points and dismissed proposals. What an older file could
 * not say is said as "not set". Places of the wrong kind are left for the schema to name.
 */
const toVersion2: Migration = (old) => ({
  ...old,
  version: 2,
  clip: { track: null, fields: false, ...record(old['clip']) },
  card: { conditions: { head: null, hips: null, depth: null, free: [] }, ...record(old['card']) },
  scene: {
    plane: null,
    straights: [],
    camera: { metres: null, fartherMetres: null },
    ...record(old['scene']),
  },
  events: list(old['events']).map((event) => ({ from: 'coach', refined: null, ...record(event) })),
  followed: [],
  dismissed: [],
});

/** Migrations of the swim file, by the version they start from. */
export const swimMigrations: Readonly<Record<number, Migration>> = { 1: toVersion2 };
