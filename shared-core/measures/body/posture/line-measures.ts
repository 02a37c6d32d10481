import { bodyChain, landmarkNames } from '../../../marks/landmark';
import { heightAboveLine } from '../points/angles';
import { meanOfLargest } from './largest-of-noisy';
import { commonPractice, ownAngle, type PostureMeasure } from './posture-measure';

/** Distances read off one posture, as shares of body length: head, hips, thickness, straightness. */
export const lineMeasures: readonly PostureMeasure[] = [
  {
    id: 'head-offset',
    kind: 'length',
    needs: ['wrist', 'shoulder', 'ear'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['entry', 'kick-top', 'kick-bottom'],
    inGlide: true,
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
    source: commonPractice,
  },
  {
    id: 'hip-height',
    kind: 'length',
    needs: ['shoulder', 'hip', 'ankle'],
    turnsWithLevel: false,
    combine: 'mean',
    at: ['entry', 'kick-top', 'kick-bottom'],
    inGlide: true,
    read: ({ shoulder, hip, ankle }) =>
      shoulder && hip && ankle ? heightAboveLine(hip, ankle, shoulder) : null,
    label: 'Hip height',
    brief: 'hip above (+) or below (−) shoulder–ankle',
    definition:
      'Distance of the hip from the line shoulder–ankle, square to it, in % of body length; positive: above.',
    forCoach: 'Whether the hips ride high, sink, or lie in line.',
    forSwimmer: 'Whether your hips are above or below the line from shoulders to ankles.',
    source: ownAngle,
  },
  {
    id: 'frontal-thickness',
    kind: 'length',
    needs: bodyChain,
    alsoReads: ['ear'],
    turnsWithLevel: true,
    combine: 'mean',
    at: [],
    inGlide: true,
    read: (p, s) => {
      const heights: number[] = [];
      let highest = -Infinity;
      let lowest = Infinity;
      for (const name of landmarkNames) {
        const point = p[name];
        if (!point) continue;
        heights.push(point.y);
        if (point.y > highest) highest = point.y;
        if (point.y < lowest) lowest = point.y;
      }
      if (heights.length < bodyChain.length) return null;
      const seen = highest - lowest;
      // noise pushes the outermost marks outward; what it adds is known and comes off
      const raised = meanOfLargest(heights, s.sd) + meanOfLargest(heights, s.sd, -1);
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
    inGlide: true,
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
    brief: 'RMS distance from fingertip–toe line',
    definition:
      'Root mean square distance of wrist, elbow, shoulder, hip, knee and ankle from the line fingertip–toe, in % of body length; 0 is perfectly straight.',
    forCoach: 'How far the body is from one straight line; points far off it count most.',
    forSwimmer: 'How straight you are: zero is one line from fingertips to toes.',
    source: 'Our own definition',
  },
];
