import { bodyChain, landmarkNames } from '../../../marks/landmark';
import { heightAboveLine } from '../points/angles';
import { meanOfLargest } from './largest-of-noisy';
import { commonPractice, ownAngle, type PostureMeasure } from './posture-measure';
import { postureReadingsWords } from '../../../words/posture-readings';

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
    label: postureReadingsWords('headAgainstArms'),
    brief: postureReadingsWords('earAboveOrBelow'),
    definition: postureReadingsWords('distanceEarFrom'),
    forCoach: postureReadingsWords('whereHeadSits'),
    forSwimmer: postureReadingsWords('whetherYourHead'),
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
    label: postureReadingsWords('hipHeight'),
    brief: postureReadingsWords('hipAboveOrBelow'),
    definition: postureReadingsWords('distanceHipFrom'),
    forCoach: postureReadingsWords('whetherHipsRide'),
    forSwimmer: postureReadingsWords('whetherYourHips'),
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
    label: postureReadingsWords('frontalThickness'),
    brief: postureReadingsWords('heightPostureAcross'),
    definition: postureReadingsWords('extentAllLandmarks'),
    forCoach: postureReadingsWords('standDragStreamline'),
    forSwimmer: postureReadingsWords('howThinYouMake'),
    source: postureReadingsWords('ourOwnDefinition'),
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
    label: postureReadingsWords('straightness'),
    brief: postureReadingsWords('rmsDistanceFrom'),
    definition: postureReadingsWords('rootMeanSquare'),
    forCoach: postureReadingsWords('howFarBodyFrom'),
    forSwimmer: postureReadingsWords('howStraightYou'),
    source: postureReadingsWords('ourOwnDefinition'),
  },
];
