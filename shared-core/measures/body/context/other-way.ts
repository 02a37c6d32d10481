import { fitLine } from '../../../signal/fit-line';
import { z95 } from '../../../uncertainty/normal-quantile';
import type { MissingReason } from '../../reading';
import type { BodyContext } from './body-context';
import type { BodyGeometry } from './body-geometry';
import { keptWith } from '../../../units/kept-with';

/** Of the body lines with shoulder and hip, the share that must lie the same way round to count. Our default. */
const share = 0.75;

const kept = keptWith(
  (geometry: BodyGeometry): boolean =>
    geometry.transform.travelKnown && againstTravel(headWay(geometry), hipWay(geometry)) === 'backward',
);

/**
 * Whether the swimmer goes the other way than the scene says: shoulders behind the hips on three of four body lines and hips
 * that do not go forward, or hips that surely go backward (95 %) and shoulders that do not lead. Where the two speak against
 * each other, as where the camera overtakes the swimmer, nothing is said.
 */
export function goesOtherWay({ geometry }: Pick<BodyContext, 'geometry'>): boolean {
  return kept(geometry);
}

/** Why there is no speed above zero. */
export const notForward = (context: Pick<BodyContext, 'geometry'>): MissingReason => ({
  code: 'degenerate',
  what: goesOtherWay(context) ? 'other-way' : 'zero-speed',
});

type Way = 'forward' | 'backward' | 'unknown';

function againstTravel(head: Way, hip: Way): Way {
  if (head === 'unknown') return hip;
  return hip === 'unknown' || hip === head ? head : 'unknown';
}

/** Which way the head lies: shoulders ahead of the hips, or behind. */
function headWay({ postures, columns }: BodyGeometry): Way {
  let [ahead, behind] = [0, 0];
  for (const { place } of postures) {
    const apart = (columns.shoulder.x[place] as number) - (columns.hip.x[place] as number);
    if (apart > 0) ahead += 1;
    else if (apart < 0) behind += 1;
  }
  const all = ahead + behind;
  if (all < 2) return 'unknown';
  return behind >= share * all ? 'backward' : ahead >= share * all ? 'forward' : 'unknown';
}

/** Which way the hips surely go, where the camera's own way is known. */
function hipWay(geometry: BodyGeometry): Way {
  if (geometry.camera.state === 'loose' || geometry.camera.state === 'turned') return 'unknown';
  const { times, x, sd } = geometry.trace('hip');
  const line = fitLine(times, x);
  if (!line) return 'unknown';
  const error = z95 * sd * Math.sqrt(line.slopeVariance);
  return line.slope > error ? 'forward' : line.slope < -error ? 'backward' : 'unknown';
}
