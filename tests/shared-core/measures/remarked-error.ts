import { eventKinds } from '#core/marks/event-kind';
import { landmarkNames } from '#core/marks/landmark';
import type { MarkingError } from '#core/uncertainty/marking-error';
import { markingErrorFromRemarkings, type Remarking } from '#core/uncertainty/remarking';
import { normal, seeded } from '../../../sample-clips/model/seeded';

/** The marking error a coach of that true error would measure by marking 10 to 40 (`most`) of each kind again. */
export function remarkedError(real: MarkingError, seed: number, most = 40): MarkingError {
  const random = seeded(seed ^ 0x5bd1e995);
  const pairs: Remarking[] = [];
  const count = (): number => 10 + Math.floor((most - 9) * random());
  const pair = (sd: number): { first: number; second: number } => ({
    first: sd * normal(random),
    second: sd * normal(random),
  });
  for (const kind of eventKinds)
    for (let i = count(); i > 0; i--)
      pairs.push({ ...pair(real.eventSd[kind]), of: 'event', kind, frameInterval: 0 });
  for (const landmark of landmarkNames)
    for (let i = count(); i > 0; i--)
      for (const axis of ['x', 'y'] as const)
        pairs.push({ ...pair(real.landmarkSd[landmark]), of: 'landmark', landmark, axis });
  return markingErrorFromRemarkings(pairs, real);
}
