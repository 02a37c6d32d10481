import { commonPractice, ownAngle, type PostureMeasure } from './posture-measure';
import { postureReadingsWords } from '../../../words/posture-readings';

/** Distances from the water surface; read by the surface line, not by `read`. */
export const depthMeasures: readonly PostureMeasure[] = [
  {
    id: 'depth-hip',
    kind: 'depth',
    needs: ['hip'],
    turnsWithLevel: false,
    combine: 'mean',
    at: [],
    inGlide: true,
    read: () => null,
    label: postureReadingsWords('depthHips'),
    brief: postureReadingsWords('belowWaterSurface'),
    definition: postureReadingsWords('distanceHipBelow'),
    forCoach: postureReadingsWords('howDeepSwimmer'),
    forSwimmer: postureReadingsWords('howDeepUnder'),
    source: ownAngle,
  },
  {
    id: 'knee-to-surface',
    kind: 'depth',
    needs: ['knee'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['kick-top', 'kick-bottom'],
    read: () => null,
    label: postureReadingsWords('kneesSurface'),
    brief: postureReadingsWords('aboveOrBelow'),
    definition: postureReadingsWords('distanceKneeAbove'),
    forCoach: postureReadingsWords('backKneesStay'),
    forSwimmer: postureReadingsWords('whetherYourKnees'),
    source: commonPractice,
  },
];
