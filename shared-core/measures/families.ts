import { type BodyFamily, bodyFamilies } from './body/body-families';
import { eventFamilies } from './events/event-families';
import type { ReadingDefinition } from './reading';

/** All families of readings, in the order of the catalogue. */
export const families: readonly BodyFamily[] = [...eventFamilies, ...bodyFamilies];

/** Every reading's definition, in order. */
export const catalogue: readonly ReadingDefinition[] = families.flatMap((family) => family.definitions);
