import { commonPractice, ownAngle, type PostureMeasure } from './posture-measure';

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
    label: 'Depth of the hips',
    brief: 'below the water surface',
    definition: 'Distance of the hip below the surface line, square to it; negative: above the water.',
    forCoach: 'How deep the swimmer travels.',
    forSwimmer: 'How deep under the surface your hips are.',
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
    label: 'Knees and the surface',
    brief: 'above (+) or below (−) the surface',
    definition: 'Distance of the knee above the surface line, square to it; negative: under water.',
    forCoach: 'On the back, knees stay under water; this shows whether they break through.',
    forSwimmer: 'Whether your knees stay under water.',
    source: commonPractice,
  },
];
