import type { LandmarkName } from '../../../marks/landmark';
import type { Point } from '../../../units/point';
import { directionAngle, turnedAngle } from '../points/angles';
import {
  commonPractice,
  ownAngle,
  type PostureMeasure,
  type PosturePoints,
  type PostureSituation,
} from './posture-measure';

const joint =
  (first: LandmarkName, at: LandmarkName, second: LandmarkName, side: 1 | -1) =>
  (p: PosturePoints, s: PostureSituation): number | null => {
    const [a, b, c] = [p[first], p[at], p[second]];
    return a && b && c ? turnedAngle(a, b, c, side * s.belly === 1 ? 1 : -1) : null;
  };

/** Angles read off one posture: trunk, joints, and the feet at the turn of the kick. */
export const jointMeasures: readonly PostureMeasure[] = [
  {
    id: 'trunk-pitch',
    kind: 'angle',
    needs: ['shoulder', 'hip'],
    turnsWithLevel: true,
    combine: 'mean',
    at: ['entry', 'catch', 'exit', 'kick-top', 'kick-bottom'],
    inGlide: true,
    read: (p) => (p.shoulder && p.hip ? directionAngle(p.hip, p.shoulder) : null),
    label: 'Trunk pitch',
    brief: 'hip → shoulder against travel',
    definition:
      'Angle of the line from hip to shoulder against the direction of travel. Positive: shoulders higher than hips.',
    forCoach: 'How steeply the trunk lies in the water; a steep trunk shows the water a larger front.',
    forSwimmer: 'How much your trunk tips: plus means shoulders up, minus means shoulders down.',
    source: ownAngle,
  },
  {
    id: 'elbow-angle',
    kind: 'angle',
    needs: ['shoulder', 'elbow', 'wrist'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['entry', 'catch', 'shoulder', 'exit'],
    inGlide: true,
    read: joint('shoulder', 'elbow', 'wrist', 1),
    label: 'Elbow angle',
    brief: '180° = straight',
    definition:
      'Angle at the elbow between upper arm and forearm as the picture shows it; 180° is straight. With the arm ahead, below 180° the forearm turns toward the belly, above it toward the back: an over-stretched arm reads above 180°.',
    forCoach: 'How bent the arm is, as the picture shows it; a forearm pointing at the camera reads wrong.',
    forSwimmer: 'How straight your arm is: 180° is straight.',
    source: ownAngle,
  },
  {
    id: 'shoulder-angle',
    kind: 'angle',
    needs: ['elbow', 'shoulder', 'hip'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['entry', 'catch', 'shoulder', 'exit'],
    inGlide: true,
    read: joint('hip', 'shoulder', 'elbow', 1),
    label: 'Shoulder opening',
    brief: '180° = arms in line with the trunk',
    definition:
      'Angle at the shoulder between trunk and upper arm; 180° is the arm in line ahead, less is the arm toward the belly, more toward the back.',
    forCoach: 'How far the arms are stretched ahead, or how deep they have gone.',
    forSwimmer: 'How far your arms reach forward: 180° is in one line with your trunk.',
    source: ownAngle,
  },
  {
    id: 'hip-angle',
    kind: 'angle',
    needs: ['shoulder', 'hip', 'knee'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['entry', 'exit', 'kick-top', 'kick-bottom'],
    inGlide: true,
    read: joint('shoulder', 'hip', 'knee', -1),
    label: 'Hip angle',
    brief: '180° = straight',
    definition:
      'Angle at the hip between trunk and thigh; below 180° bent toward the belly, above it arched back.',
    forCoach: 'How much of the kick comes from the hips.',
    forSwimmer: 'How much you bend at the hips: 180° is straight.',
    source: ownAngle,
  },
  {
    id: 'knee-angle',
    kind: 'angle',
    needs: ['hip', 'knee', 'ankle'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['entry', 'exit', 'kick-top', 'kick-bottom'],
    inGlide: true,
    read: joint('hip', 'knee', 'ankle', 1),
    label: 'Knee angle',
    brief: '180° = straight',
    definition:
      'Angle at the knee between thigh and shank; 180° is straight, below it bent, above it over-stretched.',
    forCoach: 'How much the knees bend before the kick and whether they finish it straight.',
    forSwimmer: 'How much your knees bend: 180° is straight.',
    source: ownAngle,
  },
  {
    id: 'ankle-angle',
    kind: 'angle',
    needs: ['knee', 'ankle', 'toe'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['kick-top', 'kick-bottom'],
    inGlide: true,
    read: joint('knee', 'ankle', 'toe', -1),
    label: 'Ankle angle',
    brief: '180° = fully pointed',
    definition:
      'Angle at the ankle between shank and foot (toe); 180° is pointed in one line, 90° is flexed.',
    forCoach: 'Whether the feet stay pointed and loose through the kick.',
    forSwimmer: 'How pointed your feet are: 180° is in one line with your legs.',
    source: ownAngle,
  },
  {
    id: 'feet-direction-top',
    kind: 'angle',
    needs: ['ankle', 'toe'],
    turnsWithLevel: true,
    combine: 'mean',
    at: ['kick-top'],
    read: ({ ankle, toe }) => (ankle && toe ? offUpright(ankle, toe, 1) : null),
    label: 'Feet against straight up',
    brief: '0° = toes up, + = trailing',
    definition:
      'Angle of the line from ankle to toe against straight up; 0° points up, positive leans back against travel (90° trails level).',
    forCoach: 'At the top of the kick the aim is feet that finish the stroke of the leg, pointing up.',
    forSwimmer: 'At the top of the kick: how close your feet are to pointing up.',
    source: commonPractice,
  },
  {
    id: 'feet-direction-bottom',
    kind: 'angle',
    needs: ['ankle', 'toe'],
    turnsWithLevel: true,
    combine: 'mean',
    at: ['kick-bottom'],
    read: ({ ankle, toe }) => (ankle && toe ? offUpright(ankle, toe, -1) : null),
    label: 'Feet against straight down',
    brief: '0° = toes down, + = trailing',
    definition:
      'Angle of the line from ankle to toe against straight down; 0° points down, positive leans back against travel (90° trails level).',
    forCoach: 'At the bottom of the kick the aim is feet that finish the stroke of the leg, pointing down.',
    forSwimmer: 'At the bottom of the kick: how close your feet are to pointing down.',
    source: commonPractice,
  },
];

/** Lean of ankle→toe back from straight up (1) or down (−1), degrees. */
function offUpright(ankle: Point, toe: Point, up: 1 | -1): number | null {
  const dx = toe.x - ankle.x;
  const dy = up * (toe.y - ankle.y);
  if (dx === 0 && dy === 0) return null;
  return (Math.atan2(-dx, dy) * 180) / Math.PI;
}
