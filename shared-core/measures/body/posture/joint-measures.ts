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
import { postureReadingsWords } from '../../../words/posture-readings';

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
    label: postureReadingsWords('trunkPitch'),
    brief: postureReadingsWords('hipShoulderAgainst'),
    definition: postureReadingsWords('angleLineFrom'),
    forCoach: postureReadingsWords('howSteeplyTrunk'),
    forSwimmer: postureReadingsWords('howMuchYourTrunk'),
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
    label: postureReadingsWords('elbowAngle'),
    brief: '180° = straight',
    definition: postureReadingsWords('angleAtElbow'),
    forCoach: postureReadingsWords('howBentArmPicture'),
    forSwimmer: postureReadingsWords('howStraightYour'),
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
    label: postureReadingsWords('shoulderOpening'),
    brief: postureReadingsWords('n180ArmsLine'),
    definition: postureReadingsWords('angleAtShoulder'),
    forCoach: postureReadingsWords('howFarArmsStretched'),
    forSwimmer: postureReadingsWords('howFarYourArms'),
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
    label: postureReadingsWords('hipAngle'),
    brief: '180° = straight',
    definition: postureReadingsWords('angleAtHipBetween'),
    forCoach: postureReadingsWords('howMuchKickComes'),
    forSwimmer: postureReadingsWords('howMuchYouBend'),
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
    label: postureReadingsWords('kneeAngle'),
    brief: '180° = straight',
    definition: postureReadingsWords('angleAtKneeBetween'),
    forCoach: postureReadingsWords('howMuchKnees'),
    forSwimmer: postureReadingsWords('howMuchYourKnees'),
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
    label: postureReadingsWords('ankleAngle'),
    brief: postureReadingsWords('n180FullyPointed'),
    definition: postureReadingsWords('angleAtAnkle'),
    forCoach: postureReadingsWords('whetherFeetStay'),
    forSwimmer: postureReadingsWords('howPointedYour'),
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
    label: postureReadingsWords('feetAgainstStraight'),
    brief: postureReadingsWords('n0ToesUpTrailing'),
    definition: postureReadingsWords('angleLineFromAnkle'),
    forCoach: postureReadingsWords('atTopKickAim'),
    forSwimmer: postureReadingsWords('atTopKickHow'),
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
    label: postureReadingsWords('feetAgainstStraightDown'),
    brief: postureReadingsWords('n0ToesDownTrailing'),
    definition: postureReadingsWords('angleLineFromAnkleToe'),
    forCoach: postureReadingsWords('atBottomKick'),
    forSwimmer: postureReadingsWords('atBottomKickHow'),
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
