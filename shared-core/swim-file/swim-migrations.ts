import { eachOf, withFields } from './migration-parts';
import type { Migration } from './parse-file';

/**
 * From 1 to 2: chosen video track, fields of interlaced film, conditions on the card, plane scale, straight lines and
 * camera in the scene, refined instants of events, followed points and dismissed proposals. What an older file could
 * not say is said as "not set". Places of the wrong kind are left for the schema to name.
 */
const toVersion2: Migration = (old) => ({
  ...old,
  version: 2,
  clip: withFields(old['clip'], { track: null, fields: false }),
  card: withFields(old['card'], { conditions: { head: null, hips: null, depth: null, free: [] } }),
  scene: withFields(old['scene'], {
    plane: null,
    straights: [],
    camera: { metres: null, fartherMetres: null },
  }),
  events: eachOf(old['events'], (event) => withFields(event, { from: 'coach', refined: null })),
  followed: [],
  dismissed: [],
});

/** From 2 to 3: what the camera did while points were followed, and things that stand still in the pool. */
const toVersion3: Migration = (old) => ({
  ...old,
  version: 3,
  scene: withFields(old['scene'], { still: [] }),
  cameraPath: [],
});

/** From 3 to 4: whether the camera turned or zoomed, which nobody had looked for. */
const toVersion4: Migration = (old) => ({
  ...old,
  version: 4,
  cameraPath: eachOf(old['cameraPath'], (run) => withFields(run, { turned: null })),
});

/** From 4 to 5: points seen without a mark, which nothing looked for. */
const toVersion5: Migration = (old) => ({ ...old, version: 5, seen: [] });

/** Migrations of the swim file, by the version they start from. */
export const swimMigrations: Readonly<Record<number, Migration>> = {
  1: toVersion2,
  2: toVersion3,
  3: toVersion4,
  4: toVersion5,
};
