import { bodyChain, type LandmarkName, landmarkNames } from '../../marks/landmark';
import type { EventKind } from '../../marks/event-kind';
import type { Point } from '../../units/brand';
import { directionAngle, heightAboveLine, turnedAngle } from './angles';
import { meanOfLargest } from './largest-of-noisy';

export type PosturePoints = Partial<Record<LandmarkName, Point>>;

export interface PostureSituation {
  /** 1 on the front, −1 on the back. */
  readonly belly: 1 | -1;
  /** Standard deviation of a coordinate, in the unit of the points. */
  readonly sd: number;
}

/** One thing read off a single posture. */
export interface PostureMeasure {
  readonly id: string;
  readonly kind: 'angle' | 'length' | 'depth';
  readonly needs: readonly LandmarkName[];
  readonly turnsWithLevel: boolean;
  /** Mean of values, or root of the mean of squares (the measure then returns the square). */
  readonly combine: 'mean' | 'root';
  /** Also read at these events. */
  readonly at: readonly EventKind[];
  /** Value on one posture; null when it isn't defined there. */
  readonly read: (points: PosturePoints, situation: PostureSituation) => number | null;
  readonly label: string;
  readonly brief: string;
  readonly definition: string;
  readonly forCoach: string;
  readonly forSwimmer: string;
  readonly source: string;
}

const joint =
  (first: LandmarkName, at: LandmarkName, second: LandmarkName, side: 1 | -1) =>
  (p: PosturePoints, s: PostureSituation): number | null => {
    const [a, b, c] = [p[first], p[at], p[second]];
    return a && b && c ? turnedAngle(a, b, c, side * s.belly === 1 ? 1 : -1) : null;
  };

/** An elbow can't bend backward by more than this; beyond it the forearm is turned the other way. From memory. */
const elbowPastStraight = 15;

const own = 'Our own definition of a usual angle';
const practice = 'Common practice, no source';

