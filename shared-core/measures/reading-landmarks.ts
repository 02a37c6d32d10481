import { type LandmarkName, landmarkNames } from '../marks/landmark';
import { neighbours } from './body/wave/phase-lag';
import { postureMeasures } from './body/posture/posture-measures';
import { withoutPlace } from './without-place';

/**
 * Landmarks a reading is read from, by its id; all nine where it uses the whole body or isn't known here. Of use only for
 * readings that come from body lines.
 */
export function readingLandmarks(id: string): readonly LandmarkName[] {
  const bare = withoutPlace(id);
  const posture = postureMeasures.find((measure) => measure.id === bare);
  if (posture) return posture.needs;
  if (/^(kick-amplitude|foot-speed)/.test(id)) return ['toe'];
  if (id === 'speed-hip') return ['hip'];
  const pair = neighbours.find((each) => id.endsWith(`-${each.join('-')}`));
  if (pair) return pair;
  const named = /^(?:undulation|harmonic)/.test(id)
    ? landmarkNames.find((name) => id.endsWith(`-${name}`))
    : undefined;
  return named ? [named] : landmarkNames;
}
