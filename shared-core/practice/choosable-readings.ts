import { catalogue } from '../measures/families';
import type { ReadingDefinition } from '../measures/reading';
import { neverCompared } from '../measures/never-compared';

/** Harmonics of the single points of the body but hips and toes: read on the bench, too many to choose among elsewhere. */
const isDetail = (id: string): boolean => id.startsWith('harmonic-') && !/-(hip|toe)$/.test(id);

/** Readings offered where one is chosen to aim at, to ask about or to look at over a season; in the catalogue's order. */
export const choosableReadings: readonly ReadingDefinition[] = catalogue.filter(
  ({ id }) => !neverCompared(id) && !isDetail(id),
);