export const postureMeasures: readonly PostureMeasure[] = [
  {
    id: 'trunk-pitch',
    kind: 'angle',
    needs: ['shoulder', 'hip'],
    turnsWithLevel: true,
    combine: 'mean',
    at: ['entry', 'catch', 'exit', 'kick-top', 'kick-bottom'],
    read: (p) => (p.shoulder && p.hip ? directionAngle(p.hip, p.shoulder) : null),
    label: 'Trunk pitch',
    brief: 'hip → shoulder against travel',
    definition:
      'Angle of the line from hip to shoulder against the direction of travel. Positive: shoulders higher than hips.',
    forCoach: 'How steeply the trunk lies in the water; a steep trunk shows the water a larger front.',
    forSwimmer: 'How much your trunk tips: plus means shoulders up, minus means shoulders down.',
    source: own,
  },
  {
    id: 'head-offset',
    kind: 'length',
    needs: ['wrist', 'shoulder', 'ear'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['entry', 'kick-top', 'kick-bottom'],
    read: (p) => {
      const { wrist, shoulder, ear } = p;
      // with the arms not ahead of the head there is no line to hold it against
      if (!wrist || !shoulder || !ear || wrist.x <= ear.x) return null;
      return heightAboveLine(ear, shoulder, wrist);
    },
    label: 'Head against the arms',
    brief: 'ear above (+) or below (−) wrist–shoulder',
    definition:
      'Distance of the ear from the line wrist–shoulder, square to it, in % of body length; negative: below. Only where the wrist is ahead of the ear.',
    forCoach:
      'Where the head sits in the streamline. Slightly below the plane of arms and shoulders is the aim.',
    forSwimmer: 'Whether your head is tucked between your arms or sticks out above them.',
    source: practice,
  },
  {
    id: 'elbow-angle',
    kind: 'angle',
    needs: ['shoulder', 'elbow', 'wrist'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['entry', 'catch', 'shoulder', 'exit'],
    read: (p, s) => {
      const angle = joint('shoulder', 'elbow', 'wrist', 1)(p, s);
      if (angle === null) return null;
      const { shoulder, elbow, wrist } = p;
      if (!shoulder || !elbow || !wrist) return null;
      const a = 1 / Math.hypot(shoulder.x - elbow.x, shoulder.y - elbow.y);
      const b = 1 / Math.hypot(wrist.x - elbow.x, wrist.y - elbow.y);
      // a straight elbow reads on both sides of 180 for noise alone: folding that back would bend it
      const noise = (180 / Math.PI) * s.sd * Math.sqrt(a * a + b * b + (a + b) ** 2);
      return angle > 180 + Math.max(elbowPastStraight, 3.5 * noise) ? 360 - angle : Math.abs(angle);
    },
    label: 'Elbow angle',
    brief: '180° = straight',
    definition: 'Angle at the elbow between upper arm and forearm as seen from the side; 180° is straight.',
    forCoach: 'How bent the arm is, as the picture shows it; a forearm pointing at the camera reads wrong.',
    forSwimmer: 'How straight your arm is: 180° is straight.',
    source: own,
  },
  {
    id: 'shoulder-angle',
    kind: 'angle',
    needs: ['elbow', 'shoulder', 'hip'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['entry', 'catch', 'shoulder', 'exit'],
    read: joint('hip', 'shoulder', 'elbow', 1),
    label: 'Shoulder opening',
    brief: '180° = arms in line with the trunk',
    definition:
      'Angle at the shoulder between trunk and upper arm; 180° is the arm in line ahead, less is the arm toward the belly, more toward the back.',
    forCoach: 'How far the arms are stretched ahead, or how deep they have gone.',
    forSwimmer: 'How far your arms reach forward: 180° is in one line with your trunk.',
    source: own,
  },
  {
    id: 'hip-angle',
    kind: 'angle',
    needs: ['shoulder', 'hip', 'knee'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['entry', 'exit', 'kick-top', 'kick-bottom'],
    read: joint('shoulder', 'hip', 'knee', -1),
    label: 'Hip angle',
    brief: '180° = straight',
    definition:
      'Angle at the hip between trunk and thigh; below 180° bent toward the belly, above it arched back.',
    forCoach: 'How much of the kick comes from the hips.',
    forSwimmer: 'How much you bend at the hips: 180° is straight.',
    source: own,
  },
  {
    id: 'knee-angle',
    kind: 'angle',
    needs: ['hip', 'knee', 'ankle'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['entry', 'exit', 'kick-top', 'kick-bottom'],
    read: joint('hip', 'knee', 'ankle', 1),
    label: 'Knee angle',
    brief: '180° = straight',
    definition:
      'Angle at the knee between thigh and shank; 180° is straight, below it bent, above it over-stretched.',
    forCoach: 'How much the knees bend before the kick and whether they finish it straight.',
    forSwimmer: 'How much your knees bend: 180° is straight.',
    source: own,
  },
  {
    id: 'ankle-angle',
    kind: 'angle',
    needs: ['knee', 'ankle', 'toe'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['kick-top', 'kick-bottom'],
    read: joint('knee', 'ankle', 'toe', -1),
    label: 'Ankle angle',
    brief: '180° = fully pointed',
    definition:
      'Angle at the ankle between shank and foot (toe); 180° is pointed in one line, 90° is flexed.',
    forCoach: 'Whether the feet stay pointed and loose through the kick.',
    forSwimmer: 'How pointed your feet are: 180° is in one line with your legs.',
    source: own,
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
    source: practice,
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
    source: practice,
  },
  {
    id: 'hip-height',
    kind: 'length',
    needs: ['shoulder', 'hip', 'ankle'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['entry', 'kick-top', 'kick-bottom'],
    read: ({ shoulder, hip, ankle }) =>
      shoulder && hip && ankle ? heightAboveLine(hip, ankle, shoulder) : null,
    label: 'Hip height',
    brief: 'hip above (+) or below (−) shoulder–ankle',
    definition:
      'Distance of the hip from the line shoulder–ankle, square to it, in % of body length; positive: above.',
    forCoach: 'Whether the hips ride high, sink, or lie in line.',
    forSwimmer: 'Whether your hips are above or below the line from shoulders to ankles.',
    source: own,
  },
  {
    id: 'frontal-thickness',
    kind: 'length',
    needs: bodyChain,
    turnsWithLevel: true,
    combine: 'mean',
    at: [],
    read: (p, s) => {
      const heights: number[] = [];
      for (const name of landmarkNames) {
        const point = p[name];
        if (point) heights.push(point.y);
      }
      if (heights.length < bodyChain.length) return null;
      const down = heights.map((y) => -y);
      const seen = Math.max(...heights) + Math.max(...down);
      // noise pushes the outermost marks outward; what it adds is known and comes off
      const raised = meanOfLargest(heights, s.sd) + meanOfLargest(down, s.sd);
      return Math.max(0, 2 * seen - raised);
    },
    label: 'Frontal thickness',
    brief: 'height of the posture across travel',
    definition:
      'Extent of all landmarks across the direction of travel, in % of body length: how much water the posture stands in the way of.',
    forCoach: 'A stand-in for the drag of a streamline: the thinner, the less water is pushed.',
    forSwimmer: 'How thin you make yourself: smaller slips through the water more easily.',
    source: 'Our own definition',
  },
  {
    id: 'straightness',
    kind: 'length',
    needs: bodyChain,
    turnsWithLevel: false,
    combine: 'root',
    at: [],
    read: (p, s) => {
      const { fingertip, toe } = p;
      if (!fingertip || !toe) return null;
      const dx = fingertip.x - toe.x;
      const dy = fingertip.y - toe.y;
      const length2 = dx * dx + dy * dy;
      // ends closer than they can be marked give no line
      if (!(length2 > s.sd * s.sd) || length2 === 0) return null;
      let sum = 0;
      for (const name of bodyChain) {
        const point = p[name];
        if (!point) return null;
        if (name === 'fingertip' || name === 'toe') continue;
        const across = (point.y - toe.y) * dx - (point.x - toe.x) * dy;
        const t = ((point.x - toe.x) * dx + (point.y - toe.y) * dy) / length2;
        // the square of a noisy distance reads high by its variance, which comes off
        sum += (across * across) / length2 - s.sd * s.sd * (1 + t * t + (1 - t) * (1 - t));
      }
      return sum / (bodyChain.length - 2);
    },
    label: 'Straightness',
    brief: 'distance from fingertip–toe line',
    definition:
      'Root mean square distance of wrist, elbow, shoulder, hip, knee and ankle from the line fingertip–toe, in % of body length; 0 is perfectly straight.',
    forCoach: 'How far the body is from one straight line.',
    forSwimmer: 'How straight you are: zero is one line from fingertips to toes.',
    source: 'Our own definition',
  },
  {
    id: 'depth-hip',
    kind: 'depth',
    needs: ['hip'],
    turnsWithLevel: false,
    combine: 'mean',
    at: [],
    read: () => null,
    label: 'Depth of the hips',
    brief: 'below the water surface',
    definition: 'Distance of the hip below the surface line, square to it; negative: above the water.',
    forCoach: 'How deep the swimmer travels.',
    forSwimmer: 'How deep under the surface your hips are.',
    source: own,
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
    source: practice,
  },
];

/** Lean of ankle→toe back from straight up (1) or down (−1), degrees. */
function offUpright(ankle: Point, toe: Point, up: 1 | -1): number | null {
  const dx = toe.x - ankle.x;
  const dy = up * (toe.y - ankle.y);
  if (Math.hypot(dx, dy) === 0) return null;
  return (Math.atan2(-dx, dy) * 180) / Math.PI;
}
